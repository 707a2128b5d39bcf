#include "base/side_by_side.hpp"

#include <atomic>
#include <stdexcept>
#include <string>
#include <vector>

#include "catch.hpp"

TEST_CASE("every piece of work is done once") {
  for (const std::size_t count : {0, 1, 2, 1000}) {
    std::vector<std::atomic<int>> done(count);
    fairblade::side_by_side(count, [&](std::size_t k) { ++done[k]; });
    for (const auto& times : done) CHECK(times == 1);
  }
}

TEST_CASE("the first exception by number comes out, and the rest is done all the same") {
  std::vector<std::atomic<int>> done(50);
  const auto work = [&](std::size_t k) {
    ++done[k];
    if (k == 40 || k == 7) throw std::runtime_error(std::to_string(k));
  };
  std::string said;
  try {
    fairblade::side_by_side(done.size(), work);
  } catch (const std::runtime_error& error) {
    said = error.what();
  }
  CHECK(said == "7");
  for (const auto& times : done) CHECK(times == 1);
}
