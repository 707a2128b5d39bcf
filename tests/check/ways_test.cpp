// The faults of the yard planted where sections are measured in other ways, and written in other units: numbers as they
// stand on the sheet are spoilt, and turned into a job as the reader of jobs does it.
#include <algorithm>
#include <cstdlib>
#include <iostream>

#include "blade.hpp"
#include "catch.hpp"
#include "check/findings.hpp"

using namespace fairblade;
using job::MeasuredBy;

namespace {

struct Yard {
  const char* name;
  MeasuredBy way;
  LengthUnit unit;
  double step;  ///< what is written, in the unit: the last place
  double in(double mm) const { return std::round(mm / millimetres_in(unit) / step) * step; }
};

const std::vector<Yard> yards{{"half-breadths in inches", MeasuredBy::half_breadths, LengthUnit::inch, 0.01},
                              {"half-breadths in centimetres", MeasuredBy::half_breadths, LengthUnit::cm, 0.01},
                              {"thickness in millimetres", MeasuredBy::thickness, LengthUnit::mm, 0.1},
                              {"thickness in inches", MeasuredBy::thickness, LengthUnit::inch, 0.01},
                              {"gaps in millimetres", MeasuredBy::gaps, LengthUnit::mm, 0.1},
                              {"gaps in centimetres", MeasuredBy::gaps, LengthUnit::cm, 0.01},
                              {"gaps in inches", MeasuredBy::gaps, LengthUnit::inch, 0.01}};

/// As written; `first` is port, the port gap or the caliper, `second` starboard; a caliper besides on station C.
struct Written {
  double x = 0, first = 0, second = 0;
  std::optional<double> caliper;
};
struct SheetStation {
  std::string name;
  double down = 0, chord = 0, board = 0;
  std::vector<Written> rows;
};
struct Sheet {
  Yard yard;
  std::vector<SheetStation> stations;
  bool sides() const { return yard.way != MeasuredBy::thickness; }
};

constexpr double port_fuller = 0.006, starboard_fuller = -0.002;
double half(double x, bool port) { return blade::naca(0.125, x) + (port ? port_fuller : starboard_fuller) * x * (1 - x) * 4; }

Sheet good(const Yard& yard, unsigned seed) {
  std::mt19937 random(seed);
  std::normal_distribution<double> noise(0, 0.5);
  Sheet out{yard, {}};
  const double chords[] = {420, 391, 362, 334, 305};
  for (int k = 0; k < 5; ++k) {
    SheetStation station{std::string(1, static_cast<char>('A' + k)), yard.in(240.0 * k), yard.in(chords[k]), yard.in(75), {}};
    for (const double x : blade::places14()) {
      Written row;
      row.x = std::min(yard.in(x * chords[k]), station.chord);
      const double at = row.x * millimetres_in(yard.unit) / chords[k];
      const double port = chords[k] * half(std::min(1.0, at), true), starboard = chords[k] * half(std::min(1.0, at), false);
      if (yard.way == MeasuredBy::thickness) {
        row.first = yard.in(port + starboard + noise(random));
      } else {
        const bool gaps = yard.way == MeasuredBy::gaps;
        row.first = yard.in((gaps ? 75 - port : port) + noise(random));
        row.second = yard.in((gaps ? 75 - starboard : starboard) + noise(random));
        if (k == 2) row.caliper = yard.in(port + starboard + noise(random));
      }
      station.rows.push_back(row);
    }
    out.stations.push_back(std::move(station));
  }
  return out;
}

job::Job job_of(const Sheet& sheet) {
  const double mm = millimetres_in(sheet.yard.unit);
  std::vector<job::Station> stations;
  int line = 0;
  for (const SheetStation& from : sheet.stations) {
    job::Station station = blade::exact(from.name, from.down * mm, from.chord * mm, 0.12);
    station.ahead = 0.17 * station.chord;
    station.measured_by = sheet.yard.way;
    station.readings.clear();
    for (const Written& row : from.rows) {
      job::Reading r;
      r.x = row.x * mm;
      r.line = ++line;
      if (sheet.yard.way == MeasuredBy::thickness) r.caliper = row.first * mm;
      else if (sheet.yard.way == MeasuredBy::gaps)
        r.port = (from.board - row.first) * mm, r.starboard = (from.board - row.second) * mm;
      else r.port = row.first * mm, r.starboard = row.second * mm;
      if (row.caliper) r.caliper = *row.caliper * mm;
      station.readings.push_back(r);
    }
    std::stable_sort(station.readings.begin(), station.readings.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
    stations.push_back(std::move(station));
  }
  std::stable_sort(stations.begin(), stations.end(), [](const auto& a, const auto& b) { return a.down < b.down; });
  auto job = blade::job_of(std::move(stations));
  job.units = sheet.yard.unit;
  return job;
}

/// Two neighbouring digits of what is written change places, so that it moves by `least` of a millimetre at least.
bool exchange_digits(double& value, const Yard& yard, double least) {
  for (double place = 10 * yard.step; place < 1000; place *= 10) {
    const auto whole = std::llround(value / (place / 10));  // in the lower place
    const auto low = whole % 10, high = whole / 10 % 10;
    const double moved = static_cast<double>(low - high) * (place - place / 10);
    if (std::abs(moved) * millimetres_in(yard.unit) < least || high == 0) continue;
    value += moved;
    return true;
  }
  return false;
}

/// How much the first value grows where the blade does by so many mm.
double written(const Yard& yard, double mm) { return (yard.way == MeasuredBy::gaps ? -1 : 1) * mm / millimetres_in(yard.unit); }
double other_unit(const Yard& yard) {
  return yard.unit == LengthUnit::mm ? 1 / 25.4 : yard.unit == LengthUnit::cm ? 1 / 2.54 : 25.4;
}

void thicker(Sheet& sheet, std::size_t station, double mm, double from, double to, bool port, bool starboard) {
  SheetStation& s = sheet.stations[station];
  const bool both_in_one = !sheet.sides();
  for (Written& row : s.rows) {
    const double w = (row.x / s.chord - from) / (to - from);
    if (w < 0 || w > 1) continue;
    const double off = mm * std::sin(3.14159265 * w);
    if (port) row.first += written(sheet.yard, off * (both_in_one ? 2 : 1));
    if (starboard && !both_in_one) row.second += written(sheet.yard, off);
    if (row.caliper) *row.caliper += off * (port + starboard) / millimetres_in(sheet.yard.unit);
  }
}
void move_sideways(Sheet& sheet, std::size_t station, double mm, double degrees) {
  SheetStation& s = sheet.stations[station];
  for (Written& row : s.rows) {
    const double off = written(sheet.yard, mm) + written(sheet.yard, 1) * std::tan(degrees / 57.29578) *
                                                     (row.x - 0.17 * s.chord) * millimetres_in(sheet.yard.unit);
    row.first += off;
    row.second -= off;
  }
}
void wear(Sheet& sheet, std::size_t station, double mm) {
  SheetStation& s = sheet.stations[station];
  const double unit = millimetres_in(sheet.yard.unit), chord = s.chord * unit;
  for (Written& row : s.rows) {
    const double x = row.x * unit,
                 off = chord * (blade::naca(0.125, std::min(1.0, (x + mm) / chord)) - blade::naca(0.125, x / chord));
    row.first += written(sheet.yard, off * (sheet.sides() ? 1 : 2));
    row.second += written(sheet.yard, off);
    if (row.caliper) *row.caliper += 2 * off / unit;
  }
}

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
