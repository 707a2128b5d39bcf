#include "base/numerics.hpp"

#include <cmath>

#include "catch.hpp"

using namespace fairblade;

TEST_CASE("median") {
  CHECK(median({3, 1, 2}) == 2);
  CHECK(median({4, 1, 3, 2}) == 2.5);
}

TEST_CASE("the normal distribution at tabled places") {
  // Abramowitz and Stegun table 26.1 (recalled): P(1) = 0.8413447461, Z(0) = 0.3989422804.
  CHECK(normal_below(1) == Approx(0.8413447461).margin(1e-10));
  CHECK(normal_density(0) == Approx(0.3989422804).margin(1e-10));
}

TEST_CASE("roots and minima of closed forms") {
  CHECK(*root_between([](double x) { return x * x - 2; }, 0, 2) == Approx(std::sqrt(2.0)).epsilon(1e-13));
  CHECK_FALSE(root_between([](double x) { return x * x + 1; }, 0, 2).has_value());
  CHECK_FALSE(root_between([](double) { return std::nan(""); }, 0, 2).has_value());
  CHECK(least_between([](double x) { return (x - 0.3) * (x - 0.3); }, 0, 1) == Approx(0.3).margin(1e-6));
  const auto roots = polynomial_roots({-0.006, 0.11, -0.6, 1}, 0, 1);  // (x - 0.1)(x - 0.2)(x - 0.3)
  REQUIRE(roots.size() == 3);
  CHECK(roots[0] == Approx(0.1).epsilon(1e-9));
  CHECK(roots[2] == Approx(0.3).epsilon(1e-9));
}
