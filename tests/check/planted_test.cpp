// One fault planted in good readings: it must be found, and called by its name.
#include <algorithm>

#include "catch.hpp"
#include "check/findings.hpp"
#include "check/good.hpp"

using namespace fairblade;
using good_blade::good;

namespace {

/// Asked for: 9 in 10. Seen over 60 seeds: 39 to 43 of the 43 are found, 38 to 43 stand first; most often missed is the
/// trailing edge ten times too thick (25 of 60), then the hollow of 3.5 mm on one face (13).
constexpr unsigned seeds = 6;

struct Planted {
  const char* name;
  std::vector<std::string> codes;  ///< any of these is its name
  const char* station;
  const char* side;  ///< "" where none need be told
  double x;          ///< chord fraction of the place, or -1
  void (*plant)(job::Job&);
};

job::Reading& at(job::Job& job, std::size_t station, std::size_t row) { return job.stations[station].readings[row]; }

void exchange(job::Reading& a, job::Reading& b) {
  std::swap(a.port, b.port);
  std::swap(a.starboard, b.starboard);
}

void turn(job::Station& station, double degrees) {
  for (auto& r : station.readings) {
    const double off = std::tan(degrees / 57.29578) * (r.x - 0.17 * station.chord);
    *r.port += off;
    *r.starboard -= off;
  }
}
/// Heights in a unit of so many mm.
void heights_over(job::Job& job, double mm) {
  for (auto& station : job.stations) station.down /= mm;
}
void shift(job::Station& station, double mm) {
  for (auto& r : station.readings) {
    *r.port += mm;
    *r.starboard -= mm;
  }
}
void scale_readings(job::Station& station, double factor, bool x, bool size) {
  for (auto& r : station.readings) {
    if (x) r.x *= factor;
    if (size) {
      *r.port *= factor;
      *r.starboard *= factor;
      if (r.caliper) *r.caliper *= factor;
    }
  }
}
void wear(job::Station& station, double mm) {  // the edge is gone and x counted from what is left
  const double chord = station.chord;
  for (auto& r : station.readings) {
    const double before = blade::naca(0.125, r.x / chord) * chord,
                 now = blade::naca(0.125, std::min(1.0, (r.x + mm) / chord)) * chord;
    *r.port += now - before;
    *r.starboard += now - before;
  }
}
void dent(job::Station& station, double mm, double from, double to, bool port, bool starboard) {
  for (auto& r : station.readings) {
    const double w = (r.x / station.chord - from) / (to - from);
    if (w < 0 || w > 1) continue;
    const double off = mm * std::sin(3.14159265 * w);
    if (port) *r.port += off;
    if (starboard) *r.starboard += off;
    if (r.caliper) *r.caliper += off * (port + starboard);
  }
}
void sort_rows(job::Station& station) {
  std::stable_sort(station.readings.begin(), station.readings.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
}

const std::vector<Planted> all{
    // Rows: 0, 1.25, 2.5, 5, 7.5, 10, 15, 20, 30, 40, 55, 70, 85, 100 % of the chord
    {"two digits exchanged", {"slipped-digit"}, "B", "port", 0.55, [](job::Job& j) { at(j, 1, 10).port = 91.2; }},
    {"a point lost", {"slipped-digit"}, "A", "starboard", 0.30, [](job::Job& j) { *at(j, 0, 8).starboard *= 10; }},
    {"a point too far left", {"slipped-digit"}, "D", "port", 0.15, [](job::Job& j) { *at(j, 3, 6).port /= 10; }},
    {"ten too much", {"slipped-digit"}, "E", "starboard", 0.40, [](job::Job& j) { *at(j, 4, 9).starboard += 10; }},
    {"ten too little", {"slipped-digit"}, "B", "starboard", 0.20, [](job::Job& j) { *at(j, 1, 7).starboard -= 10; }},
    {"five too much at the nose", {"slipped-digit"}, "A", "port", 0.05, [](job::Job& j) { *at(j, 0, 3).port += 5; }},
    {"five too little aft", {"slipped-digit"}, "C", "port", 0.70, [](job::Job& j) { *at(j, 2, 11).port -= 5; }},
    {"four too much amidships", {"slipped-digit"}, "C", "starboard", 0.55, [](job::Job& j) { *at(j, 2, 10).starboard += 4; }},
    {"one reading in inches", {"slipped-digit"}, "D", "starboard", 0.30, [](job::Job& j) { *at(j, 3, 8).starboard /= 25.4; }},
    {"a sign", {"slipped-digit"}, "B", "port", 0.85, [](job::Job& j) { *at(j, 1, 12).port *= -1; }},
    {"the edge ten times too thick", {"slipped-digit"}, "A", "port", 1.0, [](job::Job& j) { at(j, 0, 13).port = 8; }},
    {"x with digits exchanged",
     {"x-slipped"},
     "A",
     "",
     0.51,
     [](job::Job& j) {
       at(j, 0, 8).x = 216;
       sort_rows(j.stations[0]);
     }},
    {"x out of order",
     {"x-slipped"},
     "A",
     "",
     0.735,
     [](job::Job& j) {
       at(j, 0, 9).x = 309;
       sort_rows(j.stations[0]);
     }},
    {"x ten times too great",
     {"x-slipped"},
     "B",
     "",
     0.75,
     [](job::Job& j) {
       at(j, 1, 4).x = 290;
       sort_rows(j.stations[1]);
     }},
    {"x beyond the chord",
     {"x-slipped"},
     "C",
     "",
     -1,
     [](job::Job& j) {
       at(j, 2, 7).x = 720;
       sort_rows(j.stations[2]);
     }},
    {"one row's sides exchanged",
     {"sides-swapped", "slipped-digit"},
     "B",
     "",
     -1,
     [](job::Job& j) { std::swap(at(j, 1, 10).port, at(j, 1, 10).starboard); }},
    {"five rows' sides exchanged",
     {"sides-swapped"},
     "D",
     "",
     -1,
     [](job::Job& j) {
       for (std::size_t r = 7; r < 12; ++r) std::swap(at(j, 3, r).port, at(j, 3, r).starboard);
     }},
    {"two rows exchanged", {"rows-exchanged"}, "D", "", -1, [](job::Job& j) { exchange(at(j, 3, 6), at(j, 3, 10)); }},
    {"two neighbouring rows", {"rows-exchanged"}, "B", "", -1, [](job::Job& j) { exchange(at(j, 1, 11), at(j, 1, 12)); }},
    {"a station's sides exchanged",
     {"sides-swapped"},
     "C",
     "",
     -1,
     [](job::Job& j) {
       for (auto& r : j.stations[2].readings) std::swap(r.port, r.starboard);
     }},
    {"the last station's sides exchanged",
     {"sides-swapped"},
     "E",
     "",
     -1,
     [](job::Job& j) {
       for (auto& r : j.stations[4].readings) std::swap(r.port, r.starboard);
     }},
    {"a station in inches",
     {"inches"},
     "C",
     "",
     -1,
     [](job::Job& j) {
       scale_readings(j.stations[2], 1 / 25.4, true, true);
       j.stations[2].chord /= 25.4;
     }},
    {"half-breadths in inches",
     {"inches"},
     "A",
     "",
     -1,
     [](job::Job& j) { scale_readings(j.stations[0], 1 / 25.4, false, true); }},
    {"places in inches", {"inches"}, "E", "", -1, [](job::Job& j) { scale_readings(j.stations[4], 1 / 25.4, true, false); }},
    {"a chord in inches", {"inches"}, "B", "", -1, [](job::Job& j) { j.stations[1].chord /= 25.4; }},
    {"the whole job in inches",
     {"inches"},
     "",
     "",
     -1,
     [](job::Job& j) {
       for (auto& s : j.stations) {
         scale_readings(s, 1 / 25.4, true, true);
         s.chord /= 25.4;
         s.down /= 25.4;
       }
     }},
    {"half-breadths in centimetres",
     {"centimetres"},
     "D",
     "",
     -1,
     [](job::Job& j) { scale_readings(j.stations[3], 0.1, false, true); }},
    {"chord with digits exchanged", {"chord-disagrees"}, "A", "", -1, [](job::Job& j) { j.stations[0].chord = 402; }},
    {"chord too long by 20", {"chord-disagrees"}, "C", "", -1, [](job::Job& j) { j.stations[2].chord = 382; }},
    {"chord too short by 60", {"chord-disagrees"}, "D", "", -1, [](job::Job& j) { j.stations[3].chord = 274; }},
    {"caliper off by five", {"caliper-disagrees"}, "C", "", 0.40, [](job::Job& j) { *at(j, 2, 9).caliper += 5; }},
    {"caliper's zero off by two",
     {"caliper-disagrees"},
     "C",
     "",
     -1,
     [](job::Job& j) {
       for (auto& r : j.stations[2].readings) *r.caliper += 2;
     }},
    {"five millimetres of nose worn", {"leading-edge-worn"}, "B", "", -1, [](job::Job& j) { wear(j.stations[1], 5); }},
    {"six millimetres worn, x = 0 not read",
     {"leading-edge-worn"},
     "A",
     "",
     -1,
     [](job::Job& j) {
       wear(j.stations[0], 6);
       j.stations[0].readings.erase(j.stations[0].readings.begin());
     }},
    {"nothing in the first tenth",
     {"first-tenth-empty"},
     "D",
     "",
     -1,
     [](job::Job& j) {
       auto& r = j.stations[3].readings;
       r.erase(r.begin(), r.begin() + 6);
     }},
    {"four readings a side",
     {"too-few-readings"},
     "E",
     "",
     -1,
     [](job::Job& j) {
       auto& r = j.stations[4].readings;
       r = {r[0], r[4], r[8], r[13]};
     }},
    {"the blade twists",
     {"twist"},
     "",
     "",
     -1,
     [](job::Job& j) {
       for (std::size_t k = 0; k < 5; ++k) turn(j.stations[k], 0.4 * static_cast<double>(k));
     }},
    {"one station's boards askew", {"twist"}, "C", "", -1, [](job::Job& j) { turn(j.stations[2], -1.2); }},
    {"the blade leans",
     {"lean"},
     "",
     "",
     -1,
     [](job::Job& j) {
       for (std::size_t k = 0; k < 5; ++k) shift(j.stations[k], 2.0 * static_cast<double>(k));
     }},
    {"one station off the centre", {"off-centre"}, "D", "", -1, [](job::Job& j) { shift(j.stations[3], 4); }},
    {"heights in centimetres", {"heights-in-cm"}, "", "", -1, [](job::Job& j) { heights_over(j, 10); }},
    // 2026-11-26: a unit that was not found was read after it was gone.
    {"heights in metres", {"heights-in-metres"}, "", "", -1, [](job::Job& j) { heights_over(j, 1000); }},
    {"heights in no unit that anyone reads in", {"heights-close"}, "", "", -1, [](job::Job& j) { heights_over(j, 12000); }},
    {"one height in centimetres",
     {"heights-in-cm"},
     "D",
     "",
     -1,
     [](job::Job& j) {
       j.stations[3].down /= 10;
       std::rotate(j.stations.begin() + 1, j.stations.begin() + 3, j.stations.begin() + 4);
     }},
    {"a hollow all over one station",
     {"hollow"},
     "C",
     "",
     -1,
     [](job::Job& j) { dent(j.stations[2], -2.5, 0.05, 0.95, true, true); }},
    {"a bump on one face", {"bump"}, "B", "port", -1, [](job::Job& j) { dent(j.stations[1], 4, 0.15, 0.65, true, false); }},
    {"a hollow on one face",
     {"hollow"},
     "D",
     "starboard",
     -1,
     [](job::Job& j) { dent(j.stations[3], -3.5, 0.1, 0.5, false, true); }},
};

bool named(const check::Finding& finding, const Planted& planted, const job::Job& job) {
  if (std::find(planted.codes.begin(), planted.codes.end(), finding.code) == planted.codes.end()) return false;
  if (*planted.station != '\0' && finding.station != planted.station) return false;
  if (*planted.side != '\0' && finding.side != planted.side) return false;
  if (planted.x < 0) return true;
  for (const auto& station : job.stations) {
    if (station.name == finding.station)
      return finding.x && std::abs(*finding.x - planted.x * station.chord) < 0.02 * station.chord;
  }
  return false;
}

}  // namespace

TEST_CASE("the readings that the faults are planted in are good") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    const auto findings = check::find(good(seed));
    for (const auto& one : findings.list)
      UNSCOPED_INFO(seed << " " << one.code << " " << one.station << one.side << ": " << one.what);
    CHECK(findings.list.empty());
  }
}

