#include "recheck/placed.hpp"

#include <algorithm>
#include <cmath>

#include "base/side_by_side.hpp"
#include "base/text.hpp"
#include "job/own_error.hpp"
#include "recheck/mistaken.hpp"
#include "recheck/nearest.hpp"
#include "recheck/old_marks.hpp"

namespace fairblade::recheck {
namespace {

constexpr double built_out = 0.25;    // of the chord: how far beyond the target's edges a blade may stand, counted from the stock
constexpr double not_cut_yet = 0.05;  // aft of them, where no chord was told
constexpr double elsewhere = 0.5;     // of the chord: so far from the target's no leading edge stands
constexpr double same_height = 0.05;  // mm

/// Where the edges are now, in the frame of the surface; told by the row, or taken from the target.
struct Edges {
  double leading = 0, trailing = 0;
  double marks = 0;  ///< where x = 0 lies, of x that is counted from a leading edge
};

class Placer {
 public:
  Placer(HeightRead& out, double sigma) : out_(out), sigma_(sigma) {}

  /// Lays one reading against the face; what lies beyond the target's trailing edge has no face to lie on.
  void lay(double read_x, job::XFrom from, double x, const job::Reading& reading, bool calipers, bool old_edge = false) {
    const auto& section = out_.surface.section;
    if (x > section.trailing_edge_x + job::reading_errors_outside * sigma_) {
      ++out_.beyond_edge;
      return;
    }
    x = std::min(x, section.trailing_edge_x);
    std::array<std::optional<double>, 2> breadths{reading.port, reading.starboard};
    const double port = ordinate_at(section.port, x), starboard = ordinate_at(section.starboard, x);
    if (calipers && reading.caliper) {
      const double half_short = (*reading.caliper - port - starboard) / 2;
      breadths = {port + half_short, starboard + half_short};
    }
    for (const Face face : {Face::port, Face::starboard}) {
      const auto& half = breadths[face == Face::port ? 0 : 1];
      if (!half) continue;
      Judged one;
      one.read_x = read_x;
      one.from = from;
      one.from_old_edge = old_edge;
      one.x = x;
      one.face = face;
      one.both = calipers;
      one.half_breadth = *half;
      one.target = face == Face::port ? port : starboard;
      one.sigma = calipers ? sigma_ / 2 : sigma_;
      one.line = reading.line;
      out_.readings.push_back(one);
    }
  }

  /// Repeats become their mean, then each is judged.
  void judge() {
    auto& all = out_.readings;
    std::stable_sort(all.begin(), all.end(),
                     [](const Judged& a, const Judged& b) { return a.face != b.face ? a.face == Face::port : a.x < b.x; });
    std::size_t kept = 0;
    double least = 0, greatest = 0;
    for (const Judged& one : all) {
      Judged* mean = kept > 0 ? &all[kept - 1] : nullptr;
      if (mean && mean->face == one.face && one.x - mean->x <= job::same_place) {
        mean->half_breadth += (one.half_breadth - mean->half_breadth) / ++mean->repeats;
        least = std::min(least, one.half_breadth);
        greatest = std::max(greatest, one.half_breadth);
        mean->sure = alike(greatest, least, one.sigma, one.sigma);
      } else {
        all[kept++] = one;
        least = greatest = one.half_breadth;
      }
    }
    all.resize(kept);
    all.shrink_to_fit();
    const std::array<FaceLine, 2> faces{FaceLine(out_.surface.section.port), FaceLine(out_.surface.section.starboard)};
    for (Judged& one : all) {
      const Nearest found = faces[one.face == Face::port ? 0 : 1].nearest(one.x, one.half_breadth);
      one.depth = found.depth;
      one.girth = found.girth;
      one.steep = found.steep;
      one.sigma /= std::sqrt(static_cast<double>(one.repeats));
    }
    out_.girth = {faces[0].girth(), faces[1].girth()};
  }

 private:
  HeightRead& out_;
  double sigma_;
};

class RoundPlacer {
 public:
  RoundPlacer(const Frozen& frozen, const job::Round& round, double sigma, Assumed& assumed)
      : frozen_(frozen), round_(round), sigma_(sigma), assumed_(assumed), marks_(round.file, frozen.job.units, sigma) {}

  Outcome<std::vector<HeightRead>> run() {
    for (const job::RoundStation& one : round_.stations) place(one);
    if (!faults_.empty()) return faults_;
    if (const auto old = marks_.refusal()) return *old;
    if (!round_.stations.empty()) {
      if (const auto other = of_no_such_blade(out_, round_.stations.front().place, frozen_.job.units)) return *other;
    }
    std::stable_sort(out_.begin(), out_.end(), [](const auto& a, const auto& b) { return a.surface.down < b.surface.down; });
    if (!round_.x_from_told) assumed_.defaults.push_back({"x_from", "leading-edge"});
    if (!from_old_.empty())
      assumed_.notes.push_back("x counts from the old leading edge, as it was before the work (" + joined(from_old_) +
                               "); ahead of it x is negative.");
    if (!taken_.empty()) {
      assumed_.defaults.push_back(
          {"ahead", "as in the target (" + taken_ + "): x is counted from the target's leading edge at this stage"});
    }
    if (!taken_aft_.empty()) {
      assumed_.defaults.push_back(
          {"chord", "as in the target (" + taken_aft_ + "): x is counted from the target's trailing edge at this stage"});
    }
    return std::move(out_);
  }

