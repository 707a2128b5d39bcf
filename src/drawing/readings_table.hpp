// The half-breadths at the readings of one face as a table that runs along the chord, a column to a reading, each led
// to its place on the surface: readings crowd at the nose, so columns are spread to a pitch and the leaders bend.
// Verbs: spread, ReadingsTable's own.
#pragma once
#include <array>
#include <string>
#include <vector>

#include "drawing/sheet.hpp"
#include "fill/fill.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

/// Places as near as can be (least squares) to the wanted ones, sorted as they are, and nowhere nearer than `pitch` to
/// each other. `wanted` must be sorted.
std::vector<double> spread(const std::vector<double>& wanted, double pitch);

class ReadingsTable {
 public:
  /// Of that face's rows, thinned where there are hundreds; numbers in the job's own unit.
  /// A reading past the target's edge has no number to come to.
  ReadingsTable(const job::Job& job, std::vector<fill::OffsetRow> rows, const target::TargetSection& target, section::Face face);

  bool empty() const { return rows_.empty(); }
  double leftmost() const { return places_.empty() ? 0 : places_.front() - pitch / 2; }  ///< x, mm
  double rightmost() const { return places_.empty() ? 0 : places_.back() + pitch / 2; }  ///< x, mm
  double height() const { return 4 * cell_; }                                            ///< mm

  /// Draws the table with its top at `top`, headings ending at `headings_end` (sheet x), x = 0 at `x_origin`.
  void draw(Sheet& sheet, double x_origin, double top, double headings_end) const;
  /// Ordinates from the centre plane to the surface, dots there, and leaders that begin to bend at `bend` and end at
  /// `end` (both sheet y).
  void draw_leaders(Sheet& sheet, double x_origin, double centre, double bend, double end) const;

  static constexpr double pitch = 3.6, type = 2.4;  ///< mm

 private:
  std::array<std::string, 4> cells(const fill::OffsetRow& row) const;

  const job::Job& job_;
  const target::TargetSection& target_;
  section::Face face_;
  std::vector<fill::OffsetRow> rows_;
  std::vector<double> places_;
  double cell_ = 0;
};

}  // namespace fairblade::drawing
