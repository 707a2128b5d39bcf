// A page of a PDF read back: its stroked polylines in mm. pdftocairo reads the PDF's own vectors out; it is told not to fit
// the page to whole points, and what it shifts the page by is taken out again.
#pragma once
#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>
#include <vector>

#include "base/geometry.hpp"
#include "emit/tools.hpp"

namespace pdf {

using fairblade::Point;
constexpr double mm_per_point = 25.4 / 72;
using Run = std::vector<Point>;

inline std::string attribute(const std::string& element, const std::string& name) {
  const std::size_t from = element.find(" " + name + "=\"");
  if (from == std::string::npos) return {};
  const std::size_t begin = from + name.size() + 3;
  return element.substr(begin, element.find('"', begin) - begin);
}

/// Stroked polylines on the page, in mm.
inline std::vector<Run> strokes(const std::string& svg) {
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
inline double misfit(const Run& drawn, const Run& page) {
  if (drawn.size() != page.size()) return 1e9;
  double worst = 0;
  for (std::size_t k = 0; k < drawn.size(); ++k) {
    worst = std::max(worst, std::hypot((page[k].x() - page[0].x()) - (drawn[k].x() - drawn[0].x()),
                                       (page[k].y() - page[0].y()) - (drawn[k].y() - drawn[0].y())));
  }
  return worst;
}

/// A page as SVG, which `strokes` reads; empty where the PDF has no such page.
inline std::string page_of(const tools::Scratch& scratch, const std::string& file, int page) {
  const std::string number = std::to_string(page), out = (scratch / "page.svg").string();
  std::filesystem::remove(out);
  const std::string what = " '" + (scratch / file).string() + "' '" + out + "'";
  if (!tools::run("pdftocairo -svg -noshrink -f " + number + " -l " + number + what)) return {};
  return tools::get(out);
}
/// mm, of a page read by page_of.
inline Point size_of(const std::string& page) {
  const std::string head = page.substr(page.find("<svg"), 400);
  return {std::stod(attribute(head, "width")) * mm_per_point, std::stod(attribute(head, "height")) * mm_per_point};
}

}  // namespace pdf
