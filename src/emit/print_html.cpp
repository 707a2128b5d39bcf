#include "emit/print_html.hpp"

#include <utility>

#include "base/text.hpp"
#include "emit/svg.hpp"

namespace fairblade::emit {

namespace {

std::string head(const std::string& title, const std::string& page_size, std::string_view sign) {
  std::string out = "<!DOCTYPE html>\n" + std::string(sign) + (sign.empty() ? "" : "\n") +
                    "<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<title>" + xml_escaped(title) +
                    "</title>\n<style>\n@page { ";
  if (!page_size.empty()) out += "size: " + page_size + "; ";
  // The sheet's own margins stand. A line of text has height, so the drawings are blocks; and each is cut at its page's
  // edge, or a hair too much would make a page of its own.
  out +=
      "margin: 0 }\n"
      "html, body { margin: 0; padding: 0; background: #fff }\n"
      "div { overflow: hidden; break-after: page; break-inside: avoid }\n"
      "div:last-child { break-after: auto }\n"
      "svg { display: block }\n"
      "@media screen { div { border-bottom: 1px dashed #000 } }\n"
      "</style>\n</head>\n<body>\n";
  return out;
}

std::string page(const drawing::Sheet& sheet, std::size_t k) {
  const std::string name = "p" + std::to_string(k + 1);
  return "<div style=\"width: " + trimmed(sheet.width, 3) + "mm; height: " + trimmed(sheet.height - 0.1, 3) + "mm\" id=\"" +
         name + "\">\n" + svg_element(sheet, name + "-") + "</div>\n";
}

}  // namespace

File print_html(const std::string& path, const std::string& title, std::vector<std::shared_ptr<const drawing::Sheet>> sheets,
                const std::string& page_size, std::string_view sign) {
  const std::size_t count = sheets.size();
  const auto piece = [sheets = std::move(sheets)](std::size_t k) {
    return k < sheets.size() ? page(*sheets[k], k) : std::string("</body>\n</html>\n");
  };
  return {path, head(title, page_size, sign), count + 1, piece};
}

}  // namespace fairblade::emit
