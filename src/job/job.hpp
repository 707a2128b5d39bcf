// Product of the job room: what the owner wrote, checked, in millimetres, remembering its lines.
// Verbs: read_job, place_of.
#pragma once
#include <algorithm>
#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/fault.hpp"
#include "base/maybe_mm.hpp"
#include "base/units.hpp"
#include "job/materials.hpp"
#include "job/water.hpp"

namespace fairblade::job {

enum class MeasuredBy { half_breadths, thickness, gaps };

/// One line of the measuring sheet. All mm; x aft of the station's leading edge along the chord.
/// A side that was not read is empty. For "thickness" only `caliper` is set; it may also stand beside half-breadths
/// as a check. Gaps have become half-breadths (board - gap). A half-breadth may be negative on a twisted blade.
struct Reading {
  double x = 0;
  MaybeMm port, starboard, caliper;
  int line = 0;  ///< in the station's `readings_from`
};

enum class Approach { full_section, edges_only };
enum class LeadingEdgeWork { shape, leave };
enum class Spanwise { fair, straight, as_measured };

/// How thick the target is: ratio = maximum thickness / chord; mm = maximum thickness.
struct Thickness {
  enum class Kind { least_fill, closest, ratio, mm } kind = Kind::least_fill;
  double value = 0;
};
/// Chord fraction of the maximum thickness: the plain 4-digit form's own, a fraction 0.2-0.6, or the fitted one.
struct MaxThicknessAt {
  enum class Kind { form, closest, fraction } kind = Kind::form;
  double value = 0;
};
struct LeadingEdgeRadius {
  enum class Kind { form, mm, percent_chord } kind = Kind::form;
  double value = 0;
};
struct TrailingEdgeThickness {
  enum class Kind { form, mm } kind = Kind::form;
  double value = 0;
};
/// A fixed extension in mm, or the most that the tool may choose.
struct Extension {
  bool up_to = false;
  double mm = 0;
};
/// A place along the measured chord, as a fraction of it or in mm aft of the leading edge.
struct ChordPlace {
  bool in_mm = false;
  double value = 0;
};
/// A patch where nothing comes off: heights below the top and x aft of the leading edge, mm.
struct NoCut {
  double down_from = 0, down_to = 0, x_from = 0, x_to = 0;

  bool at(double down) const { return down >= down_from && down <= down_to; }
  bool at(double down, double x) const { return at(down) && x >= x_from && x <= x_to; }
};

/// What the owner asks of the section, every value settled (file, station, option, or default).
struct TargetRequest {
  Approach approach = Approach::full_section;
  Thickness thickness;
  MaxThicknessAt max_thickness_at;
  LeadingEdgeRadius leading_edge_radius;
  TrailingEdgeThickness trailing_edge_thickness;
  Extension extend_leading_edge, extend_trailing_edge;
  ChordPlace keep_from{false, 0.20}, keep_to{false, 0.75};
  LeadingEdgeWork leading_edge = LeadingEdgeWork::shape;
  std::vector<NoCut> no_cut;
  double max_removal = 1.0;  ///< mm
  Spanwise spanwise = Spanwise::fair;
  std::map<std::string, Place> places;  ///< key -> where it was written; a key left to its default is absent

  /// Is that place in a no-cut patch?
  bool spares(double down, double x) const {
    return std::any_of(no_cut.begin(), no_cut.end(), [&](const NoCut& patch) { return patch.at(down, x); });
  }
};

struct Station {
  std::string name;
  double down = 0;                                 ///< mm below the top of the blade, along the stock
  std::optional<double> ahead;                     ///< mm the leading edge stands ahead of the stock centreline
  double chord = 0;                                ///< mm
  std::optional<double> trailing_edge_off_centre;  ///< mm to port
  double skeg = 0;                                 ///< mm of fixed skeg ahead of this edge
  MeasuredBy measured_by = MeasuredBy::half_breadths;
  MaybeMm board_port, board_starboard;  ///< of "gaps": from the centre plane; a gap was what lacks to it
  std::vector<Reading> readings;        ///< sorted by x; repeats kept
  std::string readings_from;            ///< the file that Reading::line counts in
  TargetRequest target;
  Place place;
  bool interpolated = false;  ///< not measured: carries no weight along the span

  bool edges_only() const { return target.approach == Approach::edges_only; }
};

enum class Paper { a4, letter, a3, both, roll_610, roll_914 };

/// A template in two, nose gauge and aft half: where the chord is long or the paper asks for it, always, never.
enum class Split { when_needed, always, never };

/// What templates are of: a stage of the work, or standing off the first of them.
enum class TemplatesOf { bare, glassed, final, clearance };

struct Print {
  Paper paper = Paper::both;
  double margin = 10, overlap = 12;              ///< mm
  double ruler_across = 100, ruler_along = 100;  ///< mm that the 100 mm check bars measured
  double clearance = 3;                          ///< mm that a clearance template stands off; 0: none is drawn
  bool positives = false;                        ///< the sections themselves, to cut round
  Split split = Split::when_needed;
  double gauge_spacing = 100;  ///< mm down the blade between leading-edge gauges; 4 in where the job is in inches
  /// Which templates go onto pages (files are made of all); empty: those of the stage that the filler is shaped at.
  std::vector<TemplatesOf> pages_of;
  Place pages_of_place;
};

struct Job {
  std::string name;
  std::string file;  ///< the job file as given
  LengthUnit units = LengthUnit::mm;
  double reading_error = 0.5;     ///< mm, one standard deviation
  double coating_to_strip = 0;    ///< mm
  std::optional<double> bottom;   ///< mm down
  std::optional<double> speed;    ///< knots
  std::string centre_station;     ///< name; the top one unless told
  std::vector<Station> stations;  ///< sorted by down
  TargetRequest target;           ///< the job's own, before stations override it
  std::vector<Coat> coats;
  Filler edges = filler_with(2.2, 8), faces = filler_with(0.35, 35);  ///< silica; low-density fairing powder
  Workshop workshop;
  ZoneBounds zones;
  Packs packs;
  std::optional<NoseGlass> nose_glass;
  std::vector<ComparedCoating> compare_coatings;  ///< none or two
  WaterWish water;
  Print print;
  std::vector<DefaultUsed> defaults;  ///< every default that was used, in the order of the job file's keys
  std::vector<Warning> warnings;
};

/// Where the first of these target keys that was written stands; the station's own place when none was.
Place place_of(const Station& station, std::initializer_list<const char*> keys);

/// A target key set on the command line: {"leading_edge_radius", "8"}. Lengths in the job's unit.
using Override = std::pair<std::string, std::string>;

/// The job in that file: JSON with // comments, or a CSV alone. Overrides win over the file. Up to 20 faults.
/// Every length in it has become mm.
Outcome<Job> read_job(const std::string& path, const std::vector<Override>& overrides = {});

}  // namespace fairblade::job
