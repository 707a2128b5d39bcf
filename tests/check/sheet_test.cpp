// One's own error from repeats, digits that were meant, and readings too few for any judge.
#include <algorithm>

#include "blade.hpp"
#include "catch.hpp"
#include "check/digits.hpp"
#include "check/findings.hpp"

using namespace fairblade;

TEST_CASE("what was meant by a written number") {
  const auto meant = [](double written, double right, LengthUnit unit = LengthUnit::mm) {
    const auto found = check::meant_by(written, unit, [&](double mm) { return std::abs(mm - right) < 1e-6; });
    return found ? found->how : std::string("nothing");
  };
  // Each by hand.
  CHECK(meant(31.4, 13.4) == "two digits changed places");
  CHECK(meant(13.9, 19.3) == "two digits changed places");
  CHECK(meant(134, 13.4) == "the decimal point slipped");
  CHECK(meant(0.5, 12.7) == "written in inches");
  CHECK(meant(12.7 * 25.4, 12.7, LengthUnit::inch) == "written in millimetres");
  CHECK(meant(-7.5, 7.5) == "a minus sign too many, or one that is lacking");
  CHECK(meant(23.4, 13.4) == "one digit is wrong");
  CHECK(meant(3.4, 13.4) == "a digit is lacking in front");
  CHECK(meant(26.8, 13.4) == "the whole thickness for a half");
  CHECK(meant(26.8, 77.7) == "nothing");
}

TEST_CASE("one's own error comes from repeats, weighed with what the job says") {
  auto job = blade::job_of({blade::exact("A", 0, 400, 0.12)});
  CHECK_FALSE(check::find(job).own.from_repeats);
  auto& readings = job.stations[0].readings;
  const auto once = readings;
  for (const auto& r : once) {  // each place again, 0.6 mm more on port and 0.6 mm less on starboard
    auto again = r;
    *again.port += 0.6;
    *again.starboard -= 0.6;
    readings.push_back(again);
  }
  std::stable_sort(readings.begin(), readings.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
  const auto own = check::find(job).own;
  CHECK(own.repeats == 28);
  // By hand: two readings 0.6 apart have a variance of 0.18. Weighed: (6 · 0.25 + 28 · 0.18) / 34.
  CHECK(*own.from_repeats == Approx(std::sqrt(0.18)));
  CHECK(own.mm == Approx(std::sqrt((6 * 0.25 + 28 * 0.18) / 34)));
}

TEST_CASE("repeats that disagree are named, and do not count as one's error") {
  auto job = blade::job_of({blade::exact("A", 0, 400, 0.12)});
  auto& readings = job.stations[0].readings;
  auto again = readings[8];
  *again.port += 5;
  again.line = 99;
  readings.insert(readings.begin() + 9, again);
  const auto findings = check::find(job);
  CHECK_FALSE(findings.own.from_repeats.value_or(0) > 0.1);
  REQUIRE(findings.list.size() == 1);
  CHECK((findings.list[0].code == "repeats-disagree" || findings.list[0].code == "slipped-digit"));
  CHECK(findings.list[0].side == "port");
}

TEST_CASE("anything that can be written is judged without falling over") {
  std::mt19937 random(7);
  std::uniform_int_distribution<int> few(1, 5);
  std::uniform_real_distribution<double> any(-100, 900);
  for (int round = 0; round < 300; ++round) {
    std::vector<job::Station> stations;
    for (int k = few(random); k > 0; --k) {
      auto station = blade::exact("S" + std::to_string(k), 1000 - 100.0 * k, std::abs(any(random)) + 10, 0.12);
      station.readings.resize(static_cast<std::size_t>(few(random)) * static_cast<std::size_t>(round % 3 + 1) > 14
                                  ? 14
                                  : static_cast<std::size_t>(few(random)));
      for (auto& r : station.readings) {
        if (few(random) == 1) r.x = any(random);
        if (few(random) == 1) r.port = any(random);
        if (few(random) == 1) r.starboard.reset();
        if (few(random) == 1) r.caliper = any(random);
      }
      std::stable_sort(station.readings.begin(), station.readings.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
      if (round % 5 == 0) station.skeg = 50;
      if (round % 7 == 0) {
        station.measured_by = job::MeasuredBy::thickness;
        for (auto& r : station.readings) {
          r.port.reset();
          r.starboard.reset();
          r.caliper = 12;
        }
      }
      stations.push_back(std::move(station));
    }
    std::sort(stations.begin(), stations.end(), [](const auto& a, const auto& b) { return a.down < b.down; });
    for (const auto& one : check::find(blade::job_of(std::move(stations))).list) {
      CHECK((!one.what.empty() && !one.remedy.empty() && !one.code.empty()));
      CHECK(one.what.find("nan") == std::string::npos);
      CHECK(one.what.find("inf") == std::string::npos);
    }
  }
}
