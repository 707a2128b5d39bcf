#include "target/span_line.hpp"

#include <limits>
#include <random>

#include "catch.hpp"

using namespace fairblade;
using target::fair_along;
using target::SpanLine;
using target::SpanQuantity;

namespace {

using Line = std::array<double, 3>;

// Normal equations by Gauss's elimination, in heights scaled by 1000: nothing of the code under test.
Line plain_fit(const std::vector<double>& down, const std::vector<double>& value, const std::vector<double>& weight, int order) {
  double m[3][4] = {};
  for (std::size_t k = 0; k < down.size(); ++k) {
    const double s = down[k] / 1000, row[3] = {1, s, s * s};
    for (int i = 0; i <= order; ++i) {
      for (int j = 0; j <= order; ++j) m[i][j] += weight[k] * row[i] * row[j];
      m[i][3] += weight[k] * row[i] * value[k];
    }
  }
  for (int i = 0; i <= order; ++i) {
    for (int r = 0; r <= order; ++r) {
      if (r == i) continue;
      const double by = m[r][i] / m[i][i];
      for (int j = 0; j < 4; ++j) m[r][j] -= by * m[i][j];
    }
  }
  Line out{};
  for (int i = 0; i <= order; ++i) out[static_cast<std::size_t>(i)] = m[i][3] / m[i][i];
  return out;
}
double on(const Line& line, double down) { return line[0] + down / 1000 * (line[1] + down / 1000 * line[2]); }

double misfit(const std::vector<double>& a, const SpanQuantity& q) {
  double out = 0;
  for (std::size_t k = 0; k < a.size(); ++k) out += (q.weight.empty() ? 1 : q.weight[k]) * std::pow(a[k] - q.value[k], 2);
  return out;
}

SpanQuantity random_quantity(std::mt19937& random, std::size_t n, bool bounded) {
  std::uniform_real_distribution<double> unit(0, 1);
  SpanQuantity q;
  double down = 1000 * unit(random);
  for (std::size_t k = 0; k < n; ++k) {
    q.down.push_back(down);
    down += 20 + 300 * unit(random);
    q.value.push_back(0.10 + 0.05 * unit(random));
    q.weight.push_back(unit(random) < 0.2 && k > 2 ? 0.0 : 0.5 + unit(random));
    if (bounded)
      q.bound.push_back(unit(random) < 0.3 ? -std::numeric_limits<double>::infinity() : q.value[k] + 0.02 * (unit(random) - 0.7));
  }
  return q;
}

// The best quadratic through the bounds of this set of stations: base(s) + what vanishes at the set's places, with the
// remaining freedom by plain least squares. Newton's form, so nothing of the code under test.
std::vector<double> through(const SpanQuantity& q, const std::vector<std::size_t>& set) {
  const std::size_t n = q.down.size(), free = 3 - set.size();
  const auto s = [&](std::size_t k) { return q.down[k] / 1000; };
  std::vector<double> base(n, 0.0), zero(n, 1.0), rest(n), out(n);
  for (const std::size_t i : set) {
    const double step = (q.bound[i] - base[i]) / zero[i];  // zero[] is not nil at a station not yet passed through
    for (std::size_t k = 0; k < n; ++k) base[k] += step * zero[k];
    for (std::size_t k = 0; k < n; ++k) zero[k] *= s(k) - s(i);
  }
  if (free == 0) return base;
  // rest = zero · (a + b s + c s²), of which the first `free` powers: least squares of (value - base) / zero, weighted zero².
  std::vector<double> weight(n), value(n);
  for (std::size_t k = 0; k < n; ++k) {
    const bool pinned = zero[k] == 0;
    weight[k] = pinned ? 0 : q.weight[k] * zero[k] * zero[k];
    value[k] = pinned ? 0 : (q.value[k] - base[k]) / zero[k];
  }
  const Line line = plain_fit(q.down, value, weight, static_cast<int>(free) - 1);
  for (std::size_t k = 0; k < n; ++k) out[k] = base[k] + zero[k] * on(line, q.down[k]);
  return out;
}

// Least misfit under bounds by trying every set of up to three binding stations.
double best_by_enumeration(const SpanQuantity& q) {
  const std::size_t n = q.down.size();
  double best = 1e300;
  const auto consider = [&](const std::vector<std::size_t>& set) {
    for (const std::size_t k : set) {
      if (!std::isfinite(q.bound[k])) return;
    }
    const auto at = through(q, set);
    for (std::size_t k = 0; k < n; ++k) {
      if (!(at[k] >= q.bound[k] - 1e-10)) return;
    }
    best = std::min(best, misfit(at, q));
  };
  consider({});
  for (std::size_t i = 0; i < n; ++i) {
    consider({i});
    for (std::size_t j = i + 1; j < n; ++j) {
      consider({i, j});
      for (std::size_t k = j + 1; k < n; ++k) consider({i, j, k});
    }
  }
  return best;
}

}  // namespace

