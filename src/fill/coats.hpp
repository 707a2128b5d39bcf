// Product: the coats over the filler: wetted area, litres, packs, weighed part-packs, cloth, dry build, and what the
// build does to the edges. Verbs: wetted_of, build_of, over_filler, film_spread, metres_in_strips, metres_down, narrowed_edge,
// least_edge, coats_of, faults_of, warnings_of.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "fill/zones.hpp"
#include "job/build.hpp"

namespace fairblade::fill {

/// m², of the finished blade.
struct Wetted {
  double faces = 0;         ///< girth integrated over the span: both faces and the blunt ends fore and aft
  double tip = 0, top = 0;  ///< the flat ends, where coated
  double all = 0;
  double filled = 0, bare = 0, old = 0;  ///< add up to all
  double patches = 0;                    ///< under the supports, within all; coated after the rest
  double height = 0;                     ///< m, from the top to the bottom, over which `faces` lies
};

/// Metres off a roll, one layer of strips over so much of a blade, m² and m: each the blade's height long or the girth, whichever
/// takes less, and a tenth over the next (common practice). Pieced strips take less.
double metres_in_strips(double area, double height, double width);
/// The same with strips down the blade alone.
double metres_down(double area, double height, double width);

/// m² per litre: 10 x volume solids % / dry film in micrometres.
double film_spread(double volume_solids_percent, double dry_film_um);
using job::build_of;
using job::over_filler;

/// A square edge under coats, by its plane geometry: w = e - 2d/cos(beta) + 2d tan(beta). The target is the finished surface, so
/// w is the width the edge is filled and cut to before coats, which wrap its face.
struct Edge {
  std::string station;
  double finished = 0;       ///< mm, the target's e
  double build = 0;          ///< mm a side
  double taper_degrees = 0;  ///< beta a side, the mean of both faces
  double before_coats = 0;   ///< w; 0 where it closes
  double least = 0;          ///< mm, the least e that leaves an edge: 2d (1 - sin(beta))/cos(beta)
  bool closes = false;       ///< e <= least: refused
  double nose_radius = 0;
  bool nose_too_sharp = false;  ///< radius < d: the leading edge recedes further, and no coat restores it
};
double narrowed_edge(double finished, double build, double taper_radians);
double least_edge(double build, double taper_radians);

/// A mix that is used up within its working time; weights where density and parts are known.
struct PartPack {
  int mixes = 0;              ///< for one layer
  double litres = 0;          ///< of one mix, without thinner
  double of_a_pack = 0;       ///< fraction; 0 without a pack size
  double minutes = 0;         ///< working time at the workshop's temperature
  double minutes_to_use = 0;  ///< to put one mix on
  std::optional<double> grams, base_g, hardener_g;
  double thinner_ml = 0;
};

struct ClothNeed {
  double area = 0;      ///< m², all layers, 10 % for overlaps and offcuts (common practice)
  double width = 0;     ///< mm, of the roll
  double metres = 0;    ///< off the roll: strips over all of a blade, pieces over a part of it
  double resin_kg = 0;  ///< with the workshop's loss
};

struct CoatPlan {
  std::string name, stage;
  job::CoatedPart on = job::CoatedPart::all;
  int layers = 1;
  double area = 0;                 ///< m², one layer
  double patches = 0;              ///< m² of it under the supports, kept back for later
  double build = 0;                ///< mm a side, all layers
  double spread = 0;               ///< m² per litre; 0 for cloth
  bool spread_from_sheet = false;  ///< given by the owner, not worked from solids and film
  bool solids_estimated = false;   ///< 50 % taken, none given
  double litres_a_layer = 0;       ///< on the blade
  double litres = 0;               ///< all layers, loss included
  double thinner_litres = 0;
  double packs_used = 0;  ///< as a fraction
  int packs = 0;          ///< whole ones to buy; 0 without a pack size
  std::optional<double> cost, cost_a_year;
  std::optional<PartPack> part_pack;
  std::optional<ClothNeed> cloth;
};

/// The nose built up in cloth, then filler. Each strip is bent round the nose; strip 1 lies innermost and widest.
struct NoseGlassStation {
  std::string station;
  double depth = 0;  ///< mm to build up at the nose, coats taken off
  int layers = 0;
  std::vector<double> strip_widths;  ///< mm round the nose, innermost first
  double left_for_filler = 0;        ///< mm at the deepest place
};
struct NoseGlassPlan {
  double layer = 0, cover = 0;  ///< mm
  std::vector<NoseGlassStation> stations;
  double cloth_area = 0;  ///< m²
  double resin_kg = 0;
  double glass_litres = 0;     ///< of the leading edge's fill
  double left_for_filler = 0;  ///< litres, on the blade
  std::vector<int> under;      ///< layers under each piece of the surface, in its order
};

struct Coats {
  Wetted wetted;
  double build = 0;           ///< mm a side over the filler, all coats
  double pinhole_litres = 0;  ///< of neat epoxy or fine paste over what is filled, loss included
  std::vector<CoatPlan> coats;
  std::vector<Edge> edges;  ///< one a station
  std::optional<NoseGlassPlan> nose_glass;
};

Wetted wetted_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                 const std::vector<target::TargetSection>& targets, const std::vector<Piece>& surface, double build);
Coats coats_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
               const std::vector<target::TargetSection>& targets, const Zones& zones, const std::vector<Piece>& surface);

/// What the coats, `build` mm a side, leave of the trailing edges.
std::vector<Edge> edges_of(const std::vector<target::TargetSection>& targets, double build);

/// Edges that close are faults; sharp noses and estimated solids are warnings.
std::vector<Fault> faults_of(const job::Job& job, const Coats& coats);
std::vector<Warning> warnings_of(const Coats& coats);

}  // namespace fairblade::fill
