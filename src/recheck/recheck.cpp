#include "recheck/recheck.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/numerics.hpp"
#include "base/text.hpp"
#include "job/own_error.hpp"

namespace fairblade::recheck {
namespace {

constexpr double false_alarms = 0.005;  // of rounds of noise alone, by each of three tests
constexpr double clearly = 3;           // standard deviations of a mean that is told in so many words

void count(RoundResult& out, double tolerance) {
  for (const HeightRead& height : out.heights) {
    for (const Judged& one : height.readings) {
      ++out.readings;
      out.within += within(one, tolerance) ? 1 : 0;
      if (one.alone) continue;
      out.deepest_low = std::max(out.deepest_low, one.depth);
      out.deepest_high = std::max(out.deepest_high, -one.depth);
    }
  }
}

/// The readings' own scatter, as a share of what was told; the median takes no notice of what is left to do here and
/// there. A median of n sizes has a standard deviation of 1.16 / sqrt(n) of itself: it is taken higher by nearly two of
/// those, lest half of all honest rounds be judged too strictly. The round of the nose, where readings are crowded and little of
/// their error reaches the depth, would have the rest judged too strictly as well.
double own_share(const std::vector<HeightRead>& heights) {
  constexpr std::size_t enough = 20;
  constexpr double least = 1.0 / 3, median_of_normal = 0.6745;
  std::vector<double> sizes;
  for (const HeightRead& height : heights) {
    for (const Judged& one : height.readings) {
      if (!one.steep && (!one.both || one.face == Face::port)) sizes.push_back(std::abs(one.depth) / one.sigma);
    }
  }
  if (sizes.size() < enough) return 1;
  const double upward = 1 + 2 / std::sqrt(static_cast<double>(sizes.size()));
  return std::clamp(upward * median(std::move(sizes)) / median_of_normal, least, 1.0);
}

/// Are the readings what a perfect blade would give? Their greatest, their sum of squares and their mean, each held to
/// what chance gives once in two hundred rounds.
bool no_more_than_noise(const RoundResult& round, Recheck& out) {
  double squares = 0, sum = 0, weight = 0, greatest = 0, n = 0;
  for (const HeightRead& height : round.heights) {
    for (const Judged& one : height.readings) {
      if (one.both && one.face == Face::starboard) continue;
      const double z = one.depth / one.sigma;
      squares += z * z;
      greatest = std::max(greatest, std::abs(z));
      if (!one.alone) {  // one that may be a slip does not tell of another surface
        sum += one.depth / (one.sigma * one.sigma);
        weight += 1 / (one.sigma * one.sigma);
      }
      ++n;
    }
  }
  out.common = sum / weight;
  out.common_error = 1 / std::sqrt(weight);
  const auto passes = [](double z, double tests) { return 2 * normal_below(-z) * tests < false_alarms; };
  // Wilson and Hilferty (1931): the cube root of chi² / n is all but normal.
  const double cube = std::cbrt(squares / n), spread = 2 / (9 * n);
  const bool many = passes(std::max(0.0, (cube - (1 - spread)) / std::sqrt(spread)), 0.5);
  const bool shifted = passes(std::abs(out.common) / out.common_error, 1) && std::abs(out.common) > 0.1 * round.reading_error;
  return !passes(greatest, n) && !many && !shifted;
}

double expected_beyond(const RoundResult& round, double tolerance) {
  double out = 0;
  for (const HeightRead& height : round.heights) {
    for (const Judged& one : height.readings) out += 2 * normal_below(-tolerance / one.sigma);
  }
  return out;
}

std::vector<Aside> asides_of(const RoundResult& round) {
  std::vector<Aside> out;
  for (std::size_t h = 0; h < round.heights.size(); ++h) {
    const HeightRead& height = round.heights[h];
    if (height.calipers) continue;
    double mean[2] = {0, 0}, error[2] = {0, 0};
    bool read = true;
    for (const Face face : {Face::port, Face::starboard}) {
      const auto own = height.of(face);
      const std::size_t f = face == Face::port ? 0 : 1;
      read = read && own.size() >= 3;
      for (const std::size_t k : own) mean[f] += height.readings[k].depth / static_cast<double>(own.size());
      error[f] = round.reading_error / std::sqrt(std::max<double>(1, static_cast<double>(own.size())));
    }
    if (!read) continue;
    const double across = (mean[1] - mean[0]) / 2, along = (mean[1] + mean[0]) / 2;
    const double own = std::hypot(error[0], error[1]) / 2;
    const bool opposite = (mean[0] > 0) != (mean[1] > 0);
    const double lesser = std::min(std::abs(mean[0]), std::abs(mean[1]));
    const bool both = opposite && lesser > clearly * std::max(error[0], error[1]);
    if (both && std::abs(across) > 2 * std::abs(along) && std::abs(across) > job::disagree_beyond * own)
      out.push_back({h, across});
  }
  return out;
}

class Maker {
 public:
  Maker(job::FrozenPlan plan, const Options& options) : plan_(std::move(plan)) { out_.options = options; }

