// The printed sheets: nothing on another, nothing off the paper, boxes to write in kept clear and large enough for gloves.
#include "catch.hpp"
#include "drawing/readable.hpp"
#include "drawing/worksheet.hpp"
#include "pages/pages.hpp"

using namespace fairblade;
using namespace fairblade::drawing;
using job::MeasuredBy;

namespace {

struct Wish {
  int stations = 5;
  LengthUnit units = LengthUnit::mm;
  MeasuredBy way = MeasuredBy::half_breadths;
  job::Paper paper = job::Paper::both;
  double margin = 10, chord = 420, span = 1000, ruler = 100;
  std::string name = "Whimbrel (invented), balanced spade rudder", station;
  job::XFrom x_from = job::XFrom::leading_edge;
  std::optional<double> ahead, board;
  double skeg = 0;
};

worksheet::Worksheet sheet_of(const Wish& wish) {
  job::ToMeasure job;
  job.job = wish.name;
  job.units = wish.units;
  job.bottom = wish.span;
  job.print.paper = wish.paper;
  job.print.margin = wish.margin;
  job.print.ruler_across = wish.ruler;
  job.stations = *worksheet::evenly_spaced({wish.stations, wish.span, wish.chord, 0.7 * wish.chord, wish.units});
  for (auto& station : job.stations) {
    station.measured_by = wish.way;
    station.x_from = wish.x_from;
    station.ahead = wish.ahead;
    station.skeg = wish.skeg;
    station.board_port = station.board_starboard = wish.board;
    if (!wish.station.empty()) station.name = wish.station + station.name;
  }
  return worksheet::worksheet_of(job);
}

struct Set {
  std::vector<Sheet> plain;  // without the frame
  pages::Pages pages;
};

Set pages_of(const Wish& wish) {
  const auto sheet = sheet_of(wish);
  job::Job job;
  job.name = sheet.job.job;
  job.print = sheet.job.print;
  const Point room = pages::page_room(job.print);
  std::vector<pages::Piece> pieces{{"cover", draw_worksheet_cover(sheet, room), {}, {}}};
  for (std::size_t k = 0; k < sheet.job.stations.size(); ++k) {
    pieces.push_back({"station " + sheet.job.stations[k].name, draw_worksheet_station(sheet, k, false, room), {}, {}});
  }
  pieces.push_back({"a second time", draw_worksheet_station(sheet, sheet.twice, true, room), {}, {}});
  Set out;
  for (const auto& piece : pieces) out.plain.push_back(piece.sheet);
  out.pages = pages::frame_pages(job, pieces);
  return out;
}

std::vector<Box> boxes_to_write_in(const Sheet& sheet) {
  std::vector<Box> out;
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (!path || !path->closed || path->fill != Fill::none || path->pen != Pen::outline || path->runs[0].size() != 4) continue;
    out.emplace_back(path->runs[0][0], path->runs[0][2]);
  }
  return out;
}

/// Nothing, or the first text outside the paper's margins or on a box to write in, or two such boxes that touch.
std::string off_limits(const Sheet& page, double margin) {
  constexpr double hair = 0.01;
  const Box live({margin - hair, margin - hair}, {page.width - margin + hair, page.height - margin + hair});
  const auto boxes = boxes_to_write_in(page);
  for (const Item& item : page.items) {
    const Text* text = std::get_if<Text>(&item);
    if (!text) continue;
    if (!within(box_of(*text), live)) return "in the margin: " + text->words;
    for (const Box& other : boxes) {
      if (!stand_apart(box_of(*text), other)) return "where one writes: " + text->words;
    }
  }
  for (std::size_t a = 0; a < boxes.size(); ++a) {
    for (std::size_t b = a + 1; b < boxes.size(); ++b) {
      if (!stand_apart(boxes[a], boxes[b], 0.5)) return "two boxes touch";
    }
  }
  return {};
}

void check(const Wish& wish) {
  const Set set = pages_of(wish);
  REQUIRE(set.pages.pages.size() == static_cast<std::size_t>(wish.stations) + 2);
  for (std::size_t k = 0; k < set.pages.pages.size(); ++k) {
    INFO("page " << k + 1);
    const Sheet& page = set.pages.pages[k].sheet;
    CHECK(sheets::trouble(page, 1.95) == "");          // 2.4 mm on a usual margin; seen 2.0 at the widest
    CHECK(sheets::trouble(set.plain[k], 1.95) == "");  // nor does the drawing leave its frame
    CHECK(off_limits(page, wish.margin) == "");
  }
}

}  // namespace

