#include "job/frozen_plan.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <utility>
#include <vector>

#include "base/text.hpp"
#include "job/file_text.hpp"
#include "job/reader.hpp"

namespace fairblade::job {
namespace {

constexpr std::uintmax_t largest_plan = 2048u << 20;  // bytes: of a blade scanned at ten million places
constexpr std::size_t most_values = 200'000'000;
constexpr Range lengths{-20000, 20000};  // mm; the widest that a job may hold
constexpr Range anything{-1e9, 1e9};
const char* const give_folder = "give the folder that fairblade plan wrote, or its plan.json";

/// Rows of "offsets" as `plan` writes them, in every byte; one written in any other way is left to the JSON library.
class PlainRow {
 public:
  explicit PlainRow(std::string_view rest) : rest_(rest) {}
  double x = 0, measured = 0;
  bool port = true;
  /// The next row, its comma before it; false where there is none so written.
  bool read() {
    double target = 0, change = 0;  // checked for being numbers
    if (!pass(",\n  {\"x\": ") || !number(x) || !pass(", \"side\": \"")) return false;
    port = pass("port");
    if (!port && !pass("starboard")) return false;
    return pass("\", \"measured\": ") && number(measured) && pass(", \"target\": ") && number(target) && pass(", \"change\": ") &&
           number(change) && pass("}");
  }
  std::string_view rest() const { return rest_; }

 private:
  bool pass(std::string_view text) {
    if (!rest_.starts_with(text)) return false;
    rest_.remove_prefix(text.size());
    return true;
  }
  /// JSON's own numbers without an exponent: no sign but a minus, no zero before another digit.
  bool number(double& value) {
    constexpr std::size_t longest = 24;
    std::size_t at = rest_.starts_with('-') ? 1 : 0;
    const auto digits = [&] {
      const std::size_t from = at;
      while (at < rest_.size() && at < longest && is_digit(rest_[at])) ++at;
      return at - from;
    };
    const std::size_t first = at, whole = digits();
    if (whole == 0 || (whole > 1 && rest_[first] == '0')) return false;
    if (at < rest_.size() && rest_[at] == '.') {
      ++at;
      if (digits() == 0) return false;
    }
    const auto read = std::from_chars(rest_.data(), rest_.data() + at, value);
    if (read.ec != std::errc()) return false;
    rest_.remove_prefix(at);
    return true;
  }
  std::string_view rest_;
};

class PlanReader {
 public:
  explicit PlanReader(const std::string& file) : reader_{faults_, file, LengthUnit::mm, "", nullptr} { plan_.file = file; }

  Outcome<FrozenPlan> run() {
    auto text = TextInPieces::open(plan_.file, largest_plan, faults_);
    Node root;
    // Of a scanned blade the tree would be many times the file. What is read here is kept whatever else is found to be wrong, and
    // what is wrong with it is told after all else.
    const std::vector<LongList> lists{
        {"stations", 1, [this](const Node& station) { with_own(of_stations_, [&] { take_station(station); }); }},
        {"offsets", 3, [this](const Node& row) { with_own(of_rows_, [&] { read_offset(row); }); },
         [this](std::string_view rest) { return read_plain_offsets(rest); }},
        {"stations", 2, [](const Node&) {}}};  // of the water: not needed
    if (text && read_tree(*text, plan_.file, faults_, root, most_values, lists)) read_root(root);
    if (!faults_.none()) return faults_.in_order();
    return std::move(plan_);
  }

 private:
  void fault(int line, std::string what, std::string remedy) {
    faults_.add({plan_.file, line}, std::move(what), std::move(remedy));
  }

