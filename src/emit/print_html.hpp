// A set of sheets as one HTML file that any browser prints at actual size, one sheet to a page. Verbs: print_html.
#pragma once
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/sheet.hpp"
#include "emit/folder.hpp"

namespace fairblade::emit {

/// `page_size` as CSS has it ("210mm 297mm"), or empty: then no size is set and the paper in the browser stands. No
/// scripts, nothing from outside. `sign`: a comment near its beginning, by which a later run knows its own. A page is made when
/// it is written.
File print_html(const std::string& path, const std::string& title, std::vector<std::shared_ptr<const drawing::Sheet>> sheets,
                const std::string& page_size, std::string_view sign = {});

}  // namespace fairblade::emit
