#include <algorithm>
#include <filesystem>

#include "base/text.hpp"
#include "report/findings.hpp"
#include "report/layout.hpp"
#include "report/recheck.hpp"
#include "report/recheck_words.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

using recheck::Recheck;
using recheck::RoundResult;
using recheck::Verdict;

constexpr std::size_t most_lines = 15;  // of highs, and of lows

std::string stem_of(const std::string& path) {
  const std::string stem = on_one_line(std::filesystem::path(path).stem().string());
  return columns_of(stem) <= 20
             ? stem
             : stem.substr(0, stem.find_last_of(' ', 20) == std::string::npos ? 20 : stem.find_last_of(' ', 20));
}

std::string heading(const Recheck& all) {
  const RoundResult& now = all.now();
  const fill::Stage& stage = all.frozen.stage;
  std::string out = wrapped(on_one_line(all.frozen.job.name), 0, phone_columns);
  out += wrapped("> " + verdict_words(all), 2, phone_columns) + '\n';
  std::string surface = std::string("Surface: ") + fill::name_of(stage.kind) +
                        (stage.surface.empty() ? "; the plan has no coats" : " (" + stage.surface + ")");
  if (all.frozen.stages.size() > 1) {
    std::string others;
    for (const fill::Stage& one : all.frozen.stages) {
      if (one.kind != stage.kind) others += (others.empty() ? "" : " or ") + std::string(fill::name_of(one.kind));
    }
    surface +=
        all.options.stage.empty() && now.stage_line == 0 ? ", at which filler is shaped; --stage " + others + " for another" : "";
  }
  out += wrapped("Round " + std::to_string(all.rounds.size()) + ", " + on_one_line(now.file) + ": " +
                     counted(now.readings, "reading") + " at " + counted(now.heights.size(), "height") + ".",
                 0, phone_columns);
  return out + wrapped(surface + ".", 0, phone_columns) +
         wrapped("Target: frozen in " + on_one_line(all.frozen.job.file) + ".", 0, phone_columns);
}

/// Half a millilitre is nothing.
std::string pair_of(double value, double error) { return litres(value < 0.0005 ? 0 : value) + " (± " + fixed(error, 2) + ")"; }

std::string standing(const Recheck& all) {
  const RoundResult& now = all.now();
  const recheck::Litres& l = now.litres;
  std::string out = wrapped(std::to_string(now.within) + " of " + counted(now.readings, "reading") + " within " +
                                in_unit(all.options.tolerance, all.frozen.job.units) + ".",
                            0, phone_columns);
  out += wrapped(
      "Left: " + pair_of(l.left.add, l.add_error) + " to add, " + pair_of(l.left.remove, l.remove_error) + " to take off.", 0,
      phone_columns);
  if (l.by_chance >= 0.005) {
    out += wrapped("A perfect blade, read with this error, would show " + litres(l.by_chance) + " of each.", 0, phone_columns);
  }
  if (std::max(l.beyond.add, l.beyond.remove) >= 0.005) {
    out += wrapped("Above the first station and below the last, if they are like those: " + litres(l.beyond.add) + " to add, " +
                       litres(l.beyond.remove) + " to take off besides.",
                   0, phone_columns);
  }
  return out;
}

template <class Wanted>
std::string list_of(const Recheck& all, const std::vector<ListLine>& lines, const Wanted& wanted, const std::string& title) {
  std::vector<const ListLine*> own;
  for (const ListLine& one : lines) {
    if (one.shown && wanted(one)) own.push_back(&one);
  }
  if (own.empty()) return {};
  std::string out = '\n' + title + '\n';
  for (std::size_t k = 0; k < std::min(own.size(), most_lines); ++k)
    out += wrapped("  " + words_of(all, *own[k]), 6, phone_columns);
  if (own.size() > most_lines)
    out += "  and " + std::to_string(own.size() - most_lines) + " more: still-to-do.csv has them all\n";
  return out;
}

