// Jobs before they are measured, and tables that are filled in part.
#include "job/to_measure.hpp"

#include <algorithm>
#include <filesystem>

#include "job/file_text.hpp"
#include "job/job_reader.hpp"
#include "job/table_keys.hpp"
#include "job/target_keys.hpp"

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

/// Of a job file: what of it a CSV can hold, and what it cannot.
void JobReader::learn_table_keys() {
  if (csv_) return;
  KeyRows from_file = key_rows_of(root_);
  table_keys_ = std::move(from_file.rows);
  not_in_a_table_ = std::move(from_file.not_in_it);
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    const Station& station = drafts_[i].station;
    if (station.interpolated) not_in_a_table_.push_back("station " + station.name + ", which is interpolated");
    for (const std::string_view key : target_keys()) {
      if (station_nodes_[i]->find(key)) not_in_a_table_.push_back("station " + station.name + "'s own " + std::string(key));
    }
  }
}

/// Rows above the header of a readings_file, as worksheet writes them, may say again what the job file says: the job file
/// is what counts, and a row that says otherwise would be passed over.
void JobReader::judge_keys_of_readings_file() {
  const KeyRows ours = key_rows_of(root_);
  const auto refuse = [&](const KeyRow& row, const std::string& what, std::string remedy) {
    csv_->whole = false;
    faults_.add({csv_->file, row.line}, in_quotes(row.key) + what, std::move(remedy));
  };
  for (const KeyRow& row : csv_->header.keys) {
    if (row.key == "units" || (row.key == "coating_to_strip" && row.values.empty())) continue;
    const auto told = std::find_if(ours.rows.begin(), ours.rows.end(), [&](const auto& one) { return one.first == row.key; });
    const bool of_stations = row.key == "x_from" && row.values.size() == 1;
    const auto same = [&](const StationDraft& draft) { return name_of(draft.x_from) == row.values.front(); };
    if (of_stations ? std::all_of(drafts_.begin(), drafts_.end(), same)
                    : told != ours.rows.end() && same_value(told->second, row.values)) {
      continue;
    }
    if (told == ours.rows.end() || row.values.empty()) {
      refuse(row, " stands above the header row",
             "only units, and what the job file says too, may stand here: put the rest in the job file");
    } else {
      refuse(row, " is not what the job file says", "the job file is what counts: correct one of the two, or take this row out");
    }
  }
}

/// Where readings are still to come, what their columns hold; a readings_file need not be there yet.
void JobReader::learn_methods() {
  learn_table_keys();
  if (csv_) {
    for (const KeyRow& row : csv_->header.keys) table_keys_.emplace_back(row.key, row.values);
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
    to_measure_.push_back({station.name, station.down, station.ahead, station.chord, by, draft.x_from, draft.board_port,
                           draft.board_starboard, station.trailing_edge_off_centre, station.skeg});
  }
  std::stable_sort(to_measure_.begin(), to_measure_.end(), [](const auto& a, const auto& b) { return a.down < b.down; });
}

ToMeasure JobReader::to_measure(Job&& job) && {
  std::erase_if(table_keys_, [](const auto& row) { return row.first == "units"; });
  return {std::move(job.name),
          job.units,
          job.bottom,
          std::move(job.print),
          std::move(to_measure_),
          job.coating_to_strip,
          std::move(table_keys_),
          std::move(not_in_a_table_)};
}

Outcome<ToMeasure> read_to_measure(const std::string& path) {
  const std::vector<Override> none;
  JobReader reader(path, none, JobReader::For::measure);
  auto job = reader.run();
  if (!job) return job.faults();
  return std::move(reader).to_measure(std::move(*job));
}

}  // namespace fairblade::job
