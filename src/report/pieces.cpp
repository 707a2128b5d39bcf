#include "report/pieces.hpp"

namespace fairblade::report {

std::string whole(const Pieces& pieces) {
  std::string out;
  for (std::size_t k = 0; k < pieces.count; ++k) out += pieces.piece(k);
  return out;
}

}  // namespace fairblade::report