std::string lists(const Recheck& all) {
  const auto lines = list_lines(all);
  const std::string unit(name_of(all.frozen.job.units));
  const auto is_again = [](const ListLine& one) { return one.again; };
  const auto is_high = [](const ListLine& one) { return !one.again && one.depth < 0; };
  const auto is_low = [](const ListLine& one) { return !one.again && one.depth > 0; };
  std::string out = list_of(all, lines, is_again, "READ AGAIN, in no litres (" + unit + ")") +
                    list_of(all, lines, is_high, "TAKE OFF, worst first (" + unit + ")") +
                    list_of(all, lines, is_low, "ADD, worst first (" + unit + ")");
  if (const std::string rest = left_out_words(all); !rest.empty()) out += '\n' + wrapped(rest, 0, phone_columns);
  const auto edges = edge_words(all);
  if (!edges.empty()) out += "\nEDGES (" + unit + ")\n";
  for (const std::string& one : edges) out += wrapped("  " + one, 6, phone_columns);
  return out;
}

std::string by_height(const Recheck& all) {
  using enum Table::Align;
  const RoundResult& now = all.now();
  const LengthUnit unit = all.frozen.job.units;
  Table table({left, right, right, right, right, right});
  table.row({"height", "within", "low", "high", "add", "take off"});
  const std::string length = "(" + std::string(name_of(unit)) + ")";
  table.row({"", "", length, length, "(L)", "(L)"});
  for (std::size_t h = 0; h < now.heights.size(); ++h) {
    double low = 0, high = 0;
    std::size_t near = 0;
    for (const recheck::Judged& one : now.heights[h].readings) {
      near += recheck::within(one, all.options.tolerance) ? 1 : 0;
      if (one.alone) continue;
      low = std::max(low, one.depth);
      high = std::max(high, -one.depth);
    }
    const recheck::Amount& amount = now.litres.by_height[h];
    table.row({on_one_line(now.heights[h].surface.name),
               std::to_string(near) + "/" + std::to_string(now.heights[h].readings.size()), number_in_unit(low, unit),
               number_in_unit(high, unit), fixed(amount.add, 2), fixed(amount.remove, 2)});
  }
  return '\n' + table.text();
}

std::string progress(const Recheck& all) {
  using enum Table::Align;
  const LengthUnit unit = all.frozen.job.units;
  Table table({left, right, right, right, right, right});
  table.row({"progress", "within", "low", "high", "add", "take off"});
  const auto row = [&](const std::string& name, const RoundResult& one) {
    const double share = one.readings > 0 ? 100.0 * static_cast<double>(one.within) / static_cast<double>(one.readings) : 0;
    table.row({name, fixed(std::floor(share), 0) + " %", number_in_unit(one.deepest_low, unit),
               number_in_unit(one.deepest_high, unit), fixed(one.litres.left.add, 2), fixed(one.litres.left.remove, 2)});
  };
  row("the plan", all.first);
  for (std::size_t k = 0; k < all.rounds.size(); ++k)
    row(std::to_string(k + 1) + " " + stem_of(all.rounds[k].file) +
            (all.rounds[k].stage == all.frozen.stage.kind ? "" : std::string(", ") + fill::name_of(all.rounds[k].stage)),
        all.rounds[k]);
  return '\n' + table.text();
}

}  // namespace

std::string recheck_text(const Recheck& all) {
  std::string out = heading(all) + '\n' + standing(all) + lists(all) + by_height(all) + progress(all) + '\n';
  for (const std::string& one : what_next(all)) out += wrapped("> " + one, 2, phone_columns);
  if (!all.notes.empty() || !all.defaults.empty()) out += '\n';
  const LengthUnit unit = all.frozen.job.units;
  if (all.now().reading_error < all.now().told_error) {
    out += wrapped("- Judged with a reading error of " + in_unit(all.now().reading_error, unit) +
                       ", by these readings' own scatter; " + in_unit(all.now().told_error, unit) + " was told.",
                   2, phone_columns);
  }
  for (const std::string& one : all.notes) out += wrapped("- " + on_one_line(one), 2, phone_columns);
  for (const DefaultUsed& one : all.defaults) out += wrapped("- default used: " + one.key + " " + one.value, 2, phone_columns);
  out += wrapped(
      "- Depths are square to the surface. Litres run straight between readings and between heights, over the plan's "
      "own span; ± is "
      "one standard deviation from reading error.",
      2, phone_columns);
  return out;
}

}  // namespace fairblade::report
