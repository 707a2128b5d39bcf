// Private to the job room. A job's file on its way to a Job, for each of the purposes that it is read for. Verbs:
// run, and then asked or to_measure.
#pragma once
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "job/csv_readings.hpp"
#include "job/job.hpp"
#include "job/reader.hpp"
#include "job/stations.hpp"
#include "job/to_measure.hpp"
#include "job/tree.hpp"

namespace fairblade::job {

constexpr std::uintmax_t largest_file = 512u << 20;  // bytes; a CSV of some ten million rows

class JobReader {
 public:
  enum class For { plan, judge, plan_and_file, measure };
  JobReader(const std::string& path, const std::vector<Override>& overrides, For purpose)
      : path_(path),
        overrides_(overrides),
        as_written_(purpose == For::judge || purpose == For::measure),
        keeps_tree_(purpose == For::plan_and_file),
        measures_(purpose == For::measure) {
    job_.file = path;
  }

  Outcome<Job> run();
  /// What was asked, after a run that refused nothing.
  Node asked() &&;
  /// What is to be measured, likewise.
  ToMeasure to_measure(Job&& job) &&;

 private:
  bool read_root(const std::string& text);
  void read_all();
  void read_name_and_units();
  void read_plain_keys();
  void read_targets();
  void apply_overrides(TargetRequest& target, Faults& faults);
  void read_stations();
  void read_readings();
  void read_readings_file();
  bool leave_out_unread();
  void learn_methods();
  void judge_keys_of_readings_file();
  void learn_table_keys();
  void learn_own_error();
  void take_stations();
  void check_twice();
  void check_centre_and_bottom();
  void list_station_defaults();
  void list_target_defaults();

  Reader reader() { return {faults_, path_, job_.units, "", &job_.defaults}; }

  std::string path_;
  const std::vector<Override>& overrides_;
  bool as_written_, keeps_tree_, measures_;
  Faults faults_;
  Job job_;
  Node root_;
  bool units_known_ = true;
  std::optional<CsvContent> csv_;         ///< readings that stand in a CSV: this file, or readings_file
  std::map<std::size_t, Node> from_csv_;  ///< what a CSV says of a station, as a job file has it; by its number in the list
  TargetRequest file_target_;             ///< before overrides
  std::vector<const Node*> station_nodes_;
  std::vector<StationDraft> drafts_;  ///< beside station_nodes_
  std::vector<StationToMeasure> to_measure_;
  std::vector<KeyOfTable> table_keys_;
  std::vector<std::string> not_in_a_table_;
};

}  // namespace fairblade::job
