#include <algorithm>
#include <array>
#include <filesystem>
#include <map>
#include <memory>

#include "base/text.hpp"
#include "job/as_written.hpp"
#include "job/asked.hpp"
#include "job/asked_tree.hpp"
#include "job/csv_job.hpp"
#include "job/file_text.hpp"
#include "job/job.hpp"
#include "job/job_reader.hpp"
#include "job/numbers.hpp"
#include "job/own_error.hpp"
#include "job/settings.hpp"
#include "job/stations.hpp"
#include "job/target_keys.hpp"

namespace fairblade::job {
namespace {

constexpr std::size_t largest_json = 64u << 20;  // bytes; as a tree it takes several times that
constexpr std::size_t most_stations = 500;

bool is_csv(const std::string& path, std::string_view text) {
  const std::string extension = std::filesystem::path(path).extension().string();
  if (same_word(extension, ".csv") || same_word(extension, ".tsv")) return true;
  if (same_word(extension, ".json") || same_word(extension, ".jsonc")) return false;
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && text[first] != '{' && text[first] != '[' && text[first] != '/';
}

}  // namespace

Outcome<Job> JobReader::run() {
  const auto text = read_text(path_, largest_file, faults_);
  if (text && read_root(*text)) read_all();
  if (!faults_.none()) return faults_.in_order();
  return std::move(job_);
}

bool JobReader::read_root(const std::string& text) {
  if (is_csv(path_, text)) {
    csv_ = read_csv(text, path_, LengthUnit::mm, true, {}, faults_);
    if (!csv_) return false;
    if (!measures_ && !leave_out_unread()) return false;
    root_ = tree_of_csv(*csv_, faults_);
    if (!root_.find("job")) {
      const std::string stem = std::filesystem::path(path_).stem().string();
      root_.set("job", node_of_text(stem, 0));
      job_.defaults.push_back({"job", stem});
    }
    return true;
  }
  if (text.size() > largest_json) {
    faults_.add({path_, 0}, "the job file is larger than 64 MB", "put the readings in a CSV and name it in \"readings_file\"");
    return false;
  }
  if (!read_tree(text, path_, faults_, root_)) return false;
  if (root_.kind == NodeKind::object) return true;
  faults_.add({path_, root_.line}, "the job is " + described(root_),
              "give an object, as in { \"job\": \"...\", \"stations\": [...] }");
  return false;
}

void JobReader::read_all() {
  static constexpr std::array<std::string_view, 20> known{"$schema",
                                                          "job",
                                                          "units",
                                                          "reading_error",
                                                          "coating_to_strip",
                                                          "bottom",
                                                          "speed",
                                                          "centre_station",
                                                          "stations",
                                                          "readings_file",
                                                          "target",
                                                          "coats",
                                                          "fillers",
                                                          "workshop",
                                                          "zones",
                                                          "nose_glass",
                                                          "packs",
                                                          "compare_coatings",
                                                          "water",
                                                          "print"};
  reader().object(root_, "the job", known, target_keys());
  read_name_and_units();
  if (!units_known_) return;  // no length could be judged
  read_plain_keys();
  read_targets();
  read_stations();
  if (measures_) learn_methods();
  else read_readings();
  take_stations();
  learn_own_error();
  check_centre_and_bottom();
  list_station_defaults();
  list_target_defaults();
  read_coats(reader(), root_, job_);
  read_fillers(reader(), root_, job_);
  read_workshop(reader(), root_, job_);
  read_zones(reader(), root_, job_);
  read_nose_glass(reader(), root_, job_);
  read_packs(reader(), root_, job_);
  read_compared_coatings(reader(), root_, job_);
  read_water(reader(), root_, job_);
  read_print(reader(), root_, job_);
}

void JobReader::read_name_and_units() {
  if (const Node* schema = root_.find("$schema"); schema && schema->kind != NodeKind::text) {  // for editors
    reader().refuse(*schema, "$schema", "give the schema's file in quotes, as in \"../job.schema.json\"");
  }
  if (const Node* name = root_.find("job")) {
    if (auto read = reader().text(*name, "job")) job_.name = *read;
  } else {
    reader().missing(root_, "job", "give the job a name, as in \"job\": \"Whimbrel, spade rudder\"");
  }
  static constexpr std::array<std::string_view, 3> units{"mm", "cm", "in"};
  const Node* node = root_.find("units");
  if (!node) return reader().used_default("units", "mm");
  if (const auto word = reader().word(*node, "units", units)) job_.units = static_cast<LengthUnit>(*word);
  else units_known_ = false;
}

void JobReader::read_plain_keys() {
  reader().length_setting(&root_, "", "reading_error", job_.reading_error, {0.001, 50});
  reader().length_setting(&root_, "", "coating_to_strip", job_.coating_to_strip, {0, 50});
  if (const Node* bottom = root_.find("bottom")) job_.bottom = reader().length(*bottom, "bottom", {-20000, 20000});
  if (const Node* speed = root_.find("speed")) job_.speed = reader().number(*speed, "speed", {0.1, 60}, "knots");
}

void JobReader::read_targets() {
  if (const Node* target = root_.find("target")) {
    if (reader().object(*target, "\"target\"", target_keys())) read_target_keys(reader(), *target, file_target_);
  }
  job_.target = file_target_;
  apply_overrides(job_.target, faults_);
}

void JobReader::apply_overrides(TargetRequest& target, Faults& faults) {
  for (const auto& [given, value] : overrides_) {
    std::string key = given, option = "--" + given;
    std::replace(key.begin(), key.end(), '-', '_');
    std::replace(option.begin(), option.end(), '_', '-');
    const auto keys = target_keys();
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) {
      const std::string near = nearest_name(key, keys);
      faults.add({option, 0}, "no such key of the target", near.empty() ? "see --help" : "did you mean " + near + "?");
      continue;
    }
    const Reader from_option{faults, option, job_.units, "", nullptr};
    read_target_key(from_option, key, node_of_option(key, value, 0), target);
  }
}

