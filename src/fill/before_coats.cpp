#include "fill/before_coats.hpp"

#include "target/face_shapes.hpp"

namespace fairblade::fill {

std::optional<BeforeCoats> before_coats(const job::Job& job, const std::vector<target::TargetSection>& targets,
                                        const std::vector<StationChange>& changes, const Volumes& volumes,
                                        const std::vector<Piece>& surface) {
  BeforeCoats out;
  static_cast<CoatsOver&>(out) = coats_over(job);
  if (!out.any()) return std::nullopt;
  out.remove = volumes.remove;
  out.beyond = volumes.above_remove + volumes.below_remove;
  for (const Piece& piece : surface) {
    const double more = -out.to_shape(piece.depth, piece.coats);
    if (!(more > 0)) continue;
    (piece.beyond ? out.beyond : out.remove) += piece.area * more / mm3_per_litre;
    if (piece.station && more > out.deepest) {
      out.deepest = more;
      out.station = *piece.station;
    }
  }
  for (std::size_t k = 0; k < changes.size(); ++k) {
    const Deepest& removal = changes[k].removal;
    const double depth = removal.depth + out.over_old * target::share_of_target(targets[k].left_to, removal.x);
    if (!(removal.depth > 0) || depth <= out.deepest) continue;
    out.deepest = depth;
    out.station = k;
  }
  return out;
}

}  // namespace fairblade::fill