  /// The value of a key that plan.json always has; a plan without it is another version's.
  const Node* of(const Node& object, std::string_view key) {
    const Node* found = object.find(key);
    if (!found && faults_.none()) {
      fault(object.line, "this plan has no " + in_quotes(key) + ": it was written by another version of fairblade",
            "plan the job again with this one, into a new folder");
    }
    return found;
  }
  double number(const Node& object, std::string_view key, Range range = lengths) {
    const Node* found = of(object, key);
    return found ? reader_.number(*found, key, range).value_or(0) : 0;
  }
  std::optional<double> maybe(const Node& object, std::string_view key) {
    const Node* found = of(object, key);
    if (!found || found->kind == NodeKind::null) return std::nullopt;
    return reader_.number(*found, key, lengths);
  }
  std::string words(const Node& object, std::string_view key) {
    const Node* found = of(object, key);
    if (!found) return {};
    if (found->kind == NodeKind::text) return found->text;
    reader_.refuse(*found, key, give_folder);
    return {};
  }
  /// The items of a list of objects; none where it is something else, which is then a fault.
  const std::vector<Node>& objects(const Node& object, std::string_view key) {
    static const std::vector<Node> none;
    const Node* found = of(object, key);
    if (!found) return none;
    if (found->kind == NodeKind::list) {
      for (const Node& item : found->items) {
        if (item.kind == NodeKind::object) continue;
        reader_.refuse(item, key, give_folder);
        return none;
      }
      return found->items;
    }
    reader_.refuse(*found, key, give_folder);
    return none;
  }

  void read_root(const Node& root) {
    if (root.kind != NodeKind::object || !root.find("fairblade")) {
      const bool is_job = root.kind == NodeKind::object && root.find("job") && root.find("stations");
      return fault(0, is_job ? "this is a job file, not a plan" : "this is no plan of fairblade's",
                   is_job ? "plan it first, and give the folder that fairblade plan wrote" : give_folder);
    }
    if (!root.find("stations") || !root.find("volumes")) {
      return fault(0, "fairblade wrote this, but it is no plan", give_folder);
    }
    plan_.job = words(root, "job");
    const auto unit = length_unit(words(root, "units"));
    if (unit) plan_.units = *unit;
    else if (faults_.none()) fault(root.find("units")->line, "\"units\" is none of mm, cm and in", give_folder);
    plan_.reading_error = number(root, "reading_error", {0.001, 50});
    plan_.bottom = maybe(root, "bottom");
    if (!faults_.none()) return;
    read_stages(root);
    if (const Node* volumes = of(root, "volumes")) {
      plan_.add = number(*volumes, "add", anything);
      plan_.remove = number(*volumes, "remove", anything);
      plan_.taken_by_coats = number(*volumes, "taken_by_coats", anything);
      const Node* before = of(*volumes, "before_coats");
      const bool coats = before && before->kind != NodeKind::null;
      plan_.remove_before_coats = coats ? number(*before, "remove", anything) : plan_.remove;
    }
    for (const Node& one : objects(root, "sources")) plan_.sources.push_back({words(one, "file"), words(one, "fnv1a64")});
    objects(root, "stations");  // there, and a list
    if (faults_.none()) faults_ = of_stations_.none() ? of_rows_ : of_stations_;
    if (faults_.none() && plan_.stations.empty()) fault(0, "this plan has no stations", give_folder);
  }

  void read_stages(const Node& root) {
    static constexpr std::array<std::string_view, 3> names{"bare", "glassed", "final"};
    for (const Node& one : objects(root, "stages")) {
      const Node* name = of(one, "name");
      if (!name || !reader_.word(*name, "name", names)) return;
      plan_.stages.push_back({name->text, number(one, "to_come", {0, 100}), words(one, "surface")});
    }
    if (plan_.stages.empty() && faults_.none()) fault(root.line, "this plan has no stages", give_folder);
  }