void JobReader::read_stations() {
  const Node* list = root_.find("stations");
  if (!list) return reader().missing(root_, "stations", "list the stations, as in \"stations\": [ { \"name\": \"A\", ... } ]");
  if (!reader().list(*list, "stations", "[ { \"name\": \"A\", ... } ]")) return;
  if (list->items.empty() || list->items.size() > most_stations) {
    return faults_.add(reader().at(*list), "there are " + std::to_string(list->items.size()) + " stations",
                       list->items.empty() ? "measure at least one, better three" : "give at most 500");
  }
  std::vector<std::string_view> known(station_keys().begin(), station_keys().end());
  known.insert(known.end(), target_keys().begin(), target_keys().end());
  for (std::size_t i = 0; i < list->items.size() && !faults_.full(); ++i) {
    const Node& node = list->items[i];
    if (!reader().object(node, "a station", known)) continue;
    StationDraft draft = read_station(reader(), node, i + 1);
    draft.station.target = file_target_;
    Reader own = reader();
    own.of = " of station " + draft.station.name;
    read_target_keys(own, node, draft.station.target);
    Faults told_already;
    apply_overrides(draft.station.target, told_already);
    station_nodes_.push_back(&node);
    drafts_.push_back(std::move(draft));
  }
  check_twice();
}

void JobReader::check_twice() {
  std::map<std::string, int> names;
  std::map<double, const Station*> heights;
  for (const StationDraft& draft : drafts_) {
    const Station& station = draft.station;
    const auto [name, new_name] = names.emplace(station.name, station.place.line);
    if (!new_name) {
      faults_.add(station.place,
                  "two stations are named " + in_quotes(station.name) + " (first on line " + std::to_string(name->second) + ")",
                  "give each its own name");
      continue;
    }
    if (!draft.sound) continue;
    const auto [height, new_height] = heights.emplace(station.down, &station);
    if (!new_height) {
      faults_.add(
          station.place,
          "stations " + height->second->name + " and " + station.name + " are both at down " + in_unit(station.down, job_.units),
          "correct one, or merge their readings");
    }
  }
}

