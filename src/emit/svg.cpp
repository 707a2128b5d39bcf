#include "emit/svg.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "base/text.hpp"

namespace fairblade::emit {
namespace {

using drawing::Anchor;
using drawing::Fill;
using drawing::Path;
using drawing::Pen;
using drawing::Text;

void append_number(std::string& out, double mm) {
  assert(std::isfinite(mm));
  append_trimmed(out, mm, 3);
}
std::string number(double mm) {
  std::string out;
  append_number(out, mm);
  return out;
}

const char* pen_attributes(Pen pen) {
  switch (pen) {
    case Pen::cut: return " stroke-width=\"0.5\" stroke-linecap=\"round\"";
    case Pen::outline: return " stroke-width=\"0.35\"";
    case Pen::measured: return " stroke-width=\"0.25\"";
    case Pen::guide: return " stroke-width=\"0.18\" stroke-dasharray=\"2 1.2\"";
    case Pen::datum: return " stroke-width=\"0.25\" stroke-dasharray=\"9 1.5 1.5 1.5\"";
    case Pen::hatch:
    case Pen::dimension: return " stroke-width=\"0.13\"";
    case Pen::none: return " stroke=\"none\"";
  }
  return "";
}

const char* fill_attributes(Fill fill) {
  switch (fill) {
    case Fill::none: return "";
    case Fill::white: return " fill=\"#fff\"";
    case Fill::light: return " fill=\"#d4d4d4\"";
    case Fill::dark: return " fill=\"#000\"";
  }
  return "";
}

void append(std::string& out, const Path& path, const std::string& prefix) {
  const auto drawn = [](const std::vector<Point>& run) { return run.size() >= 2; };
  if (std::none_of(path.runs.begin(), path.runs.end(), drawn)) return;
  out += "<path";
  if (!path.id.empty()) out.append(" id=\"").append(xml_escaped(prefix + path.id)).append("\"");
  out += pen_attributes(path.pen);
  out += fill_attributes(path.fill);
  out += " d=\"";
  bool begun = false;
  for (const std::vector<Point>& run : path.runs) {
    if (!drawn(run)) continue;
    for (std::size_t k = 0; k < run.size(); ++k) {
      out += k == 0 ? (begun ? " M" : "M") : k == 1 ? " L" : " ";
      append_number(out, run[k].x());
      out += ',';
      append_number(out, run[k].y());
    }
    if (path.closed) out += " Z";
    begun = true;
  }
  out += "\"/>\n";
}

void append(std::string& out, const Text& text) {
  if (text.words.empty()) return;
  const std::string x = number(text.at.x()), y = number(text.at.y());
  const auto attribute = [&out](const char* name, const std::string& value) {
    out.append(" ").append(name).append("=\"").append(value).append("\"");
  };
  out += "<text";
  attribute("x", x);
  attribute("y", y);
  attribute("font-size", number(text.size));
  if (text.anchor == Anchor::middle) attribute("text-anchor", "middle");
  if (text.anchor == Anchor::end) attribute("text-anchor", "end");
  if (text.bold) attribute("font-weight", "bold");
  if (text.turn != 0) attribute("transform", "rotate(" + number(text.turn) + " " + x + " " + y + ")");
  out.append(">").append(xml_escaped(text.words)).append("</text>\n");
}

/// Bytes that the element may take: to spare it growing.
std::size_t about(const drawing::Sheet& sheet) {
  constexpr std::size_t of_item = 140, of_point = 16;
  std::size_t out = 400;
  for (const drawing::Item& item : sheet.items) {
    out += of_item;
    if (const Path* path = std::get_if<Path>(&item)) {
      for (const auto& run : path->runs) out += of_point * run.size();
    }
  }
  return out;
}

void append_element(std::string& out, const drawing::Sheet& sheet, const std::string& prefix) {
  const std::string width = number(sheet.width), height = number(sheet.height);
  out += "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" + width + "mm\" height=\"" + height +
         "mm\" viewBox=\"0 0 " + width + " " + height + "\">\n";
  out += "<title>" + xml_escaped(sheet.title) + "</title>\n";
  out += "<rect width=\"" + width + "\" height=\"" + height + "\" fill=\"#fff\"/>\n";
  std::string_view open;
  // Runs of texts and runs of paths share a group each, which carries what they have in common.
  const auto group = [&](std::string_view kind, std::string_view attributes) {
    if (open == kind) return;
    if (!open.empty()) out += "</g>\n";
    out += attributes;
    open = kind;
  };
  for (const drawing::Item& item : sheet.items) {
    if (const Path* path = std::get_if<Path>(&item)) {
      group("paths", "<g fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\">\n");
      append(out, *path, prefix);
    } else {
      group("texts", "<g fill=\"#000\" font-family=\"sans-serif\">\n");
      append(out, std::get<Text>(item));
    }
  }
  if (!open.empty()) out += "</g>\n";
  out += "</svg>\n";
}

}  // namespace

std::string to_svg(const drawing::Sheet& sheet) {
  std::string out;
  out.reserve(about(sheet));
  out += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  out += drawing_signature;
  out += '\n';
  append_element(out, sheet, {});
  return out;
}

std::string svg_element(const drawing::Sheet& sheet, const std::string& prefix) {
  std::string out;
  out.reserve(about(sheet));
  append_element(out, sheet, prefix);
  return out;
}

}  // namespace fairblade::emit
