#include "fill/schedule.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"

namespace fairblade::fill {

double dew_point(double temperature, double humidity_percent) {
  constexpr double b = 17.62, c = 243.12;  // the 6.112 hPa cancels
  const double gamma = std::log(humidity_percent / 100) + b * temperature / (c + temperature);
  return c * gamma / (b - gamma);
}

double flat_block(double radius) { return std::sqrt(1.6 * radius); }

std::string clock_text(double minutes) {
  const int whole = static_cast<int>(std::lround(minutes));
  const int rest = whole % 60;
  return std::to_string(whole / 60) + ":" + (rest < 10 ? "0" : "") + std::to_string(rest);
}

Outcome<std::vector<DayCoat>> day_of(const std::string& name, int coats, double start, double coat_minutes,
                                     const job::Window& recoat_hours, double dusk) {
  const double opens = 60 * recoat_hours.from, closes = 60 * recoat_hours.to;
  const double gap = std::max(opens, coat_minutes);
  if (coats > 1 && gap > closes) {
    return Fault{{},
                 "one coat of " + name + " takes " + fixed(coat_minutes, 0) + " minutes, and it must be coated again within " +
                     fixed(closes, 0),
                 "work with more hands, or coat the blade in parts"};
  }
  const double end = start + (coats - 1) * gap + coat_minutes;
  if (end > dusk) {
    return Fault{{},
                 std::to_string(coats) + " coats of " + name + " begun at " + clock_text(start) + " last until " +
                     clock_text(end) + ", and dusk is at " + clock_text(dusk),
                 "begin by " + (end - dusk <= start ? clock_text(start - (end - dusk)) : std::string("the day before")) +
                     ", or plan fewer coats a day"};
  }
  std::vector<DayCoat> out;
  for (int k = 0; k < coats; ++k) {
    const double begin = start + k * gap;
    const double dusk_limit = dusk - coat_minutes - (coats - 1 - k) * gap;
    const double latest = k == 0 ? dusk_limit : std::min(dusk_limit, start + (k - 1) * gap + closes);
    out.push_back({k + 1, begin, begin + coat_minutes, latest});
  }
  return out;
}

namespace {

constexpr double flattest = 1e5;  // mm: rounder than this is flat to any block

Roundness roundness(const target::TargetSection& target, Face face, double fraction) {
  Roundness out;
  out.station = target.station;
  out.face = face;
  out.chord_fraction = fraction;
  out.x = target.leading_edge_x + fraction * target.chord;
  const double h = 0.002 * target.chord;
  const double before = target.half_breadth(face, out.x - h), here = target.half_breadth(face, out.x);
  const double after = target.half_breadth(face, out.x + h);
  const double slope = (after - before) / (2 * h);
  const double curvature = -(after - 2 * here + before) / (h * h) / std::pow(1 + slope * slope, 1.5);
  out.hollow = curvature < -1 / flattest;
  if (curvature > 1 / flattest) out.radius = 1 / curvature;
  if (out.radius) out.block = flat_block(*out.radius);
  return out;
}

Longboard longboard_of(const job::Job& job, const std::vector<target::TargetSection>& targets) {
  Longboard out;
  out.radius = flattest;
  const double from = std::max(0.02, job.zones.leading_edge), to = std::min(0.98, 1 - job.zones.trailing_edge);
  for (const auto& target : targets) {
    for (const Face face : {Face::port, Face::starboard}) {
      for (int k = 0; k <= 40; ++k) {
        const auto place = roundness(target, face, from + (to - from) * k / 40);
        if (place.radius) out.radius = std::min(out.radius, *place.radius);
      }
    }
  }
  out.thickness = strip_thickness(out.radius);
  return out;
}

}  // namespace

Schedule schedule_of(const job::Job& job, const std::vector<target::TargetSection>& targets, const Coats& coats,
                     std::vector<Fault>& faults) {
  Schedule out;
  out.dew_point = dew_point(job.workshop.temperature, job.workshop.humidity_percent);
  out.room = job.workshop.temperature - out.dew_point;
  out.too_damp = out.room < dew_point_room;
  out.longboard = longboard_of(job, targets);
  for (const auto& target : targets) {
    for (const Face face : {Face::port, Face::starboard}) {
      for (const double fraction : {0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9}) out.blocks.push_back(roundness(target, face, fraction));
    }
  }
  for (std::size_t k = 0; k < job.coats.size(); ++k) {
    const job::Coat& coat = job.coats[k];
    if (!coat.one_day || !coat.recoat) continue;
    OneDay day{k, coat.name, coats.coats[k].area / job.workshop.paint_m2_per_minute, {}};
    auto times = day_of(coat.name, coat.layers, job.workshop.start, day.coat_minutes, *coat.recoat, job.workshop.dusk);
    for (Fault fault : times.faults()) {
      fault.place = {job.file, coat.line};
      faults.push_back(std::move(fault));
    }
    if (!times) continue;
    day.coats = *times;
    out.days.push_back(std::move(day));
  }
  return out;
}

std::vector<Warning> warnings_of(const job::Job& job, const Schedule& schedule) {
  if (!schedule.too_damp) return {};
  return {{"dew-point", "job",
           "at " + trimmed(job.workshop.temperature, 1) + " °C and " + trimmed(job.workshop.humidity_percent, 0) +
               " % humidity the dew point is " + fixed(schedule.dew_point, 1) + " °C, " + fixed(schedule.room, 1) +
               " below the room: wait until there are 3 degrees between them, and measure the blade's own temperature"}};
}

}  // namespace fairblade::fill
