#include "report/choices.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/text.hpp"
#include "job/build.hpp"
#include "report/layout.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

using Json = nlohmann::ordered_json;
using plan::Choice;

std::string deepest_place_words(const plan::DeepestPlace& place) {
  if (place.depth <= 0) return "0.0";
  return fixed(place.depth, 1) + " at " + place.station + " " + section::name_of(place.face) + ", x " + fixed(place.x, 0);
}

/// In the job's own unit, to stand under the millimetres.
std::string own_words(const plan::DeepestPlace& place, LengthUnit unit) {
  if (place.depth <= 0) return {};
  return "(" + in_unit(place.depth, unit) + ", x " + in_unit(place.x, unit) + ")";
}

std::string balance_words(const Choice& choice) {
  const auto percent = [](const std::optional<double>& v) { return v ? fixed(*v, 1) : std::string("?"); };
  return percent(choice.before.balance_percent) + " -> " + percent(choice.after.balance_percent);
}

/// As one word of a command line.
std::string for_a_shell(const std::string& value) {
  constexpr std::string_view plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.-_%/+:";
  if (!value.empty() && value.find_first_not_of(plain) == std::string::npos) return value;
  const char mark = value.find_first_of("\"$`\\!") == std::string::npos ? '"' : '\'';
  return mark + value + mark;
}

std::string how_to_ask(const Choice& choice) {
  std::string out;
  for (const auto& [key, value] : choice.asks) {
    std::string option = key;
    std::replace(option.begin(), option.end(), '_', '-');
    out += " --" + option + " " + for_a_shell(value);
  }
  return out;
}

Json place_json(const plan::DeepestPlace& place) {
  return {{"depth", place.depth}, {"x", place.x}, {"station", place.station}, {"side", section::name_of(place.face)}};
}

Json figures_json(const fill::BladeFigures& figures) {
  return {{"area", figures.area},
          {"balance_percent", figures.balance_percent ? Json(*figures.balance_percent) : Json(nullptr)},
          {"volume", figures.volume}};
}

double greatest_error(const std::vector<Choice>& choices) {
  double out = 0;
  for (const Choice& one : choices) {
    if (!one.refused) out = std::max(out, one.add_error);
  }
  return out;
}

/// What the table leaves out: what comes off for the coats' sake, which plan tells.
std::string coats_left_out_words(const job::Job& job) {
  const job::CoatsOver coats = job::coats_over(job);
  if (!coats.tell_over_old()) return {};
  return " All is counted to the finished surface: under the coats the blade is shaped " + both_units(coats.over_old, job.units) +
         " deeper a side, and where less than that is added, the rest comes off.";
}

}  // namespace

std::string choices_text(const job::Job& job, const std::vector<Choice>& choices) {
  using enum Table::Align;
  Table table({left, right, right, left, left, right, right, left});
  table.row({"choice", "add", "take off", "deepest add", "deepest removal", "blade", "balance", ""});
  table.row({"", "(L)", "(L)", "(mm)", "(mm)", "(cm²)", "(% ahead)", ""});
  for (const Choice& one : choices) {
    if (one.refused) {
      table.row({one.name, "-", "-", "cannot be had", "", "", "", ""});
      continue;
    }
    const auto own = [&](const plan::DeepestPlace& place) { return own_words(place, job.units); };
    table.row({one.name, fixed(one.add, 2), fixed(one.remove, 2), deepest_place_words(one.deepest_add),
               deepest_place_words(one.deepest_removal), fixed(one.after.area / 100, 0), balance_words(one),
               one.breaks_limit ? "cuts too deep" : ""});
    if (job.units != LengthUnit::mm) table.row({"", "", "", own(one.deepest_add), own(one.deepest_removal), "", "", ""});
  }
  std::string out = on_one_line(job.name) + "\n\n" + table.text() + "\n";
  for (const Choice& one : choices) {
    out += wrapped(one.name + ": " + (one.refused ? *one.refused : one.gain_and_price), 2);
    if (!one.refused) out += "  ask for it:" + how_to_ask(one) + "\n";
  }
  const double removal = job.target.max_removal;
  out +=
      "\n" + wrapped("Litres are between the first and the last station; they carry the readings' error, about ± " +
                         fixed(greatest_error(choices), 2) + " L at most. \"cuts too deep\": somewhere more than max_removal (" +
                         both_units(removal, job.units) + ") would come off." + coats_left_out_words(job),
                     2);
  return out;
}

std::string choices_json(const job::Job& job, const std::vector<Choice>& choices) {
  Json out = {{"fairblade", FAIRBLADE_VERSION}, {"job", job.name}, {"choices", Json::array()}};
  for (const Choice& one : choices) {
    Json asks = Json::object();
    for (const auto& [key, value] : one.asks) asks[key] = value;
    Json row = {{"name", one.name}, {"asks", asks}};
    if (one.refused) {
      row["refused"] = *one.refused;
    } else {
      row["add"] = one.add;
      row["add_error"] = one.add_error;
      row["remove"] = one.remove;
      row["deepest_add"] = place_json(one.deepest_add);
      row["deepest_removal"] = place_json(one.deepest_removal);
      row["breaks_max_removal"] = one.breaks_limit;
      row["blade"] = {{"before", figures_json(one.before)}, {"after", figures_json(one.after)}};
      row["in_words"] = one.gain_and_price;
    }
    out["choices"].push_back(std::move(row));
  }
  return out.dump(1, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace fairblade::report
