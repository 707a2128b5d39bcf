// Private to the drawing room. A plain graph: a frame, round ticks with numbers, lines cut to the frame. Verbs: Plot's
// own.
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "drawing/sheet.hpp"

namespace fairblade::drawing {

struct Axis {
  double from = 0, to = 1;
  std::string name;
  std::vector<std::pair<double, std::string>> ticks{};  ///< none: round numbers
};

class Plot {
 public:
  /// `frame` in mm on paper; numbers stand below it and to its left, names beyond them.
  Plot(Sheet& sheet, Box frame, Axis across, Axis up, double type);
  static constexpr double left_of_frame = 13, below_frame = 9;  ///< mm that numbers and names take at 2.6 mm of type

  Point at(double x, double y) const;
  const Box& frame() const { return frame_; }
  void axes();
  /// The parts inside the frame.
  void line(const std::vector<Point>& values, Pen pen, const std::string& id = {});
  /// Hatched between two lines over the same x, cut to the frame.
  void band(const std::vector<Point>& low, const std::vector<Point>& high, double spacing, bool rising);

 private:
  /// Ticks of that axis, `room` mm of paper to each at least.
  static std::vector<std::pair<double, std::string>> ticks_of(const Axis& axis, double length, double room);
  Sheet& sheet_;
  Box frame_;
  Axis across_, up_;
  double type_;
};

}  // namespace fairblade::drawing
