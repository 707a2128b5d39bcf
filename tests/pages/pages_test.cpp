// Pages as the owner gets them: joined by their crosses they are the drawing that was cut up, and nothing on them is lost
// or unreadable.
#include "pages/pages.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "catch.hpp"
#include "drawing/cases.hpp"
#include "has.hpp"
#include "lines.hpp"
#include "sheets.hpp"

using namespace fairblade;
using namespace fairblade::drawing;
using pages::Page;

namespace {

pages::Piece piece_of(const cases::Case& c, bool pair) {
  const fill::Stage stage{fill::StageKind::final, 0, ""};
  const auto surface = fill::stage_section(c.target, stage);
  TemplateOf wanted{c.job, c.target, *surface, section::Face::port, c.measured.thickness_only, 0};
  const TemplateCard card = pair ? draw_pair(wanted) : draw_card(wanted);
  const double x = card.origin.x(), y = card.origin.y();
  return {c.measured.station + ", " + c.name, card.sheet, {{x - 2, x + 0.1 * c.target.chord}}, {{y - 2, y + 2}}};
}

using Runs = std::vector<std::vector<Point>>;

bool ends_with(const std::string& text, const std::string& end) {
  return text.size() >= end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

Runs runs_of(const Sheet& sheet, const std::string& name) {
  Runs out;
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path != nullptr && ends_with(path->id, name)) out.insert(out.end(), path->runs.begin(), path->runs.end());
  }
  return out;
}

double to_runs(const Point& p, const Runs& runs) {
  double best = 1e9;
  for (const auto& run : runs) best = std::min(best, lines::to_line(p, run));
  return best;
}

double greatest_distance(const Runs& from, const Runs& to) {
  double worst = 0;
  for (const auto& run : from) {
    for (const Point& p : run) worst = std::max(worst, to_runs(p, to));
  }
  return worst;
}

/// Centres of crosses on a page by their names.
std::map<std::string, Point> crosses(const Sheet& sheet) {
  std::map<std::string, Point> out;
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path == nullptr || path->id.find("cross-") == std::string::npos || path->runs.size() != 2) continue;
    const auto& arm = path->runs[0];
    out[path->id] = Point((arm.front().x() + arm.back().x()) / 2, (arm.front().y() + arm.back().y()) / 2);
  }
  return out;
}

/// Every page's place beside the first, found as one joins paper: cross on cross.
std::vector<Point> joined(const std::vector<Page>& set) {
  std::vector<Point> at(set.size(), Point(0, 0));
  std::vector<bool> laid(set.size());
  laid[0] = true;
  for (std::size_t turn = 0; turn < set.size(); ++turn) {
    for (std::size_t a = 0; a < set.size(); ++a) {
      for (std::size_t b = 0; b < set.size(); ++b) {
        if (!laid[a] || laid[b]) continue;
        const auto first = crosses(set[a].sheet), second = crosses(set[b].sheet);
        std::vector<Point> shifts;
        for (const auto& [name, place] : first) {
          const auto same = second.find(name);
          if (name.rfind("end-", 0) == 0 || same == second.end()) continue;
          shifts.emplace_back(at[a].x() + place.x() - same->second.x(), at[a].y() + place.y() - same->second.y());
        }
        if (shifts.size() < 2) continue;  // two crosses, or it could be laid askew
        CHECK(std::hypot(shifts[0].x() - shifts[1].x(), shifts[0].y() - shifts[1].y()) < 0.01);
        at[b] = shifts[0];
        laid[b] = true;
      }
    }
  }
  for (const bool one : laid) CHECK(one);
  return at;
}

std::vector<Page> pages_with(const pages::Pages& all, const std::string& label) {
  std::vector<Page> out;
  for (const Page& page : all.pages) {
    if (std::find(page.holds.begin(), page.holds.end(), label) != page.holds.end()) out.push_back(page);
  }
  return out;
}

struct PaperCase {
  job::Paper paper;
  double width, height;
};
const std::vector<PaperCase>& papers() {
  static const std::vector<PaperCase> out{{job::Paper::both, 210, 279.4},     {job::Paper::a4, 210, 297},
                                          {job::Paper::letter, 215.9, 279.4}, {job::Paper::a3, 297, 420},
                                          {job::Paper::roll_610, 610, 0},     {job::Paper::roll_914, 914, 0}};
  return out;
}

}  // namespace