TEST_CASE("a quantity that is already a line stays as it is") {
  const SpanQuantity q{{0, 200, 450, 700, 1000}, {420, 410, 397.5, 385, 370}, {}, {}};  // 420 - down/20
  for (const auto kind : {job::Spanwise::as_measured, job::Spanwise::straight, job::Spanwise::fair}) {
    const SpanLine line = fair_along(q, kind);
    for (std::size_t k = 0; k < 5; ++k) CHECK(std::abs(line.pull[k]) < 1e-11);  // seen 2e-13
    CHECK(line.at(325) == Approx(403.75).epsilon(1e-13));
    CHECK(line.deleted_known);
    CHECK(*line.scatter < 1e-11);
  }
}

TEST_CASE("straight and fair lines are least squares") {
  std::mt19937 random(3);
  for (int trial = 0; trial < 200; ++trial) {
    const auto q = random_quantity(random, 4 + static_cast<std::size_t>(trial) % 9, false);
    for (const auto kind : {job::Spanwise::straight, job::Spanwise::fair}) {
      const auto line = fair_along(q, kind);
      const Line expected = plain_fit(q.down, q.value, q.weight, kind == job::Spanwise::straight ? 1 : 2);
      double hats = 0;
      for (std::size_t k = 0; k < q.down.size(); ++k) {
        CHECK(line.faired[k] == Approx(on(expected, q.down[k])).epsilon(1e-9));  // seen 2e-12
        CHECK(line.at(q.down[k]) == Approx(line.faired[k]).epsilon(1e-13));
        hats += line.hat[k];
      }
      if (std::count_if(q.weight.begin(), q.weight.end(), [](double w) { return w > 0; }) > 3) {
        CHECK(hats == Approx(kind == job::Spanwise::straight ? 2 : 3).epsilon(1e-10));  // trace of the hat matrix
      }
    }
  }
}

TEST_CASE("a deleted residual is what refitting without the station gives") {
  std::mt19937 random(5);
  for (int trial = 0; trial < 100; ++trial) {
    const auto q = random_quantity(random, 6 + static_cast<std::size_t>(trial) % 6, false);
    const auto line = fair_along(q, job::Spanwise::fair);
    REQUIRE(line.deleted_known == (std::count_if(q.weight.begin(), q.weight.end(), [](double w) { return w > 0; }) >= 4));
    if (!line.deleted_known) continue;
    for (std::size_t k = 0; k < q.down.size(); ++k) {
      auto weight = q.weight;
      weight[k] = 0;
      if (std::count_if(weight.begin(), weight.end(), [](double w) { return w > 0; }) < 3) continue;
      const double expected = q.value[k] - on(plain_fit(q.down, q.value, weight, 2), q.down[k]);
      CHECK(line.deleted[k] == Approx(expected).epsilon(1e-6).margin(1e-8));  // seen 3e-10
    }
  }
}

TEST_CASE("an end station's plain residual shows about a ninth of its error") {
  // Five even stations, quadratic: 1 - h = 4/35 at the end, 18/35 in the middle (closed form of the hat matrix).
  const SpanQuantity q{{0, 250, 500, 750, 1000}, {1, 0, 0, 0, 0}, {}, {}};
  const auto line = fair_along(q, job::Spanwise::fair);
  CHECK(line.hat[0] == Approx(31.0 / 35).epsilon(1e-12));
  CHECK(line.hat[2] == Approx(17.0 / 35).epsilon(1e-12));
  CHECK(line.pull[0] == Approx(-4.0 / 35).epsilon(1e-12));
  CHECK(line.deleted[0] == Approx(1).epsilon(1e-12));
  // Residuals of (1,0,0,0,0): sum of squares = 1 - h, two to spare.
  CHECK(*line.scatter == Approx(std::sqrt(4.0 / 35 / 2)).epsilon(1e-12));
}

TEST_CASE("few stations allow what they allow") {
  const auto fair = [](std::vector<double> down, std::vector<double> value, std::vector<double> weight = {}) {
    return fair_along({std::move(down), std::move(value), std::move(weight), {}}, job::Spanwise::fair);
  };
  CHECK(fair({300}, {5}).faired[0] == 5);
  CHECK(fair({0, 100}, {5, 7}).at(50) == Approx(6).epsilon(1e-14));
  const auto three = fair({0, 100, 300}, {5, 7, 2});
  for (const double pull : three.pull) CHECK(std::abs(pull) < 1e-13);
  CHECK_FALSE(three.deleted_known);
  CHECK_FALSE(three.scatter);
  CHECK(fair({0, 100, 200}, {5, 0, 7}, {1, 0, 1}).faired[1] == Approx(6).epsilon(1e-14));
  CHECK(fair({0, 100, 200}, {5, 0, 7}, {0, 1, 0}).faired[2] == Approx(0).margin(1e-14));
}

