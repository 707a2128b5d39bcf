// The faults of the yard planted where sections are measured in other ways, and written in other units: numbers as they
// stand on the sheet are spoilt, and turned into a job as the reader of jobs does it.
#include <algorithm>
#include <cstdlib>
#include <iostream>

#include "blade.hpp"
#include "catch.hpp"
#include "check/findings.hpp"
#include "check/written_sheet.hpp"

using namespace fairblade;
using job::MeasuredBy;
using namespace written_sheet;

namespace {

struct Planted {
  const char* name;
  std::vector<std::string> codes;
  const char* station;
  bool needs_sides;       ///< what a caliper cannot tell
  bool (*plant)(Sheet&);  ///< false: cannot be planted in this sheet
};

const std::vector<std::string> slip{"slipped-digit"}, unit{"inches", "millimetres", "centimetres"};

const std::vector<Planted> all{
    {"two digits exchanged", slip, "B", false,
     [](Sheet& s) {
       for (std::size_t r = 6; r < 12; ++r)
         if (exchange_digits(s.stations[1].rows[r].first, s.yard, 7)) return true;
       return false;
     }},
    {"a point lost", slip, "A", false,
     [](Sheet& s) {
       s.stations[0].rows[8].first *= 10;
       return true;
     }},
    {"a point too far left", slip, "D", false,
     [](Sheet& s) {
       s.stations[3].rows[7].first /= 10;
       return true;
     }},
    {"a first digit one too many", slip, "E", false,
     [](Sheet& s) {
       s.stations[4].rows[9].first += s.yard.unit == LengthUnit::mm ? 10 : 1;
       return true;
     }},
    {"one reading in another unit", slip, "D", false,
     [](Sheet& s) {
       s.stations[3].rows[8].first *= other_unit(s.yard);
       return true;
     }},
    {"x with digits exchanged",
     {"x-slipped"},
     "A",
     false,
     [](Sheet& s) {
       for (std::size_t r = 6; r < 12; ++r)
         if (exchange_digits(s.stations[0].rows[r].x, s.yard, 60) && s.stations[0].rows[r].x < s.stations[0].chord) return true;
       return false;
     }},
    {"x beyond the chord",
     {"x-slipped"},
     "C",
     false,
     [](Sheet& s) {
       s.stations[2].rows[8].x *= 10;
       return true;
     }},
    {"a station in another unit", unit, "C", false,
     [](Sheet& s) {
       const double f = other_unit(s.yard);
       for (Written& row : s.stations[2].rows) {
         row.x *= f, row.first *= f, row.second *= f;
         if (row.caliper) *row.caliper *= f;
       }
       s.stations[2].chord *= f, s.stations[2].board *= f;
       return true;
     }},
    {"the whole job in millimetres",
     {"millimetres"},
     "",
     false,
     [](Sheet& s) {
       if (s.yard.unit == LengthUnit::mm) return false;
       const double f = millimetres_in(s.yard.unit);
       for (SheetStation& station : s.stations) {
         station.down *= f, station.chord *= f, station.board *= f;
         for (Written& row : station.rows) row.x *= f, row.first *= f, row.second *= f;
       }
       return true;
     }},
    {"sizes in another unit", unit, "A", false,
     [](Sheet& s) {
       if (s.yard.unit == LengthUnit::cm) return false;  // 2.54 is within what blades are
       for (Written& row : s.stations[0].rows) row.first *= other_unit(s.yard), row.second *= other_unit(s.yard);
       s.stations[0].board *= other_unit(s.yard);
       return true;
     }},
    {"places in another unit", unit, "E", false,
     [](Sheet& s) {
       if (s.yard.unit == LengthUnit::cm) return false;  // looks like readings that end early, and is told so
       for (Written& row : s.stations[4].rows) row.x *= other_unit(s.yard);
       return true;
     }},
    {"a chord too long by a twentieth",
     {"chord-disagrees"},
     "C",
     false,
     [](Sheet& s) {
       s.stations[2].chord *= 1.055;
       return true;
     }},
    {"a chord too short by a seventh",
     {"chord-disagrees"},
     "D",
     false,
     [](Sheet& s) {
       s.stations[3].chord *= 0.86;
       return true;
     }},
    {"six millimetres of nose worn",
     {"leading-edge-worn"},
     "B",
     false,
     [](Sheet& s) {
       wear(s, 1, 6);
       return true;
     }},
    {"nothing in the first tenth",
     {"first-tenth-empty"},
     "D",
     false,
     [](Sheet& s) {
       auto& r = s.stations[3].rows;
       r.erase(r.begin(), r.begin() + 6);
       return true;
     }},
    {"four places",
     {"too-few-readings"},
     "E",
     false,
     [](Sheet& s) {
       auto& r = s.stations[4].rows;
       r = {r[0], r[4], r[8], r[13]};
       return true;
     }},
    {"heights in another unit",
     {"heights-in-cm", "heights-in-feet", "heights-in-metres"},
     "",
     false,
     [](Sheet& s) {
       const double f = s.yard.unit == LengthUnit::mm ? 10 : s.yard.unit == LengthUnit::cm ? 100 : 12;
       for (auto& one : s.stations) one.down /= f;
       return true;
     }},
    {"a hollow all over one station",
     {"hollow"},
     "C",
     false,
     [](Sheet& s) {
       thicker(s, 2, -2.5, 0.05, 0.95, true, true);
       return true;
     }},
    {"a bump on both faces",
     {"bump"},
     "B",
     false,
     [](Sheet& s) {
       thicker(s, 1, 4, 0.15, 0.65, true, true);
       return true;
     }},
    {"a hollow on one face",
     {"hollow"},
     "D",
     true,
     [](Sheet& s) {
       thicker(s, 3, -4, 0.1, 0.6, false, true);
       return true;
     }},
    {"five rows' sides exchanged",
     {"sides-swapped"},
     "D",
     true,
     [](Sheet& s) {
       for (std::size_t r = 7; r < 12; ++r) std::swap(s.stations[3].rows[r].first, s.stations[3].rows[r].second);
       return true;
     }},
    {"a station's sides exchanged",
     {"sides-swapped"},
     "C",
     true,
     [](Sheet& s) {
       for (auto& r : s.stations[2].rows) std::swap(r.first, r.second);
       return true;
     }},
    {"the blade twists",
     {"twist"},
     "",
     true,
     [](Sheet& s) {
       for (std::size_t k = 0; k < 5; ++k) move_sideways(s, k, 0, 0.4 * static_cast<double>(k));
       return true;
     }},
    {"the blade leans",
     {"lean"},
     "",
     true,
     [](Sheet& s) {
       for (std::size_t k = 0; k < 5; ++k) move_sideways(s, k, 2.0 * static_cast<double>(k), 0);
       return true;
     }},
    {"one station off the centre",
     {"off-centre"},
     "D",
     true,
     [](Sheet& s) {
       move_sideways(s, 3, 4, 0);
       return true;
     }},
    {"caliper off by five",
     {"caliper-disagrees", "slipped-digit"},
     "C",
     true,
     [](Sheet& s) {
       *s.stations[2].rows[9].caliper += 5 / millimetres_in(s.yard.unit);
       return true;
     }},
    {"caliper's zero, or the boards, off by two",
     {"caliper-disagrees"},
     "C",
     true,
     [](Sheet& s) {
       for (auto& r : s.stations[2].rows) *r.caliper += 2 / millimetres_in(s.yard.unit);
       return true;
     }},
};

}  // namespace