 private:
  std::string shown(double mm) const { return in_unit(mm, frozen_.job.units); }
  void fault(Place place, std::string what, std::string remedy) {
    faults_.push_back({std::move(place), std::move(what), std::move(remedy)});
  }

  /// The height that a station means; nothing and a fault where it means none.
  std::optional<double> height_of(const job::RoundStation& one) {
    const auto same = [&](const target::TargetSection& target) { return target.station == one.name; };
    const auto known = std::find_if(frozen_.targets.begin(), frozen_.targets.end(), same);
    if (known != frozen_.targets.end()) {
      if (one.down && std::abs(*one.down - known->down) > same_height) {
        fault(one.place,
              "station " + one.name + " is at " + shown(*one.down) + " down here and at " + shown(known->down) + " in the plan",
              "correct \"down\", or give the new height a name of its own");
        return std::nullopt;
      }
      return known->down;
    }
    if (!one.down) {
      std::vector<std::string_view> names;
      for (const auto& target : frozen_.targets) names.emplace_back(target.station);
      const std::string near = nearest_name(one.name, names);
      fault(one.place, "station \"" + one.name + "\" is not in the plan",
            (near.empty() ? std::string() : "did you mean \"" + near + "\"? Else ") + "give its height in a column \"down\"");
      return std::nullopt;
    }
    for (const auto& target : frozen_.targets) {
      if (std::abs(target.down - *one.down) > same_height) continue;
      fault(one.place,
            "station \"" + one.name + "\" is at " + shown(*one.down) + " down, where the plan has station " + target.station,
            "use the plan's name");
      return std::nullopt;
    }
    return one.down;
  }

  /// What the row tells of the edges, against the target's at this stage.
  std::optional<Edges> edges_of(const job::RoundStation& one, const Surface& surface, EdgesRead& read) {
    const auto& section = surface.section;
    const bool old_marks = round_.leading_edge == job::LeadingEdge::before_the_work;
    Edges now{section.leading_edge_x, section.trailing_edge_x, section.leading_edge_x};
    if (one.ahead) {
      if (!surface.origin_ahead) {
        fault(one.place, "\"ahead\" of station " + one.name + " cannot be used: the plan does not know where the stock is",
              "leave its cell empty");
        return std::nullopt;
      }
      now.leading = *surface.origin_ahead - *one.ahead;
      const double off = section.leading_edge_x - now.leading;
      if (std::abs(off) > elsewhere * (section.trailing_edge_x - section.leading_edge_x)) {
        fault(one.place,
              "\"ahead\" of station " + one.name + " puts its leading edge " + shown(std::abs(off)) +
                  (off > 0 ? " ahead" : " aft") + " of the target's",
              "ahead is counted from the stock's centreline to the leading edge: check it, and the units");
        return std::nullopt;
      }
      now.marks = now.leading;
      read.leading = now.leading - section.leading_edge_x;
    } else if (old_marks && one.x_from == job::XFrom::leading_edge) {
      from_old_.push_back(one.name);
    } else if (one.x_from == job::XFrom::leading_edge || (one.x_from == job::XFrom::trailing_edge && one.chord)) {
      taken_ += (taken_.empty() ? "" : ", ") + one.name;
    }
    if (old_marks) now.marks = 0;  // the frame's origin
    if (one.x_from == job::XFrom::trailing_edge && !one.chord) taken_aft_ += (taken_aft_.empty() ? "" : ", ") + one.name;
    if (one.chord) {
      now.trailing = now.leading + *one.chord;
      if (one.ahead) read.trailing = section.trailing_edge_x - now.trailing;
      else read.chord = section.trailing_edge_x - now.trailing;
    }
    if (one.x_from == job::XFrom::stock && !surface.origin_ahead) {
      fault(one.place, "x of station " + one.name + " is counted from the stock, and the plan does not know where that is",
            "count x from the leading edge");
      return std::nullopt;
    }
    return now;
  }

