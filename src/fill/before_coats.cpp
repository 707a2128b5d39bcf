#include "fill/before_coats.hpp"

#include <algorithm>

#include "fill/coats.hpp"

namespace fairblade::fill {

std::optional<BeforeCoats> before_coats(const job::Job& job, const std::vector<StationChange>& changes, const Volumes& volumes,
                                        const std::vector<Piece>& surface) {
  const auto build_on = [&](job::CoatedPart part) {
    double sum = 0;
    for (const job::Coat& coat : job.coats) {
      if (coat.on == part) sum += build_of(coat);
    }
    return sum;
  };
  using job::CoatedPart;
  BeforeCoats out;
  out.over_filler = build_on(CoatedPart::all) + build_on(CoatedPart::filled);
  out.over_old = build_on(CoatedPart::all) + std::max(build_on(CoatedPart::old), build_on(CoatedPart::bare));
  if (!(out.over_filler > 0) && !(out.over_old > 0)) return std::nullopt;
  out.remove = volumes.remove;
  out.beyond = volumes.above_remove + volumes.below_remove;
  for (const Piece& piece : surface) {
    const double more = out.over_old - piece.depth;
    if (!(more > 0) || piece.depth > out.over_filler) continue;
    (piece.beyond ? out.beyond : out.remove) += piece.area * more / mm3_per_litre;
    if (piece.station && more > out.deepest) {
      out.deepest = more;
      out.station = *piece.station;
    }
  }
  for (std::size_t k = 0; k < changes.size(); ++k) {
    if (!(changes[k].removal.depth > 0) || changes[k].removal.depth + out.over_old <= out.deepest) continue;
    out.deepest = changes[k].removal.depth + out.over_old;
    out.station = k;
  }
  return out;
}

}  // namespace fairblade::fill
