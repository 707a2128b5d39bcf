// Private to the report room. Product: findings said in plain words. Verbs: one per finding.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "base/units.hpp"
#include "report/plan.hpp"

namespace fairblade::report {

/// "1.23 L", and "less than 0.01 L" for what would print as nothing.
std::string litres(double value);
/// "250 g", from kg.
std::string grams(double kg);
/// "25 minutes", "1 hour 40 minutes".
std::string minutes_words(double minutes);
/// "6 to 24 hours".
std::string hours_words(const job::Window& window);
/// With a capital; and with a full stop too.
std::string capital(std::string words);
std::string sentence(std::string words);
/// "1 pass", "3 passes": `many` where it is not the word and an s.
std::string counted(std::size_t count, std::string_view one, std::string_view many = {});
/// "A, B and C"; of more than `most`, the first of them and how many more.
std::string listed(const std::vector<std::string>& names, std::size_t most = 12);
/// "station A", "stations A, B and C".
std::string of_stations(const Plan& plan, const std::vector<std::size_t>& which);
/// "0.8 mm", "0.8 to 1.0 mm".
std::string from_to(double low, double high, LengthUnit unit);
/// "19 times in 20 between 1.11 and 1.35 L": two standard deviations either way.
std::string range_words(double low, double high);
/// "port", "starboard", or "both sides" where the two were not told apart.
std::string side_words(const section::MeasuredSection& measured, section::Face face);
/// The nearest form's name for a table: with a warning word where the blade is no standard section.
std::string nearest_form(const Plan& plan, std::size_t station);
/// How far one station is from its nearest standard section: typical miss, worst miss and where.
std::string nearness(const Plan& plan, std::size_t station);
/// "33.0 mm aft of the leading edge", "at the leading edge" or "5.0 mm ahead of the old leading edge".
std::string aft_words(double x, LengthUnit unit);
/// "4.2 mm at station C, 33.0 mm aft of the leading edge, port", the deepest of its kind on the blade; "none" where there
/// is none.
std::string deepest_place(const Plan& plan, bool removal);
/// What comes off under the coats, and how deep; of a plan that has them.
std::string before_coats_words(const Plan& plan);
/// Batches over all passes of a zone.
std::size_t batches_in(const Plan& plan, fill::Zone zone);
/// What the litres do not cover, each a sentence; empty when they cover the blade from top to bottom.
std::vector<std::string> not_included(const Plan& plan);

/// No scale in a yard weighs out less paste: it is taken from another mix of the same.
constexpr double least_batch_g = 5;

}  // namespace fairblade::report