TEST_CASE("joined by their crosses, pages are the drawing that was cut up") {
  double worst = 0;
  std::size_t cut_up = 0;
  for (const cases::Case& c : cases::all()) {
    for (const bool pair : {true, false}) {
      const pages::Piece piece = piece_of(c, pair);
      for (const job::Paper paper : {job::Paper::both, job::Paper::a3}) {
        job::Job job = c.job;
        job.print.paper = paper;
        INFO(c.name << (pair ? ", pair" : ", card"));
        const auto set = pages_with(pages::make_pages(job, {piece}), piece.label);
        REQUIRE(!set.empty());
        if (set.size() > 1) ++cut_up;
        const auto at = joined(set);
        Runs got, chord;
        for (std::size_t k = 0; k < set.size(); ++k) {
          const double m = job.print.margin;
          for (Runs runs : {runs_of(set[k].sheet, "working-edge"), runs_of(set[k].sheet, "chord-edges")}) {
            for (auto& run : runs) {
              for (Point& p : run) {
                // All of a cut line lies on the part of the paper that prints.
                CHECK((p.x() >= m - 1e-6 && p.x() <= set[k].sheet.width - m + 1e-6));
                CHECK((p.y() >= m - 1e-6 && p.y() <= set[k].sheet.height - m + 1e-6));
                p = Point(p.x() + at[k].x(), p.y() + at[k].y());
              }
              got.push_back(run);
            }
          }
        }
        Runs wanted = runs_of(piece.sheet, "working-edge");
        for (const auto& run : runs_of(piece.sheet, "chord-edges")) wanted.push_back(run);
        // The page may lie a quarter turned: (x, y) -> (y, -x). One corner ties the two together.
        const bool turned = std::any_of(set[0].sheet.items.begin(), set[0].sheet.items.end(), [](const Item& item) {
          const Text* text = std::get_if<Text>(&item);
          return text != nullptr && text->words.rfind("page ", 0) == 0 && text->turn == -90;
        });
        for (auto& run : wanted) {
          for (Point& p : run) p = turned ? Point(p.y(), -p.x()) : p;
        }
        const auto corner = [](const Runs& runs) {
          Point out(1e9, 1e9);
          for (const auto& run : runs) {
            for (const Point& p : run) out = Point(std::min(out.x(), p.x()), std::min(out.y(), p.y()));
          }
          return out;
        };
        const Point a = corner(got), b = corner(wanted);
        for (auto& run : wanted) {
          for (Point& p : run) p = Point(p.x() + a.x() - b.x(), p.y() + a.y() - b.y());
        }
        const double miss = std::max(greatest_distance(wanted, got), greatest_distance(got, wanted));
        CHECK(miss < 0.01);  // seen 1.2e-13
        worst = std::max(worst, miss);
      }
    }
  }
  INFO("worst " << worst);
  CHECK(worst < 0.01);
  CHECK(cut_up > 20);
}

TEST_CASE("every page is the paper's size, readable, with a check bar each way") {
  for (const PaperCase& paper : papers()) {
    for (const cases::Case& c : cases::all()) {
      job::Job job = c.job;
      job.print.paper = paper.paper;
      const auto all = pages::make_pages(job, {piece_of(c, true), piece_of(c, false)});
      for (const Page& page : all.pages) {
        INFO(c.name << " " << page.file);
        CHECK(page.sheet.width == paper.width);
        if (paper.height > 0) CHECK(page.sheet.height == paper.height);
        CHECK(sheets::trouble(page.sheet) == "");
        const auto across = runs_of(page.sheet, "check-across"), along = runs_of(page.sheet, "check-along");
        REQUIRE(across.size() == 1);
        REQUIRE(along.size() == 1);
        CHECK(std::abs(across[0][0].x() - across[0][1].x()) == Approx(100));
        CHECK(std::abs(along[0][0].y() - along[0][1].y()) == Approx(100));
      }
      // No two pages of one name.
      std::set<std::string> names;
      for (const Page& page : all.pages) CHECK(names.insert(page.file).second);
    }
  }
}

TEST_CASE("no joint runs through the first tenth of the chord") {
  for (const cases::Case& c : cases::all()) {
    const pages::Piece piece = piece_of(c, false);
    for (const Page& page : pages_with(pages::make_pages(c.job, {piece}), piece.label)) {
      if (page.columns == 1) continue;
      const auto edge = runs_of(page.sheet, "working-edge");
      const auto mark = runs_of(page.sheet, "leading-edge");
      const auto joints = runs_of(page.sheet, "joint-x1");
      if (mark.empty() || joints.empty()) continue;
      INFO(c.name);
      // Along the page's long side; forward is where the leading edge is.
      const bool turned = std::abs(joints[0][0].y() - joints[0][1].y()) < 1e-6;
      const double nose = turned ? -mark[0][0].y() : mark[0][0].x();
      const double joint = turned ? -joints[0][0].y() : joints[0][0].x();
      CHECK(joint - c.job.print.overlap / 2 >= nose + 0.1 * c.target.chord - 0.01);
    }
  }
}

