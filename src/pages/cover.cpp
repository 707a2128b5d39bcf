#include "pages/cover.hpp"

#include <algorithm>

#include "base/cautions.hpp"
#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/nose_gauge.hpp"

namespace fairblade::pages {
namespace {

using drawing::Column;

constexpr double type = 3, list_type = 2.8, small_list_type = 2.4;

Draft blank(const std::string& label) {
  Draft out;
  out.holds = {label};
  out.name = "cover";
  return out;
}

/// Which templates are files alone, and the line of the job file that would bring them onto pages.
void write_without_pages(const job::Job& job, const Kinds& kinds, Column& column) {
  if (kinds.without.empty()) return;
  std::vector<std::string> all = kinds.with_pages;
  all.insert(all.end(), kinds.without.begin(), kinds.without.end());
  column.skip(1);
  column.paragraph(
      "To save paper these pages are not of every template. The folder templates also holds: " + joined(kinds.without) +
          (kinds.without.back() == "clearance" ? " (stands " + in_unit(job.print.clearance, job.units) + " off)" : "") +
          ". For pages of all of them write \"print\": { \"pages_of\": [" + joined(all, "\"") + "] } into the job file.",
      type);
}

void write_head(const job::Job& job, bool browser_decides, const Kinds& kinds, Column& column) {
  column.line(job.name, 6.5, true);
  column.line("Templates and sheets to print, cut and glue", 4.2);
  column.skip(3);
  column.line("How to print", 4.2, true);
  column.paragraph(
      "Print at actual size: 100 %, \"fit to page\" off. Print this page first and lay a steel rule on both check bars, "
      "the one along the foot and the one up the side. Each must measure " +
          drawing::check_bar_words(job.units) +
          ". If they do not, write what the rule "
          "says, in mm, into the job file, across the paper first: \"print\": { \"ruler_reads\": [99.6, 100.4] } (into a CSV, "
          "above its header: print.ruler_reads,99.6,100.4), plan again, and the next print is true. A bar near 94 mm means that "
          "the printer shrank the page to fit: turn that off instead.",
      type);
  column.skip(1);
  column.paragraph(
      "A template that takes several pages: cut along the dashed joint line of one page, lay it over the same line of "
      "its neighbour until the crosses lie on each other, and glue dry. Lay a steel rule along the chord line (long and "
      "short dashes): it must run straight through. Then check the end crosses against the length on every page. "
      "Paper moves with damp: transfer it to card the same day.",
      type);
  column.skip(1);
  column.paragraph(
      "The heavy line of a template is the shape: cut along it. The card lies against the face that it names, on its station's "
      "line, square to the stock, printed side up. A leading-edge gauge has two halves: cut both along the heavy lines, drill " +
          trimmed(drawing::bolt_hole, 1) + " mm on the crosses and bolt the horns together. The crosses lie on the chord line.",
      type);
  if (browser_decides) {
    column.skip(1);
    column.paragraph("These pages fit both A4 and Letter: use whichever is in the printer.", type);
  }
  write_without_pages(job, kinds, column);
}

void write_cautions(Column& column) {
  column.skip(3);
  column.line("Cautions", 4.2, true);
  column.paragraph(cautions_first, type);
  for (const std::string_view caution : cautions) column.paragraph("- " + std::string(caution), type);
}

std::string entry(const Draft& page, std::size_t number) {
  std::string out = "page " + std::to_string(number) + ": ";
  for (std::size_t k = 0; k < page.holds.size(); ++k) out += (k > 0 ? "; " : "") + page.holds[k];
  if (page.rows * page.columns > 1) {
    out += " (row " + std::to_string(page.row) + ", column " + std::to_string(page.column) + ")";
  }
  return out;
}

/// The list in type of that size, its numbers for so many covers.
std::vector<Draft> written(const job::Job& job, const Paper& paper, const std::vector<Draft>& pages, const Kinds& kinds,
                           std::size_t covers, double list_type) {
  const Layout layout(job.print, paper, false);
  const double room = layout.window_width() - 4, floor = layout.window_height() - 4;
  std::vector<Draft> out{blank("cover")};
  double y = 0;
  {
    Column column(out.back().content, 2, 2, room);
    write_head(job, paper.page_size.empty(), kinds, column);
    write_cautions(column);
    y = column.bottom() + 3;
  }
  for (std::size_t k = 0; k <= pages.size(); ++k) {
    const auto lines = k == 0 ? std::vector<std::string>{"What is here"}
                              : drawing::wrapped(entry(pages[k - 1], k + covers), list_type, false, room);
    const double size = k == 0 ? 4.2 : list_type;
    if (y + drawing::line_height(size) * static_cast<double>(lines.size() + (k == 0 ? 1 : 0)) > floor) {
      out.push_back(blank("cover, continued"));
      y = 2;
    }
    Column column(out.back().content, 2, y, room);
    for (const std::string& line : lines) column.line(line, size, k == 0);
    y = column.bottom() + 0.6;
  }
  return out;
}

}  // namespace

std::vector<Draft> covers_of(const job::Job& job, const Paper& paper, const std::vector<Draft>& pages, const Kinds& kinds) {
  const auto settled = [&](double size) {
    // A second cover moves every number on by one, which may lengthen the list; it settles at once or soon.
    std::size_t count = 1;
    for (int turn = 0; turn < 5; ++turn) {
      auto covers = written(job, paper, pages, kinds, count, size);
      if (covers.size() == count) return covers;
      count = covers.size();
    }
    return written(job, paper, pages, kinds, count, size);
  };
  auto covers = settled(list_type);
  if (covers.size() == 1) return covers;
  auto smaller = settled(small_list_type);  // rather than a page for the last few lines
  return smaller.size() < covers.size() ? std::move(smaller) : std::move(covers);
}

}  // namespace fairblade::pages
