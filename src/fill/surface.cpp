#include "fill/surface.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "fill/stand_out.hpp"
#include "target/face_shapes.hpp"

namespace fairblade::fill {
namespace {

struct Corner {
  double x, y;
};

void add_pieces(const job::Job& job, const Slice& slice, const std::vector<double>& fractions, std::vector<Piece>& out) {
  const Pair pair = pair_of(slice.measured, slice.target, fractions);
  const Outline& t = pair.target;
  const auto add = [&](Face face, Corner a, Corner b) {
    Piece piece;
    piece.down = slice.down;
    piece.x = (a.x + b.x) / 2;
    piece.face = face;
    piece.zone = zone_at(piece.x, slice.measured.chord, job.zones);
    piece.depth = stands_out(pair.measured, piece.x, (a.y + b.y) / 2);
    piece.coats = target::share_of_target(slice.target.left_to, piece.x);
    piece.girth = std::hypot(b.x - a.x, b.y - a.y);
    piece.area = piece.girth * slice.weight;
    piece.beyond = slice.beyond;
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
