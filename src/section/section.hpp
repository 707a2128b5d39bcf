// Product of the section room: the measured outline of one station, a smooth curve for each side.
// Verbs: measure_section, tail_unread.
//
// Method: each side is the least-squares unit 4-digit form plus a shape-preserving cubic (PCHIP) through what is
// left, in u = sqrt(x/chord), because a round nose is root-shaped (Fritsch & Carlson 1980 for PCHIP).
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "base/geometry.hpp"
#include "job/job.hpp"
#include "section/side.hpp"

namespace fairblade::section {

enum class Face : unsigned char { port, starboard };
constexpr const char* name_of(Face face) { return face == Face::port ? "port" : "starboard"; }
constexpr double sign_of(Face face) { return face == Face::port ? 1.0 : -1.0; }  ///< of y

/// A reading as it is used: repeats averaged, caliper halved, coating stripped.
struct SurfacePoint {
  double x = 0, half_breadth = 0;  ///< mm; x aft of the leading edge
  int line = 0;                    ///< of the first reading behind it, in MeasuredSection::readings_from
  Face face = Face::port;
};

struct Figures {
  double area = 0;                                                ///< mm²
  double max_thickness = 0, max_thickness_at = 0;                 ///< mm; chord fraction
  double leading_edge_radius = 0, leading_edge_radius_error = 0;  ///< mm; one standard deviation; 0 behind a skeg
  double trailing_edge_thickness = 0;                             ///< mm
  double lopsided = 0;  ///< mm: root mean square of port - starboard over the chord; 0 for caliper readings
};

struct MeasuredSection {
  std::string station;
  double down = 0;
  std::optional<double> ahead;  ///< mm, after stripping
  double chord = 0;             ///< mm, after stripping
  double skeg = 0;              ///< mm of fixed skeg ahead of this edge; forms are fitted over both together
  Side port, starboard;
  std::vector<SurfacePoint> points;  ///< sorted by x, port before starboard
  std::string readings_from;
  bool thickness_only = false;  ///< calipers cannot tell port from starboard
  bool one_side_only = false;   ///< the other side was mirrored, and the warnings say so
  bool interpolated = false;
  Figures figures;
  std::vector<Warning> warnings;

  const Side& side(Face face) const { return face == Face::port ? port : starboard; }
};

/// Was so much of the chord not read at the trailing edge, mm, that there is no section? A fifth.
constexpr bool tail_unread(double last_read, double chord) { return last_read < 0.8 * chord; }

/// The outline of one station, or why there is none. `job` gives reading error and coating to strip.
Outcome<MeasuredSection> measure_section(const job::Job& job, const job::Station& station);

}  // namespace fairblade::section
