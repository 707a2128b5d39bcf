#include "fill/before_coats.hpp"

namespace fairblade::fill {

std::optional<BeforeCoats> before_coats(const job::Job& job, const std::vector<StationChange>& changes, const Volumes& volumes,
                                        const std::vector<Piece>& surface) {
  BeforeCoats out;
  static_cast<CoatsOver&>(out) = coats_over(job);
  if (!out.any()) return std::nullopt;
  out.remove = volumes.remove;
  out.beyond = volumes.above_remove + volumes.below_remove;
  for (const Piece& piece : surface) {
    const double more = -out.to_shape(piece.depth);
    if (!(more > 0)) continue;
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
