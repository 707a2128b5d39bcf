#include "target/stray_stations.hpp"

#include <algorithm>
#include <cmath>

#include "base/plain_form.hpp"
#include "base/units.hpp"
#include "target/span_line.hpp"

namespace fairblade::target {

using form::FittedForm;
using section::MeasuredSection;

namespace {

constexpr double named_beyond = 3;    // standard deviations
constexpr double rival_share = 0.95;  // of the greatest
constexpr std::size_t fewest = 4;

struct Judged {
  double value = 0, error = 0;  // deleted residual and its standard deviation, mm
  double size() const { return std::abs(value) / error; }
};

std::vector<Judged> judge(const std::vector<SpanReading>& readings) {
  SpanQuantity quantity;
  for (const SpanReading& reading : readings) {
    quantity.down.push_back(reading.down);
    quantity.value.push_back(reading.value);
    quantity.weight.push_back(1 / (reading.error * reading.error));
  }
  const SpanLine line = fair_along(quantity, job::Spanwise::fair);
  std::vector<Judged> out;
  for (std::size_t k = 0; k < readings.size(); ++k) {
    const double spare = std::max(1 - line.hat[k], 1e-9);
    const double mm = readings[k].to_mm;
    out.push_back({line.deleted[k] * mm, readings[k].error / std::sqrt(spare) * mm});
  }
  return out;
}

// Of those that explain it alike (to rounding) the least slip; of two alike the full one, which costs laminate.
std::size_t most_likely(const std::vector<Judged>& judged) {
  double greatest = 0;
  for (const Judged& one : judged) greatest = std::max(greatest, one.size());
  const auto cost = [](const Judged& one) { return std::abs(one.value) * (one.value > 0 ? 1 - 1e-6 : 1); };
  std::size_t best = judged.size();
  for (std::size_t k = 0; k < judged.size(); ++k) {
    if (judged[k].size() < greatest * (1 - 1e-6)) continue;
    if (best == judged.size() || cost(judged[k]) < cost(judged[best])) best = k;
  }
  return best;
}

std::vector<Rival> rivals_of(const std::vector<SpanReading>& readings, const std::vector<Judged>& judged, std::size_t best) {
  std::vector<Rival> out;
  for (std::size_t k = 0; k < judged.size(); ++k) {
    if (k != best && judged[k].size() >= rival_share * judged[best].size()) {
      out.push_back({readings[k].station, judged[k].value});
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const Rival& a, const Rival& b) { return std::abs(a.mm) < std::abs(b.mm); });
  return out;
}

}  // namespace

std::vector<Stray> strays_of(const std::vector<SpanReading>& readings, SpanFigure figure, bool& unfair) {
  unfair = false;
  std::vector<SpanReading> fair = readings, astray;
  while (fair.size() >= fewest) {
    const std::vector<Judged> judged = judge(fair);
    const std::size_t best = most_likely(judged);
    if (best == judged.size() || judged[best].size() <= named_beyond) break;
    astray.push_back(fair[best]);
    fair.erase(fair.begin() + static_cast<std::ptrdiff_t>(best));
  }
  unfair = astray.size() * 3 > readings.size();
  if (unfair) return {};
  std::vector<Stray> out;
  for (const SpanReading& one : astray) {  // each once more, against those that do not stray
    auto among = fair;
    const auto place =
        std::upper_bound(among.begin(), among.end(), one.down, [](double down, const SpanReading& r) { return down < r.down; });
    const auto k = static_cast<std::size_t>(place - among.begin());
    among.insert(place, one);
    const std::vector<Judged> judged = judge(among);
    if (judged[k].size() <= named_beyond) continue;
    out.push_back({one.station, figure, judged[k].value, judged[k].error, rivals_of(among, judged, k)});
  }
  std::stable_sort(out.begin(), out.end(), [](const Stray& a, const Stray& b) { return a.station < b.station; });
  return out;
}

double thickness_error(const MeasuredSection& measured, const FittedForm& fitted, double reading_error) {
  const bool copied = measured.thickness_only || measured.one_side_only;  // the second side is no reading of its own
  const double whole = measured.chord + measured.skeg;
  double square = 0;
  for (const auto& point : measured.points) {
    if (copied && point.face == section::Face::starboard) continue;
    const double f = plain_form(std::sqrt(std::clamp((point.x + measured.skeg) / whole, 0.0, 1.0)));
    square += f * f;
  }
  const double own = std::max(reading_error, 1e-6) * (measured.thickness_only ? 0.5 : 1.0);
  const double allowed = square > 0 ? own / std::sqrt(square) : own;
  return std::max(fitted.thickness_ratio_error * whole, 0.8 * allowed);
}

StrayReport find_strays(const job::Job& job, const std::vector<MeasuredSection>& measured,
                        const std::vector<FittedForm>& fitted) {
  std::vector<SpanReading> thickness, chord, ahead;
  const double tape = std::max(job.reading_error, 1e-6);
  for (std::size_t k = 0; k < measured.size(); ++k) {
    const MeasuredSection& one = measured[k];
    if (one.interpolated) continue;
    const double whole = one.chord + one.skeg;
    thickness.push_back(
        {k, one.down, fitted[k].form.thickness_ratio, thickness_error(one, fitted[k], job.reading_error) / whole, whole});
    chord.push_back({k, one.down, one.chord, tape});
    if (one.ahead) ahead.push_back({k, one.down, *one.ahead, tape});
  }
  StrayReport out;
  const auto look = [&](const std::vector<SpanReading>& readings, SpanFigure figure) {
    bool unfair = false;
    const auto found = strays_of(readings, figure, unfair);
    out.strays.insert(out.strays.end(), found.begin(), found.end());
    if (unfair) out.unfair.push_back(figure);
  };
  look(thickness, SpanFigure::thickness);
  look(chord, SpanFigure::chord);
  look(ahead, SpanFigure::leading_edge);
  return out;
}

namespace {

std::string slip(const job::Job& job, SpanFigure figure, const std::string& station, double mm) {
  const std::string size = both_units(std::abs(mm), job.units);
  switch (figure) {
    case SpanFigure::thickness: return "station " + station + " is " + size + (mm > 0 ? " full" : " thin");
    case SpanFigure::chord: return "station " + station + "'s chord is " + size + (mm > 0 ? " long" : " short");
    case SpanFigure::leading_edge: break;
  }
  return "station " + station + "'s leading edge is " + size + (mm > 0 ? " forward" : " aft");
}

const char* name_of(SpanFigure figure) {
  switch (figure) {
    case SpanFigure::thickness: return "thicknesses";
    case SpanFigure::chord: return "chords";
    case SpanFigure::leading_edge: break;
  }
  return "leading edges";
}

}  // namespace

std::string words_of(const job::Job& job, const std::vector<MeasuredSection>& measured, const Stray& stray) {
  std::string out = slip(job, stray.figure, measured[stray.station].station, stray.mm);
  std::string others;
  for (const Rival& rival : stray.rivals) {
    if (std::abs(rival.mm) > 1.5 * std::abs(stray.mm)) continue;  // no likelier than the lesser slip
    others += (others.empty() ? " (or " : ", or ") + slip(job, stray.figure, measured[rival.station].station, rival.mm);
  }
  if (!others.empty()) out += others + ": so few stations cannot tell which)";
  return out;
}

std::vector<Warning> name_strays(const job::Job& job, const std::vector<MeasuredSection>& measured, const StrayReport& report) {
  std::vector<Warning> out;
  for (const Stray& stray : report.strays) {
    std::string text = words_of(job, measured, stray) + " against the fair line through the others, give or take " +
                       both_units(stray.error, job.units) + ": measure it again";
    if (stray.figure != SpanFigure::thickness) text += ", and leave it if that is the blade's outline";
    else if (job.target.spanwise != job::Spanwise::as_measured) text += "; if it is so, \"spanwise\": \"as-measured\" follows it";
    out.push_back({"stray-station", "station " + measured[stray.station].station, std::move(text)});
  }
  for (const SpanFigure figure : report.unfair) {
    out.push_back({"line-not-fair", "job",
                   std::string("the ") + name_of(figure) +
                       " of the stations do not lie along one fair curve, so no single one can be called astray; where "
                       "the outline turns, \"spanwise\": \"as-measured\" follows it"});
  }
  return out;
}

}  // namespace fairblade::target