void JobReader::read_readings() {
  const Node* file = root_.find("readings_file");
  if (csv_ && file) faults_.add(reader().at(*file), "\"readings_file\" in a CSV that has its own readings", "take it out");
  if (!csv_ && file) {
    for (const Node* node : station_nodes_) {
      const Node* inline_list = node->find("readings");
      if (!inline_list) continue;
      return faults_.add(reader().at(*inline_list),
                         "both \"readings\" and \"readings_file\" (line " + std::to_string(file->line) + ")",
                         "keep one of the two");
    }
    read_readings_file();
    if (!csv_) return;
  }
  std::map<std::string, CsvStation*> in_csv;
  if (csv_) {
    for (CsvStation& station : csv_->stations) in_csv.emplace(station.name, &station);
  }
  for (std::size_t i = 0; i < drafts_.size() && !faults_.full(); ++i) {
    StationDraft& draft = drafts_[i];
    Reader own = reader();
    own.of = " of station " + draft.station.name;
    const Node* inline_list = station_nodes_[i]->find("readings");
    const auto from_csv = in_csv.find(draft.station.name);
    bool ok = false;
    if (inline_list) {
      ok = draft.method_known && read_inline_readings(own, *inline_list, draft);
    } else if (from_csv != in_csv.end()) {
      own.file = csv_->file;
      ok = draft.method_known && take_csv_readings(own, std::move(*from_csv->second), *csv_, draft);
    } else if (!csv_ || csv_->whole) {
      faults_.add(draft.station.place, "station " + draft.station.name + " has no readings",
                  csv_ ? "add its rows to " + csv_->file : "give \"readings\" in it, or a \"readings_file\"");
    }
    draft.as_written = as_written_;
    if (ok && !inline_list && keeps_tree_) from_csv_[i] = node_of_readings(draft.station, job_.units);
    if (ok) settle_readings(own, draft, job_.reading_error, job_.warnings);
    else draft.sound = false;
  }
}

void JobReader::read_readings_file() {
  const Node* node = root_.find("readings_file");
  if (node->kind != NodeKind::text || node->text.empty()) {
    return reader().refuse(*node, "readings_file", "give the CSV's name in quotes, as in \"readings.csv\"");
  }
  const std::string file = (std::filesystem::path(path_).parent_path() / node->text).string();
  Faults in_file;
  const auto text = read_text(file, largest_file, in_file);
  if (!text) {
    // A file that is not there is told at the line that names it; what is wrong inside it, at its own line.
    for (const Fault& fault : in_file.in_order()) {
      if (fault.place.line > 0) faults_.add(fault.place, fault.what, fault.remedy);
      else faults_.add(reader().at(*node), in_quotes(node->text) + ": " + fault.what, fault.remedy);
    }
    return;
  }
  std::vector<std::string> names;
  for (const StationDraft& draft : drafts_) names.push_back(draft.station.name);
  csv_ = read_csv(*text, file, job_.units, false, names, faults_);
  if (csv_) judge_keys_of_readings_file();
  if (csv_ && csv_->whole && !anything_read(*csv_, faults_)) csv_.reset();
}

/// The drafts become the job's stations, from the top down.
void JobReader::take_stations() {
  std::vector<std::string> told;
  for (StationDraft& draft : drafts_) {
    if (draft.sound && !as_written_) check_against_chord(draft.station, job_.units, faults_, told);
    draft.station.readings.shrink_to_fit();
    job_.stations.push_back(std::move(draft.station));
  }
  std::stable_sort(job_.stations.begin(), job_.stations.end(),
                   [](const Station& a, const Station& b) { return a.down < b.down; });
}

/// What the owner does not tell, places that were read more than once do.
void JobReader::learn_own_error() {
  if (as_written_ || root_.find("reading_error")) return;
  const Repeats all = repeats_of(job_.stations, job_.reading_error, false);
  if (all.more == 0) return;
  const std::string without = in_unit(job_.reading_error, job_.units);
  job_.reading_error = own_error(job_.reading_error, false, all);
  for (DefaultUsed& one : job_.defaults) {
    if (one.key != "reading_error") continue;
    one.value = in_unit(job_.reading_error, job_.units) + ", from " + std::to_string(all.more) +
                (all.more == 1 ? " repeated reading" : " repeated readings") + " (" + without + " without)";
  }
}

