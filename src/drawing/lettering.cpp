#include "drawing/lettering.hpp"

#include <algorithm>

#include "base/text.hpp"

namespace fairblade::drawing {
namespace {

constexpr const char* ellipsis = "\xe2\x80\xa6";

/// Bytes of the valid character at the front of `words`, or 0.
std::size_t character_length(std::string_view words) {
  std::size_t bad = 0;
  for (std::size_t length = 1; length <= 4 && length <= words.size(); ++length) {
    if (valid_utf8(words.substr(0, length), bad)) return length;
  }
  return 0;
}

/// Control characters (C0, DEL, C1), bidirectional overrides and the two non-characters that XML forbids.
bool unprintable(std::string_view c) {
  if (c.size() == 1) return static_cast<unsigned char>(c[0]) < 0x20 || c[0] == 0x7f;
  if (c.size() == 2) return c[0] == '\xc2' && static_cast<unsigned char>(c[1]) < 0xa0;
  return c == "\xef\xbf\xbe" || c == "\xef\xbf\xbf" || c == "\xef\xbb\xbf" || (c >= "\xe2\x80\xa8" && c <= "\xe2\x80\xae") ||
         (c >= "\xe2\x81\xa6" && c <= "\xe2\x81\xa9");
}

}  // namespace

std::string printable(std::string_view words) {
  std::string out;
  while (!words.empty()) {
    const std::size_t length = character_length(words);
    const std::string_view c = words.substr(0, std::max<std::size_t>(length, 1));
    if (length == 0) {
      out += '?';
    } else if (c == "\n" || c == "\t" || c == "\r") {
      out += ' ';
    } else if (!unprintable(c)) {
      out += c;
    }
    words.remove_prefix(c.size());
  }
  return out;
}

std::string shortened(std::string_view words, double size, bool bold, double room) {
  std::string whole = printable(words);
  if (width_of(whole, size, bold) <= room) return whole;
  std::string out;
  const double rest = room - width_of(ellipsis, size, bold);
  for (std::string_view left = whole; !left.empty();) {
    const std::string longer = out + std::string(left.substr(0, character_length(left)));
    if (width_of(longer, size, bold) > rest) break;
    out = longer;
    left.remove_prefix(character_length(left));
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out + ellipsis;
}

std::vector<std::string> wrapped(std::string_view words, double size, bool bold, double room) {
  const std::string whole = printable(words);
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t from = 0; from < whole.size();) {
    const std::size_t space = std::min(whole.find(' ', from), whole.size());
    const std::string word = whole.substr(from, space - from);
    const std::string longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && width_of(longer, size, bold) > room) {
      lines.push_back(line);
      line = shortened(word, size, bold, room);
    } else {
      line = line.empty() ? shortened(word, size, bold, room) : longer;
    }
    from = space + 1;
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

double size_that_fits(const std::string& words, double most, double least, bool bold, double room) {
  const double width = width_of(words, most, bold);
  constexpr double rounding = 1 - 1e-9;  // or it would be shortened after all
  return width <= room ? most : std::max(least, most * rounding * room / width);
}

std::string length_words(double mm, const job::Job& job) {
  const std::string plain = in_unit(mm, LengthUnit::mm);
  return job.units == LengthUnit::mm ? plain : plain + " (" + in_unit(mm, job.units) + ")";
}

std::string where_words(std::string_view name, bool station) { return (station ? "at " : "") + printable(name); }

std::string unit_words(const job::Job& job) {
  return job.units == LengthUnit::cm ? "centimetres" : job.units == LengthUnit::inch ? "inches" : "millimetres";
}

double line_height(double size) { return 1.25 * size; }

void Column::line(std::string_view words, double size, bool bold) {
  sheet_.items.emplace_back(
      Text{Point(left_, y_ + 0.97 * size), shortened(words, size, bold, room_), size, Anchor::start, 0, bold});
  y_ += line_height(size);
}

void Column::paragraph(std::string_view words, double size) {
  for (const std::string& each : wrapped(words, size, false, room_)) line(each, size);
}

}  // namespace fairblade::drawing
