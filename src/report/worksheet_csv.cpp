#include "report/worksheet_csv.hpp"

#include <algorithm>
#include <vector>

#include "base/text.hpp"
#include "report/csv_cell.hpp"

namespace fairblade::report {
namespace {

using job::MeasuredBy;
using job::StationToMeasure;

std::string cell_of(double mm, LengthUnit unit) { return trimmed(mm / millimetres_in(unit), 6); }
std::string cell_of(const std::optional<double>& mm, LengthUnit unit) { return mm ? cell_of(*mm, unit) : std::string(); }

class SheetTable {
 public:
  explicit SheetTable(const worksheet::Worksheet& sheet)
      : sheet_(sheet), units_(sheet.job.units), by_(sheet.job.stations.front().measured_by) {}

  std::string write() {
    write_keys();
    row(columns());
    for (std::size_t k = 0; k < sheet_.job.stations.size(); ++k) station(k, false);
    station(sheet_.twice, true);
    return std::move(out_);
  }

 private:
  void row(const std::vector<std::string>& cells) {
    for (std::size_t k = 0; k < cells.size(); ++k) out_ += (k > 0 ? "," : "") + csv_cell(cells[k]);
    out_ += '\n';
  }

  void write_keys() {
    const auto& job = sheet_.job;
    const auto told = [&](std::string_view key) {
      return std::any_of(job.keys.begin(), job.keys.end(), [&](const auto& row) { return row.first == key; });
    };
    if (!told("job")) row({"job", job.job});
    row({"units", std::string(name_of(units_))});
    if (job.bottom && !told("bottom")) row({"bottom", cell_of(*job.bottom, units_)});
    if (!told("coating_to_strip")) row({"coating_to_strip", ""});  // as the sheet's cover asks
    const auto origin = job.stations.front().x_from;
    if (origin != job::XFrom::leading_edge && !told("x_from")) row({"x_from", std::string(name_of(origin))});
    for (const auto& [key, values] : job.keys) {
      if (key == "measured_by" || (key == "board" && !gaps())) continue;  // the columns tell
      std::vector<std::string> cells{key};
      cells.insert(cells.end(), values.begin(), values.end());
      if (values.empty()) cells.emplace_back();
      row(cells);
    }
  }

  bool gaps() const { return by_ == MeasuredBy::gaps; }

  std::vector<std::string> columns() const {
    std::vector<std::string> out{"station", "down", "ahead", "chord"};
    if (gaps()) out.insert(out.end(), {"board_port", "board_starboard"});
    out.push_back("x");
    if (by_ == MeasuredBy::thickness) {
      out.push_back("thickness");
    } else {
      out.insert(out.end(), {gaps() ? "port_gap" : "port", gaps() ? "starboard_gap" : "starboard", "caliper"});
    }
    out.insert(out.end(), {"trailing_edge_off_centre", "skeg", "notes"});
    return out;
  }

  /// What is known of the station stands on its first row.
  void station(std::size_t k, bool again) {
    const StationToMeasure& one = sheet_.job.stations[k];
    const std::size_t width = columns().size();
    for (std::size_t p = 0; p < sheet_.places[k].size(); ++p) {
      std::vector<std::string> cells{one.name};
      const bool first = p == 0 && !again;
      cells.push_back(first ? cell_of(one.down, units_) : "");
      cells.push_back(first ? cell_of(one.ahead, units_) : "");
      cells.push_back(first ? cell_of(one.chord, units_) : "");
      if (gaps()) {
        cells.push_back(first ? cell_of(one.board_port, units_) : "");
        cells.push_back(first ? cell_of(one.board_starboard, units_) : "");
      }
      cells.push_back(cell_of(sheet_.places[k][p], units_));
      cells.resize(width);
      if (first) {
        cells[width - 3] = cell_of(one.trailing_edge_off_centre, units_);
        cells[width - 2] = one.skeg > 0 ? cell_of(one.skeg, units_) : "";
      }
      if (p == 0 && again) cells.back() = "measured a second time";
      row(cells);
    }
  }

  const worksheet::Worksheet& sheet_;
  LengthUnit units_;
  MeasuredBy by_;
  std::string out_;
};

}  // namespace

std::optional<Fault> judge_one_table(const worksheet::Worksheet& sheet) {
  const StationToMeasure& first = sheet.job.stations.front();
  for (const StationToMeasure& one : sheet.job.stations) {
    if (one.measured_by != first.measured_by) {
      return Fault{{"--csv", 0},
                   "station " + first.name + " is measured by " + std::string(name_of(first.measured_by)) + ", station " +
                       one.name + " by " + std::string(name_of(one.measured_by)) + ": one table holds one way",
                   "say which with --measured-by"};
    }
    if (one.x_from != first.x_from) {
      return Fault{{"--csv", 0},
                   "x of station " + first.name + " is from the " + std::string(name_of(first.x_from)) + ", of station " +
                       one.name + " from the " + std::string(name_of(one.x_from)) + ": one table holds one of the two",
                   "give all stations of the job the same \"x_from\""};
    }
  }
  return std::nullopt;
}

std::string worksheet_csv(const worksheet::Worksheet& sheet) { return SheetTable(sheet).write(); }

}  // namespace fairblade::report
