// The readings of Whimbrel as ten spreadsheets write them, and in inches: the same plan.json.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <nlohmann/json.hpp>

#include "catch.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;
using nlohmann::json;

namespace {

/// One row of the sheet, all mm; the station's own sizes stand on its first row.
struct Row {
  std::string station;
  bool first = false;
  double down = 0, ahead = 0, chord = 0, x = 0, port = 0, starboard = 0;
};

std::vector<Row> whimbrel() {
  std::map<std::string, json> stations;
  const json job = json::parse(bytes_of(profile("whimbrel")), nullptr, true, true);
  for (const json& station : job["stations"]) stations[station["name"].get<std::string>()] = station;
  std::string text = bytes_of(fs::path(PROFILES_DIR) / "whimbrel" / "readings.csv");
  std::replace(text.begin(), text.end(), ',', '.');
  std::replace(text.begin(), text.end(), ';', ' ');
  std::istringstream lines(text.substr(text.find('\n') + 1));
  std::vector<Row> out;
  Row row;
  while (lines >> row.station >> row.x >> row.port >> row.starboard) {
    row.first = out.empty() || out.back().station != row.station;
    const json& station = stations[row.station];
    row.down = station["down"], row.ahead = station["ahead"], row.chord = station["chord"];
    out.push_back(row);
  }
  return out;
}

using Number = std::function<std::string(double mm)>;

/// Shortest decimal that reads back, in that many mm, with that mark.
Number decimals(double unit, char mark, int digits = 12) {
  return [=](double mm) {
    char buffer[40];
    std::snprintf(buffer, sizeof buffer, "%.*g", digits, mm / unit);
    std::string out = buffer;
    std::replace(out.begin(), out.end(), '.', mark);
    return out;
  };
}

struct Dialect {
  std::string delimiter = ",", end = "\n", before, head, below_head, after_row, between_stations;
  std::string front, front_title, title_end;  // columns of the owner's own
  std::vector<std::string> titles{"station", "down", "ahead", "chord", "x", "port", "starboard"};
  std::vector<std::size_t> order{0, 1, 2, 3, 4, 5, 6};
  Number number = decimals(1, '.');
  std::function<std::string(const std::string&)> cell = [](const std::string& text) { return text; };
};

std::string written(const Dialect& d, const std::vector<Row>& rows) {
  std::string out = d.before;
  const auto keys = [&](const std::string& key, const std::string& value) {
    out += d.cell(key) + d.delimiter + d.cell(value) + d.end;
  };
  keys("job", "Whimbrel");
  keys("reading_error", d.number(0.5));
  keys("bottom", d.number(1000));
  keys("speed", "5");
  keys("trailing_edge_thickness", d.number(4));
  keys("max_removal", d.number(1));
  out += d.head;
  const auto line = [&](const std::vector<std::string>& cells) {
    const bool title = &cells == &d.titles;
    out += title ? d.front_title : d.front;
    for (std::size_t i = 0; i < d.order.size(); ++i) out += (i ? d.delimiter : "") + d.cell(cells[d.order[i]]);
    out += (title ? d.title_end : "") + d.after_row + d.end;
  };
  line(d.titles);
  out += d.below_head;
  for (const Row& r : rows) {
    if (r.first && &r != &rows.front()) out += d.between_stations;
    line({r.station, r.first ? d.number(r.down) : "", r.first ? d.number(r.ahead) : "", r.first ? d.number(r.chord) : "",
          d.number(r.x), d.number(r.port), d.number(r.starboard)});
  }
  return out;
}

json planned(const std::string& text, const std::string& name = "whimbrel.csv") {
  const Folder folder;
  const Result result = run({"plan", folder.write(name, text), "-o", folder.at("out"), "--quiet"});
  INFO(text.substr(0, 600));
  REQUIRE(result.err == "");
  REQUIRE(result.status == 0);
  return json::parse(bytes_of(folder.at("out") + "/plan.json"));
}

/// The greatest difference of two numbers at one place, as a share of the larger or of 1. Words must be the same, but for
/// those that name lines and the job's unit.
double furthest_apart(const json& a, const json& b, const std::string& path, std::string& worst) {
  INFO(path);
  double out = 0;
  const auto take = [&](double found, const std::string& where) {
    if (found > out) {
      out = found;
      if (where.size()) worst = where;
    }
  };
  if (a.is_number() && b.is_number()) {
    const double x = a, y = b;
    const double apart = std::abs(x - y) / std::max({1.0, std::abs(x), std::abs(y)});
    if (apart > 0) worst = path;
    return apart;
  }
  REQUIRE(a.type() == b.type());
  REQUIRE(a.size() == b.size());
  if (a.is_object()) {
    for (const auto& [key, value] : a.items()) {
      REQUIRE(b.contains(key));
      if (key == "text" || key == "sources" || key == "defaults" || key == "units" || key == "line" || key == "meaning") continue;
      std::string where;
      take(furthest_apart(value, b[key], path + "/" + key, where), where);
    }
  } else if (a.is_array()) {
    for (std::size_t i = 0; i < a.size(); ++i) {
      std::string where;
      take(furthest_apart(a[i], b[i], path + "/" + std::to_string(i), where), where);
    }
  } else {
    CHECK(a == b);
  }
  return out;
}

double apart(const json& a, const json& b) {
  std::string worst;
  const double out = furthest_apart(a, b, "", worst);
  UNSCOPED_INFO("differs most at " << worst << ": " << out);
  return out;
}

std::string in_double_quotes(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

const std::string no_break = "\xc2\xa0", narrow = "\xe2\x80\xaf", thin = "\xe2\x80\x89";

std::vector<std::pair<std::string, Dialect>> dialects() {
  std::vector<std::pair<std::string, Dialect>> out;
  const auto add = [&](const std::string& name) -> Dialect& { return out.emplace_back(name, Dialect{}).second; };
  {
    Dialect& d = add("semicolons, decimal commas, CRLF, byte-order mark");
    d.delimiter = ";", d.end = "\r\n", d.before = "\xef\xbb\xbf", d.number = decimals(1, ',');
  }
  {
    Dialect& d = add("tabs, old line ends");
    d.delimiter = "\t", d.end = "\r";
  }
  {
    Dialect& d = add("tabs, decimal commas, empty columns at the end");
    d.delimiter = "\t", d.number = decimals(1, ','), d.after_row = "\t\t\t";
  }
  {
    Dialect& d = add("sep=; first, every cell in quotes");
    d.delimiter = ";", d.end = "\r\n", d.before = "sep=;\r\n", d.number = decimals(1, ','), d.cell = in_double_quotes;
  }
  {
    Dialect& d = add("commas, decimal commas in quotes");
    d.number = decimals(1, ',');
    d.cell = [](const std::string& text) { return text.find(',') == std::string::npos ? text : in_double_quotes(text); };
  }
  {
    Dialect& d = add("columns in another order, other capitals, a title and a note of two lines, nothing behind our columns");
    d.titles = {"STATION", "Down", " ahead ", "Chord", "X", "Port", "Starboard"};
    d.order = {5, 6, 4, 3, 0, 2, 1};
    d.front_title = "Note,", d.title_end = ",read by";  // and no row has that last column
    d.front = "\"worn, and \"\"soft\"\"\nto the touch\",";
  }
  {
    Dialect& d =
        add("units in the titles, a row of them below, blank lines and lines of separators, quoted line ends in a title");
    d.titles = {"Station", "Down (mm)", "\"Ahead\n[mm]\"", "chord / mm", "x_mm", "Port [mm]", "starboard mm"};
    d.head = "\n,,,,,,\n";
    d.below_head = ",mm,mm,(mm),mm,mm,mm\n";
    d.between_stations = "\n,,,,,,\n  \n";
  }
  {
    Dialect& d = add("no-break and thin spaces, thousands set off, plus signs");
    d.delimiter = ";";
    d.number = [](double mm) {
      std::string out = decimals(1, ',')(mm);
      if (out.size() == 4 && out.find(',') == std::string::npos) out.insert(1, narrow);
      return no_break + (mm > 0 ? "+" : "") + out + thin;
    };
  }
  {
    Dialect& d = add("centimetres, padded, the header once more above each station");
    d.before = "units,cm\n", d.number = decimals(10, '.'), d.after_row = ",,";
    d.between_stations = "Station,Down,Ahead,Chord,X,Port,Starboard,,\n";
  }
  {
    Dialect& d = add("every cell with its unit, trailing blanks");
    d.number = [](double mm) { return decimals(1, '.')(mm) + " mm  "; };
  }
  return out;
}

}  // namespace

TEST_CASE("ten spreadsheets write the same readings: the same plan") {
  const std::vector<Row> rows = whimbrel();
  REQUIRE(rows.size() == 60);
  const json plain = planned(written(Dialect{}, rows));
  REQUIRE(plain["stations"].size() == 5);
  const auto all = dialects();
  REQUIRE(all.size() == 10);
  for (const auto& [name, dialect] : all) {
    INFO(name);
    CHECK(apart(plain, planned(written(dialect, rows))) <= 1e-9);  // seen: the same to the last digit written
  }
}

TEST_CASE("the same readings in inches: the same plan") {
  std::vector<Row> rows = whimbrel();
  const double inch = 25.4;  // mm, by definition
  SECTION("decimals of an inch, as many as it takes") {
    Dialect inches;
    inches.before = "units,in\n", inches.number = decimals(inch, '.', 17);
    CHECK(apart(planned(written(Dialect{}, rows)), planned(written(inches, rows))) <=
          1e-8);  // seen 1.3e-10: conversion's rounding
  }
  SECTION("read to the nearest 1/64 inch, written as fractions") {
    const auto snap = [&](double& mm) { mm = std::round(mm / inch * 64) / 64 * inch; };
    for (Row& r : rows) {
      for (double* mm : {&r.down, &r.ahead, &r.chord, &r.x, &r.port, &r.starboard}) snap(*mm);
    }
    Dialect fractions;
    fractions.before = "units;in\n", fractions.delimiter = ";";
    int turn = 0;
    fractions.number = [&](double mm) {
      const double in = mm / inch;
      const auto sixty_fourths = std::lround(in * 64);
      if (std::abs(in * 64 - static_cast<double>(sixty_fourths)) > 1e-6) return decimals(inch, '.', 17)(mm);
      const long whole = sixty_fourths / 64;
      long over = sixty_fourths % 64, under = 64;
      if (over == 0) return std::to_string(whole);
      for (; over % 2 == 0; over /= 2) under /= 2;
      const std::string part = std::to_string(over) + "/" + std::to_string(under);
      if (under == 2) return (whole ? std::to_string(whole) : "") + "\xc2\xbd";
      if (under == 4 && over == 1) return (whole ? std::to_string(whole) + " " : "") + "\xc2\xbc";
      if (under == 8 && over == 7) return (whole ? std::to_string(whole) + no_break : "") + "\xe2\x85\x9e";
      if (whole == 0) return part;
      switch (turn++ % 4) {
        case 0: return std::to_string(whole) + " " + part;
        case 1: return std::to_string(whole) + "-" + part;
        case 2: return std::to_string(whole) + no_break + std::to_string(over) + "\xe2\x81\x84" + std::to_string(under);
        default: return std::to_string(whole) + " " + part + "\"";
      }
    };
    CHECK(apart(planned(written(Dialect{}, rows)), planned(written(fractions, rows))) <= 1e-8);  // seen 4e-11
  }
  SECTION("rounded to a thousandth of an inch") {
    Dialect inches;
    inches.before = "units,in\n";
    inches.number = [&](double mm) { return decimals(1, '.')(std::round(mm / inch * 1000) / 1000); };
    const json a = planned(written(Dialect{}, rows)), b = planned(written(inches, rows));
    for (std::size_t i = 0; i < 5; ++i) {
      const double ta = a["stations"][i]["fit"]["thickness_ratio"], tb = b["stations"][i]["fit"]["thickness_ratio"];
      CHECK(std::abs(ta - tb) <= 1e-4);  // seen 2.7e-5: half a thousandth is 0.013 mm
    }
    const double add_a = a["volumes"]["add"], add_b = b["volumes"]["add"];
    CHECK(std::abs(add_a - add_b) <= 0.03 * add_a);  // seen 0.019: a few readings choose the least fill
  }
}
