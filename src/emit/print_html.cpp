#include "emit/print_html.hpp"

#include "base/text.hpp"
#include "emit/svg.hpp"

namespace fairblade::emit {

std::string print_html_head(const std::string& title, const std::string& page_size, std::string_view sign) {
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

std::string print_html_page(const drawing::Sheet& sheet, std::size_t k) {
  const std::string page = "p" + std::to_string(k + 1);
  return "<div style=\"width: " + trimmed(sheet.width, 3) + "mm; height: " + trimmed(sheet.height - 0.1, 3) + "mm\" id=\"" +
         page + "\">\n" + svg_element(sheet, page + "-") + "</div>\n";
}

std::string print_html_foot() { return "</body>\n</html>\n"; }

std::string print_html(const std::string& title, const std::vector<const drawing::Sheet*>& sheets, const std::string& page_size,
                       std::string_view sign) {
  std::string out = print_html_head(title, page_size, sign);
  for (std::size_t k = 0; k < sheets.size(); ++k) out += print_html_page(*sheets[k], k);
  return out + print_html_foot();
}

}  // namespace fairblade::emit
