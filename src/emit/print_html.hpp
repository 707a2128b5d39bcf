// A set of sheets as one HTML file that any browser prints at actual size, one sheet to a page. Verbs: print_html.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/sheet.hpp"

namespace fairblade::emit {

/// `page_size` as CSS has it ("210mm 297mm"), or empty: then no size is set and the paper in the browser stands. No
/// scripts, nothing from outside. `sign`: a comment near its beginning, by which a later run knows its own.
std::string print_html(const std::string& title, const std::vector<const drawing::Sheet*>& sheets, const std::string& page_size,
                       std::string_view sign = {});
/// The same in pieces: what stands above the pages, page k counted from 0, and what stands below them.
std::string print_html_head(const std::string& title, const std::string& page_size, std::string_view sign);
std::string print_html_page(const drawing::Sheet& sheet, std::size_t k);
std::string print_html_foot();

}  // namespace fairblade::emit
