#include "fill/surface.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"

namespace fairblade::fill {
namespace {

struct Place {
  double x, y;
};

double to_segment(Place p, Place a, Place b) {
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double square = dx * dx + dy * dy;
  const double w = square > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0, 1.0) : 0;
  return std::hypot(p.x - a.x - w * dx, p.y - a.y - w * dy);
}

// How far p stands out of the closed outline; 0 inside. Plain search: a few hundred segments.
double outside(const Outline& o, Place p) {
  const std::size_t n = o.x.size();
  if (p.x >= o.x.front() && p.x <= o.x.back()) {
    const auto found = static_cast<std::size_t>(std::lower_bound(o.x.begin(), o.x.end(), p.x) - o.x.begin());
    const std::size_t k = std::clamp<std::size_t>(found, 1, n - 1);
    const double w = (p.x - o.x[k - 1]) / (o.x[k] - o.x[k - 1]);
    const double port = o.port[k - 1] + w * (o.port[k] - o.port[k - 1]);
    const double starboard = o.starboard[k - 1] + w * (o.starboard[k] - o.starboard[k - 1]);
    if (p.y <= port + 1e-9 && p.y >= -starboard - 1e-9) return 0;
  }
  double best = std::min(to_segment(p, {o.x[0], o.port[0]}, {o.x[0], -o.starboard[0]}),
                         to_segment(p, {o.x[n - 1], o.port[n - 1]}, {o.x[n - 1], -o.starboard[n - 1]}));
  for (std::size_t k = 1; k < n; ++k) {
    if (o.x[k - 1] - p.x > best || p.x - o.x[k] > best) continue;
    best = std::min({best, to_segment(p, {o.x[k - 1], o.port[k - 1]}, {o.x[k], o.port[k]}),
                     to_segment(p, {o.x[k - 1], -o.starboard[k - 1]}, {o.x[k], -o.starboard[k]})});
  }
  return best;
}

void add_pieces(const job::Job& job, const Slice& slice, const std::vector<double>& fractions,
                std::vector<Piece>& out) {
  const Pair pair = pair_of(slice.measured, slice.target, fractions);
  const Outline& t = pair.target;
  const auto add = [&](Face face, Place a, Place b) {
    Piece piece;
    piece.down = slice.down;
    piece.x = (a.x + b.x) / 2;
    piece.face = face;
    piece.zone = zone_at(piece.x, slice.measured.chord, job.zones);
    piece.depth = outside(pair.measured, {piece.x, (a.y + b.y) / 2});
    piece.girth = std::hypot(b.x - a.x, b.y - a.y);
    piece.area = piece.girth * slice.weight;
    piece.station = slice.station;
    if (piece.girth > 0) out.push_back(piece);
  };
  const std::size_t last = t.x.size() - 1;
  for (std::size_t k = 1; k <= last; ++k) {
    add(Face::port, {t.x[k - 1], t.port[k - 1]}, {t.x[k], t.port[k]});
    add(Face::starboard, {t.x[k - 1], -t.starboard[k - 1]}, {t.x[k], -t.starboard[k]});
  }
  for (const std::size_t end : {std::size_t{0}, last}) {  // the blunt ends, half to each face
    const double middle = (t.port[end] - t.starboard[end]) / 2;
    if (t.port[end] <= middle) continue;
    add(Face::port, {t.x[end], middle}, {t.x[end], t.port[end]});
    add(Face::starboard, {t.x[end], middle}, {t.x[end], -t.starboard[end]});
  }
}

}  // namespace

Zone zone_at(double x, double chord, const job::ZoneBounds& bounds) {
  if (x < bounds.leading_edge * chord || x < 0) return Zone::leading_edge;
  if (x > (1 - bounds.trailing_edge) * chord || x > chord) return Zone::trailing_edge;
  return Zone::faces;
}

std::vector<Piece> surface_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                              const std::vector<target::TargetSection>& targets) {
  const auto fractions = chord_fractions(120);
  std::vector<Piece> out;
  for (const Slice& slice : slices(job, measured, targets, fractions, 4)) add_pieces(job, slice, fractions, out);
  return out;
}

}  // namespace fairblade::fill