  Outcome<Recheck> run(const std::vector<std::string>& files) {
    auto frozen = freeze(plan_, out_.options.stage);
    if (!frozen) return frozen.faults();
    out_.frozen = std::move(*frozen);
    std::vector<std::string> known;
    for (const auto& one : plan_.stations) known.push_back(one.name);
    if (auto fault = start()) return *fault;
    std::vector<Fault> faults;
    for (const std::string& file : files) {
      if (auto fault = read(file, known, &file == &files.back())) faults.insert(faults.end(), fault->begin(), fault->end());
    }
    if (!faults.empty()) return faults;
    judge();
    say();
    return std::move(out_);
  }

 private:
  std::string shown(double mm) const { return in_unit(mm, plan_.units); }

  std::optional<std::vector<Fault>> read(const std::string& file, const std::vector<std::string>& known, bool last) {
    RoundResult result;
    result.file = file;
    if (auto faults = place(file, known, last, result)) return faults;
    const double share = own_share(result.heights);
    result.reading_error = share * result.told_error;
    for (HeightRead& height : result.heights) {
      for (Judged& one : height.readings) one.sigma *= share;
    }
    finish(result);
    open_.read_again(result.heights);
    if (last) {
      out_.left_open = open_.at_heights_of(result.heights);
    } else {
      open_.add(file, result.heights, out_.options.tolerance);
      result.heights = {};
    }
    out_.rounds.push_back(std::move(result));
    return std::nullopt;
  }

  /// The readings as they lie on the sheet are gone when this is done: a scan has millions.
  std::optional<std::vector<Fault>> place(const std::string& file, const std::vector<std::string>& known, bool last,
                                          RoundResult& result) {
    const auto round = job::read_round(file, plan_.units, known);
    if (!round) return round.faults();
    result.told_error = round->reading_error.value_or(plan_.reading_error);
    if (auto faults = take_stage(*round, last)) return faults;
    Assumed assumed;
    auto heights = place_round(of_round(), *round, result.told_error, assumed);
    if (!heights) return heights.faults();
    result.heights = std::move(*heights);
    result.stage = of_round().stage.kind;
    result.stage_line = round->stage_line;
    if (!last) return std::nullopt;
    out_.defaults = assumed.defaults;
    out_.notes = assumed.notes;
    if (!round->reading_error) out_.defaults.push_back({"reading_error", shown(plan_.reading_error) + ", the plan's"});
    compare_calipers(*round, result);
    if (!round->job_keys.empty()) {
      out_.notes.push_back(file + ": " + joined(round->job_keys) +
                           " above the header count for nothing here; what was planned holds.");
    }
    return std::nullopt;
  }

  void finish(RoundResult& result) {
    mark_alone(result.heights, doubted_);
    count(result, out_.options.tolerance);
    result.litres = litres_left(of_round(), result.heights);
  }

  /// The target at the stage of the round in hand.
  const Frozen& of_round() const { return other_ ? *other_ : out_.frozen; }