TEST_CASE("every sheet is readable on every paper, in every unit, by every way of measuring") {
  for (const auto paper : {job::Paper::a4, job::Paper::letter, job::Paper::both}) {
    for (const auto units : {LengthUnit::mm, LengthUnit::cm, LengthUnit::inch}) {
      for (const auto way : {MeasuredBy::half_breadths, MeasuredBy::thickness, MeasuredBy::gaps}) {
        for (const int count : {1, 12}) {
          INFO("paper " << static_cast<int>(paper) << ", " << name_of(units) << ", way " << static_cast<int>(way) << ", "
                        << count);
          Wish wish;
          wish.paper = paper;
          wish.units = units;
          wish.way = way;
          wish.stations = count;
          check(wish);
        }
      }
    }
  }
}

TEST_CASE("odd jobs are readable too") {
  const std::string hostile =
      "\"><svg onload=alert(1)>\xf0\x9f\x9a\xa4 \xe2\x80\xae WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW & 'so' on";
  const auto with = [](auto change) {
    Wish wish;
    change(wish);
    check(wish);
  };
  with([&](Wish& w) { w.name = w.station = hostile; });
  with([&](Wish& w) {
    w.name = w.station = hostile, w.way = MeasuredBy::gaps, w.board = 152.5, w.ahead = 71.25, w.units = LengthUnit::inch;
  });
  with([&](Wish& w) { w.name = std::string(80, 'M'), w.station = std::string(79, 'W'), w.margin = 25; });
  with([](Wish& w) { w.margin = 0; });
  with([](Wish& w) { w.margin = 0, w.paper = job::Paper::letter, w.way = MeasuredBy::gaps; });
  with([](Wish& w) { w.margin = 25, w.paper = job::Paper::a4, w.way = MeasuredBy::gaps; });
  with([](Wish& w) { w.stations = 26, w.span = 2500, w.chord = 900; });
  with([](Wish& w) { w.chord = 57, w.span = 140, w.units = LengthUnit::inch; });
  with([](Wish& w) { w.chord = 4321.987, w.span = 4999, w.units = LengthUnit::inch; });
  with([](Wish& w) { w.chord = 2500, w.span = 300; });
  with([](Wish& w) { w.x_from = job::XFrom::trailing_edge; });
  with([](Wish& w) { w.x_from = job::XFrom::stock, w.ahead = 78.3; });
  with([](Wish& w) { w.ahead = -40.0; });
  for (const auto way : {MeasuredBy::half_breadths, MeasuredBy::thickness, MeasuredBy::gaps}) {
    with([&](Wish& w) { w.skeg = 230, w.way = way; });
    with([&](Wish& w) { w.skeg = 5000, w.way = way, w.units = LengthUnit::inch, w.board = 152.5, w.ahead = 71.25; });
    with([&](Wish& w) { w.skeg = 40, w.way = way, w.margin = 25, w.paper = job::Paper::letter, w.stations = 12; });
  }
  with([](Wish& w) { w.ruler = 99.1; });
}

TEST_CASE("a station's page asks for all that the job wants to know") {
  const auto words = [](MeasuredBy way) {
    Wish wish;
    wish.way = way;
    const auto sheet = sheet_of(wish);
    return readable::words_of(draw_worksheet_station(sheet, 1, false, {180, 243}));
  };
  const auto has = [](const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; };
  for (const auto way : {MeasuredBy::half_breadths, MeasuredBy::thickness, MeasuredBy::gaps}) {
    const std::string all = words(way);
    for (const char* part : {"Station B", "250 mm below the top", "along the stock", "chord\n", "chord, once more",
                             "leading edge ahead of the", "stock line", "trailing edge off", "to port (+)", "to starboard (-)",
                             "square to the stock (not level: the stock may rake)", "leading edge worn",
                             "old paint still on, about", "mm thick", "PORT", "STARBOARD", "FWD", "UP", "calipers"}) {
      INFO(part);
      CHECK(has(all, part));
    }
    CHECK(has(all, "boards from the") == (way == MeasuredBy::gaps));
    CHECK(has(all, "gap from the port board") == (way == MeasuredBy::gaps));
    CHECK(has(all, "half-breadth\n") == (way == MeasuredBy::half_breadths));
  }
}