TEST_CASE("planted faults are found and rightly named") {
  REQUIRE(all.size() >= 40);
  for (unsigned seed = 1; seed <= seeds; ++seed) {
    std::size_t found = 0, first = 0;
    std::string missed;
    for (const Planted& planted : all) {
      auto job = good(seed);
      planted.plant(job);
      const auto findings = check::find(job);
      const bool any =
          std::any_of(findings.list.begin(), findings.list.end(), [&](const auto& one) { return named(one, planted, job); });
      found += any ? 1 : 0;
      first += any && named(findings.list.front(), planted, job) ? 1 : 0;
      if (any && findings.list.size() == 1) continue;
      missed += std::string(any ? "more than " : "not ") + planted.name + "\n";
      for (const auto& one : findings.list)
        missed += "    " + one.code + " " + one.station + " " + one.side + ": " + one.what + "\n";
    }
    INFO("seed " << seed << ", not found or more than that:\n" << missed);
    CHECK(found >= all.size() * 9 / 10);
    CHECK(first >= all.size() * 9 / 10);
  }
}

TEST_CASE("a worn nose is told to be counted from the stock only where its place by the stock is not known") {
  job::Job job = good(1);
  wear(job.stations[1], 5);
  const auto remedy = [](const job::Job& one) {
    for (const auto& finding : check::find(one).list) {
      if (finding.code == "leading-edge-worn" && finding.station == "B") return finding.remedy;
    }
    return std::string("not found");
  };
  CHECK(remedy(job) == "ask for the nose to be built out (--extend-leading-edge)");
  job.stations[1].ahead.reset();
  CHECK(remedy(job) ==
        "count x from the stock, not from the worn edge; ask for the nose to be built out (--extend-leading-edge)");
  job.stations[1].target.leading_edge = job::LeadingEdgeWork::leave;  // 2026-11-28: which was refused when it was followed
  CHECK(remedy(job) == "not found");
}

