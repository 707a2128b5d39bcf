#include "section/section.hpp"

#include <algorithm>
#include <cmath>

#include "base/plain_form.hpp"
#include "base/text.hpp"
#include "job/own_error.hpp"
#include "section/gather.hpp"
#include "section/outline.hpp"
#include "section/strip.hpp"

namespace fairblade::section {

bool meet_where_crossed(MeasuredSection& measured) {
  auto port = measured.port.nodes();
  auto starboard = measured.starboard.nodes();
  bool crossed = false;
  auto to_port = measured.port.along(), to_starboard = measured.starboard.along();
  for (Node& node : port) {
    const double thickness = node.half_breadth + to_starboard.at(node.x);
    if (thickness >= 0) continue;
    node.half_breadth -= thickness / 2;
    crossed = true;
  }
  for (Node& node : starboard) {
    const double thickness = node.half_breadth + to_port.at(node.x);
    if (thickness >= 0) continue;
    node.half_breadth -= thickness / 2;
    crossed = true;
  }
  if (!crossed) return false;
  const bool with_form = measured.port.with_form();
  measured.port = Side(measured.chord, port, measured.skeg, with_form);
  measured.starboard = Side(measured.chord, starboard, measured.skeg, with_form);
  return true;
}

namespace {

std::vector<Node> nodes_of(const std::vector<SurfacePoint>& points) {
  std::vector<Node> out;
  for (const SurfacePoint& point : points) out.push_back({point.x, point.half_breadth});
  return out;
}

// Without a reading at x = 0 the two sides meet there in a point on the centre plane.
void close_leading_edge(const job::Station& station, std::vector<Node>& port, std::vector<Node>& starboard,
                        std::vector<Warning>& warnings) {
  bool implied = false;
  for (auto* side : {&port, &starboard}) {
    if (side->front().x == 0) continue;
    side->insert(side->begin(), Node{0, 0});
    implied = true;
  }
  if (!implied) return;
  warnings.push_back({"leading-edge-assumed", where(station),
                      "no reading at x = 0 on every side: the leading edge is taken as sharp there (half-breadth 0); "
                      "if it is square or worn flat, measure at x = 0"});
}

// Behind a skeg the edge is as thick as the skeg: without a reading there the first two are carried on to it.
void carry_to_skeg(const job::Station& station, std::vector<Node>& port, std::vector<Node>& starboard,
                   std::vector<Warning>& warnings) {
  bool carried = false;
  for (auto* side : {&port, &starboard}) {
    if (side->front().x == 0) continue;
    const Node a = (*side)[0];
    const Node b = (*side)[1];
    const double at_edge = a.half_breadth - (b.half_breadth - a.half_breadth) * a.x / (b.x - a.x);
    side->insert(side->begin(), Node{0, at_edge});
    carried = true;
  }
  if (!carried) return;
  warnings.push_back({"leading-edge-assumed", where(station),
                      "no reading at x = 0, behind the skeg: the first two are carried on to it in a straight line; "
                      "measure it"});
}

// Without a reading at the trailing edge the last two are carried on in a straight line.
void close_trailing_edge(const job::Job& job, const job::Station& station, std::vector<Node>& port, std::vector<Node>& starboard,
                         std::vector<Warning>& warnings) {
  const double chord = station.chord;
  const bool port_read = port.back().x == chord, starboard_read = starboard.back().x == chord;
  bool assumed = false;
  for (auto* side : {&port, &starboard}) {
    if (side->back().x == chord) continue;
    const Node& a = (*side)[side->size() - 2];
    const Node& b = side->back();
    side->push_back({chord, b.half_breadth + (b.half_breadth - a.half_breadth) * (chord - b.x) / (b.x - a.x)});
    assumed = true;
  }
  if (!assumed) return;
  double& p = port.back().half_breadth;
  double& s = starboard.back().half_breadth;
  const auto& off = station.trailing_edge_off_centre;
  if (off && port_read) s = p - 2 * *off;  // the face that was read stays as it was
  if (off && starboard_read) p = s + 2 * *off;
  const double thickness = std::max(0.0, p + s);
  const double middle = off.value_or((p - s) / 2);
  if (!port_read) p = thickness / 2 + middle;
  if (!starboard_read) s = thickness / 2 - middle;
  warnings.push_back({"trailing-edge-assumed", where(station),
                      "no reading at the trailing edge: the last two are carried on in a straight line, giving an edge " +
                          in_unit(thickness, job.units) + " thick; measure it"});
}

// Is the section no foil at all (a plate, a wedge)? Taking out of it a form that does not fit would leave bulges between
// the readings that no reading shows. Judged on the thickness at the readings, in which twist and a shifted board cancel:
// what the least-squares form leaves, root mean square, as a share of it. The demos' foils leave 0.02 to 0.07, the plate
// 0.52 to 0.54.
bool far_from_form(const MeasuredSection& measured) {
  constexpr double far = 0.3;
  double product = 0;
  double form_square = 0;
  double square = 0;
  for (const Face face : {Face::port, Face::starboard}) {
    auto port = measured.port.along(), starboard = measured.starboard.along();
    for (const Node& node : measured.side(face).nodes()) {
      const double thickness = port.at(node.x) + starboard.at(node.x);
      const double form = plain_form(std::sqrt((node.x + measured.skeg) / (measured.chord + measured.skeg)));
      product += thickness * form;
      form_square += form * form;
      square += thickness * thickness;
    }
  }
  return square - product * product / form_square > far * far * square;
}

// Where it was read: port + starboard.
double thickness_at(const SurfacePoint& point, const MeasuredSection& measured) {
  const Face other = point.face == Face::port ? Face::starboard : Face::port;
  return point.half_breadth + measured.side(other).at(point.x);
}

// A twisted blade may lie wholly to one side, but port + starboard is a thickness. What noise can do to a sharp edge
// (6 sigma on the sum of two readings) is mended; more than that must be a slip, and so must less than nothing between two
// places that are thicker than that.
std::optional<Fault> refuse_negative_thickness(const job::Job& job, const job::Station& station, MeasuredSection& out) {
  const double by_noise = 6 * job.reading_error * std::sqrt(2.0);
  const auto thick = [&](const SurfacePoint* point) { return point && thickness_at(*point, out) > by_noise; };
  const auto between_thick_ones = [&](const SurfacePoint& point) {
    const SurfacePoint *before = nullptr, *after = nullptr;  // on the same face
    for (const SurfacePoint& other : out.points) {
      if (other.face != point.face) continue;
      if (other.x < point.x && (!before || other.x >= before->x)) before = &other;
      if (other.x > point.x && (!after || other.x < after->x)) after = &other;
    }
    return thick(before) && thick(after);
  };
  for (const SurfacePoint& point : out.points) {
    const double thickness = thickness_at(point, out);
    if (thickness >= 0 || (thickness >= -by_noise && !between_thick_ones(point))) continue;
    const Face across = point.face == Face::port ? Face::starboard : Face::port;
    const bool both_read = std::any_of(out.points.begin(), out.points.end(), [&](const SurfacePoint& other) {
      return other.face == across && std::abs(other.x - point.x) <= job::same_place;
    });
    return Fault{
        {station.readings_from, point.line},
        "station " + station.name + " at x " + in_unit(point.x, job.units) + ": port + starboard is " +
            in_unit(thickness, job.units) + ", less than nothing" +
            (both_read ? "" : std::string(" (") + name_of(across) + " was not read there, and runs on from its neighbours)"),
        both_read ? "check the signs: a half-breadth is negative only where the blade lies wholly on the other side"
                  : std::string("see whether the ") + name_of(across) + " column slipped by a row, or read it there too"};
  }
  return std::nullopt;
}

// A thousandth of the chord: no blade is so thin, but one side written with the other's sign is.
std::optional<Fault> refuse_no_thickness(const job::Job& job, const job::Station& station, const MeasuredSection& out) {
  constexpr double thinnest = 1e-3;
  double most = 0;
  for (const SurfacePoint& point : out.points) most = std::max(most, thickness_at(point, out));
  if (most > thinnest * out.chord) return std::nullopt;
  const int line = out.points.empty() ? 0 : out.points.front().line;
  return Fault{
      {station.readings_from, line},
      "station " + station.name + ": port + starboard is nowhere more than " + in_unit(most, job.units),
      "check the readings and their signs: a half-breadth is negative only where the blade lies wholly on the other side"};
}

}  // namespace

Outcome<MeasuredSection> measure_section(const job::Job& job, const job::Station& station) {
  auto gathered = gather(job, station);
  if (!gathered) return gathered.faults();
  MeasuredSection out;
  out.station = station.name;
  out.down = station.down;
  out.ahead = station.ahead;
  out.chord = station.chord;
  out.skeg = station.skeg;
  out.readings_from = station.readings_from;
  out.thickness_only = gathered->thickness_only;
  out.one_side_only = gathered->one_side_only;
  out.interpolated = station.interpolated;
  out.warnings = std::move(gathered->warnings);

  auto port = nodes_of(gathered->port);
  auto starboard = nodes_of(gathered->starboard);
  if (station.skeg > 0) carry_to_skeg(station, port, starboard, out.warnings);
  else close_leading_edge(station, port, starboard, out.warnings);
  close_trailing_edge(job, station, port, starboard, out.warnings);
  out.port = Side(out.chord, port, out.skeg);
  out.starboard = Side(out.chord, starboard, out.skeg);
  if (far_from_form(out)) {
    out.port = Side(out.chord, port, out.skeg, false);
    out.starboard = Side(out.chord, starboard, out.skeg, false);
  }
  out.points = gathered->port;
  out.points.insert(out.points.end(), gathered->starboard.begin(), gathered->starboard.end());
  std::stable_sort(out.points.begin(), out.points.end(), [](const SurfacePoint& a, const SurfacePoint& b) { return a.x < b.x; });
  if (auto fault = refuse_negative_thickness(job, station, out)) return *fault;
  if (auto fault = refuse_no_thickness(job, station, out)) return *fault;
  meet_where_crossed(out);
  if (job.coating_to_strip > 0) {
    if (auto fault = strip_coating(job, station, out)) return *fault;
  }
  out.figures = figures_of(out, job.reading_error);
  return out;
}

}  // namespace fairblade::section