  /// The stage that a file tells of itself. What the last one tells is what all is told of.
  std::optional<std::vector<Fault>> take_stage(const job::Round& round, bool last) {
    other_.reset();
    if (round.stage.empty() || round.stage == fill::name_of(out_.frozen.stage.kind)) return std::nullopt;
    auto frozen = freeze(plan_, round.stage);
    if (!frozen) {
      Fault fault = frozen.faults().front();
      fault.place = {round.file, round.stage_line};
      return std::vector<Fault>{fault};
    }
    if (!last) {
      other_ = std::move(*frozen);
      return std::nullopt;
    }
    out_.options.stage = round.stage;
    out_.frozen = std::move(*frozen);
    auto again = job::read_frozen_plan(plan_.file);  // its readings are gone
    if (!again) return again.faults();
    plan_ = std::move(*again);
    return start();
  }

  std::optional<std::vector<Fault>> start() {
    other_.reset();
    out_.first = {};
    auto heights = place_first(out_.frozen, plan_);
    if (!heights) return heights.faults();
    for (job::FrozenStation& one : plan_.stations) std::vector<job::FrozenReading>().swap(one.readings);  // not asked again
    out_.first.file = plan_.file;
    out_.first.told_error = out_.first.reading_error = plan_.reading_error;
    out_.first.stage = out_.frozen.stage.kind;
    out_.first.heights = std::move(*heights);
    finish(out_.first);
    out_.first.heights = {};
    // Extensions were not there to be read, so the plan's own litres stand for them, less what the coats to come fill.
    const bool shaped = out_.frozen.stage.kind == out_.frozen.stages.front().kind && out_.frozen.stages.size() > 1;
    out_.first.litres.left = {std::max(0.0, plan_.add - (shaped ? plan_.taken_by_coats : 0)),
                              shaped ? plan_.remove_before_coats : plan_.remove};
    return std::nullopt;
  }

  void judge() {
    RoundResult& now = out_.rounds.back();
    out_.spots = find_spots(now.heights, out_.options.tolerance);
    out_.aside = asides_of(now);
    out_.beyond_by_chance = expected_beyond(now, out_.options.tolerance);
    const bool noise = no_more_than_noise(now, out_);
    if (now.within == now.readings) out_.verdict = Verdict::nothing_left;
    else if (noise && out_.spots.empty()) out_.verdict = Verdict::reading_error;
  }

  /// Where both faces and the thickness were read, they must agree.
  void compare_calipers(const job::Round& round, const RoundResult& result) {
    for (const job::RoundStation& station : round.stations) {
      if (station.measured_by == job::MeasuredBy::thickness) continue;
      for (const job::Reading& one : station.readings) {
        if (!one.port || !one.starboard || !one.caliper) continue;
        const double off = *one.port + *one.starboard - *one.caliper;
        if (std::abs(off) <= job::disagree_beyond * std::sqrt(3.0) * result.told_error) continue;
        out_.notes.push_back(station.name + " at x " + shown(one.x) + ": port + starboard is " + shown(std::abs(off)) +
                             (off > 0 ? " more" : " less") + " than the calipers say (" + round.file + ":" +
                             std::to_string(one.line) + "): read it again.");
      }
    }
  }

  void say() {
    say_sources();
    const RoundResult& now = out_.now();
    for (const auto& target : out_.frozen.targets) {
      const auto here = [&](const HeightRead& one) { return one.surface.down == target.down; };
      if (std::none_of(now.heights.begin(), now.heights.end(), here)) out_.unread.push_back(target.station);
    }
    const std::string missing = joined(out_.unread);
    if (!missing.empty()) {
      out_.notes.push_back("Not read this time: station " + missing + ". The litres take what was read next to it" +
                           (now.litres.carried_on ? ", carried on to the plan's first and last station." : "."));
    }
    if (now.heights.size() == 1)
      out_.notes.push_back("One height alone was read: the litres are as if the whole blade were like it.");
    for (const HeightRead& height : now.heights) {
      for (const Face face : {Face::port, Face::starboard}) {
        if (height.of(face).empty())
          out_.notes.push_back(height.surface.name + ": nothing was read to " + section::name_of(face) + ".");
      }
      if (height.beyond_edge > 0) {
        out_.notes.push_back(height.surface.name + ": " + std::to_string(height.beyond_edge) +
                             (height.beyond_edge == 1 ? " reading lies" : " readings lie") +
                             " aft of the target's trailing edge and cannot be judged; "
                             "a column \"chord\" would tell how much is to be cut back.");
      }
      say_edges(height);
    }
    say_stage();
  }

