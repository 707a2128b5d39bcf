// Words on a sheet: names made fit to print, shortened or broken to the room there is. Verbs: shortened, wrapped. mm.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "drawing/sheet.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

/// One line of valid UTF-8 without characters that XML or a printer trips over; line ends and tabs become spaces.
std::string printable(std::string_view words);
/// `printable`, cut to `room` mm with an ellipsis where it does not fit; never within a character.
std::string shortened(std::string_view words, double size, bool bold, double room);
/// `printable`, broken at spaces into lines of at most `room` mm; a word longer than that is shortened.
std::vector<std::string> wrapped(std::string_view words, double size, bool bold, double room);
/// The greatest size from `least` to `most` at which the words fit into `room` mm, or `least`.
double size_that_fits(const std::string& words, double most, double least, bool bold, double room);

/// "420.0 mm", and for a job in another unit that unit beside it: "420.0 mm (16.535 in)".
std::string length_words(double mm, const job::Job& job);

/// Where in words: "at A" for a station of that name, while a height in between is called so already.
std::string where_words(std::string_view name, bool station);
/// "millimetres", "centimetres", "inches": the unit that numbers without one are in.
std::string unit_words(const job::Job& job);

/// Lines of type set one below another, from a top edge downwards.
class Column {
 public:
  Column(Sheet& sheet, double left, double top, double room) : sheet_(sheet), left_(left), y_(top), room_(room) {}
  /// One line, shortened to the room.
  void line(std::string_view words, double size, bool bold = false);
  /// As many lines as it takes.
  void paragraph(std::string_view words, double size);
  void skip(double mm) { y_ += mm; }
  double bottom() const { return y_; }

 private:
  Sheet& sheet_;
  double left_, y_, room_;
};
/// Height in mm that one line of type takes in a Column.
double line_height(double size);

}  // namespace fairblade::drawing
