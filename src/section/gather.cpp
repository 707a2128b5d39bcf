#include "section/gather.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "job/own_error.hpp"

namespace fairblade::section {
namespace {

// The half-breadth of that side: read, or half the caliper, or where the other side was read, the caliper less that.
std::optional<double> half_of(const job::Station& station, const job::Reading& reading, Face face) {
  if (station.measured_by == job::MeasuredBy::thickness && reading.caliper) return *reading.caliper / 2;
  const auto& own = face == Face::port ? reading.port : reading.starboard;
  const auto& other = face == Face::port ? reading.starboard : reading.port;
  if (own || !other || !reading.caliper) return own;
  return *reading.caliper - *other;
}

// Rows that lack a side, and what they are used for.
void tell_of_calipers(const job::Station& station, std::vector<Warning>& warnings) {
  if (station.measured_by == job::MeasuredBy::thickness) return;
  int filled_in = 0, alone = 0;
  for (const job::Reading& reading : station.readings) {
    if (!reading.caliper) continue;
    if (reading.port.has_value() != reading.starboard.has_value()) ++filled_in;
    if (!reading.port && !reading.starboard) ++alone;
  }
  if (filled_in > 0) {
    warnings.push_back({"side-from-caliper", where(station),
                        (filled_in == 1 ? std::string("one place was") : std::to_string(filled_in) + " places were") +
                            " read on one side and with the caliper: the other side is taken as the caliper less the side read"});
  }
  if (alone > 0) {
    warnings.push_back(
        {"caliper-alone", where(station),
         (alone == 1 ? std::string("one place was") : std::to_string(alone) + " places were") +
             " read with the caliper alone, which does not tell the sides apart: not used; read one side there too"});
  }
}

// Places whose repeats are too far apart to be scatter, each by itself where they are few.
void tell_repeats(const job::Job& job, const job::Station& station, std::vector<Warning>& warnings) {
  constexpr std::size_t few = 3;
  auto places = job::repeated_places(station);
  std::erase_if(places, [&](const job::RepeatedPlace& one) { return !one.disagrees(job.reading_error); });
  double most = 0;
  for (const job::RepeatedPlace& place : places) {
    most = std::max(most, *std::max_element(place.apart.begin(), place.apart.end()));
    if (places.size() > few) continue;
    warnings.push_back({"repeats-disagree", where(station),
                        "x " + in_unit(place.x, job.units) + " was " + job::apart_words(place, job.reading_error, job.units) +
                            ": one of the two, or its x, is a slip; their mean is used: measure it again"});
  }
  if (places.size() <= few) return;
  warnings.push_back({"repeats-disagree", where(station),
                      std::to_string(places.size()) + " places were read more than once and their readings differ by up to " +
                          in_unit(most, job.units) + ", which is no scatter; their means are used: measure them again"});
}

// One side's readings, repeats of one x averaged.
std::vector<SurfacePoint> side_points(const job::Station& station, Face face) {
  std::vector<SurfacePoint> out;
  int repeats = 0;
  for (const job::Reading& reading : station.readings) {
    const std::optional<double> half = half_of(station, reading, face);
    if (!half) continue;
    if (!out.empty() && reading.x - out.back().x <= job::same_place) {
      SurfacePoint& point = out.back();
      point.half_breadth += (*half - point.half_breadth) / ++repeats;
      continue;
    }
    out.push_back({reading.x, *half, reading.line, face});
    repeats = 1;
  }
  return out;
}

// A section is no more guessed from its ends alone than over a tail that nobody read: straight on from the last two readings
// the edge of a NACA 0012 comes out 1.2 % of the chord too thick where a fifth was not read, and a face read to its thickest
// comes out a trumpet.
std::optional<Fault> refuse_unread(const job::Job& job, const job::Station& station, const Gathered& read) {
  constexpr std::size_t fewest = 3;
  for (const auto* side : {&read.port, &read.starboard}) {
    const std::string on = read.thickness_only || read.one_side_only ? "" : " to " + std::string(name_of(side->front().face));
    if (side->size() < fewest) {
      return Fault{{station.readings_from, station.place.line},
                   "station " + station.name + " was read at only " + (side->size() == 1 ? "one place" : "two places") + on,
                   "measure at least three places on each side, better eight to twelve"};
    }
    if (!tail_unread(side->back().x, station.chord)) continue;
    return Fault{{station.readings_from, side->back().line},
                 "station " + station.name + ": nothing was read" + on + " aft of x " + in_unit(side->back().x, job.units) +
                     " of its " + in_unit(station.chord, job.units) + " chord",
                 "read on to the trailing edge, and at the edge itself"};
  }
  return std::nullopt;
}

}  // namespace

Outcome<Gathered> gather(const job::Job& job, const job::Station& station) {
  Gathered out;
  out.thickness_only = station.measured_by == job::MeasuredBy::thickness;
  out.port = side_points(station, Face::port);
  if (out.thickness_only) {  // one pass is enough: the other side is the same half
    out.starboard = out.port;
    for (SurfacePoint& point : out.starboard) point.face = Face::starboard;
  } else {
    out.starboard = side_points(station, Face::starboard);
  }
  tell_repeats(job, station, out.warnings);
  tell_of_calipers(station, out.warnings);
  for (const Face face : {Face::port, Face::starboard}) {
    auto& own = face == Face::port ? out.port : out.starboard;
    auto& other = face == Face::port ? out.starboard : out.port;
    if (!own.empty() || other.empty()) continue;
    own = other;
    for (SurfacePoint& point : own) point.face = face;
    out.one_side_only = true;
    out.warnings.push_back({"one-side-only", where(station),
                            std::string("no reading on the ") + name_of(face) + " side: it is taken as the mirror of the other"});
  }
  if (auto fault = refuse_unread(job, station, out)) return *fault;
  return out;
}

}  // namespace fairblade::section