TEST_CASE("2026-11-27: behind a skeg the sheets ask how long it is and how wide the gap is") {
  Wish wish;
  wish.skeg = 230;
  const std::string with = readable::words_of(draw_worksheet_station(sheet_of(wish), 1, false, {180, 243}));
  for (const char* part : {"skeg ahead of the", "leading edge:", "with gap, 230 mm?", "the gap alone"}) {
    INFO(part);
    CHECK(with.find(part) != std::string::npos);
  }
  const std::string cover = readable::words_of(draw_worksheet_cover(sheet_of(wish), {180, 243}));
  CHECK(cover.find("Where a skeg stands ahead") != std::string::npos);
  CHECK(readable::words_of(draw_worksheet_station(sheet_of({}), 1, false, {180, 243})).find("skeg") == std::string::npos);
}

TEST_CASE("2026-11-27: a blade hung on pintles has no stock within it, and the cover tells what its stock line is") {
  const auto words = [](std::optional<double> ahead, job::XFrom from) {
    Wish wish;
    wish.ahead = ahead;
    wish.x_from = from;
    return readable::words_of(draw_worksheet_station(sheet_of(wish), 1, false, {180, 243}));
  };
  const std::string label = "\nstock\n";  // of the drawing; all else says of the stock what has to be written
  CHECK(words(-22.0, job::XFrom::leading_edge).find(label) == std::string::npos);
  CHECK(words(-22.0, job::XFrom::stock).find(label) != std::string::npos);  // x is counted from it
  CHECK(words(78.0, job::XFrom::leading_edge).find(label) != std::string::npos);
  CHECK(words({}, job::XFrom::leading_edge).find(label) != std::string::npos);
  CHECK(readable::words_of(draw_worksheet_cover(sheet_of({}), {180, 243})).find("Hung on pintles?") != std::string::npos);
}

TEST_CASE("boxes are large enough to write in with gloves") {
  // 8 mm high and 30 mm wide at least; the smallest of the sizes' boxes is 26 mm (common practice, no source).
  for (const auto& [way, skeg] : {std::pair{MeasuredBy::half_breadths, 0.0},
                                  {MeasuredBy::thickness, 0.0},
                                  {MeasuredBy::gaps, 0.0},
                                  {MeasuredBy::half_breadths, 230.0},
                                  {MeasuredBy::gaps, 230.0}}) {
    for (const auto paper : {job::Paper::a4, job::Paper::letter, job::Paper::both}) {
      Wish wish;
      wish.way = way;
      wish.paper = paper;
      wish.skeg = skeg;
      const Set set = pages_of(wish);
      const auto boxes = boxes_to_write_in(set.plain[2]);
      std::size_t wide = 0;
      for (const Box& box : boxes) {
        CHECK(box.max_corner().y() - box.min_corner().y() >= 7.5);  // seen 7.9
        CHECK(box.max_corner().x() - box.min_corner().x() >= 25.9);
        if (box.max_corner().x() - box.min_corner().x() >= 30) ++wide;
      }
      const std::size_t columns = way == MeasuredBy::thickness ? 2 : 3;
      CHECK(wide == 12 * columns + columns + 1 + 4);  // places, the spare row with its x, four sizes
    }
  }
}

TEST_CASE("the cover names every station, its page, and the cautions of measuring") {
  Wish wish;
  wish.stations = 12;
  const std::string all = readable::words_of(draw_worksheet_cover(sheet_of(wish), {180, 243}));
  for (int k = 0; k < 12; ++k) {
    const std::string page = "page " + std::to_string(k + 2) + "\n";
    INFO(page);
    CHECK(all.find(page) != std::string::npos);
  }
  for (const char* part : {"Pages 2 to 13", "page 14 is for station G", "stock line", "Never work under a hanging rudder",
                           "Treat old paint as leaded", "spacer", "straight board", "Bring"}) {
    INFO(part);
    CHECK(all.find(part) != std::string::npos);
  }
}

TEST_CASE("both check bars are 100 mm on every page") {
  Wish wish;
  for (const auto& page : pages_of(wish).pages.pages) {
    const auto& across = readable::path_named(page.sheet, "check-across").runs[0];
    const auto& along = readable::path_named(page.sheet, "check-along").runs[0];
    CHECK(across[1].x() - across[0].x() == Approx(100));
    CHECK(along[1].y() - along[0].y() == Approx(100));
  }
}
