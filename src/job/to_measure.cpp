// Jobs before they are measured, and tables that are filled in part.
#include "job/to_measure.hpp"

#include <algorithm>
#include <filesystem>

#include "job/file_text.hpp"
#include "job/job_reader.hpp"

namespace fairblade::job {

/// Stations of a CSV alone that stand in it with places only were not taken: they are left out, and told. A sheet without
/// any reading is still blank: false.
bool JobReader::leave_out_unread() {
  if (!csv_->whole) return true;  // a refused row may be the one
  const auto unread = [](const CsvStation& station) { return station.readings.empty(); };
  if (!anything_read(*csv_, faults_)) return false;
  for (const CsvStation& station : csv_->stations) {
    if (!unread(station)) continue;
    job_.warnings.push_back({"station-not-read", "station " + station.name,
                             "has no readings (" + path_ + ":" + std::to_string(station.line) + "), only places: left out"});
  }
  std::erase_if(csv_->stations, unread);
  return true;
}

/// Where readings are still to come, what their columns hold; a readings_file need not be there yet.
void JobReader::learn_methods() {
  if (csv_) {
    for (const KeyRow& row : csv_->header.keys) csv_keys_.emplace_back(row.key, row.values);
  } else if (const Node* file = root_.find("readings_file"); file && file->kind == NodeKind::text) {
    Faults not_told;
    const std::string path = (std::filesystem::path(path_).parent_path() / file->text).string();
    std::vector<std::string> names;
    for (const StationDraft& draft : drafts_) names.push_back(draft.station.name);
    if (const auto text = read_text(path, largest_file, not_told)) {
      csv_ = read_csv(*text, path, job_.units, false, names, not_told);
    }
  }
  for (const StationDraft& draft : drafts_) {
    const Station& station = draft.station;
    if (station.interpolated) continue;
    const MeasuredBy by = csv_ && !draft.method_told ? csv_->measured_by : station.measured_by;
    to_measure_.push_back(
        {station.name, station.down, station.ahead, station.chord, by, draft.x_from, draft.board_port, draft.board_starboard});
  }
  std::stable_sort(to_measure_.begin(), to_measure_.end(), [](const auto& a, const auto& b) { return a.down < b.down; });
}

ToMeasure JobReader::to_measure(Job&& job) && {
  std::erase_if(csv_keys_, [](const auto& row) { return row.first == "units"; });
  return {std::move(job.name), job.units, job.bottom, std::move(job.print), std::move(to_measure_), std::move(csv_keys_)};
}

Outcome<ToMeasure> read_to_measure(const std::string& path) {
  const std::vector<Override> none;
  JobReader reader(path, none, JobReader::For::measure);
  auto job = reader.run();
  if (!job) return job.faults();
  return std::move(reader).to_measure(std::move(*job));
}

}  // namespace fairblade::job