  /// Do half of the last round's readings lie beyond that depth, to its side? A few far out move the mean as well.
  bool half_out_by(double depth) const {
    std::size_t beyond = 0, all = 0;
    for (const HeightRead& height : out_.now().heights) {
      for (const Judged& one : height.readings) beyond += depth > 0 ? one.depth > depth : one.depth < depth;
      all += height.readings.size();
    }
    return 2 * beyond >= all;
  }

  /// All over as high as coats are thick: they may be on already. As low: they may not be on yet.
  void say_stage() {
    const auto coats_to = [&](const fill::Stage& other) {
      return out_.frozen.stage.to_come - other.to_come;
    };  // from this one on
    const fill::Stage* best = &out_.frozen.stage;
    for (const fill::Stage& other : out_.frozen.stages) {
      if (std::abs(out_.common + coats_to(other)) < std::abs(out_.common + coats_to(*best))) best = &other;
    }
    const double coats = coats_to(*best);
    if (coats == 0 || std::abs(out_.common + coats) > 0.4 * std::abs(coats) ||
        std::abs(out_.common) < clearly * out_.common_error || !half_out_by(-coats / 2))
      return;
    const std::string name = fill::name_of(best->kind);
    out_.other_stage = OtherStage{name, coats};
  }

  void say_edges(const HeightRead& height) {
    const auto part_read = [&](Face face, bool aft) {
      const auto own = height.of(face);
      if (own.empty()) return true;
      const auto& section = height.surface.section;
      const double chord = section.trailing_edge_x - section.leading_edge_x;
      return aft ? height.readings[own.back()].x > section.trailing_edge_x - 0.15 * chord
                 : height.readings[own.front()].x < section.leading_edge_x + 0.05 * chord;
    };
    for (const bool aft : {false, true}) {
      if (part_read(Face::port, aft) && part_read(Face::starboard, aft)) continue;
      out_.notes.push_back(height.surface.name + ": nothing was read near the " + (aft ? "trailing" : "leading") +
                           " edge; the litres carry the nearest reading on to it.");
    }
  }

  /// A file given twice, or the plan's own, is no round of work.
  void say_same_files() {
    std::map<std::string, std::string> seen;  // digest, and what it was
    for (const job::Source& one : plan_.sources) {
      if (!one.digest.empty()) seen.emplace(one.digest, "what the plan was made from");
    }
    for (std::size_t k = 0; k < out_.rounds.size(); ++k) {
      const auto digest = job::digest_of_file(out_.rounds[k].file);
      if (!digest) continue;
      const auto [known, is_new] = seen.emplace(*digest, "round " + std::to_string(k + 1) + " once more");
      if (!is_new) out_.notes.push_back(out_.rounds[k].file + " is " + known->second + ": nothing was read again.");
    }
  }

  void say_sources() {
    say_same_files();
    for (const job::Source& one : plan_.sources) {
      const auto state = job::state_of(one);
      if (state == job::SourceState::changed) {
        out_.notes.push_back(one.file +
                             " was changed since the plan was made. That moves nothing here: the target is the plan's. "
                             "Templates cut from another plan would not fit it.");
      } else if (state == job::SourceState::gone) {
        out_.notes.push_back(one.file +
                             " is not to be found from here, so whether it was changed since the plan is not known. "
                             "It is not needed.");
      }
    }
    if (plan_.sources.empty()) out_.notes.push_back("The plan does not say which job it was made from.");
  }

  OpenPlaces open_;
  std::vector<Doubted> doubted_;
  std::optional<Frozen> other_;  // of a round of another stage than the last
  job::FrozenPlan plan_;
  Recheck out_;
};

}  // namespace

const char* name_of(Verdict verdict) {
  return verdict == Verdict::nothing_left ? "nothing left" : verdict == Verdict::reading_error ? "within reading error" : "go on";
}

Outcome<Recheck> recheck(job::FrozenPlan plan, const std::vector<std::string>& readings, const Options& options) {
  return Maker(std::move(plan), options).run(readings);
}

}  // namespace fairblade::recheck