void JobReader::check_centre_and_bottom() {
  if (job_.stations.empty()) return;
  if (const Node* centre = root_.find("centre_station")) {
    std::vector<std::string_view> names;
    for (const Station& station : job_.stations) names.emplace_back(station.name);
    const auto read = reader().text(*centre, "centre_station");
    if (read && std::find(names.begin(), names.end(), *read) == names.end()) {
      const std::string near = nearest_name(*read, names);
      faults_.add(reader().at(*centre), "\"centre_station\" is " + in_quotes(*read) + ", which is no station",
                  near.empty() ? "name one of the stations" : "did you mean " + in_quotes(near) + "?");
    }
    if (read) job_.centre_station = *read;
  } else {
    job_.centre_station = job_.stations.front().name;
    reader().used_default("centre_station", job_.centre_station);
  }
  const Station& last = job_.stations.back();
  if (job_.bottom && *job_.bottom < last.down) {
    faults_.add(reader().at(*root_.find("bottom")),
                "\"bottom\" at " + in_unit(*job_.bottom, job_.units) + " is above station " + last.name + " at " +
                    in_unit(last.down, job_.units),
                "give how far down the blade ends");
  }
}

void JobReader::list_station_defaults() {
  const bool from_csv = csv_.has_value();
  for (const auto& [key, value] : {std::pair{"skeg", "0 mm"}, {"measured_by", "half-breadths"}, {"x_from", "leading-edge"}}) {
    if (from_csv && std::string_view(key) == "measured_by") continue;  // the columns tell
    std::string left_out;
    bool all = true;
    for (const Node* node : station_nodes_) {
      if (node->find(key)) {
        all = false;
      } else {
        const Node* name = node->find("name");
        left_out += (left_out.empty() ? "" : ", ") + (name ? name->text : std::string());
      }
    }
    if (!left_out.empty()) reader().used_default("stations." + std::string(key), value + (all ? "" : " (" + left_out + ")"));
  }
}

/// A target key is a default where no file, station or option sets it for at least one station.
void JobReader::list_target_defaults() {
  for (const std::string_view key : target_keys()) {
    std::string left_out;
    bool all = true;
    for (const Station& station : job_.stations) {
      if (station.target.places.count(std::string(key)) != 0) all = false;
      else left_out += (left_out.empty() ? "" : ", ") + station.name;
    }
    if (left_out.empty()) continue;
    reader().used_default("target." + std::string(key), std::string(target_default(key)) + (all ? "" : " (" + left_out + ")"));
  }
}

Node JobReader::asked() && {
  // Looked for each time: a key that comes or goes moves its neighbours.
  const auto stations = [this]() -> std::vector<Node>& { return root_.find("stations")->items; };
  for (auto& [i, told] : from_csv_) {
    for (std::size_t k = 0; k < told.keys.size(); ++k) {
      if (!stations()[i].find(told.keys[k])) stations()[i].set(told.keys[k], std::move(told.items[k]));
    }
  }
  erase_key(root_, "readings_file");
  if (const Node* target = root_.find("target")) {
    for (const std::string& key : std::vector<std::string>(target->keys)) tell_target(root_, key, *target->find(key));
  }
  for (const auto& [given, value] : overrides_) {
    std::string key = given;
    std::replace(key.begin(), key.end(), '-', '_');
    tell_target(root_, key, node_of_option(key, value, option_line));
    for (Node& station : stations()) erase_key(station, key);
  }
  return std::move(root_);
}

Outcome<Job> read_job(const std::string& path, const std::vector<Override>& overrides) {
  return JobReader(path, overrides, JobReader::For::plan).run();
}

Outcome<Job> read_job_as_written(const std::string& path) {
  const std::vector<Override> none;
  return JobReader(path, none, JobReader::For::judge).run();
}

}  // namespace fairblade::job
