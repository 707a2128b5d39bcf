// Product: the leading edge at one height and stage of the work, in numbers, and how far its gauge reaches.
// Verbs: noses_down, nose_of, hold_of. mm.
//
// Flats: a flat at an angle to the chord line touches a face where its slope is the angle's tangent; coats still to come
// move that place inwards along the normal. The flexible sheet is an elastic strip bent in two, held with its sides
// parallel: with kappa² as sin(theta) the gap is D = 2r·integral of sqrt(sin) = 2.39628 r, and the tip stands
// r·integral of cos/sqrt(sin) = 2r ahead of the line where it is held (the elastica's quarter arc, closed forms).
#pragma once
#include <array>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include "fill/heights.hpp"
#include "fill/stages.hpp"

namespace fairblade::fill {

/// D/r of the two-point bend: 2 sqrt(pi) gamma(3/4)/(2 gamma(5/4)).
constexpr double gap_per_radius = 2.3962804694711844;
constexpr double tip_per_gap = 2 / gap_per_radius;  ///< how far ahead of the hold the tip stands, in gaps: 0.8346

constexpr double cloth_lap = 25;  ///< mm of cloth beyond the gauge's end on either face: common practice, no source

struct Flat {
  double degrees = 0;
  double x = 0, half_breadth = 0;  ///< mm aft of this stage's leading edge
};
constexpr std::array<double, 4> flat_degrees{60, 45, 30, 15};

/// Where to hold a flexible sheet. Lengths aft of this stage's leading edge.
struct Hold {
  double gap_for_radius = 0;  ///< the gap that bends it to the radius asked for
  double x = 0, gap = 0;      ///< furthest aft that the tip still reaches the leading edge; the blade's thickness there
  double radius = 0;          ///< that it then bends to
  bool at_widest = false;     ///< the tip reaches even from the greatest thickness, so there is no further aft to go
  double end_gap = 0;         ///< held at the gauge's end
  double short_at_end = 0;    ///< by how much the tip then falls short; negative: it stands ahead
};

struct Nose {
  std::string name;
  double down = 0;
  std::optional<std::size_t> station;
  std::string why_none;  ///< why there is no gauge here; empty where there is one, and only then the rest is set
  StageSection section;
  double chord = 0;             ///< at this stage
  std::optional<double> ahead;  ///< this stage's leading edge ahead of the stock centreline
  double radius = 0;            ///< 0 where the coats are thicker than the finished nose is round
  double finished_radius = 0;
  double girth = 0;  ///< round the nose between the gauge's ends
  double cloth = 0;  ///< width to wrap it: girth and a lap on either face
  /// Port, then starboard; in the order of flat_degrees, nothing where a flat touches no place.
  std::array<std::array<std::optional<Flat>, 4>, 2> flats;
  Hold hold;
  // The gauge.
  double horn = 0;              ///< how far it reaches ahead of the leading edge
  double tail = 0;              ///< and aft
  bool ends_on_stock = false;   ///< the tail's end, or the horn's, lies on the stock centreline
  std::optional<double> stock;  ///< mm aft of the leading edge, where the gauge carries the stock centreline
  double tail_fraction = 0;     ///< tail/chord
};

constexpr double shortest_horn = 36;   ///< mm: two bolt holes and a hand
constexpr double longest_gauge = 236;  ///< mm, horn and tail: a shared sheet of 243 mm takes it

/// `stand_off`: the gap of a clearance gauge, mm.
Nose nose_of(const Height& height, const Stage& stage, double stand_off = 0);
/// Every station and every `spacing` mm.
std::vector<Nose> noses_down(const job::Job& job, const std::vector<target::TargetSection>& targets, const Stage& stage,
                             double spacing);

/// The sheet on a nose of that radius whose faces are these, held at most `end` aft for the gauge's end.
Hold hold_of(const StageSection& section, double radius, double end);

}  // namespace fairblade::fill
