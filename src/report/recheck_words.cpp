#include "report/recheck_words.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "report/layout.hpp"
#include "report/recheck.hpp"
#include "report/words.hpp"

namespace fairblade::report {

using recheck::HeightRead;
using recheck::Judged;
using recheck::Recheck;
using recheck::Spot;
using recheck::SpotKind;

namespace {

std::string length(const Recheck& recheck, double mm) {
  const LengthUnit unit = recheck.frozen.job.units;
  return trimmed(mm / millimetres_in(unit), unit == LengthUnit::mm ? 1 : unit == LengthUnit::cm ? 2 : 3);
}

bool whole(const Spot& spot) { return spot.kind == SpotKind::face_high || spot.kind == SpotKind::face_low; }

/// "from 40 to 100 aft".
std::string reach_words(const Recheck& recheck, const Spot& spot) {
  const HeightRead& height = recheck.now().heights[spot.worst_at.height];
  const Judged &a = height.readings[spot.worst_at.first], &b = height.readings[spot.worst_at.last];
  std::string from = length(recheck, a.read_x), to = place_words(recheck, b);
  if (a.from == job::XFrom::trailing_edge) from = length(recheck, b.read_x), to = place_words(recheck, a);
  return from + " to " + to;
}

std::string spot_words(const Recheck& recheck, const Spot& spot) {
  const auto& heights = recheck.now().heights;
  const HeightRead& height = heights[spot.worst_at.height];
  std::string where = on_one_line(heights[spot.reach.front().height].surface.name);
  if (spot.reach.size() > 1) where += " to " + on_one_line(heights[spot.reach.back().height].surface.name);
  where += spot.both ? " both sides" : std::string(" ") + section::name_of(spot.face);
  if (spot.reach.size() == 1 && !height.surface.between.empty())
    where += " (between " + on_one_line(height.surface.between) + ")";
  if (whole(spot)) {
    return where + ": " + name_of(spot.kind) + ", " + depth_words(recheck, spot.mean) + " on the whole, worst " +
           depth_words(recheck, spot.worst);
  }
  return where + ", " + reach_words(recheck, spot) + ": " + name_of(spot.kind) + ", " + depth_words(recheck, spot.worst) +
         (spot.reach.size() > 1 ? " at " + on_one_line(height.surface.name) : "");
}

}  // namespace

std::string place_words(const Recheck& recheck, const Judged& one) {
  const std::string x = length(recheck, std::abs(one.read_x));
  switch (one.from) {
    case job::XFrom::trailing_edge: return x + " from the trailing edge";
    case job::XFrom::stock: return x + (one.read_x < 0 ? " ahead of the stock" : " aft of the stock");
    case job::XFrom::leading_edge: break;
  }
  return x + " aft";
}

std::string face_words(const HeightRead& height, const Judged& one) {
  return on_one_line(height.surface.name) + (one.both ? " both sides" : std::string(" ") + section::name_of(one.face));
}

std::string where_words(const Recheck& recheck, const HeightRead& height, const Judged& one) {
  return face_words(height, one) + ", " + place_words(recheck, one);
}

std::string depth_words(const Recheck& recheck, double depth) {
  const LengthUnit unit = recheck.frozen.job.units;
  std::string size = number_in_unit(std::abs(depth), unit);
  const bool beyond = std::abs(depth) > recheck.options.tolerance;
  if (beyond && size == number_in_unit(recheck.options.tolerance, unit)) {  // just beyond: one more digit tells it
    size = fixed(std::abs(depth) / millimetres_in(unit), unit == LengthUnit::mm ? 2 : unit == LengthUnit::cm ? 3 : 4);
  }
  return size + (depth > 0 ? " low" : " high");
}

std::vector<ListLine> list_lines(const Recheck& recheck) {
  const auto& heights = recheck.now().heights;
  std::vector<ListLine> out;
  std::vector<std::vector<bool>> told;  // readings that a spot speaks for
  for (const HeightRead& height : heights) told.emplace_back(height.readings.size(), false);
  for (const Spot& spot : recheck.spots) {
    out.push_back({spot.worst, true, true, false, &spot});
    for (const recheck::Reach& reach : spot.reach) {
      for (std::size_t k = reach.first; k <= reach.last; ++k) {
        const Judged& one = heights[reach.height].readings[k];
        if ((one.depth > 0) == (spot.mean > 0) && !one.alone) told[reach.height][k] = true;
      }
    }
  }
  for (std::size_t h = 0; h < heights.size(); ++h) {
    for (std::size_t k = 0; k < heights[h].readings.size(); ++k) {
      const Judged& one = heights[h].readings[k];
      if (recheck::within(one, recheck.options.tolerance) || told[h][k]) continue;
      if (one.both && one.face == section::Face::starboard) continue;
      constexpr double likely = 2.5, twice = 2;  // standard deviations
      const double out_by = std::abs(one.depth) / one.sigma;
      const bool work = recheck.verdict == recheck::Verdict::go_on && out_by > twice;
      out.push_back({one.depth, !one.alone && out_by > likely, one.alone || work, one.alone, nullptr, h, k});
    }
  }
  // Of a scan there may be a million: sorted where they stand. As deep: spots first, then as they lie on the blade.
  std::sort(out.begin(), out.end(), [](const ListLine& a, const ListLine& b) {
    if (std::abs(a.depth) != std::abs(b.depth)) return std::abs(a.depth) > std::abs(b.depth);
    if (a.spot || b.spot) return a.spot && (!b.spot || a.spot < b.spot);
    return a.height != b.height ? a.height < b.height : a.reading < b.reading;
  });
  return out;
}

std::string words_of(const Recheck& recheck, const ListLine& line) {
  if (line.spot) return spot_words(recheck, *line.spot);
  const HeightRead& height = recheck.now().heights[line.height];
  const Judged& one = height.readings[line.reading];
  return where_words(recheck, height, one) + ": " + depth_words(recheck, one.depth) + (one.both ? " a side" : "");
}

namespace {

/// What is left to do, if this is the surface that was measured.
std::string left_words(const Recheck& recheck) {
  if (recheck.verdict != recheck::Verdict::go_on) {
    const std::string why = recheck.verdict == recheck::Verdict::nothing_left
                                ? "nothing is left to do"
                                : "what is left is less than these readings can tell";
    if (recheck.unread.empty() && recheck.left_open.empty()) return "Stop here: " + why + ".";
    if (recheck.unread.empty())
      return "Read the rest before you stop: where you read, " + why + "; " + counted(recheck.left_open.size(), "place") +
             " of earlier rounds " + (recheck.left_open.size() == 1 ? "was" : "were") + " not read again.";
    const bool one = recheck.unread.size() == 1;
    return "Read the rest before you stop: where you read, " + why + "; station" + (one ? " " : "s ") +
           listed(recheck.unread, 6) + (one ? " was" : " were") + " not read.";
  }
  std::size_t high = 0, low = 0, again = 0;
  for (const ListLine& one : list_lines(recheck)) {
    if (one.shown) ++(one.again ? again : one.depth > 0 ? low : high);
  }
  if (high + low + again == 0) return "Go on: no place stands out, yet all the readings together do.";
  const auto places = [](std::size_t n, const char* what) { return counted(n, "place") + what; };
  return "Go on: " + (high > 0 ? places(high, " to take off") : "") + (high > 0 && low > 0 ? ", " : "") +
         (low > 0 ? places(low, " to fill") : "") + (high + low > 0 && again > 0 ? ", " : "") +
         (again > 0 ? places(again, " to read again") : "") + ".";
}

std::string which_stage_words(const Recheck& recheck) {
  if (!recheck.other_stage) return {};
  const auto& [name, coats] = *recheck.other_stage;
  const LengthUnit unit = recheck.frozen.job.units;
  const std::string file = on_one_line(recheck.now().file), row = "the row stage,";
  const int line = recheck.now().stage_line;  // what the file tells wins over --stage
  const std::string remedy = line > 0 ? "change " + row + fill::name_of(recheck.frozen.stage.kind) + " to stage," + name + " (" +
                                            file + ":" + std::to_string(line) + ")"
                                      : "say --stage " + name + ", or write " + row + name + " above the header of " + file;
  return "on the whole these readings are " + in_unit(std::abs(recheck.common), unit) + (coats > 0 ? " high" : " low") +
         ", and the coats between the " + fill::name_of(recheck.frozen.stage.kind) + " and the " + name + " surface are " +
         in_unit(std::abs(coats), unit) + ". If it was the " + name + " surface that you measured, " + remedy;
}

}  // namespace

std::string verdict_words(const Recheck& recheck) {
  if (recheck.other_stage) {
    return "First settle which surface was measured: " + which_stage_words(recheck) +
           ". Else what follows holds: " + left_words(recheck);
  }
  return left_words(recheck);
}

std::string left_out_words(const Recheck& recheck) {
  const auto lines = list_lines(recheck);
  const auto n =
      static_cast<std::size_t>(std::count_if(lines.begin(), lines.end(), [](const ListLine& one) { return !one.shown; }));
  if (n == 0) return {};
  const std::string what =
      counted(n, "single reading") + " beyond " + in_unit(recheck.options.tolerance, recheck.frozen.job.units);
  if (recheck.verdict != recheck::Verdict::go_on)
    return "Not work: " + what + ", as reading error scatters them. still-to-do.csv has them.";
  return "Left out: " + what + " but no further out than twice the error of a reading. still-to-do.csv has them.";
}

std::vector<std::string> edge_words(const Recheck& recheck) {
  std::vector<std::string> out;
  for (const HeightRead& height : recheck.now().heights) {
    const auto say = [&](const std::optional<double>& is_short, const char* what, const char* low, const char* high) {
      if (!is_short || std::abs(*is_short) <= recheck.options.tolerance) return;
      out.push_back(on_one_line(height.surface.name) + what + number_in_unit(std::abs(*is_short), recheck.frozen.job.units) +
                    (*is_short > 0 ? low : high));
    };
    say(height.edges.leading, " leading edge: ", " short", " too far forward");
    say(height.edges.trailing, " trailing edge: ", " short", " to cut back");
    say(height.edges.chord, " chord: ", " short; \"ahead\" would tell at which edge",
        " too long; \"ahead\" would tell at which edge");
  }
  return out;
}

std::vector<std::string> alone_words(const Recheck& recheck) {
  std::vector<std::string> out;
  for (const HeightRead& height : recheck.now().heights) {
    for (const Judged& one : height.readings) {
      if (one.alone && !(one.both && one.face == section::Face::starboard)) out.push_back(where_words(recheck, height, one));
    }
  }
  return out;
}

std::vector<std::string> what_next(const Recheck& recheck) {
  const auto& now = recheck.now();
  const LengthUnit unit = recheck.frozen.job.units;
  const std::string tolerance = in_unit(recheck.options.tolerance, unit);
  std::vector<std::string> out;
  if (recheck.other_stage) {
    out.push_back("First settle which surface was measured: " + which_stage_words(recheck) + ". Until then take nothing off.");
  }
  for (const recheck::Aside& one : recheck.aside) {
    out.push_back("First look at the datum: at " + on_one_line(now.heights[one.height].surface.name) +
                  " both faces are out the same way, as if the section, or what it was measured from, stood " +
                  in_unit(std::abs(one.to_port), unit) + (one.to_port > 0 ? " to port." : " to starboard."));
  }
  if (!recheck.left_open.empty()) {
    std::vector<std::string> places;
    for (const recheck::OpenPlace& one : recheck.left_open) {
      places.push_back(on_one_line(one.name) +
                       (one.reading.both ? " both sides" : std::string(" ") + section::name_of(one.reading.face)) + ", " +
                       place_words(recheck, one.reading) + ": " + depth_words(recheck, one.reading.depth) + " in " +
                       on_one_line(one.file));
    }
    out.push_back("Not read again since an earlier round found them (" + std::string(name_of(unit)) + "): " + listed(places, 4) +
                  ".");
  }
  const auto alone = alone_words(recheck);
  if (!alone.empty()) out.push_back("Read again before you work there: " + listed(alone, 4) + ". No litres count them.");
  const bool all_read = recheck.unread.empty();
  const bool more_to_come = recheck.frozen.stage.to_come > 0, whole = all_read && recheck.left_open.empty();
  const std::string stop = whole      ? " Stop here."
                           : all_read ? " Read those places before you stop."
                                      : " Read the stations that were not read before you stop.";
  const std::string after = more_to_come && whole ? " Next come the coats, as the plan's report has them." : "";
  if (recheck.verdict == recheck::Verdict::nothing_left) {
    out.push_back("Nothing left: every reading lies within " + tolerance + " of the target." + stop + after);
  } else if (recheck.verdict == recheck::Verdict::reading_error) {
    const std::size_t beyond = now.readings - now.within;
    out.push_back((whole ? "Stop here: " : "No work where you read: ") + counted(beyond, "reading") + " of " +
                  std::to_string(now.readings) + (beyond == 1 ? " lies" : " lie") + " beyond " + tolerance +
                  ", and a reading error of " + in_unit(now.reading_error, unit) + " alone would put about " +
                  fixed(recheck.beyond_by_chance, 0) +
                  " there. None hang together. What is left is less than these readings can tell." + (whole ? "" : stop) + after);
  } else {
    const auto lines = list_lines(recheck);
    const std::string in_what(name_of(unit));
    const auto worst = [&](bool low) -> std::string {  // a sure one first; of those that the verdict counts
      const ListLine* found = nullptr;
      for (const ListLine& one : lines) {
        if (one.again || (one.depth > 0) != low || !(one.sure || one.shown)) continue;
        if (one.sure) return words_of(recheck, one);
        if (!found) found = &one;
      }
      return found ? words_of(recheck, *found) : std::string();
    };
    const std::string high = worst(false), low = worst(true);
    if (!high.empty()) out.push_back("Take off the highs first, the worst first (" + in_what + "): " + high + ".");
    if (!low.empty()) {
      out.push_back(std::string(high.empty() ? "Fill the lows" : "Then fill the lows") + ", the worst first (" + in_what +
                    "): " + low + ". That is " + litres(now.litres.left.add) + " on the blade, before sanding and loss.");
    }
    if (high.empty() && low.empty() && alone.empty()) out.push_back("No reading stands out, yet all together they do.");
    out.push_back("Then read again, and give the new file after " + on_one_line(now.file) + ".");
  }
  return out;
}

}  // namespace fairblade::report
