// Product: Pieces, a text that is worked out part by part, so that a scanned blade's never stands in memory whole. Verbs: whole.
#pragma once
#include <functional>
#include <string>

namespace fairblade::report {

/// What it tells of must outlive it.
struct Pieces {
  std::size_t count = 0;
  std::function<std::string(std::size_t)> piece{};
};
/// All of it.
std::string whole(const Pieces& pieces);

}  // namespace fairblade::report
