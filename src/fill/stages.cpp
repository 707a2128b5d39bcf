#include "fill/stages.hpp"

#include <algorithm>
#include <cmath>

#include "base/polyline.hpp"
#include "base/text.hpp"
#include "fill/coats.hpp"
#include "target/face_lines.hpp"
#include "target/face_shapes.hpp"

namespace fairblade::fill {
namespace {

constexpr double tolerance = 0.002;  // mm, what thinning may drop; sampling misses the curve by as much again

/// Where the ring comes through the centre plane furthest forward: the index of the corner before, and the place.
std::optional<std::pair<std::size_t, Point>> foremost(const std::vector<Point>& ring) {
  std::optional<std::pair<std::size_t, Point>> best;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    const Point &a = ring[k], &b = ring[(k + 1) % ring.size()];
    if (a.y() > 0 || b.y() <= 0) continue;  // clockwise: from starboard (below) to port at the leading edge
    const double w = a.y() / (a.y() - b.y());
    const Point at(a.x() + w * (b.x() - a.x()), 0);
    if (!best || at.x() < best->second.x()) best.emplace(k, at);
  }
  return best;
}

/// The ring (clockwise) as two lines from the leading edge to the corners of the edge face.
bool split(const Polygon& polygon, StageSection& out) {
  constexpr double same = 1e-6;  // mm: the blunt ends are upright to rounding
  std::vector<Point> ring(polygon.outer().begin(), polygon.outer().end());
  if (ring.size() < 5) return false;
  ring.pop_back();
  auto nose = foremost(ring);
  if (!nose) return false;
  // A nose off the centre plane: its foremost corner parts the faces, or one of them would run forward first.
  const auto ahead = std::min_element(ring.begin(), ring.end(), [](const Point& a, const Point& b) { return a.x() < b.x(); });
  if (ahead->x() < nose->second.x() - same) nose.emplace(static_cast<std::size_t>(ahead - ring.begin()), *ahead);
  std::vector<Point> round{nose->second};
  const auto add = [&round](const Point& p) {
    if (p.x() != round.back().x() || p.y() != round.back().y()) round.push_back(p);
  };
  for (std::size_t k = 1; k <= ring.size(); ++k) add(ring[(nose->first + k) % ring.size()]);
  add(nose->second);
  double aft = round.front().x();
  for (const Point& p : round) aft = std::max(aft, p.x());
  std::size_t first = round.size(), last = 0;
  for (std::size_t k = 0; k < round.size(); ++k) {
    if (round[k].x() < aft - same) continue;
    first = std::min(first, k);
    last = k;
  }
  out.port.assign(round.begin(), round.begin() + static_cast<std::ptrdiff_t>(first) + 1);
  out.starboard.clear();
  for (std::size_t k = round.size(); k-- > last;) out.starboard.emplace_back(round[k].x(), -round[k].y());
  // An upright face ahead (behind a skeg) is no part of either side.
  for (Polyline* line : {&out.port, &out.starboard}) {
    while (line->size() > 2 && (*line)[1].x() < line->front().x() + same && (*line)[1].y() > line->front().y() + 0.1) {
      line->erase(line->begin());
    }
  }
  return out.port.size() > 2 && out.starboard.size() > 2;
}

/// The section itself; nothing where it has closed up. A flat nose may leave crumbs at its corners, which are none; a tail that
/// parts from the rest, however small, is one.
const Polygon* in_one_piece(const MultiPolygon& moved) {
  constexpr double crumb = 1e-4;  // of the section; seen 3e-5
  if (moved.empty()) return nullptr;
  const auto less = [](const Polygon& a, const Polygon& b) { return area(a) < area(b); };
  const Polygon& whole = *std::max_element(moved.begin(), moved.end(), less);
  const auto aft = [](const Polygon& one) {
    double x = one.outer().front().x();
    for (const Point& p : one.outer()) x = std::max(x, p.x());
    return x;
  };
  for (const Polygon& one : moved) {
    if (&one != &whole && (area(one) > crumb * area(whole) || aft(one) > aft(whole))) return nullptr;
  }
  return &whole;
}

}  // namespace

const char* name_of(StageKind kind) {
  return kind == StageKind::bare ? "bare" : kind == StageKind::glassed ? "glassed" : "final";
}

std::vector<Stage> stages_of(const job::Job& job) {
  double all = 0, after_glass = 0;
  bool glass = false, paint = false;
  for (const job::Coat& coat : job.coats) {
    if (!over_filler(coat)) continue;
    const bool is_glass = coat.stage == "glass";
    all += build_of(coat);
    after_glass = is_glass ? 0 : after_glass + build_of(coat);
    glass = glass || is_glass;
    paint = paint || !is_glass;
  }
  std::vector<Stage> out;
  if (all > 0) out.push_back({StageKind::bare, all, glass ? "filled, before glass" : "filled, before paint"});
  if (glass && after_glass > 0) out.push_back({StageKind::glassed, after_glass, "glassed, before paint"});
  out.push_back({StageKind::final, 0, after_glass > 0 ? "painted" : glass ? "glassed" : paint ? "painted" : ""});
  return out;
}

bool on_pages(const job::Job& job, StageKind kind, bool stands_off) {
  const auto& wanted = job.print.pages_of;
  if (wanted.empty()) return !stands_off && kind == stages_of(job).front().kind;
  const auto as_asked = stands_off ? job::TemplatesOf::clearance : static_cast<job::TemplatesOf>(kind);
  return std::find(wanted.begin(), wanted.end(), as_asked) != wanted.end();
}

