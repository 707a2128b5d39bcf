// Private to the pages room. The paper: its size, what of it a page's content may cover, and how content is carried onto
// it. mm. Verbs: paper_of, Layout's own.
//
// A page is composed upright or lengthwise, in true mm: a window for the drawing, a column for one check bar on its left
// and a strip for the other bar, the words and the key map below. It is then carried onto the upright sheet: turned a
// quarter where lengthwise, and stretched by what the ruler read of the last print.
#pragma once
#include <string>

#include "drawing/sheet.hpp"
#include "job/job.hpp"

namespace fairblade::pages {

constexpr double bar_column = 10, strip = 16;

struct Paper {
  double width = 0, height = 0;  ///< mm, upright
  std::string page_size;         ///< for @page: "210mm 297mm"; empty where the browser's paper stands
};
/// A roll's sheet is as long as `longest` needs, 841 mm at least.
Paper paper_of(const job::Print& print, double longest);

class Layout {
 public:
  Layout(const job::Print& print, const Paper& paper, bool lengthwise);
  bool lengthwise() const { return lengthwise_; }
  double window_width() const { return width_ - bar_column; }  ///< mm, true
  double window_height() const { return height_ - strip; }     ///< mm, true
  Point window_origin() const { return {bar_column, 0}; }
  double width() const { return width_; }
  double height() const { return height_; }
  /// From the composition to the sheet.
  drawing::Placing onto_sheet() const;

 private:
  const Paper& paper_;
  bool lengthwise_;
  double margin_, stretch_across_, stretch_along_;
  double width_, height_;  // of the composition
};

}  // namespace fairblade::pages
