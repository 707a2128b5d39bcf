#include "report/findings.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/text.hpp"
#include "report/layout.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

using Json = nlohmann::ordered_json;
using check::Finding;

// "C port, x 60.0 mm": as a hand on the blade would look for it.
std::string where_words(const job::Job& job, const Finding& one) {
  std::string out = one.station.empty() ? "whole job" : on_one_line(one.station);
  if (!one.side.empty()) out += " " + one.side;
  if (one.x) out += ", x " + in_unit(*one.x, job.units);
  return out;
}

std::string own_error_words(const job::Job& job, const check::OwnError& own) {
  std::string out = "Your own error: ";
  if (own.from_repeats) {
    out += in_unit(*own.from_repeats, job.units) + " by " + std::to_string(own.repeats) + " repeated readings; the job says " +
           in_unit(own.told, job.units) + (own.told_by_owner ? "" : " (default)") + "; judged with " +
           in_unit(own.mm, job.units) + ".";
  } else {
    out += in_unit(own.told, job.units) + (own.told_by_owner ? " by the job" : " (default)") +
           (own.left_out > 0 ? "; what was read twice is too far apart to tell." : "; nothing was read twice.");
  }
  if (own.about_fair_lines) out += " About fair lines the readings scatter by " + in_unit(*own.about_fair_lines, job.units) + ".";
  return out;
}

// Without its folders: the line is to stay one line.
std::string base_name(const std::string& path) { return path.substr(path.find_last_of('/') + 1); }

// The same thing at another place: said in one breath.
bool alike(const Finding& a, const Finding& b) { return a.code == b.code && a.remedy == b.remedy && a.sure == b.sure; }

std::string count_words(const check::Findings& findings) {
  if (findings.list.empty()) return "Nothing found";
  return findings.list.size() == 1 ? "1 finding" : std::to_string(findings.list.size()) + " findings, worst first";
}

}  // namespace

std::string findings_text(const job::Job& job, const check::Findings& findings) {
  std::string out = wrapped(on_one_line(job.name), 0, phone_columns);
  out += wrapped(count_words(findings) + ": " + std::to_string(findings.readings) + " readings, " +
                     std::to_string(findings.stations) + (findings.stations == 1 ? " station." : " stations."),
                 0, phone_columns);
  int number = 0;
  for (std::size_t k = 0; k < findings.list.size();) {
    const Finding& one = findings.list[k];
    std::size_t end = k + 1;
    while (end < findings.list.size() && alike(one, findings.list[end])) ++end;
    const bool several = end - k > 1;
    out += '\n' +
           wrapped(std::to_string(++number) + ". " + where_words(job, one) + (several ? ", and others" : ""), 3, phone_columns);
    out += wrapped("   " + std::string(check::name_of(one.sure)) + ": " + one.what, 3, phone_columns);
    for (std::size_t other = k + 1; other < end; ++other) {
      out += wrapped("   " + where_words(job, findings.list[other]) + ": " + findings.list[other].what, 5, phone_columns);
    }
    const std::string line = one.place.line > 0 ? " (" + one.place.file + ":" + std::to_string(one.place.line) + ")" : "";
    out += wrapped("   > " + one.remedy + line, 5, phone_columns);
    k = end;
  }
  out += '\n' + wrapped(own_error_words(job, findings.own), 0, phone_columns);
  for (const std::string& note : findings.notes) out += wrapped("- " + note, 2, phone_columns);
  return out;
}

