#include "drawing/section_picture.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <cmath>

#include "base/text.hpp"
#include "drawing/hatch.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/outline.hpp"
#include "fill/shown_rows.hpp"

namespace fairblade::drawing {
namespace {

constexpr std::size_t most_dots = 120;  // on a face

constexpr double picture_margin = 3, picture_type = 5;  // mm
constexpr double strip_half = 11;                       // mm each way from a strip's zero line
constexpr double edge = 0.03;                           // of the chord at either end, left out of a strip's scale
constexpr int samples = 160;

class SectionPicture {
 public:
  SectionPicture(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                 const fill::StationChange& change)
      : job_(job), measured_(measured), target_(target), change_(change) {}
  Sheet draw();

 private:
  double across(double x) const { return picture_margin + (x - x_from_) * scale_; }
  double change_at(Face face, double x) const { return target_.half_breadth(face, x) - measured_.side(face).at(x); }
  void section_at(double centre);
  void strip_at(double zero, Face face);
  MultiPolygon runs_of(double zero, Face face, bool add) const;
  void areas_of(double zero, Face face, bool add);
  void readings_of(double zero, Face face);
  double shown(double mm) const { return strip_half * std::clamp(mm / most_, -1.0, 1.0); }
  void find_scale();

  const job::Job& job_;
  const section::MeasuredSection& measured_;
  const target::TargetSection& target_;
  const fill::StationChange& change_;
  Sheet sheet_;
  double x_from_ = 0, x_to_ = 0, scale_ = 1;  // sheet mm to a mm of chord
  double x_first_ = 0, x_last_ = 0;           // where both sections are
  double most_ = 1;                           // mm of change at a strip's rim
};

// A round number no less than the greatest change away from the very edges.
void SectionPicture::find_scale() {
  double greatest = 0;
  for (const Face face : {Face::port, Face::starboard}) {
    for (int k = 0; k <= samples; ++k) {
      const double part = edge + (1 - 2 * edge) * k / samples;
      greatest = std::max(greatest, std::abs(change_at(face, x_first_ + part * (x_last_ - x_first_))));
    }
  }
  const double unit = millimetres_in(job_.units == LengthUnit::inch ? LengthUnit::inch : LengthUnit::mm);
  const double least = job_.units == LengthUnit::inch ? 0.05 : 1;
  const double wanted = std::max(greatest / unit, least);
  const double decade = std::pow(10, std::floor(std::log10(wanted)));
  for (const double step : {1.0, 2.0, 3.0, 5.0, 10.0}) {
    most_ = step * decade * unit;
    if (step * decade >= wanted * (1 - 1e-9)) return;
  }
}

void SectionPicture::section_at(double centre) {
  const auto placed = [&](const Polygon& polygon) {
    Polygon out = polygon;
    boost::geometry::for_each_point(out, [&](Point& p) { p = Point(across(p.x()), centre + scale_ * p.y()); });
    boost::geometry::correct(out);
    return out;
  };
  const Polygon now = placed(measured_outline(measured_)), then = placed(target_outline(target_));
  for (const Polygon& alone : outlines_apart(measured_, target_).b) {
    const Polygon each = placed(alone);
    if (area(each) < 0.002) continue;
    sheet_.items.emplace_back(
        Path{{std::vector<Point>(each.outer().begin(), each.outer().end())}, true, Pen::none, Fill::light, {}});
  }
  sheet_.items.emplace_back(Path{{{now.outer().begin(), now.outer().end()}}, true, Pen::measured, Fill::none, "now"});
  sheet_.items.emplace_back(Path{{{then.outer().begin(), then.outer().end()}}, true, Pen::cut, Fill::none, "then"});
}

// A polygon for each run of one sign: a polygon pinched to a line hatches outside itself.
MultiPolygon SectionPicture::runs_of(double zero, Face face, bool add) const {
  MultiPolygon out;
  std::vector<Point> corners;
  const auto close = [&](double x) {
    if (corners.empty()) return;
    corners.emplace_back(across(x), zero);
    Polygon polygon = polygon_of(corners);
    if (area(polygon) > 0.01) out.push_back(std::move(polygon));
    corners.clear();
  };
  const double step = (x_last_ - x_first_) / samples;
  for (int k = 0; k <= samples; ++k) {
    const double x = x_first_ + step * k, mm = change_at(face, x);
    if (add ? mm <= 0 : mm >= 0) {
      close(x);
      continue;
    }
    if (corners.empty()) corners.emplace_back(across(std::max(x_first_, x - step)), zero);
    corners.emplace_back(across(x), zero - shown(mm));
  }
  close(x_last_);
  return out;
}

void SectionPicture::areas_of(double zero, Face face, bool add) {
  const MultiPolygon runs = runs_of(zero, face, add);
  for (const Polygon& each : runs) {
    if (add) break;
    sheet_.items.emplace_back(
        Path{{std::vector<Point>(each.outer().begin(), each.outer().end())}, true, Pen::none, Fill::light, {}});
  }
  Path lines = hatch(runs, add ? 1.6 : 1.0, true);
  if (!add) {
    const Path other = hatch(runs, 1.0, false);
    lines.runs.insert(lines.runs.end(), other.runs.begin(), other.runs.end());
  }
  lines.id = std::string(section::name_of(face)) + (add ? "-add" : "-take-off");
  sheet_.items.emplace_back(std::move(lines));
}

void SectionPicture::readings_of(double zero, Face face) {
  for (const fill::OffsetRow& row : fill::rows_shown(fill::Offsets(measured_, change_).of(face), most_dots)) {
    if (row.x < x_first_ || row.x > x_last_) continue;
    add_dot(sheet_, {across(row.x), zero - shown(row.change())}, 0.6);
  }
}

void SectionPicture::strip_at(double zero, Face face) {
  areas_of(zero, face, true);
  areas_of(zero, face, false);
  for (const double rim : {-strip_half, strip_half}) {
    add_line(sheet_, {across(x_from_), zero + rim}, {across(x_to_), zero + rim}, Pen::guide);
  }
  add_line(sheet_, {across(x_from_), zero}, {across(x_to_), zero}, Pen::outline);
  readings_of(zero, face);
  const std::string rim_words = trimmed(most_ / millimetres_in(job_.units), 3) + " " + std::string(name_of(job_.units));
  const std::string name = measured_.thickness_only ? "EACH SIDE" : face == Face::port ? "PORT" : "STARBOARD";
  add_text(sheet_, {picture_margin, zero - strip_half - 1.6}, name, picture_type, Anchor::start, true);
  add_text(sheet_, {picture_width - picture_margin, zero - strip_half - 1.6}, "add " + rim_words, picture_type, Anchor::end);
  add_text(sheet_, {picture_width - picture_margin, zero + strip_half + 5}, "take off " + rim_words, picture_type, Anchor::end);
}

Sheet SectionPicture::draw() {
  x_from_ = std::min(0.0, target_.leading_edge_x);
  x_to_ = std::max(measured_.chord, target_.trailing_edge_x());
  x_first_ = std::max(0.0, target_.leading_edge_x);
  x_last_ = std::min(measured_.chord, target_.trailing_edge_x());
  scale_ = (picture_width - 2 * picture_margin) / (x_to_ - x_from_);
  find_scale();
  double half = 0;
  for (const Face face : {Face::port, Face::starboard}) {
    half = std::max({half, widest(measured_line(measured_, face)).y(), widest(target_line(target_, face)).y()});
  }
  sheet_.title = printable("Section " + measured_.station + " in small");
  sheet_.width = picture_width;
  const double centre = 10 + half * scale_;
  add_arrow(sheet_, {picture_margin + 10, 4.2}, {picture_margin, 4.2}, Pen::outline);
  add_text(sheet_, {picture_margin + 12, 6}, "forward", picture_type);
  add_text(sheet_, {picture_width - picture_margin, 6}, "thick: target, thin: now", picture_type, Anchor::end);
  section_at(centre);
  double y = centre + half * scale_ + 10;
  for (const Face face : {Face::starboard, Face::port}) {
    if (measured_.thickness_only && face == Face::port) continue;
    strip_at(y + strip_half, face);
    y += 2 * strip_half + 15;
  }
  sheet_.height = std::ceil(y - 7);
  return std::move(sheet_);
}

}  // namespace

Sheet draw_section_picture(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                           const fill::StationChange& change) {
  return SectionPicture(job, measured, target, change).draw();
}

}  // namespace fairblade::drawing
