// What a printer gets: the drawings by rsvg-convert to PDF, measured in the PDF's own vectors. pdftocairo reads them
// out; it is told not to fit the page to whole points, and what it shifts the page by is taken out again.
#include <algorithm>
#include <cmath>
#include <sstream>

#include "catch.hpp"
#include "drawing/cases.hpp"
#include "emit/svg.hpp"
#include "emit/tools.hpp"

using namespace fairblade;
using namespace fairblade::drawing;

namespace {

constexpr double mm_per_point = 25.4 / 72;
using Run = std::vector<Point>;

std::string attribute(const std::string& element, const std::string& name) {
  const std::size_t from = element.find(" " + name + "=\"");
  if (from == std::string::npos) return {};
  const std::size_t begin = from + name.size() + 3;
  return element.substr(begin, element.find('"', begin) - begin);
}

/// Stroked polylines on the page, in mm.
std::vector<Run> strokes(const std::string& svg) {
  std::vector<Run> out;
  for (std::size_t at = svg.find("<path"); at != std::string::npos; at = svg.find("<path", at + 1)) {
    const std::string element = svg.substr(at, svg.find("/>", at) - at);
    if (element.find("stroke:none") != std::string::npos) continue;
    std::string transform = attribute(element, "transform");
    double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
    if (transform.rfind("matrix(", 0) == 0) {
      std::replace(transform.begin(), transform.end(), ',', ' ');
      std::istringstream(transform.substr(7)) >> a >> b >> c >> d >> e >> f;
    }
    std::istringstream data(attribute(element, "d"));
    for (std::string op; data >> op;) {
      if (op == "M") out.emplace_back();
      double x = 0, y = 0;
      if ((op == "M" || op == "L") && data >> x >> y) {
        out.back().emplace_back((a * x + c * y + e) * mm_per_point, (b * x + d * y + f) * mm_per_point);
      }
    }
  }
  return out;
}

/// How far the run of the page is from what was drawn when both begin at the same place; huge when it is another run.
double misfit(const Run& drawn, const Run& page) {
  if (drawn.size() != page.size()) return 1e9;
  double worst = 0;
  for (std::size_t k = 0; k < drawn.size(); ++k) {
    worst = std::max(worst, std::hypot((page[k].x() - page[0].x()) - (drawn[k].x() - drawn[0].x()),
                                       (page[k].y() - page[0].y()) - (drawn[k].y() - drawn[0].y())));
  }
  return worst;
}

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
      sheets.push_back({draw_template(c.job, c.measured, c.target, face),
                        {"check-across", "check-along", "chord-length", "working-edge"}});
    }
    for (const auto& [sheet, ids] : sheets) {
      INFO(c.name << ", " << sheet.title);
      tools::put(scratch / "drawing.svg", emit::to_svg(sheet));
      REQUIRE(tools::run("rsvg-convert -f pdf -o " + quoted("drawing.pdf") + " " + quoted("drawing.svg")));
      REQUIRE(tools::run("pdftocairo -svg -noshrink " + quoted("drawing.pdf") + " " + quoted("page.svg")));
      const std::string page = tools::get(scratch / "page.svg");
      // The page is the sheet.
      CHECK(std::stod(attribute(page.substr(page.find("<svg")), "width")) * mm_per_point ==
            Approx(sheet.width).margin(0.01));
      const std::vector<Run> runs = strokes(page);
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