std::vector<std::string> findings_sentences(const job::Job& job, const check::Findings& findings) {
  std::vector<std::string> out;
  if (findings.readings == 0) return out;
  const auto& list = findings.list;
  for (std::size_t k = 0; k < list.size();) {
    std::size_t end = k + 1;
    while (end < list.size() && alike(list[k], list[end])) ++end;
    std::string words;
    for (std::size_t one = k; one < end; ++one)
      words += (one > k ? "; " : "") + where_words(job, list[one]) + ": " + list[one].what;
    const std::string place = list[k].place.line > 0 ? ", " + list[k].place.file + ":" + std::to_string(list[k].place.line) : "";
    out.push_back(words + " (" + check::name_of(list[k].sure) + place + "). What to do: " + list[k].remedy + ".");
    k = end;
  }
  if (list.empty())
    out.push_back("Held against each other the readings show no slip of the pen, no sides exchanged and no wrong unit.");
  out.push_back(own_error_words(job, findings.own));
  return out;
}

namespace {

/// A line each, three at most.
std::vector<std::string> lines_of(const job::Job& job, const std::vector<Finding>& slips) {
  std::vector<std::string> out;
  for (std::size_t k = 0; k < std::min(slips.size(), most_slips); ++k) {
    const Finding& one = slips[k];
    std::string line = where_words(job, one) + ": ";
    if (one.slip) {
      line +=
          one.slip->shown(one.slip->read, job.units) + " where the others say " + one.slip->shown(one.slip->expected, job.units);
      if (one.slip->fits) line += "; " + one.slip->shown(*one.slip->fits, job.units) + " would fit";
    } else {
      line += one.what;
    }
    out.push_back(line +
                  (one.place.line > 0 ? " (" + base_name(one.place.file) + ":" + std::to_string(one.place.line) + ")" : ""));
  }
  if (slips.size() > most_slips) {
    out.push_back("and " + std::to_string(slips.size() - most_slips) + " more: \"fairblade check\" names them all");
  }
  return out;
}

}  // namespace

std::vector<std::string> slip_lines(const job::Job& job, const check::Findings& findings) {
  return lines_of(job, check::almost_certain_slips(findings));
}

std::vector<std::string> likely_slip_lines(const job::Job& job, const check::Findings& findings) {
  std::vector<Finding> likely;
  for (const Finding& one : findings.list) {
    if (check::spoils(one) && one.sure == check::Sureness::likely) likely.push_back(one);
  }
  return lines_of(job, likely);
}

std::string slips_text(const job::Job& job, const check::Findings& findings) {
  std::string out;
  const auto tell = [&](const std::vector<std::string>& lines, const char* heading) {
    if (!lines.empty()) out += std::string("\n") + heading + "\n";
    for (const std::string& line : lines) out += wrapped("  " + line, 4);
  };
  tell(slip_lines(job, findings), "Almost certainly wrong in the readings: measure again first, all that follows hangs on it");
  tell(likely_slip_lines(job, findings), "Likely wrong in the readings: look again before you fill");
  return out;
}

std::string findings_json(const job::Job& job, const check::Findings& findings) {
  const auto maybe = [](const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); };
  const auto name = [](const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); };
  Json out = {
      {"fairblade", FAIRBLADE_VERSION}, {"job", job.name}, {"stations", findings.stations}, {"readings", findings.readings}};
  out["findings"] = Json::array();
  for (const Finding& one : findings.list) {
    out["findings"].push_back({{"code", one.code},
                               {"station", name(one.station)},
                               {"side", name(one.side)},
                               {"x", maybe(one.x)},
                               {"file", one.place.file},
                               {"line", one.place.line > 0 ? Json(one.place.line) : Json(nullptr)},
                               {"sure", check::name_of(one.sure)},
                               {"what", one.what},
                               {"do", one.remedy}});
  }
  const check::OwnError& own = findings.own;
  out["own_error"] = {{"judged_with", own.mm},
                      {"reading_error", own.told},
                      {"reading_error_given", own.told_by_owner},
                      {"from_repeats", maybe(own.from_repeats)},
                      {"repeats", own.repeats},
                      {"left_out", own.left_out},
                      {"about_fair_lines", maybe(own.about_fair_lines)}};
  out["notes"] = findings.notes;
  return out.dump(1, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace fairblade::report
