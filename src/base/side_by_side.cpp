#include "base/side_by_side.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <thread>
#include <vector>

namespace fairblade {

void side_by_side(std::size_t count, const std::function<void(std::size_t)>& work, std::size_t at_once) {
  std::atomic<std::size_t> next{0};
  std::vector<std::exception_ptr> failed(count);
  const auto take_turns = [&] {
    for (std::size_t k = next++; k < count; k = next++) {
      try {
        work(k);
      } catch (...) {
        failed[k] = std::current_exception();
      }
    }
  };
  if (at_once == 0) at_once = std::max(1u, std::thread::hardware_concurrency());
  std::vector<std::thread> others;
  others.reserve(std::min(at_once, count));
  try {
    for (std::size_t k = 1; k < std::min(at_once, count); ++k) others.emplace_back(take_turns);
  } catch (...) {
    // No more threads to be had, or no room for one: those that there are do the work.
  }
  take_turns();
  for (std::thread& other : others) other.join();
  for (const std::exception_ptr& one : failed) {
    if (one) std::rethrow_exception(one);
  }
}

}  // namespace fairblade
