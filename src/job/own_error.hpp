// How far one reading strays, told by places that were read more than once. Verbs: repeated_places, repeats_of, own_error,
// apart_words. mm.
#pragma once
#include <array>
#include <span>
#include <string>
#include <vector>

#include "job/job.hpp"

namespace fairblade::job {

constexpr double same_place = 1e-6;           ///< mm between two x: one place, written twice
constexpr double reading_errors_outside = 3;  ///< how far x may lie outside the chord, in reading errors, before it is a slip
constexpr double disagree_beyond = 4.5;       ///< standard deviations of two things that should be one: by chance, one in 150 000

/// A place of one station that was read more than once.
struct RepeatedPlace {
  double x = 0;
  int times = 0;                    ///< the most that one kind was read
  std::array<double, 3> apart{};    ///< mm from the least to the greatest of port, starboard, caliper; 0 where read once
  std::array<int, 3> mores{};       ///< readings beyond the first of each kind
  std::array<double, 3> squares{};  ///< sums of squares about each kind's mean, mm²
  std::vector<int> lines;           ///< of its rows, rising
  int more = 0;                     ///< readings beyond the first of each kind
  double square = 0;                ///< sum of squares about the kinds' means, mm²
  /// Do its readings differ by more than scatter can, `sigma` being one reading's? Port and starboard are weighed together: a
  /// slip in x moves both.
  bool disagrees(double sigma) const { return square > limit() * sigma * sigma; }
  /// The kinds that are apart by more than a hand strays now and then, three standard deviations, rising; all that were read
  /// more than once and differ where only all of them together say that something is wrong.
  std::vector<std::size_t> kinds_apart(double sigma) const;
  /// Of chi squared with so many degrees of freedom, as rare as disagree_beyond.
  double limit() const { return disagree_beyond * disagree_beyond + 3.2 * (more - 1); }
};

/// Of a station whose readings are sorted by x.
std::vector<RepeatedPlace> repeated_places(const Station& station);

/// Readings beyond the first at one place, and the sum of squares about their places' means, mm².
struct Repeats {
  int more = 0;
  double square = 0;
  int left_out = 0;  ///< places that disagree, held against the others and what was told: slips
};
Repeats repeats_of(std::span<const Station> stations, double told, bool told_by_owner);

/// One standard deviation from both: what was told counts as much as six repeats where the owner told it, as three where
/// it is a default. A few repeats say little, and rounded ones may say nothing.
double own_error(double told, bool told_by_owner, const Repeats& repeats);

/// "read twice, port 4.0 mm and starboard 2.5 mm apart (lines 25 and 26)", of the kinds apart, `sigma` being one reading's, mm.
std::string apart_words(const RepeatedPlace& place, double sigma, LengthUnit unit);

}  // namespace fairblade::job
