// What a number should be by the others, in closed form and with some left out, against asking again without them; and the
// probability of all against the product of each one's by those before it (the chain rule of probability).
#include "check/weighed.hpp"

#include <cmath>
#include <numbers>

#include "blade.hpp"
#include "catch.hpp"
#include "check/findings.hpp"

using namespace fairblade;
using check::Kind;
using check::Seen;

namespace {

const check::Frame frame{400, 0, 0.5};
const check::Smoothness smooth{0.003, 0.01, 0.8};

/// Invented: a thick section with its port side fuller; what each row has is told by `tools`, by turns.
std::vector<Seen> invented(const std::vector<std::string>& tools) {
  std::vector<Seen> out;
  const std::vector<double> x{0, 4, 11, 24, 50, 91, 140, 205, 262, 331, 388}, half{2, 8, 12, 16, 20, 23, 24, 21, 17, 10, 3};
  for (std::size_t row = 0; row < x.size(); ++row) {
    const std::string& tool = tools[row % tools.size()];
    const double stray = row % 3 == 0 ? 0.4 : -0.3;
    const auto add = [&](Kind kind, double value) { out.push_back({kind, x[row], value, static_cast<int>(row), row}); };
    if (tool.find('p') != std::string::npos) add(Kind::port, half[row] + 1 + stray);
    if (tool.find('s') != std::string::npos) add(Kind::starboard, half[row] - 1);
    if (tool.find('c') != std::string::npos) add(Kind::caliper, 2 * half[row] - stray);
  }
  return out;
}

double log_normal(double value, const check::Expected& expected) {
  const double z = (value - expected.value) / expected.error;
  return -0.5 * z * z - std::log(expected.error * std::sqrt(2 * std::numbers::pi));
}

}  // namespace

TEST_CASE("each number by the others, as asked without it") {
  for (const auto& tools : std::vector<std::vector<std::string>>{{"ps"}, {"psc", "ps"}, {"c", "ps"}, {"c"}, {"ps", "p"}, {"s"}}) {
    std::vector<Seen> seen = invented(tools);
    CAPTURE(tools.front(), tools.back(), seen.size());
    const std::vector<std::size_t> out{seen.size() - 2, 1, 4};  // left out one after another
    check::Weighed left = check::Links(seen, frame).weighed(smooth);
    REQUIRE(left.known());
    std::vector<char> counts(seen.size(), 1);
    for (std::size_t gone = 0; gone <= out.size(); ++gone) {
      std::vector<Seen> agreeing;
      for (std::size_t k = 0; k < seen.size(); ++k) {
        if (counts[k]) agreeing.push_back(seen[k]);
      }
      for (std::size_t k = 0; k < seen.size(); ++k) {
        if (!counts[k]) continue;
        std::vector<Seen> others;
        for (std::size_t j = 0; j < seen.size(); ++j) {
          if (counts[j] && j != k) others.push_back(seen[j]);
        }
        const auto expected = check::expected_at({seen[k]}, others, frame, smooth).front();
        REQUIRE(left.by_others(k).value == Approx(expected.value).margin(1e-7));
        REQUIRE(left.by_others(k).error == Approx(expected.error).epsilon(1e-7));
      }
      double chain = 0;  // the first by the last alone, so that nothing is asked of nobody
      for (std::size_t k = 1; k < agreeing.size(); ++k) {
        const std::vector<Seen> before(agreeing.begin(), agreeing.begin() + static_cast<std::ptrdiff_t>(k));
        chain += log_normal(agreeing[k].value, check::expected_at({agreeing[k]}, before, frame, smooth).front());
      }
      const std::vector<Seen> two{agreeing[0], agreeing[1]};  // both ways round give the first one's own
      const check::Weighed pair = check::Links(two, frame).weighed(smooth);
      chain += pair.log_likelihood() - log_normal(two[1].value, check::expected_at({two[1]}, {two[0]}, frame, smooth).front());
      REQUIRE(left.log_likelihood() == Approx(chain).margin(1e-6));
      if (gone == out.size()) break;
      left.leave_out(out[gone]);
      counts[out[gone]] = 0;
    }
  }
}

TEST_CASE("other values at the same places") {
  std::vector<Seen> seen = invented({"ps", "c"});
  const check::Weighed line = check::Links(seen, frame).weighed(smooth);
  for (Seen& one : seen) one.value += one.x / 100;
  CHECK(line.log_likelihood(seen) == Approx(check::Links(seen, frame).weighed(smooth).log_likelihood()).margin(1e-9));
}

TEST_CASE("a number alone is judged by nobody") {
  CHECK_FALSE(check::Links({{Kind::port, 10, 5, 1, 0}}, frame).weighed(smooth).known());
  const std::vector<Seen> two{{Kind::port, 10, 5, 1, 0}, {Kind::starboard, 10, 5, 1, 0}};
  check::Weighed left = check::Links(two, frame).weighed(smooth);
  REQUIRE(left.known());
  left.leave_out(0);
  CHECK_FALSE(left.known());
}

TEST_CASE("2026-11-27: one place read twice and slipped twice is a slip, not a hollow") {
  auto station = blade::exact("A", 0, 420, 0.12);
  auto& readings = station.readings;
  for (std::size_t k = 0; k < readings.size(); ++k) readings[k].line = static_cast<int>(k + 2);
  auto again = readings[8];
  again.line = 90;
  *again.port += 12;
  readings[8].port = again.port;
  readings.insert(readings.begin() + 9, again);
  auto job = blade::job_of({station, blade::exact("B", 500, 420, 0.12)});
  job.reading_error = 0.3;
  bool slip = false;
  for (const auto& finding : check::find(job).list) {
    CHECK(finding.code != "bump");
    slip = slip || finding.code == "slipped-digit";
  }
  CHECK(slip);
}

TEST_CASE("2026-11-27: a run of misses is one place, whatever stands beside it") {
  // Port of an exact 0012, three readings side by side: one 5 mm high, then two 5 mm low; and the other way round.
  for (const bool first : {true, false}) {
    auto station = blade::exact("A", 0, 420, 0.12);
    auto& readings = station.readings;
    for (std::size_t k = 0; k < readings.size(); ++k) readings[k].line = static_cast<int>(k + 2);
    const std::size_t at = 7;
    for (std::size_t k = 0; k < 3; ++k) *readings[at + k].port += k == (first ? 0U : 2U) ? 5 : -5;
    auto job = blade::job_of({station, blade::exact("B", 500, 420, 0.12)});
    job.reading_error = 0.5;
    std::size_t hollows = 0;
    for (const auto& finding : check::find(job).list) hollows += finding.code == "hollow" ? 1 : 0;
    CAPTURE(first);
    CHECK(hollows == 1);
  }
}
