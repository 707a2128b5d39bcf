// What a printer gets: the drawings by rsvg-convert to PDF, measured in the PDF's own vectors.
#include "emit/pdf.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

#include "catch.hpp"
#include "drawing/cases.hpp"
#include "emit/svg.hpp"

using namespace fairblade;
using namespace fairblade::drawing;

namespace {

using pdf::misfit;
using pdf::Run;

const Run& run_of(const Sheet& sheet, const std::string& id) {
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path != nullptr && path->id == id) return path->runs.at(0);
  }
  throw std::runtime_error("no path " + id);
}

}  // namespace

TEST_CASE("printed through PDF, check bars, chord and working edge measure right to 0.1 mm") {
  tools::Scratch scratch;
  const auto quoted = [&](const std::string& name) { return "'" + (scratch / name).string() + "'"; };
  double worst = 0;
  for (const cases::Case& c : cases::all()) {
    const bool typical = c.name == "usual" || c.name == "chord-1200" || c.name == "chord-90" || c.name == "extended";
    if (!typical) continue;
    std::vector<std::pair<Sheet, std::vector<std::string>>> sheets;
    sheets.push_back({draw_section(c.job, c.measured, c.target, c.change),
                      {"check-across", "check-along", "target-port", "target-starboard"}});
    for (const auto face : {section::Face::port, section::Face::starboard}) {
      sheets.push_back({cases::template_of(c, face), {"check-across", "check-along", "chord-length", "working-edge"}});
    }
    for (const auto& [sheet, ids] : sheets) {
      INFO(c.name << ", " << sheet.title);
      tools::put(scratch / "drawing.svg", emit::to_svg(sheet));
      REQUIRE(tools::run("rsvg-convert -f pdf -o " + quoted("drawing.pdf") + " " + quoted("drawing.svg")));
      const std::string page = pdf::page_of(scratch, "drawing.pdf", 1);
      REQUIRE(!page.empty());
      CHECK(pdf::size_of(page).x() == Approx(sheet.width).margin(0.01));  // the page is the sheet
      const std::vector<Run> runs = pdf::strokes(page);
      REQUIRE(runs.size() > 10);
      for (const std::string& id : ids) {
        double best = 1e9;
        for (const Run& run : runs) best = std::min(best, misfit(run_of(sheet, id), run));
        INFO(id << " is out by " << best << " mm");
        CHECK(best < 0.1);
        worst = std::max(worst, best);
      }
    }
  }
  INFO("worst " << worst);
  CHECK(worst < 0.02);  // seen 0.0029
}
