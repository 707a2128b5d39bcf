// Private to the check room. Product: findings on the measuring sheet as a whole, before any single reading is judged:
// units, chord against the readings' extent, heights of stations, how many readings and where. Verbs: one each.
#pragma once
#include <cstddef>
#include <vector>

#include "check/findings.hpp"

namespace fairblade::check {

/// `aside[k]`: station k's readings cannot be judged one by one, for something greater is wrong.
void judge_units(const job::Job& job, std::vector<bool>& aside, std::vector<Finding>& out);
void judge_extents(const job::Job& job, double sigma, std::vector<bool>& aside, std::vector<Finding>& out);
void judge_heights(const job::Job& job, std::vector<Finding>& out);
/// Which readings, as their rows follow each other on the sheet; none where lines do not tell it.
std::vector<std::size_t> rows_by_line(const job::Station& station);
/// One row whose x runs against the order of the others on the sheet.
void judge_order(const job::Job& job, const job::Station& station, std::vector<Finding>& out);
void judge_coverage(const job::Job& job, std::size_t k, std::vector<Finding>& out, std::vector<std::string>& notes);

/// Greatest half-thickness that was read, by the third largest of nine and more (a slip or two do not move it); mm.
double half_thickness(const job::Station& station);
/// The x furthest aft that was read, mm.
double furthest_aft(const job::Station& station);

/// A finding on a station as a whole, at its place in the file; almost certain.
Finding of_station(const job::Station& station, const char* code, Rank rank, std::string what, std::string remedy);
std::vector<double> chords_of(const job::Job& job);

}  // namespace fairblade::check
