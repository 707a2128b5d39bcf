// Product: HeightRead, the readings of one height laid against the frozen target. Verbs: place_round, place_first,
// within. mm.
//
// x is counted from an edge that the work itself may have moved, so it is brought to the stock first: with `ahead` in
// the row, from where the leading edge is now; without it, the leading edge is taken to stand where the target has it
// at this stage (and, for x ahead of a trailing edge, `chord` or the target's), and that is said. Refused: readings that
// seem to be counted from where the leading edge was before the work, without saying so (see old_marks.hpp). Depth: square to the
// face, positive where filler is to be added, negative where something is to come off. Calipers tell the thickness
// alone: what is left is shared by both faces.
#pragma once
#include <array>
#include <cmath>
#include <vector>

#include "job/round.hpp"
#include "recheck/frozen.hpp"

namespace fairblade::recheck {

using section::Face;

struct Judged {
  double read_x = 0;                    ///< as on the sheet
  double x = 0;                         ///< aft of the leading edge as it was measured before the work
  double half_breadth = 0, target = 0;  ///< here, and of the target at this x
  double depth = 0;                     ///< + to add, - to take off
  double sigma = 0;                     ///< one standard deviation of it
  double girth = 0;                     ///< of the place along the face from the leading edge
  int line = 0;                         ///< in the round's file; 0: from the plan
  int repeats = 1;
  job::XFrom from = job::XFrom::leading_edge;
  bool from_old_edge = false;  ///< the leading edge it is from is that of before the work
  Face face = Face::port;
  bool both = false;   ///< calipers: stands for port and starboard alike
  bool steep = false;  ///< less of a half-breadth's error reaches the depth: on the round of the nose
  bool sure = false;   ///< read more than once, and alike
  bool alone = false;  ///< far out, with neighbours that are not: read it again (set by mark_alone)
};

/// A reading that needs nothing done: to a rounding, for depths are told to a tenth.
inline bool within(const Judged& one, double tolerance) { return std::abs(one.depth) <= tolerance + 1e-6; }

/// Could two readings of one place be these, mm, with these standard deviations?
inline bool alike(double a, double b, double sigma_a, double sigma_b) {
  constexpr double within_chance = 3;
  return std::abs(a - b) <= within_chance * std::hypot(sigma_a, sigma_b);
}

/// Where an edge stands against the target's, as far as `ahead` and `chord` tell; positive: it is short of it.
struct EdgesRead {
  std::optional<double> leading, trailing;
  std::optional<double> chord;  ///< only the chord is known: how much shorter it is
};

struct HeightRead {
  Surface surface;
  std::array<double, 2> girth{};  ///< of the whole face at this stage: port, starboard
  std::vector<Judged> readings;   ///< port by x, then starboard by x; of calipers both
  EdgesRead edges;
  bool calipers = false;
  std::size_t beyond_edge = 0;                        ///< readings aft of the target's trailing edge, on no face of it
  std::vector<std::size_t> of(Face face) const;       ///< which readings
  std::vector<std::size_t> counted(Face face) const;  ///< those of them that are not alone
};

/// What was taken for granted, for people.
struct Assumed {
  std::vector<DefaultUsed> defaults;
  std::vector<std::string> notes;
};

/// From the top down. `sigma`: how far one reading strays.
Outcome<std::vector<HeightRead>> place_round(const Frozen& frozen, const job::Round& round, double sigma, Assumed& assumed);
/// The readings that the plan was made from, against the same surface.
Outcome<std::vector<HeightRead>> place_first(const Frozen& frozen, const job::FrozenPlan& plan);

}  // namespace fairblade::recheck