  void read_station(const Node& node) {
    FrozenStation station;
    station.name = words(node, "name");
    station.down = number(node, "down");
    const Node* calipers = of(node, "calipers");
    if (calipers) station.calipers = reader_.truth(*calipers, "calipers").value_or(false);
    const Node* target = of(node, "target");
    if (!target || !faults_.none()) return;
    station.target_chord = number(*target, "chord", {1, 20000});
    station.target_ahead = maybe(*target, "ahead");
    if (target->find("leading_edge_left_to")) station.left_to = number(*target, "leading_edge_left_to", {0, 20000});
    const Node* curve = of(*target, "curve");
    if (!curve || !faults_.none()) return;
    read_list(*curve, "x", station.x);
    read_list(*curve, "port", station.port);
    read_list(*curve, "starboard", station.starboard);
    if (faults_.none()) check_curve(*curve, station);
    objects(node, "offsets");  // there, and a list
    if (!faults_.none()) return;
    station.readings = std::move(offsets_);
    station.readings.shrink_to_fit();
    if (!plan_.stations.empty() && faults_.none() && !(station.down > plan_.stations.back().down)) {
      fault(node.line, "station " + station.name + " does not lie below the one before it", give_folder);
    }
    plan_.stations.push_back(std::move(station));
  }

  template <class Read>
  void with_own(Faults& own, const Read& read) {
    if (!own.none()) return;
    std::swap(own, faults_);
    read();
    std::swap(own, faults_);
  }
  void take_station(const Node& node) {
    if (node.kind != NodeKind::object) reader_.refuse(node, "stations", give_folder);
    else read_station(node);
    offsets_.clear();
  }
  void read_offset(const Node& row) {
    if (row.kind != NodeKind::object) return reader_.refuse(row, "offsets", give_folder);
    const std::string side = words(row, "side");
    const double x = number(row, "x"), measured = number(row, "measured");
    if (side != "port" && side != "starboard" && faults_.none()) fault(row.line, "\"side\" is " + in_quotes(side), give_folder);
    if (faults_.none()) offsets_.push_back({x, side == "port", measured});
  }

  /// As read_offset, of all that are written as `plan` writes them: two million, of a scan.
  std::size_t read_plain_offsets(std::string_view rest) {
    const std::size_t all = rest.size();
    std::size_t left = all;
    for (PlainRow row(rest); row.read(); left = row.rest().size()) {
      if (std::max(std::abs(row.x), std::abs(row.measured)) > lengths.high) break;
      if (of_rows_.none()) offsets_.push_back({row.x, row.port, row.measured});
    }
    return all - left;
  }

  void read_list(const Node& curve, std::string_view key, std::vector<double>& out) {
    const Node* list = of(curve, key);
    if (!list) return;
    if (list->kind != NodeKind::list) return reader_.refuse(*list, key, give_folder);
    for (const Node& item : list->items) {
      const auto value = reader_.number(item, key, lengths);
      if (!value) return;
      out.push_back(*value);
    }
  }

  void check_curve(const Node& curve, const FrozenStation& station) {
    const std::size_t count = station.x.size();
    bool sound = count >= 20 && station.port.size() == count && station.starboard.size() == count;
    for (std::size_t k = 1; sound && k < count; ++k) sound = station.x[k] > station.x[k - 1];
    // Its ends are the target's, and no half-breadth is as wide as the chord is long: someone's edit else.
    const double chord = station.target_chord;
    sound = sound && std::abs(station.x.back() - station.x.front() - chord) <= 0.01 * chord;
    for (std::size_t k = 0; sound && k < count; ++k)
      sound = std::max(std::abs(station.port[k]), std::abs(station.starboard[k])) < chord;
    if (!sound) fault(curve.line, "the target's curve of station " + station.name + " is not whole", give_folder);
  }

  Faults faults_;
  Reader reader_;  ///< of lengths in mm
  FrozenPlan plan_;
  std::vector<FrozenReading> offsets_;  ///< of the station being read
  Faults of_stations_, of_rows_;        ///< of the first that is wrong
};

}  // namespace

Outcome<FrozenPlan> read_frozen_plan(const std::string& path) {
  namespace fs = std::filesystem;
  std::error_code error;
  if (!fs::is_directory(path, error)) return PlanReader(path).run();
  const std::string inside = (fs::path(path) / "plan.json").string();
  if (!fs::exists(inside, error)) return Fault{{path, 0}, "there is no plan.json in this folder", give_folder};
  return PlanReader(inside).run();
}

}  // namespace fairblade::job