namespace {

/// A kind of template that the job makes, and whether it goes onto pages.
struct TemplateKind {
  std::string name;
  bool paged;
};
std::vector<TemplateKind> kinds_of(const job::Job& job) {
  std::vector<TemplateKind> out;
  for (const Stage& stage : stages_of(job)) out.push_back({name_of(stage.kind), on_pages(job, stage.kind, false)});
  if (job.print.clearance > 0) out.push_back({"clearance", on_pages(job, StageKind::final, true)});
  return out;
}

}  // namespace

std::vector<std::string> template_kinds(const job::Job& job, bool with_pages) {
  std::vector<std::string> out;
  for (const TemplateKind& kind : kinds_of(job)) {
    if (kind.paged == with_pages) out.push_back(kind.name);
  }
  return out;
}

std::vector<Fault> faults_of(const job::Job& job) {
  std::vector<Fault> out;
  std::vector<std::string> known;
  for (const TemplateKind& kind : kinds_of(job)) known.push_back(kind.name);
  const auto makes = [&](const std::string& name) { return std::find(known.begin(), known.end(), name) != known.end(); };
  for (const job::TemplatesOf wanted : job.print.pages_of) {
    if (wanted == job::TemplatesOf::clearance) {
      if (job.print.clearance > 0) continue;
      out.push_back({job.print.pages_of_place, "pages of \"clearance\" templates, and \"clearance\" is 0",
                     "give how far they stand off, as in \"clearance\": 3, or take the word out"});
      continue;
    }
    const std::string kind = name_of(static_cast<StageKind>(wanted));
    if (makes(kind)) continue;
    out.push_back({job.print.pages_of_place, "pages of the stage \"" + kind + "\", which these coats do not make",
                   "choose from " + joined(known, "\"")});
  }
  return out;
}

namespace {

/// A leading edge that stays as it is gets no room for coats: they begin as it runs into the target.
Polyline left_ahead(const Polyline& left, const Polyline& under, double left_to) {
  Polyline out;
  const auto add_between = [&](double x) {
    const double under_it = ordinate_at(under, x), share = target::share_of_target(left_to, x);
    out.emplace_back(x, ordinate_at(left, x) * (1 - share) + under_it * share);
  };
  std::vector<double> between;
  for (const Polyline* line : {&left, &under}) {
    for (const Point& p : *line) {
      if (p.x() > left_to / 2 && p.x() < left_to) between.push_back(p.x());
    }
  }
  constexpr int steps = 60;  // at least: both may be straight there, and the blend between them is not
  for (int k = 1; k < steps; ++k) between.push_back(left_to / 2 * (1 + static_cast<double>(k) / steps));
  std::sort(between.begin(), between.end());
  between.erase(std::unique(between.begin(), between.end()), between.end());
  for (const Point& p : left) {
    if (p.x() <= left_to / 2) out.push_back(p);
  }
  for (const double x : between) add_between(x);
  for (const Point& p : under) {
    if (p.x() >= left_to) out.push_back(p);
  }
  return out;
}

}  // namespace

std::optional<StageSection> stage_section(const target::TargetSection& target, const Stage& stage, double stand_off) {
  StageSection out;
  out.stage = stage;
  out.stand_off = stand_off;
  out.port = thinned(target::face_line(target, target::Face::port), tolerance);
  out.starboard = thinned(target::face_line(target, target::Face::starboard), tolerance);
  const double distance = stand_off - stage.to_come;
  if (std::abs(distance) > 1e-9) {
    const MultiPolygon moved = offset(target::outline_of(out.port, out.starboard), distance);
    const Polygon* whole = in_one_piece(moved);
    if (!whole || !split(*whole, out)) return std::nullopt;
    if (target.left_to > 0 && stage.to_come > 0) {
      const auto left = stage_section(target, {stage.kind, 0, {}}, stand_off);
      if (!left) return std::nullopt;
      out.port = thinned(left_ahead(left->port, out.port, target.left_to), tolerance);
      out.starboard = thinned(left_ahead(left->starboard, out.starboard, target.left_to), tolerance);
    }
  }
  out.leading_edge_x = std::min(out.port.front().x(), out.starboard.front().x());
  out.trailing_edge_x = std::max(out.port.back().x(), out.starboard.back().x());
  out.edge_width = out.port.back().y() + out.starboard.back().y();
  return out;
}

std::vector<Warning> warnings_of(const job::Job& job, const std::vector<target::TargetSection>& targets) {
  std::vector<Warning> out;
  for (const target::TargetSection& target : targets) {
    for (const Stage& stage : stages_of(job)) {
      if (!(stage.to_come > 0) || stage_section(target, stage)) continue;
      out.push_back({"stage-not-drawn", "station " + target.station,
                     std::string("no template \"") + name_of(stage.kind) + "\" is drawn: under " +
                         both_units(stage.to_come, job.units) +
                         " of coats a side the section closes up somewhere; ask for a thicker edge there, or for thinner coats"});
    }
  }
  return out;
}

Rib rib_of(const StageSection& section, double down, const std::vector<double>& fractions) {
  Rib out{down, section.trailing_edge_x - section.leading_edge_x, section.leading_edge_x, {}, {}};
  for (const double f : fractions) {
    const double x = section.leading_edge_x + f * out.chord;
    out.port.push_back(ordinate_at(section.port, x) / out.chord);
    out.starboard.push_back(ordinate_at(section.starboard, x) / out.chord);
  }
  return out;
}

}  // namespace fairblade::fill
