// print.html through a real browser: one PDF page per sheet, of the right size, and true to 0.1 mm in the PDF's own
// vectors, placed on the paper where they were drawn.
#include <algorithm>
#include <cmath>

#include "catch.hpp"
#include "drawing/cases.hpp"
#include "emit/pdf.hpp"
#include "emit/print_html.hpp"
#include "emit/svg.hpp"
#include "pages/pages.hpp"

using namespace fairblade;
using namespace fairblade::drawing;

namespace {

pages::Pages pages_of(job::Paper paper, const std::vector<cases::Case>& which) {
  std::vector<pages::Piece> pieces;
  for (const cases::Case& c : which) {
    const auto surface = fill::stage_section(c.target, {fill::StageKind::final, 0, ""});
    pieces.push_back({c.name, draw_pair({c.job, c.target, *surface, section::Face::port, false, 0}).sheet, {}, {}});
  }
  job::Job job = which.front().job;
  job.print.paper = paper;
  return pages::make_pages(job, pieces);
}

bool matters(const std::string& id) {
  for (const char* part : {"check-a", "chord-length", "cross-", "working-edge"}) {  // none of them dashed
    if (id.find(part) != std::string::npos) return true;
  }
  return false;
}

/// How far a drawn run is from where it must be on a page that lies `shift` off as a whole.
double misplaced(const std::vector<Point>& drawn, const pdf::Run& page, Point shift) {
  if (drawn.size() != page.size()) return 1e9;
  double worst = 0;
  for (std::size_t k = 0; k < drawn.size(); ++k) {
    worst = std::max(worst, std::hypot(drawn[k].x() + shift.x() - page[k].x(), drawn[k].y() + shift.y() - page[k].y()));
  }
  return worst;
}

/// How the browser lays the whole sheet on the PDF's page, whose box is of whole points: read off the check bar's end.
Point shift_of(const Sheet& sheet, const std::vector<pdf::Run>& runs) {
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path == nullptr || path->id != "check-across") continue;
    for (const pdf::Run& seen : runs) {
      if (misplaced(path->runs.at(0), seen, {0, 0}) < 0.3) {
        return {seen[0].x() - path->runs[0][0].x(), seen[0].y() - path->runs[0][0].y()};
      }
    }
  }
  return {1e9, 1e9};
}

struct Printed {
  int pages = 0;
  double width = 0, height = 0, worst = 0, shift = 0;
  int checked = 0;
};

std::vector<std::shared_ptr<const Sheet>> sheets_of(const pages::Pages& set) {
  std::vector<std::shared_ptr<const Sheet>> out;
  for (const pages::Page& page : set.pages) out.push_back(std::make_shared<const Sheet>(page.sheet));
  return out;
}

/// The set printed by the browser, and every page measured.
Printed printed(const tools::Scratch& scratch, const pages::Pages& set) {
  const auto sheets = sheets_of(set);
  tools::put(scratch / "print.html", whole(emit::print_html("print.html", "a test", sheets, set.page_size)));
  const std::string folder = scratch.path().string();
  const bool ran = tools::run("chromium --headless --no-sandbox --disable-gpu --no-pdf-header-footer --user-data-dir='" + folder +
                              "/browser' --print-to-pdf='" + folder + "/print.pdf' 'file://" + folder + "/print.html'");
  Printed out;
  if (!ran || !std::filesystem::exists(scratch / "print.pdf")) return out;
  for (std::size_t k = 0; k < sheets.size(); ++k) {
    const std::string page = pdf::page_of(scratch, "print.pdf", static_cast<int>(k) + 1);
    if (page.empty()) return out;
    ++out.pages;
    const Point size = pdf::size_of(page);
    out.width = size.x();
    out.height = size.y();
    const auto runs = pdf::strokes(page);
    const Point shift = shift_of(*sheets[k], runs);
    out.shift = std::max(out.shift, std::hypot(shift.x(), shift.y()));
    for (const Item& item : sheets[k]->items) {
      const Path* path = std::get_if<Path>(&item);
      if (path == nullptr || path->pen == Pen::none || !matters(path->id)) continue;
      for (const auto& run : path->runs) {
        double best = 1e9;
        for (const pdf::Run& seen : runs) best = std::min(best, misplaced(run, seen, shift));
        out.worst = std::max(out.worst, best);
        ++out.checked;
      }
    }
  }
  // One more page would be one too many.
  if (!pdf::page_of(scratch, "print.pdf", static_cast<int>(sheets.size()) + 1).empty()) ++out.pages;
  return out;
}