TEST_CASE("a station without weight leaves the line unchanged") {
  std::mt19937 random(8);
  for (int trial = 0; trial < 50; ++trial) {
    auto q = random_quantity(random, 7, false);
    q.weight = std::vector<double>(7, 1.0);
    auto more = q;
    const double middle = (q.down[2] + q.down[3]) / 2;
    more.down.insert(more.down.begin() + 3, middle);
    more.value.insert(more.value.begin() + 3, 0.3);
    more.weight.insert(more.weight.begin() + 3, 0.0);
    const auto a = fair_along(q, job::Spanwise::fair), b = fair_along(more, job::Spanwise::fair);
    CHECK(b.at(q.down[5]) == Approx(a.faired[5]).epsilon(1e-12));
    CHECK(b.deleted[6] == Approx(a.deleted[5]).epsilon(1e-9).margin(1e-13));
    CHECK(b.faired[3] == Approx(a.at(middle)).epsilon(1e-12));
    CHECK(b.hat[3] == 0);
    CHECK(*b.scatter == Approx(*a.scatter).epsilon(1e-9));
  }
}

TEST_CASE("bounds are never broken, and no line fits better within them") {
  std::mt19937 random(13);
  double worst = 0;
  int lifted = 0;
  for (int trial = 0; trial < 300; ++trial) {
    const auto q = random_quantity(random, 4 + static_cast<std::size_t>(trial) % 6, true);
    const auto line = fair_along(q, job::Spanwise::fair);
    for (std::size_t k = 0; k < q.down.size(); ++k) REQUIRE(line.faired[k] >= q.bound[k]);
    const double best = best_by_enumeration(q);
    worst = std::max(worst, std::abs(misfit(line.faired, q) - best) / (best + 1e-6));
    if (line.binding.empty()) continue;
    ++lifted;
    CHECK(line.binding.size() <= 3);
  }
  CHECK(worst < 1e-6);  // seen 1e-13
  CHECK(lifted > 100);
}

TEST_CASE("a straight line held up at one station turns about it") {
  // Four even stations at 0, the last bounded at 1. Least squares of a line with p(1) = 1 on s = 0, 1/3, 2/3, 1:
  // p = 1 + b(s - 1), b = sum(1-s)/sum(1-s)² = 2/(14/9) = 9/7.
  const double none = -std::numeric_limits<double>::infinity();
  const auto line = fair_along({{0, 300, 600, 900}, {0, 0, 0, 0}, {}, {none, none, none, 1}}, job::Spanwise::straight);
  CHECK(line.faired[3] == Approx(1).epsilon(1e-13));
  CHECK(line.faired[0] == Approx(-2.0 / 7).epsilon(1e-12));
  CHECK(line.binding == std::vector<std::size_t>{3});
}

TEST_CASE("an interpolated station's bound counts though its value does not") {
  const double none = -std::numeric_limits<double>::infinity();
  const SpanQuantity q{{0, 250, 500, 750, 1000}, {0.12, 0.12, 0.05, 0.12, 0.12}, {1, 1, 0, 1, 1}, {none, none, 0.13, none, none}};
  const auto line = fair_along(q, job::Spanwise::fair);
  CHECK(line.faired[2] >= 0.13);
  CHECK(line.faired[2] == Approx(0.13).epsilon(1e-12));
}

TEST_CASE("as measured: own values, raised to their bounds") {
  const auto line = fair_along({{0, 100, 300}, {5, 7, 2}, {}, {4, 8, 1}}, job::Spanwise::as_measured);
  CHECK(line.faired == std::vector<double>{5, 8, 2});
  CHECK(line.pull == std::vector<double>{0, 1, 0});
  CHECK(line.binding == std::vector<std::size_t>{1});
  CHECK(line.at(200) == Approx(5));
}

TEST_CASE("many stations, bounds all alike or all on one curve: settled quickly") {
  SpanQuantity q;
  std::mt19937 random(21);
  std::normal_distribution<double> noise(0, 0.002);
  for (int k = 0; k < 200; ++k) {
    const double s = k / 199.0;
    q.down.push_back(2000 * s);
    q.bound.push_back(0.14 - 0.03 * s - 0.01 * s * s);
    q.value.push_back(q.bound.back() + noise(random));
  }
  const auto line = fair_along(q, job::Spanwise::fair);
  for (std::size_t k = 0; k < 200; ++k) CHECK(line.faired[k] >= q.bound[k]);
  // Every bound is as the value without noise, on one quadratic: that quadratic is among the allowed ones.
  CHECK(misfit(line.faired, q) <= misfit(q.bound, q) * (1 + 1e-12));
  // Values at their own bounds, which are a quadratic: nothing moves.
  q.value = q.bound;
  const auto same = fair_along(q, job::Spanwise::fair);
  for (const double pull : same.pull) CHECK(std::abs(pull) < 1e-14);
}
