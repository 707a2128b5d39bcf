#include "drawing/sheet.hpp"

#include <algorithm>
#include <array>
#include <boost/geometry.hpp>
#include <cmath>
#include <numbers>

namespace bg = boost::geometry;

namespace fairblade::drawing {
namespace {

// Advances in thousandths of an em of U+0020..U+007E, from the hmtx tables of DejaVu Sans and DejaVu Sans Bold:
// of the faces that "sans-serif" commonly stands for the widest, by a tenth or more.
using Advances = std::array<int, 95>;
constexpr Advances regular_advances = {
    318, 401, 460, 838, 637, 951, 780, 275, 391,  391, 500, 838, 318, 361, 318, 337, 637, 637, 637, 637, 637, 637, 637, 637,
    637, 637, 337, 337, 838, 838, 838, 531, 1000, 685, 687, 699, 771, 632, 576, 775, 752, 295, 295, 656, 558, 863, 749, 788,
    604, 788, 695, 635, 611, 732, 685, 989, 686,  611, 686, 391, 337, 391, 838, 500, 500, 613, 635, 550, 635, 616, 353, 635,
    634, 278, 278, 580, 278, 975, 634, 612, 635,  635, 412, 521, 393, 634, 592, 818, 592, 592, 525, 637, 337, 637, 838};
constexpr Advances bold_advances = {
    349, 457, 521, 838, 696, 1002, 873, 307,  458,  458, 523, 838, 380, 416, 380, 366, 696, 696, 696, 696, 696, 696, 696, 696,
    696, 696, 400, 400, 838, 838,  838, 581,  1000, 774, 763, 734, 831, 684, 684, 821, 837, 373, 373, 775, 638, 996, 837, 851,
    733, 851, 771, 721, 683, 813,  774, 1104, 771,  725, 726, 458, 366, 458, 838, 500, 500, 675, 716, 593, 716, 679, 436, 716,
    712, 343, 343, 666, 343, 1042, 712, 688,  716,  716, 494, 596, 479, 712, 652, 924, 646, 652, 583, 712, 366, 712, 838};
constexpr int beyond_ascii = 1000;  // most Latin, Greek and Cyrillic letters are narrower
constexpr int pictures = 1600;      // from U+1100 on: Asian scripts, symbols, emoji

// Above and below the baseline, in ems: accented capitals, and descenders.
constexpr double ascent = 0.95, descent = 0.24;

int advance_of(unsigned char lead, bool bold) {
  if (lead >= 0x20 && lead < 0x7f) return (bold ? bold_advances : regular_advances)[lead - 0x20U];
  if (lead < 0x20 || lead == 0x7f) return 0;
  return lead < 0xe1 ? beyond_ascii : pictures;
}

}  // namespace

Point placed(Point p, const Placing& placing) {
  const Point turned = placing.turned ? Point(p.y(), -p.x()) : p;
  return {placing.dx + placing.stretch_x * turned.x(), placing.dy + placing.stretch_y * turned.y()};
}

Item placed(Item item, const Placing& placing) {
  if (Text* text = std::get_if<Text>(&item)) {
    text->at = placed(text->at, placing);
    text->size *= std::min(placing.stretch_x, placing.stretch_y);
    if (placing.turned) text->turn -= 90;
    return item;
  }
  for (auto& run : std::get<Path>(item).runs) {
    for (Point& p : run) p = placed(p, placing);
  }
  return item;
}

void add_items(Sheet& sheet, Sheet from, const Placing& placing, const std::string& prefix) {
  for (Item& item : from.items) {
    sheet.items.push_back(placed(std::move(item), placing));
    Path* path = std::get_if<Path>(&sheet.items.back());
    if (path != nullptr && !path->id.empty()) path->id = prefix + path->id;
  }
}

double width_of(const std::string& words, double size, bool bold) {
  int sum = 0;
  for (const char c : words) {
    const auto byte = static_cast<unsigned char>(c);
    const bool continues = (byte & 0xc0) == 0x80;
    // Punctuation such as the ellipsis and the dash (U+20xx, lead byte 0xe2) is no wider than an em.
    if (!continues) sum += byte == 0xe2 ? beyond_ascii : advance_of(byte, bold);
  }
  return sum * size / 1000;
}

Box box_of(const Text& text) {
  const double width = width_of(text.words, text.size, text.bold);
  const double left = text.anchor == Anchor::start ? 0 : text.anchor == Anchor::middle ? -width / 2 : -width;
  const double angle = text.turn * std::numbers::pi / 180;
  const double cosine = std::cos(angle), sine = std::sin(angle);
  Box box;
  bg::assign_inverse(box);
  for (const double along : {left, left + width}) {
    for (const double up : {-ascent * text.size, descent * text.size}) {
      bg::expand(box, Point(text.at.x() + along * cosine - up * sine, text.at.y() + along * sine + up * cosine));
    }
  }
  return box;
}

bool stand_apart(const Box& a, const Box& b, double gap) {
  return a.max_corner().x() + gap <= b.min_corner().x() || b.max_corner().x() + gap <= a.min_corner().x() ||
         a.max_corner().y() + gap <= b.min_corner().y() || b.max_corner().y() + gap <= a.min_corner().y();
}

bool within(const Box& inner, const Box& outer) {
  constexpr double hair = 1e-9;  // mm
  return inner.min_corner().x() >= outer.min_corner().x() - hair && inner.min_corner().y() >= outer.min_corner().y() - hair &&
         inner.max_corner().x() <= outer.max_corner().x() + hair && inner.max_corner().y() <= outer.max_corner().y() + hair;
}

}  // namespace fairblade::drawing
