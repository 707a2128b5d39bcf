// A Sheet as SVG text: width and height in mm, one user unit is one mm, coordinates to 0.001 mm. Verbs: to_svg,
// svg_element.
#pragma once
#include <string>

#include "drawing/sheet.hpp"

namespace fairblade::emit {

/// Opens every drawing of ours after the XML declaration, so that a later run knows its own from the owner's.
constexpr const char* drawing_signature = "<!-- fairblade drawing: 1 user unit = 1 mm -->";

/// The same sheet gives the same bytes. No scripts, no styles from outside, no dates; any viewer's sans-serif.
std::string to_svg(const drawing::Sheet& sheet);
/// The same as an element to stand in HTML; `prefix` goes before its names, so that several can stand in one document.
std::string svg_element(const drawing::Sheet& sheet, const std::string& prefix);

}  // namespace fairblade::emit
