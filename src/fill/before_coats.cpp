#include "fill/before_coats.hpp"

#include <algorithm>

#include "fill/coats.hpp"

namespace fairblade::fill {

std::optional<BeforeCoats> before_coats(const job::Job& job, const std::vector<StationChange>& changes, const Volumes& volumes,
                                        const std::vector<Piece>& surface) {
  BeforeCoats out;
  for (const job::Coat& coat : job.coats) {
    if (coat.on == job::CoatedPart::all) out.build += build_of(coat);
  }
  if (!(out.build > 0)) return std::nullopt;
  out.remove = volumes.remove;
  out.beyond = volumes.above_remove + volumes.below_remove;
  for (const Piece& piece : surface) {
    const double more = out.build - piece.depth;
    if (!(more > 0)) continue;
    (piece.beyond ? out.beyond : out.remove) += piece.area * more / mm3_per_litre;
    if (piece.station && more > out.deepest) {
      out.deepest = more;
      out.station = *piece.station;
    }
  }
  for (std::size_t k = 0; k < changes.size(); ++k) {
    if (!(changes[k].removal.depth > 0) || changes[k].removal.depth + out.build <= out.deepest) continue;
    out.deepest = changes[k].removal.depth + out.build;
    out.station = k;
  }
  return out;
}

}  // namespace fairblade::fill