std::vector<cases::Case> some_cases() {
  std::vector<cases::Case> out;
  for (const cases::Case& c : cases::all()) {
    if (c.name == "usual" || c.name == "chord-1200" || c.name == "long-names-420" || c.name == "chord-90" ||
        c.name == "extended") {
      out.push_back(c);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("a browser prints one page per sheet, of the paper's size, true to 0.1 mm") {
  struct Row {
    job::Paper paper;
    double width, height;
  };
  const auto which = some_cases();
  REQUIRE(which.size() == 5);
  for (const Row& row : {Row{job::Paper::a4, 210, 297}, Row{job::Paper::letter, 215.9, 279.4}, Row{job::Paper::a3, 297, 420},
                         Row{job::Paper::roll_610, 610, 0}}) {
    const tools::Scratch scratch;
    const auto set = pages_of(row.paper, which);
    const Printed out = printed(scratch, set);
    INFO("paper " << static_cast<int>(row.paper) << ": chromium must be installed; worst " << out.worst << ", shift "
                  << out.shift);
    CHECK(out.pages == static_cast<int>(set.pages.size()));
    CHECK(out.width == Approx(row.width).margin(0.5));
    if (row.height > 0) CHECK(out.height == Approx(row.height).margin(0.5));
    CHECK(out.checked > 20);
    CHECK(out.worst < 0.1);  // seen 0.0065
    CHECK(out.shift < 0.2);  // seen 0.173
  }
}

TEST_CASE("pages for A4 and Letter both: the browser's own paper, one page per sheet") {
  const tools::Scratch scratch;
  const auto set = pages_of(job::Paper::both, some_cases());
  for (const pages::Page& page : set.pages) {
    CHECK(page.sheet.width <= 210);
    CHECK(page.sheet.height <= 279.4);
  }
  const Printed out = printed(scratch, set);
  CHECK(out.pages == static_cast<int>(set.pages.size()));
  // Letter is what headless Chromium has in its tray.
  CHECK(out.width == Approx(215.9).margin(0.5));
  CHECK(out.worst < 0.1);
  CHECK(out.shift < 0.2);
}

TEST_CASE("the print file needs nothing else and is well formed") {
  const tools::Scratch scratch;
  const auto set = pages_of(job::Paper::a4, some_cases());
  const std::string html = whole(emit::print_html("print.html", cases::long_name(), sheets_of(set), set.page_size));
  tools::put(scratch / "print.xml", html);
  CHECK(tools::run("xmllint --noout --nonet '" + (scratch / "print.xml").string() + "'"));
  for (const char* bad : {"<script", "http://", "https://", "url(", "@import", "<link", "<img"}) {
    std::string rest = html;
    for (std::size_t at = rest.find("http://www.w3.org/2000/svg"); at != std::string::npos;
         at = rest.find("http://www.w3.org/2000/svg")) {
      rest.erase(at, 26);  // the name of the SVG language is no reference
    }
    INFO(bad);
    CHECK(rest.find(bad) == std::string::npos);
  }
  // Names are told apart by page.
  CHECK(html.find("id=\"p1-check-across\"") != std::string::npos);
  CHECK(html.find("id=\"p2-check-across\"") != std::string::npos);
}