TEST_CASE("what the rule read of the last print stretches the next") {
  const cases::Case c = cases::all().front();
  job::Job job = c.job;
  const pages::Piece piece = piece_of(c, true);
  // A printer that makes 100 mm of 98.0 across and 101.5 along: drawn so much longer and shorter, 100 comes out.
  job.print.ruler_across = 98.0;
  job.print.ruler_along = 101.5;
  for (const Page& page : pages::make_pages(job, {piece}).pages) {
    const auto across = runs_of(page.sheet, "check-across"), along = runs_of(page.sheet, "check-along");
    CHECK(std::abs(across[0][0].x() - across[0][1].x()) * 0.980 == Approx(100));
    CHECK(std::abs(along[0][0].y() - along[0][1].y()) * 1.015 == Approx(100));
    CHECK(page.sheet.width == 210);
    CHECK(sheets::trouble(page.sheet) == "");
  }
  // And the chord with it, which lies along the paper on a lengthwise page.
  double chord = 0;
  for (const Page& page : pages_with(pages::make_pages(job, {piece}), piece.label)) {
    for (const auto& run : runs_of(page.sheet, "chord-line")) {
      chord = std::max(chord, std::abs(run.front().y() - run.back().y()));
    }
  }
  CHECK(chord > 100);
}

TEST_CASE("what is read and not cut along stays whole on one page, on any paper") {
  // By hand, A4 with 25 mm of margin and a ruler that reads 90 each way: 160 by 247 mm of paper are left, drawn so much
  // larger that they come out as 144 by 222.3. Less 10 for a bar and 16 for the strip: 134 by 206.3 upright, 212.3 by 128
  // lying.
  job::Print least;
  least.paper = job::Paper::a4;
  least.margin = 25;
  least.ruler_across = least.ruler_along = 90;
  const PaperRoom room = pages::room_to_read(least);
  CHECK(room.long_side == Approx(206.3));
  CHECK(room.short_side == Approx(128));
  CHECK(room.table_height == Approx(128));
  job::Job job = cases::all().front().job;
  for (const PaperCase& paper : papers()) {
    for (const double margin : {0.0, 10.0, 13.0, 20.0, 25.0}) {
      for (const double ruler : {90.0, 100.0, 110.0}) {
        for (const double overlap : {5.0, 50.0}) {
          INFO(static_cast<int>(paper.paper) << " margin " << margin << " ruler " << ruler << " overlap " << overlap);
          job.print.paper = paper.paper;
          job.print.margin = margin;
          job.print.overlap = overlap;
          job.print.ruler_across = job.print.ruler_along = ruler;
          const PaperRoom takes = pages::room_to_read(job.print);
          std::vector<pages::Piece> pieces(3);
          pieces[0] = {"upright map", Sheet{"", takes.short_side, takes.long_side, {}}, {}, {}};
          pieces[1] = {"lying map", Sheet{"", takes.long_side, takes.short_side, {}}, {}, {}};
          pieces[2] = {"table", Sheet{"", 180, takes.table_height, {}}, {}, {}};
          for (const Page& page : pages::make_pages(job, pieces).pages) CHECK(page.rows * page.columns == 1);
        }
      }
    }
  }
}

TEST_CASE("2026-11-27: how far apart the end crosses are is told whole, on any paper") {
  // It ended in "454.0 m..." on upright Letter, for a job in inches. By hand: the crosses stand 5 mm in from the ends.
  job::Job job = cases::all().front().job;
  job.units = LengthUnit::inch;
  const std::vector<pages::Piece> pieces{{"long", Sheet{"", 4064.5, 100, {}}, {}, {}},
                                         {"both ways", Sheet{"", 2464, 1234.5, {}}, {}, {}}};
  for (const PaperCase& paper : papers()) {
    for (const double margin : {0.0, 10.0, 25.0}) {
      for (const double ruler : {90.0, 100.0, 110.0}) {
        job.print.paper = paper.paper;
        job.print.margin = margin;
        job.print.ruler_across = job.print.ruler_along = ruler;
        for (const Page& page : pages::make_pages(job, pieces).pages) {
          if (page.rows * page.columns == 1) continue;
          INFO(page.file << ", paper " << static_cast<int>(paper.paper) << " margin " << margin << " ruler " << ruler);
          CHECK(sheets::trouble(page.sheet) == "");
          std::string words;
          for (const Item& item : page.sheet.items) {
            if (const Text* text = std::get_if<Text>(&item)) words += text->words + " ";
          }
          const bool is_long = page.holds.at(0) == "long";
          if (page.columns > 1) CHECK(has(words, is_long ? " 4054.5 mm" : " 2454.0 mm"));
          if (page.rows > 1) CHECK(has(words, is_long ? " 90.0 mm" : " 1224.5 mm"));
        }
      }
    }
  }
}

