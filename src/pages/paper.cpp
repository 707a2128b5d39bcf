#include "pages/paper.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace fairblade::pages {

Paper paper_of(const job::Print& print, double longest) {
  const auto sized = [](double width, double height) {
    return Paper{width, height, trimmed(width, 1) + "mm " + trimmed(height, 1) + "mm"};
  };
  const auto roll = [&](double width) {
    const double needed = longest * 100 / print.ruler_along + 2 * print.margin + bar_column + strip;
    return sized(width, std::clamp(std::ceil(needed), 841.0, 5000.0));
  };
  switch (print.paper) {
    case job::Paper::a4: return sized(210, 297);
    case job::Paper::letter: return sized(215.9, 279.4);
    case job::Paper::a3: return sized(297, 420);
    case job::Paper::roll_610: return roll(610);
    case job::Paper::roll_914: return roll(914);
    case job::Paper::both: break;
  }
  return {210, 279.4, {}};
}

Layout::Layout(const job::Print& print, const Paper& paper, bool lengthwise)
    : paper_(paper),
      lengthwise_(lengthwise),
      margin_(print.margin),
      stretch_across_(100 / print.ruler_across),
      stretch_along_(100 / print.ruler_along) {
  const double across = (paper.width - 2 * margin_) / stretch_across_;
  const double along = (paper.height - 2 * margin_) / stretch_along_;
  width_ = lengthwise ? along : across;
  height_ = lengthwise ? across : along;
}

drawing::Placing Layout::onto_sheet() const {
  drawing::Placing out;
  out.turned = lengthwise_;
  out.stretch_x = stretch_across_;
  out.stretch_y = stretch_along_;
  out.dx = margin_;
  out.dy = lengthwise_ ? paper_.height - margin_ : margin_;
  return out;
}

}  // namespace fairblade::pages
