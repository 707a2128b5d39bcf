#include "drawing/map_words.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/highs_and_lows.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"

namespace fairblade::drawing {
namespace {

/// Samples from left to right, and a new row where there is no more room.
class Key {
 public:
  static constexpr double type = 2.7, sample = 11, height = 4, row = height + 1.4;  // mm
  Key(Sheet& sheet, double top) : sheet_(sheet), y_(top) {}
  /// Sets the words; returns the sample's upper left corner.
  Point entry(const std::string& words) {
    const double width = sample + 1.5 + width_of(words, type, false);
    if (x_ > map_margin && x_ + width > sheet_.width - map_margin) new_row();
    const Point at(x_, y_);
    add_text(sheet_, {x_ + sample + 1.5, y_ + 3}, words, type);
    x_ += width + 5;
    return at;
  }
  void line(const std::string& words, Pen pen) {
    const Point at = entry(words);
    add_line(sheet_, {at.x(), at.y() + height / 2}, {at.x() + sample, at.y() + height / 2}, pen);
  }
  void new_row() { x_ = map_margin, y_ += row; }
  double bottom() const { return y_ + height + 1; }

 private:
  Sheet& sheet_;
  double x_ = map_margin, y_;
};

void band_samples(Sheet& sheet, Key& key, const DepthScale& scale, LengthUnit unit) {
  const bool add = scale.sign > 0;
  const auto words = band_words(scale, unit);
  for (std::size_t band = 0; band < words.size(); ++band) {
    const Point at = key.entry((band > 0 ? "" : add ? "ADD " : "TAKE OFF ") + words[band]);
    const double right = at.x() + Key::sample, bottom = at.y() + Key::height;
    const std::vector<Point> ring{at, {right, at.y()}, {right, bottom}, {at.x(), bottom}};
    sheet.items.emplace_back(Path{{ring}, true, Pen::dimension, add ? Fill::none : Fill::light, {}});
    for (std::size_t k = 0; k <= band; ++k) {
      for (Path& lines : band_hatch({polygon_of(ring)}, scale, k)) sheet.items.emplace_back(std::move(lines));
    }
  }
  key.new_row();
}

}  // namespace

double map_key(Sheet& sheet, const fill::ChangeMap& map, const std::array<DepthScale, 2>& scales, LengthUnit unit,
               bool stock_shown, double top) {
  Key key(sheet, top);
  if (map.deepest_add) band_samples(sheet, key, scales[0], unit);
  if (map.deepest_removal) band_samples(sheet, key, scales[1], unit);
  key.line("line of equal depth; old outline where it moves", Pen::measured);
  key.line("new outline", Pen::outline);
  key.line("station", Pen::guide);
  if (stock_shown) key.line("stock centreline", Pen::datum);
  const bool doubtful =
      std::any_of(map.readings.begin(), map.readings.end(), [](const fill::MapPlace& one) { return one.doubtful; });
  const Point at = key.entry(doubtful ? "depth at a reading; with a ?: read it again first" : "depth at a reading");
  add_dot(sheet, {at.x() + Key::sample / 2, at.y() + Key::height / 2}, 0.35);
  return key.bottom();
}

std::vector<std::string> map_notes(const job::Job& job, const fill::ChangeMap& map, bool stock_shown, bool strip,
                                   const MapWords& words) {
  std::vector<std::string> out;
  const std::string white = "White: within " + words.within + " of " + length_words(map.error, job);
  out.push_back("Each face as you see it standing beside it. Depths are square to the surface. " + white + ", leave it alone." +
                (strip ? " One height alone: drawn as a strip, to scale fore and aft only." : ""));
  if (!map.stock_known) {
    out.push_back("The stock's place was not given: the leading edge is drawn upright.");
  } else if (!stock_shown) {
    const double edge = map.rows.front().old_edge;
    out.push_back("The stock centreline lies off this drawing, " + length_words(std::abs(edge), job) +
                  (edge > 0 ? " ahead" : " aft") + " of the leading edge at the top.");
  }
  if (map.rows.front().carried_on || map.rows.back().carried_on) {
    out.push_back("Dashed outline: beyond the end stations nothing was read; their sections are carried on.");
  }
  out.insert(out.end(), map.notes.begin(), map.notes.end());
  return out;
}

namespace {

std::string words_of_place(const job::Job& job, const fill::MapPlace& place) {
  const std::string side = place.both ? "both sides" : std::string(section::name_of(place.face)) + " side";
  std::string along = "at the leading edge";
  if (place.x > 0.5) along = length_words(place.x, job) + " aft of the leading edge";
  if (place.x < -0.5) along = length_words(-place.x, job) + " ahead of the old leading edge";
  return "station " + shortened(place.station, 3.6, false, 50) + ", " + side + ", " + along;
}

}  // namespace

std::string begin_words(const job::Job& job, const fill::ChangeMap& map) {
  const auto& high = map.deepest_removal;
  const auto& low = map.deepest_add;
  if (!high && !low) {
    return "Nowhere: no place is further out than the reading error of " + length_words(map.error, job) + ".";
  }
  const auto depth = [&](const fill::MapPlace& place) { return length_words(std::abs(place.depth), job); };
  std::string out;
  if (high) {
    out = "Take off first, where it is highest: " + depth(*high) + ", " + words_of_place(job, *high) + ".";
  }
  if (low) {
    out += std::string(high ? " Then fill" : "Fill") + ", the deepest place first: " + depth(*low) + ", " +
           words_of_place(job, *low) + ".";
  }
  return out;
}

}  // namespace fairblade::drawing