TEST_CASE("the cover lists every page and prints the cautions") {
  const cases::Case c = cases::all().front();
  std::vector<pages::Piece> pieces;
  for (int k = 0; k < 60; ++k) {
    pieces.push_back(piece_of(c, true));
    pieces.back().label = "piece number " + std::to_string(k);
  }
  const auto all = pages::make_pages(c.job, pieces);
  std::string words;
  std::size_t covers = 0;
  for (const Page& page : all.pages) {
    if (page.holds.at(0).rfind("cover", 0) != 0) continue;
    ++covers;
    CHECK(sheets::trouble(page.sheet) == "");
    for (const Item& item : page.sheet.items) {
      if (const Text* text = std::get_if<Text>(&item)) words += text->words + "\n";
    }
  }
  CHECK(covers >= 2);
  for (int k = 0; k < 60; ++k) CHECK(words.find("piece number " + std::to_string(k)) != std::string::npos);
  for (std::size_t n = covers + 1; n <= all.pages.size(); ++n) {
    CHECK(words.find("page " + std::to_string(n) + ":") != std::string::npos);
  }
  for (const char* said : {"sensitises for life", "lead", "hanging rudder", "surveyor", "qualified designer", "actual size"}) {
    CHECK(words.find(said) != std::string::npos);
  }
}

TEST_CASE("the cover tells which templates have no pages, and how to get them") {
  const cases::Case c = cases::all().front();
  const auto words_of = [&](const pages::Kinds& kinds) {
    std::string out;
    const auto all = pages::make_pages(c.job, {piece_of(c, true)}, kinds);
    for (const Page& page : all.pages) {
      CHECK(sheets::trouble(page.sheet) == "");
      if (page.holds.at(0).rfind("cover", 0) != 0) continue;
      for (const Item& item : page.sheet.items) {
        if (const Text* text = std::get_if<Text>(&item)) out += text->words + " ";
      }
    }
    return out;
  };
  const std::string some = words_of({{"bare"}, {"final", "clearance"}}), none = words_of({});
  CHECK(some.find("also holds: final, clearance (stands 3.0 mm off)") != std::string::npos);
  CHECK(some.find("\"pages_of\": [\"bare\", \"final\", \"clearance\"]") != std::string::npos);
  CHECK(none.find("pages_of") == std::string::npos);
}

TEST_CASE("names that could harm stay harmless") {
  const cases::Case c = cases::all().front();
  pages::Piece piece = piece_of(c, true);
  piece.label = cases::long_name();
  for (const Page& page : pages::make_pages(c.job, {piece}).pages) {
    CHECK(page.file.size() < 100);
    CHECK(page.file.find_first_of("<>&\"'\\ ") == std::string::npos);
    CHECK(std::count(page.file.begin(), page.file.end(), '/') == 1);
    CHECK(sheets::trouble(page.sheet) == "");
  }
}

TEST_CASE("2026-11-26: pages come in the order of their pieces, whether these are cut up or share a page") {
  const auto blank = [](const char* label, double width, double height) {
    pages::Piece piece;
    piece.label = label;
    piece.sheet.width = width;
    piece.sheet.height = height;
    return piece;
  };
  job::Job job;
  const auto all =
      pages::make_pages(job, {blank("one", 400, 60), blank("two", 60, 60), blank("three", 60, 70), blank("four", 500, 60)});
  std::vector<std::string> order;
  for (std::size_t k = 1; k < all.pages.size(); ++k) {
    if (order.empty() || order.back() != all.pages[k].holds.front()) order.push_back(all.pages[k].holds.front());
  }
  CHECK(order == std::vector<std::string>{"one", "two", "four"});  // two and three share a page
}
