#include "drawing/readings_table.hpp"

#include <algorithm>
#include <array>

#include "drawing/marks.hpp"
#include "fill/shown_rows.hpp"

namespace fairblade::drawing {
namespace {

constexpr std::size_t most_columns = 60;  // of a scanned face: as wide as half a metre of blade

}  // namespace

std::vector<double> spread(const std::vector<double>& wanted, double pitch) {
  // With k·pitch taken off, "no nearer than pitch" is "not falling": pool adjacent violators.
  struct Pool {
    double mean;
    int count;
  };
  std::vector<Pool> pools;
  for (std::size_t k = 0; k < wanted.size(); ++k) {
    pools.push_back({wanted[k] - static_cast<double>(k) * pitch, 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean > pools.back().mean) {
      const Pool last = pools.back();
      pools.pop_back();
      Pool& into = pools.back();
      into.mean = (into.mean * into.count + last.mean * last.count) / (into.count + last.count);
      into.count += last.count;
    }
  }
  std::vector<double> out;
  for (const Pool& pool : pools) {
    for (int k = 0; k < pool.count; ++k) out.push_back(pool.mean + static_cast<double>(out.size()) * pitch);
  }
  return out;
}

/// The four cells of a reading: x, measured, target, change with its sign.
std::array<std::string, 4> ReadingsTable::cells(const fill::OffsetRow& row) const {
  const LengthUnit unit = job_.units;
  std::string change = number_in_unit(row.change(), unit);
  const bool zero = change.find_first_not_of("-0.") == std::string::npos;
  if (row.change() > 0 && !zero) change = "+" + change;
  if (fill::past_of(target_, row.x) != fill::Past::none) {
    return {number_in_unit(row.x, unit), number_in_unit(row.measured, unit), "past edge", ""};
  }
  return {number_in_unit(row.x, unit), number_in_unit(row.measured, unit), number_in_unit(row.target, unit), change};
}

ReadingsTable::ReadingsTable(const job::Job& job, std::vector<fill::OffsetRow> rows, const target::TargetSection& target,
                             section::Face face)
    : job_(job), target_(target), face_(face), rows_(fill::rows_shown(std::move(rows), most_columns)) {
  std::vector<double> wanted;
  for (const fill::OffsetRow& row : rows_) {
    wanted.push_back(row.x);
    for (const std::string& cell : cells(row)) cell_ = std::max(cell_, width_of(cell, type, false) + 2);
  }
  cell_ = std::max(cell_, 7.0);
  places_ = spread(wanted, pitch);
}

void ReadingsTable::draw(Sheet& sheet, double x_origin, double top, double headings_end) const {
  const std::string unit(name_of(job_.units));
  const std::array<std::string, 4> headings = {"x, " + unit, "measured", "target", "change"};
  Path rules{{}, false, Pen::dimension, Fill::none, {}};
  for (std::size_t k = 0; k < 4; ++k) {
    const double row_top = top + static_cast<double>(k) * cell_;
    add_text(sheet, {headings_end, row_top + cell_ / 2 + 0.36 * type}, headings[k], type, Anchor::end);
    rules.runs.push_back({{headings_end - 22, row_top}, {x_origin + rightmost(), row_top}});
  }
  rules.runs.push_back({{headings_end - 22, top + height()}, {x_origin + rightmost(), top + height()}});
  sheet.items.emplace_back(rules);
  for (std::size_t k = 0; k < rows_.size(); ++k) {
    const std::array<std::string, 4> column = cells(rows_[k]);
    for (std::size_t row = 0; row < 4; ++row) {
      if (column[row].empty()) continue;
      // Turned to be read from the right; the end of the number at the cell's top, so that the points stand in line.
      const Point at(x_origin + places_[k] + 0.36 * type, top + static_cast<double>(row) * cell_ + 1);
      add_text(sheet, at, column[row], type, Anchor::end, row == 3, -90);
    }
  }
}

void ReadingsTable::draw_leaders(Sheet& sheet, double x_origin, double centre, double bend, double end) const {
  const double outwards = section::sign_of(face_);
  Path ordinates{{}, false, Pen::dimension, Fill::none, {}};
  Path leaders{{}, false, Pen::dimension, Fill::none, {}};
  const double step = 1.5 * outwards;  // the last bit before the table stands upright
  for (std::size_t k = 0; k < rows_.size(); ++k) {
    const double x = x_origin + rows_[k].x, label = x_origin + places_[k];
    const Point surface(x, centre + outwards * rows_[k].measured);
    ordinates.runs.push_back({{x, centre}, surface});
    leaders.runs.push_back({surface, {x, bend}, {label, end - step}, {label, end}});
    add_dot(sheet, surface, 0.45);
  }
  sheet.items.emplace_back(ordinates);
  sheet.items.emplace_back(leaders);
}

}  // namespace fairblade::drawing