TEST_CASE("sheets of every way and unit are good until they are spoilt") {
  for (const Yard& yard : yards) {
    for (unsigned seed = 1; seed <= 4; ++seed) {
      const auto findings = check::find(job_of(good(yard, seed)));
      for (const auto& one : findings.list)
        UNSCOPED_INFO(yard.name << ' ' << seed << ' ' << one.code << ' ' << one.station << one.side << ": " << one.what);
      CHECK(findings.list.empty());
    }
  }
}

// Asked for: 9 in 10. Seen, of two sets each: 53 of 54, 50 of 50, 36 of 36, 38 of 38, 52 of 52, 50 of 50, 54 of 54.
TEST_CASE("planted faults are found and rightly named, however the blade was measured") {
  for (const Yard& yard : yards) {
    std::size_t planted_in = 0, found = 0;
    std::string missed;
    for (unsigned seed = 1; seed <= 2; ++seed) {
      for (const Planted& planted : all) {
        Sheet sheet = good(yard, seed);
        if ((planted.needs_sides && !sheet.sides()) || !planted.plant(sheet)) continue;
        ++planted_in;
        const auto findings = check::find(job_of(sheet));
        const bool any = std::any_of(findings.list.begin(), findings.list.end(), [&](const check::Finding& one) {
          return std::find(planted.codes.begin(), planted.codes.end(), one.code) != planted.codes.end() &&
                 (!*planted.station || one.station == planted.station);
        });
        found += any ? 1 : 0;
        if (any) continue;
        missed += std::string("not ") + planted.name + " (" + std::to_string(seed) + ")\n";
        for (const auto& one : findings.list)
          missed += "    " + one.code + " " + one.station + " " + one.side + ": " + one.what + "\n";
      }
    }
    INFO(yard.name << ": " << found << " of " << planted_in << "\n" << missed);
    if (std::getenv("SHOW")) std::cout << yard.name << ": " << found << " of " << planted_in << "\n" << missed;
    CHECK(found + 1 >= planted_in);  // so that a kind of fault that is no longer found is noticed
  }
}