TEST_CASE("the caliper chooses what was meant") {
  // Port read 32.5 for 22.5, a digit wrong; its digits exchanged, 23.5, would be within the readings' error too. By hand:
  // the caliper's 43.5 less starboard's 21 is 22.5.
  const auto what = [](bool caliper) {
    job::Job job = good(1);
    job::Station& station = job.stations[2];
    for (auto& r : station.readings) r.caliper.reset();
    const double half = *station.readings[8].port + *station.readings[8].starboard;
    for (auto& r : station.readings) {  // scaled so that port and starboard at row 8 are 22.5 and 21 together
      r.port = *r.port * 43.5 / half;
      r.starboard = *r.starboard * 43.5 / half;
    }
    station.readings[8].port = 32.5;
    station.readings[8].starboard = 21;
    if (caliper) station.readings[8].caliper = 43.5;
    for (const auto& finding : check::find(job).list) {
      if (finding.code == "slipped-digit" && finding.station == "C" && finding.side == "port") return finding.what;
    }
    return std::string("not found");
  };
  INFO(what(true));
  INFO(what(false));
  CHECK(what(true).find("; 22.5 mm would fit (one digit is wrong); by starboard and the caliper it is 22.5 mm") !=
        std::string::npos);
  CHECK(what(false).find("; 23.5 mm would fit (two digits changed places)") != std::string::npos);
}
