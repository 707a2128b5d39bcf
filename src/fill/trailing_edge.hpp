// Product: the trailing edge down the blade: where to saw, how it tapers, how far to build past it, where the batten
// stands. Verbs: edge_card_of, litres_sawn_off. mm.
//
// The edge is built out too long against a straight batten, its taper faired, then sawn to length. Past
// (edge thickness)/(sum of the tapers of both faces) the faces meet and there is nothing to saw. Filler is sawn before
// the coats go on; they wrap the edge face, so that it is sawn that much ahead of the finished edge, and narrower.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "fill/heights.hpp"
#include "fill/stages.hpp"

namespace fairblade::fill {

constexpr double usual_build_past = 10;  ///< mm past the saw line: common practice, no source
/// Of the way to where the faces meet, the most to build past: a third of the edge's thickness is left there.
constexpr double most_build_past = 2.0 / 3;

/// What the edge is at one height. Distances run aft from the stock centreline, or from the leading edge as it was measured where
/// `ahead` is not known.
struct EdgeHeight {
  std::string name;
  double down = 0;
  std::optional<std::size_t> station;
  double finished = 0;             ///< the finished edge
  double saw = 0;                  ///< where the filler is sawn
  std::vector<double> widths;      ///< of the edge face, one to each stage
  std::array<double, 2> taper{};   ///< port, starboard: mm per mm, positive where the face closes
  std::optional<double> furthest;  ///< past the saw line, where the faces meet; nothing where they never do
  std::optional<double> batten;    ///< the straight batten's edge, from the stock
  double miss = 0;                 ///< batten less (saw line + build_past): positive where it stands further out
};

struct EdgeCard {
  bool from_stock = false;
  std::vector<Stage> stages;
  std::vector<EdgeHeight> heights;
  double build_past = 0;               ///< one for the whole blade
  bool nothing_to_build = false;       ///< nowhere further aft or thicker than it is: it is only sawn, and build_past is 0
  bool nothing_to_saw = false;         ///< nor that: the edge stays where it is
  bool held_back = false;              ///< it is less than usual, because the taper closes somewhere
  std::optional<std::size_t> governs;  ///< the height that holds it back
  /// By index: where the batten stands furthest out past the edge wanted, and furthest inside it; nothing where it
  /// misses by less than 0.05 mm.
  std::optional<std::size_t> furthest_out, furthest_in;
  std::optional<StageSection> shown;  ///< the top height as it is sawn, to draw
};

/// `measured`: the stations as they are, in the targets' order; without them something is taken to be built.
EdgeCard edge_card_of(const job::Job& job, const std::vector<target::TargetSection>& targets, double spacing,
                      const std::vector<section::MeasuredSection>& measured = {});
/// What is built past the saw line and goes again, of the wedge between the tapers, straight between heights.
double litres_sawn_off(const EdgeCard& card);

}  // namespace fairblade::fill
