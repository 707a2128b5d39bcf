// The small picture of a station: what its strips say is what the readings say.
#include <cmath>

#include "catch.hpp"
#include "drawing/cases.hpp"
#include "drawing/section_picture.hpp"

using namespace fairblade;
using namespace fairblade::drawing;

namespace {

// Readings off the plain 0012 by these changes, mm, port and starboard; the target is the 0012 itself.
cases::Case changed(double port, double starboard) {
  cases::Wish wish;
  wish.measured_ratio = wish.target_ratio = 0.12;
  wish.edge.reset();
  return cases::make("changed", wish, [&](job::Station& station) {
    for (auto& reading : station.readings) {
      reading.port = *reading.port - port;
      reading.starboard = *reading.starboard - starboard;
    }
  });
}

std::vector<Point> dots(const Sheet& sheet) {
  std::vector<Point> out;
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path == nullptr || path->fill != Fill::dark || path->runs.at(0).size() != 16) continue;
    double x = 0, y = 0;
    for (const Point& p : path->runs[0]) x += p.x() / 16, y += p.y() / 16;
    out.emplace_back(x, y);
  }
  return out;
}

// The zero lines of the strips, from the top: starboard, port.
std::vector<double> zeros(const Sheet& sheet) {
  std::vector<double> out;
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path == nullptr || path->pen != Pen::outline || path->runs.at(0).size() != 2) continue;
    const auto& run = path->runs[0];
    if (run[0].y() == run[1].y() && run[1].x() - run[0].x() > 100) out.push_back(run[0].y());
  }
  return out;
}

std::string words(const Sheet& sheet) {
  std::string out;
  for (const Item& item : sheet.items) {
    if (const Text* text = std::get_if<Text>(&item)) out += text->words + "\n";
  }
  return out;
}

bool has_path(const Sheet& sheet, const std::string& id) {
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path != nullptr && path->id == id && !path->runs.empty()) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("a reading's dot stands as far from the line as its change, up to add and down to take off") {
  // The strips' rim is the next of 1, 2, 3, 5 and 10 mm, 11 mm of paper from the line: 1.8 mm are 9.9, 0.9 are 4.95.
  const cases::Case c = changed(1.8, -0.9);
  const Sheet sheet = draw_section_picture(c.job, c.measured, c.target, c.change);
  CHECK(words(sheet).find("add 2 mm") != std::string::npos);
  const auto lines = zeros(sheet);
  REQUIRE(lines.size() == 2);
  int added = 0, taken = 0;
  for (const Point& dot : dots(sheet)) {
    if (std::abs(dot.y() - (lines[0] + 4.95)) < 0.01) ++taken;
    if (std::abs(dot.y() - (lines[1] - 9.9)) < 0.01) ++added;
  }
  const int readings = static_cast<int>(c.measured.points.size() / 2);
  CHECK(added >= readings - 1);  // not the one at the very nose, where the target is a point
  CHECK(taken >= readings - 1);
  CHECK(has_path(sheet, "port-add"));
  CHECK(has_path(sheet, "starboard-take-off"));
  CHECK_FALSE(has_path(sheet, "port-take-off"));
  CHECK_FALSE(has_path(sheet, "starboard-add"));
}

TEST_CASE("a job in inches has its strips in inches") {
  cases::Case c = changed(1.8, -0.9);
  c.job.units = LengthUnit::inch;
  const Sheet sheet = draw_section_picture(c.job, c.measured, c.target, c.change);
  CHECK(words(sheet).find("add 0.1 in") != std::string::npos);  // 1.8 mm is 0.071 in
}
