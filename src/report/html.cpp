#include "report/html.hpp"

#include <algorithm>
#include <array>
#include <cassert>

#include "base/text.hpp"
#include "report/layout.hpp"

namespace fairblade::report::html {

std::string text(std::string_view words) { return xml_escaped(on_one_line(words)); }

std::string paragraph(std::string_view words) { return "<p>" + text(words) + "</p>\n"; }

std::string paragraph(std::string_view words, std::string_view style) {
  return "<p class=\"" + std::string(style) + "\">" + text(words) + "</p>\n";
}

std::string list(const std::vector<std::string>& words) {
  if (words.empty()) return {};
  std::string out = "<ul>\n";
  for (const std::string& one : words) out += "<li>" + text(one) + "</li>\n";
  return out + "</ul>\n";
}

std::string part(std::string_view id, std::string_view heading, std::string_view html, bool new_page) {
  const std::string name(id);
  return "<section id=\"" + name + "\"" + (new_page ? " class=\"new-page\"" : "") + " aria-labelledby=\"" + name +
         "-heading\">\n<h2 id=\"" + name + "-heading\">" + text(heading) + "</h2>\n" + std::string(html) + "</section>\n";
}

std::string subheading(std::string_view words) { return "<h3>" + text(words) + "</h3>\n"; }

Cell words(std::string_view words) { return {text(words), false}; }

Cell number(std::string_view words) { return {text(words), true}; }

Cell length(double mm, LengthUnit unit) {
  std::string out = number_in_unit(mm, LengthUnit::mm);
  if (unit != LengthUnit::mm) out += "<br/><small>" + in_unit(mm, unit) + "</small>";
  return {out, true};
}

Table::Table(std::string_view caption, std::vector<std::string> columns, Kind kind)
    : caption_(caption), columns_(std::move(columns)), kind_(kind) {}

void Table::row(std::vector<Cell> cells) {
  assert(cells.size() == columns_.size());
  rows_.push_back(std::move(cells));
}

std::string Table::html() const {
  if (rows_.empty()) return {};
  const bool wide = kind_ == Kind::wide;
  std::string out =
      std::string("<table class=\"") + (wide ? "wide" : "narrow") + "\">\n<caption>" + text(caption_) + "</caption>\n<thead><tr>";
  for (std::size_t k = 0; k < columns_.size(); ++k) {
    const bool numbers = std::all_of(rows_.begin(), rows_.end(), [&](const auto& row) { return row[k].number; });
    out += std::string("<th scope=\"col\"") + (numbers ? " class=\"n\"" : "") + ">" + text(columns_[k]) + "</th>";
  }
  out += "</tr></thead>\n<tbody>\n";
  for (const auto& row : rows_) {
    out += "<tr>";
    for (std::size_t k = 0; k < row.size(); ++k) {
      const std::string tag = k == 0 ? "th" : "td";
      out += "<" + tag + (k == 0 ? " scope=\"row\"" : "") + (row[k].number ? " class=\"n\"" : "");
      if (wide && (k > 0 || columns_[0] == "Station")) out += " data-of=\"" + text(columns_[k]) + "\"";
      out += "><span>" + row[k].html + "</span></" + tag + ">";
    }
    out += "</tr>\n";
  }
  return out + "</tbody>\n</table>\n";
}

std::string inline_svg(std::string_view svg, std::string_view prefix) {
  const std::size_t begin = svg.find("<svg");
  if (begin == std::string_view::npos) return {};
  svg.remove_prefix(begin);
  // Ids are marked so in our drawings' tags, and referred to so; words never hold a bare quote or angle.
  static constexpr std::array<std::string_view, 4> before{" id=\"", "href=\"#", "url(#", " aria-labelledby=\""};
  std::string out;
  out.reserve(svg.size() + svg.size() / 8);
  std::size_t copied = 0;
  for (std::size_t tag = svg.find('<'); tag != std::string_view::npos; tag = svg.find('<', tag)) {
    const std::size_t end = std::min(svg.find('>', tag), svg.size());
    while (tag < end) {
      tag = svg.find_first_of(" hu", tag);  // as the marks begin
      if (tag >= end) break;
      const auto here = svg.substr(tag);
      const auto mark = std::find_if(before.begin(), before.end(), [&](auto one) { return here.substr(0, one.size()) == one; });
      tag += mark == before.end() ? 1 : mark->size();
      if (mark == before.end()) continue;
      out.append(svg.substr(copied, tag - copied)).append(prefix);
      copied = tag;
    }
    tag = end;
  }
  out += svg.substr(copied);
  out.insert(4, " role=\"img\"");
  return out;
}

std::string figure(std::string_view svg, std::string_view prefix, std::string_view caption) {
  return "<figure>\n" + inline_svg(svg, prefix) + "<figcaption>" + text(caption) + "</figcaption>\n</figure>\n";
}

std::string whole_blade(std::string_view svg, std::string_view narrow_svg, std::string_view prefix, std::string_view caption) {
  const std::string name(prefix);
  if (narrow_svg.empty()) return "<div class=\"whole-blade\">\n" + figure(svg, name, caption) + "</div>\n";
  return "<div class=\"whole-blade\">\n<div class=\"wide-only\">\n" + figure(svg, name, caption) +
         "</div>\n<div class=\"narrow-only\">\n" + figure(narrow_svg, name + "n-", caption) + "</div>\n</div>\n";
}

}  // namespace fairblade::report::html
