#include "cli/slips.hpp"

#include <algorithm>
#include <cmath>

#include "base/units.hpp"
#include "plan/plan.hpp"
#include "target/hindrances.hpp"

namespace fairblade::cli {
namespace {

using check::Finding;
using target::Hindrance;

bool sure_enough(const Finding& one) { return check::spoils(one) && one.sure != check::Sureness::look; }

/// Is it about the reading that hinders, or about its station or job as a whole, in which case no reading can be trusted?
bool explains(const Finding& one, const Hindrance& hindrance) {
  if (!sure_enough(one) || (!one.station.empty() && one.station != hindrance.station)) return false;
  if (!one.x) return one.rank <= check::Rank::outline;
  constexpr double same_place = 0.05;
  const bool side = one.side != "port" && one.side != "starboard";  // a caliper's, or the whole row's
  return std::abs(*one.x - hindrance.x) < same_place && (side || one.side == section::name_of(hindrance.face));
}

const job::Station* station_of(const job::Job& job, const std::string& name) {
  const auto at = std::find_if(job.stations.begin(), job.stations.end(), [&](const job::Station& s) { return s.name == name; });
  return at == job.stations.end() ? nullptr : &*at;
}

Fault told(const job::Job& job, const Finding& one) {
  const std::string sureness = one.sure == check::Sureness::certain ? "almost certainly" : "likely";
  const std::string where = one.station.empty() ? "the whole job: " : "station " + one.station + ": ";
  const auto length = [&](double mm) { return in_unit(mm, job.units); };
  if (!one.slip || !one.x) return {one.place, where + one.what + " (" + check::name_of(one.sure) + ")", one.remedy};
  const job::Station* station = station_of(job, one.station);
  const bool caliper = one.side == "caliper";
  const bool gap = !caliper && station && station->measured_by == job::MeasuredBy::gaps;
  const auto in_slip = [&](double mm) { return one.slip->shown(mm, job.units); };
  const std::string place = "x " + length(*one.x);
  std::string what = where + "the " + one.side + " reading at " + place + " is " + sureness + " a slip of the pen: it " +
                     (gap ? "makes a half-breadth of " : "says ") + in_slip(one.slip->read) + " where the others say " +
                     in_slip(one.slip->expected);
  std::string remedy = "measure " + place + (caliper ? " with the caliper again" : " on " + one.side + " again");
  if (one.slip->fits) remedy += "; " + in_slip(*one.slip->fits) + " would fit (" + one.slip->how + ")";
  return {one.place, std::move(what), std::move(remedy)};
}

/// What explains one refusal first, then what else is almost certainly a slip in that station: one walk to the blade for all.
std::vector<Fault> told_instead(const job::Job& job, const check::Findings& findings, const Hindrance& hindrance) {
  std::vector<Fault> out;
  const auto& list = findings.list;
  const auto first = std::find_if(list.begin(), list.end(), [&](const Finding& one) { return explains(one, hindrance); });
  if (first == list.end()) return out;
  out.push_back(told(job, *first));
  for (auto one = list.begin(); one != list.end(); ++one) {
    const bool too = one != first && one->slip && one->station == hindrance.station && one->sure == check::Sureness::certain;
    if (too) out.push_back(told(job, *one));
  }
  return out;
}

}  // namespace

check::Findings found_in(const job::Job& job) { return plan::is_scan(job) ? check::Findings{} : check::find(job); }

std::vector<Fault> slips_told(const job::Job& job, const check::Findings& findings, std::vector<Fault> refusals) {
  const auto sections = plan::read_sections(job);
  if (!sections) return refusals;
  const auto hindrances = target::hindrances(job, sections->measured, sections->fitted);
  if (hindrances.empty()) return refusals;
  std::vector<Fault> out;
  for (Fault& refusal : refusals) {
    const auto same = std::find_if(hindrances.begin(), hindrances.end(),
                                   [&](const Hindrance& one) { return one_line(one.fault) == one_line(refusal); });
    auto instead = same == hindrances.end() ? std::vector<Fault>{} : told_instead(job, findings, *same);
    if (instead.empty()) instead.push_back(std::move(refusal));
    for (Fault& one : instead) {
      const bool told_before = std::any_of(out.begin(), out.end(), [&](const Fault& o) { return one_line(o) == one_line(one); });
      if (!told_before) out.push_back(std::move(one));  // what concerns the whole job explains every station
    }
  }
  return out;
}

}  // namespace fairblade::cli
