#include "job/round.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "job/csv_readings.hpp"
#include "job/file_text.hpp"
#include "job/stations.hpp"
#include "job/target_keys.hpp"

namespace fairblade::job {
namespace {

constexpr std::uintmax_t largest_round = 512u << 20;  // bytes
constexpr Range error_range{0.001, 50};               // mm, as in a job

class RoundReader {
 public:
  RoundReader(const std::string& path, const std::vector<std::string>& known) : known_(known) { round_.file = path; }

  Outcome<Round> run(LengthUnit unit) {
    const auto text = read_text(round_.file, largest_round, faults_);
    auto content = text ? read_csv(*text, round_.file, unit, true, known_, faults_) : std::nullopt;
    if (content && content->whole && !anything_read(*content, faults_)) content.reset();
    if (content) {
      round_.unit = content->unit;
      read_keys(*content);
      for (CsvStation& station : content->stations) {
        const bool left_out = station.readings.empty() && content->whole;  // a station that was not read this time
        if (!faults_.full() && !left_out) read_station(*content, station);
      }
    }
    if (!faults_.none()) return faults_.in_order();
    return std::move(round_);
  }

 private:
  Reader reader(const CsvContent& content) { return {faults_, content.file, content.unit, "", nullptr}; }

  /// Is it a key that a CSV sets for a job?
  static bool of_a_job(std::string_view key) {
    static constexpr std::array<std::string_view, 14> keys{
        "job",   "coating_to_strip", "bottom", "speed", "centre_station", "coats", "fillers", "workshop",
        "zones", "nose_glass",       "packs",  "water", "print",          "target"};
    const std::string_view first = key.substr(0, key.find('.'));
    const auto of_target = target_keys();
    return std::find(keys.begin(), keys.end(), first) != keys.end() ||
           std::find(of_target.begin(), of_target.end(), key) != of_target.end();
  }

  /// What the row says, the two words for a leading edge being one to whoever reads the method.
  std::string which_edge(const KeyRow& row) {
    const std::string& said = row.values.front();
    if (row.key != "x_from" || (said != "old-leading-edge" && said != "new-leading-edge")) return said;
    round_.leading_edge = said == "old-leading-edge" ? LeadingEdge::before_the_work : LeadingEdge::now;
    return std::string(name_of(XFrom::leading_edge));
  }

  void read_stage(const KeyRow& row, const Place& place) {
    static constexpr std::array<std::string_view, 3> stages{"bare", "glassed", "final"};
    const std::string remedy = "write stage,bare or stage,glassed or stage,final";
    if (row.values.size() > 1) return faults_.add(place, in_quotes(row.key) + " is a list", remedy);
    const std::string said = lower_case(row.values.front());  // a phone writes a capital
    if (std::find(stages.begin(), stages.end(), said) == stages.end())
      return faults_.add(place, in_quotes(row.values.front()) + " is no stage", remedy);
    round_.stage = said;
    round_.stage_line = row.line;
  }

  /// One value, or the list of several that the reader of one then refuses.
  Node value_of_key(const KeyRow& row, char delimiter) {
    if (row.values.size() == 1) return node_of_text(which_edge(row), row.line);
    Node out;
    out.kind = NodeKind::list;
    out.line = row.line;
    out.loose = true;
    out.by_commas = delimiter == ',';
    for (const std::string& one : row.values) out.items.push_back(node_of_text(one, row.line));
    return out;
  }

  void read_keys(const CsvContent& content) {
    static constexpr std::array<std::string_view, 6> ours{"units", "x_from", "board", "measured_by", "reading_error", "stage"};
    std::vector<const KeyRow*> seen;  // of ours
    for (const KeyRow& row : content.header.keys) {
      const Place place{content.file, row.line};
      const auto twice = std::find_if(seen.begin(), seen.end(), [&](const KeyRow* one) { return one->key == row.key; });
      if (twice != seen.end()) {
        faults_.add(place, stands_twice(**twice), "keep one of the two");
        continue;
      }
      const bool our_own = std::find(ours.begin(), ours.end(), row.key) != ours.end();
      if (our_own) seen.push_back(&row);
      if (!our_own) {
        if (of_a_job(row.key)) {
          if (!row.values.empty()) round_.job_keys.push_back(row.key);
          continue;
        }
        const std::string near = nearest_name(row.key, ours);
        faults_.add(place, in_quotes(row.key) + " stands above the header row",
                    near.empty()
                        ? "only units, x_from, board, measured_by, reading_error and stage may stand here: the target is the "
                          "plan's"
                        : "did you mean " + in_quotes(near) + "?");
      } else if (row.values.empty()) {
        faults_.add(place, in_quotes(row.key) + " has no value", "write key,value or take the row out");
      } else if (row.key == "reading_error") {
        round_.reading_error = reader(content).length(value_of_key(row, content.header.delimiter), "reading_error", error_range);
      } else if (row.key == "stage") {
        read_stage(row, place);
      } else if (row.key != "units") {
        method_.set(row.key, value_of_key(row, content.header.delimiter));
        round_.x_from_told = round_.x_from_told || row.key == "x_from";
      }
    }
    method_.kind = NodeKind::object;
  }

  void read_station(const CsvContent& content, CsvStation& from) {
    Reader own = reader(content);
    own.of = " of station " + from.name;
    RoundStation out;
    out.name = from.name;
    out.place = {content.file, from.line};
    const auto length = [&](const char* key, Range range) -> std::optional<double> {
      const Node* node = from.node.find(key);
      return node ? own.length(*node, key, range) : std::nullopt;
    };
    out.down = length("down", {-20000, 20000});
    out.chord = length("chord", {10, 5000});
    out.ahead = length("ahead", {-5000, 5000});
    StationDraft draft;
    draft.station.name = from.name;
    Node method = method_;
    if (const Node* board = from.node.find("board")) method.set("board", *board);
    read_method(own, method, draft);
    if (!draft.sound || !take_csv_readings(own, std::move(from), content, draft)) return;
    out.x_from = draft.x_from;
    out.measured_by = draft.station.measured_by;
    out.readings = std::move(draft.station.readings);
    if (out.measured_by == MeasuredBy::gaps && !gaps_to_breadths(draft, out)) return;
    round_.stations.push_back(std::move(out));
  }

  bool gaps_to_breadths(const StationDraft& draft, RoundStation& out) {
    if (!draft.board_port || !draft.board_starboard) {
      faults_.add(out.place, "\"board\" of station " + out.name + " is missing",
                  "these are gaps: put a row board,DISTANCE above the header, the straightedge's distance from the "
                  "centre plane");
      return false;
    }
    for (Reading& reading : out.readings) job::gaps_to_breadths(draft, reading);
    return true;
  }

  const std::vector<std::string>& known_;
  Faults faults_;
  Round round_;
  Node method_;  ///< x_from and board of all stations
};

}  // namespace

Outcome<Round> read_round(const std::string& path, LengthUnit unit, const std::vector<std::string>& known) {
  return RoundReader(path, known).run(unit);
}

}  // namespace fairblade::job