  void place(const job::RoundStation& one) {
    const auto down = height_of(one);
    if (!down) return;
    for (const HeightRead& other : out_) {
      if (std::abs(other.surface.down - *down) > same_height) continue;
      return fault(one.place, "stations " + other.surface.name + " and " + one.name + " are at the same height",
                   "give them one name");
    }
    auto surface = surface_at(frozen_, *down, one.name, one.place);
    if (!surface) {
      faults_.insert(faults_.end(), surface.faults().begin(), surface.faults().end());
      return;
    }
    HeightRead height;
    height.surface = std::move(*surface);
    height.calipers = one.measured_by == job::MeasuredBy::thickness;
    const auto now = edges_of(one, height.surface, height.edges);
    if (!now) return;
    const bool by_edge = one.x_from == job::XFrom::leading_edge;
    if (by_edge && !one.ahead && round_.leading_edge == job::LeadingEdge::not_told) marks_.weigh(one, height.surface);
    const bool old_marks = by_edge && round_.leading_edge == job::LeadingEdge::before_the_work;
    const auto x_of = [&](double read) {
      return one.x_from == job::XFrom::leading_edge    ? now->marks + read
             : one.x_from == job::XFrom::trailing_edge ? now->trailing - read
                                                       : *height.surface.origin_ahead + read;
    };
    if (auto fault = mistaken(one, height.surface, x_of, round_.unit, sigma_)) {
      faults_.push_back(std::move(*fault));
      return;
    }
    Placer placer(height, sigma_);
    for (const job::Reading& reading : one.readings) {
      const double x = x_of(reading.x);
      if (!sound(one, reading, x, *now)) return;
      // What is counted from the stock, or goes on aft where no chord was told, may stand beyond an edge of the target.
      const double from = one.x_from == job::XFrom::stock ? x : std::max(x, now->leading);
      placer.lay(reading.x, one.x_from, one.chord ? std::min(from, now->trailing) : from, reading, height.calipers, old_marks);
    }
    placer.judge();
    if (height.readings.empty())
      return fault(one.place, "station " + one.name + " has no reading on the target", "check its x and chord");
    out_.push_back(std::move(height));
  }

  bool sound(const job::RoundStation& one, const job::Reading& reading, double x, const Edges& now) {
    const Place place{round_.file, reading.line};
    const double outside = std::max(now.leading - x, x - now.trailing), chord = now.trailing - now.leading;
    const bool by_stock = one.x_from == job::XFrom::stock, aft = x > now.trailing;
    const double more = one.chord ? 0 : by_stock ? built_out * chord : aft ? not_cut_yet * chord : 0;
    if (outside > std::max(more, job::reading_errors_outside * sigma_)) {
      fault(place,
            "x = " + shown(reading.x) + " lies " + shown(outside) +
                (x < now.leading ? " ahead of the leading edge" : " beyond the trailing edge") + " of station " + one.name +
                (one.chord ? ", whose chord is " : ", whose chord is in the target ") + shown(chord),
            one.chord ? "check x, chord, ahead and x_from"
                      : "check x and x_from, or give the chord as it is now in a column \"chord\"");
      return false;
    }
    for (const auto& [value, name] :
         {std::pair{&reading.port, "port"}, {&reading.starboard, "starboard"}, {&reading.caliper, "caliper"}}) {
      const bool negative = *value && std::string_view(name) == "caliper" && **value < 0;
      if (!*value || (std::abs(**value) <= 2 * chord && !negative)) continue;
      fault(place,
            std::string(name) + " " + shown(**value) +
                (negative ? " is less than nothing" : " is more than twice the chord of station " + one.name),
            "check the reading, and the units");
      return false;
    }
    return true;
  }

  const Frozen& frozen_;
  const job::Round& round_;
  double sigma_;
  Assumed& assumed_;
  std::vector<HeightRead> out_;
  std::vector<Fault> faults_;
  OldMarks marks_;
  std::vector<std::string> from_old_;  ///< stations whose x counts from the old leading edge
  std::string taken_, taken_aft_;      ///< stations whose leading edge, whose trailing edge, is taken from the target
};

}  // namespace

std::vector<std::size_t> HeightRead::of(Face face) const {
  std::vector<std::size_t> out;
  for (std::size_t k = 0; k < readings.size(); ++k) {
    if (readings[k].face == face) out.push_back(k);
  }
  return out;
}

std::vector<std::size_t> HeightRead::counted(Face face) const {
  auto out = of(face);
  std::erase_if(out, [&](std::size_t k) { return readings[k].alone; });
  return out;
}

Outcome<std::vector<HeightRead>> place_round(const Frozen& frozen, const job::Round& round, double sigma, Assumed& assumed) {
  return RoundPlacer(frozen, round, sigma, assumed).run();
}

Outcome<std::vector<HeightRead>> place_first(const Frozen& frozen, const job::FrozenPlan& plan) {
  std::vector<Outcome<HeightRead>> out(plan.stations.size(), Fault{});
  side_by_side(out.size(), [&](std::size_t k) {
    const job::FrozenStation& one = plan.stations[k];
    auto surface = surface_at(frozen, one.down, one.name, {plan.file, 0});
    if (!surface) {
      out[k] = surface.faults();
      return;
    }
    HeightRead height;
    height.surface = std::move(*surface);
    height.calipers = one.calipers;
    Placer placer(height, plan.reading_error);
    for (const job::FrozenReading& row : one.readings) {
      job::Reading reading;
      reading.x = row.x;
      (row.port ? reading.port : reading.starboard) = row.measured;
      placer.lay(row.x, job::XFrom::leading_edge, row.x, reading, one.calipers);
    }
    placer.judge();
    out[k] = std::move(height);
  });
  auto all = all_or_faults(std::move(out));
  if (!all) return all.faults().front();  // it is the plan's, the same at every station
  return all;
}

}  // namespace fairblade::recheck
