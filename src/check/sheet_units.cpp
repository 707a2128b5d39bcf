// judge_units: sections, chords and sides in another unit than the job's.
#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "base/units.hpp"
#include "check/other_units.hpp"
#include "check/sheet.hpp"

namespace fairblade::check {

using job::Station;

namespace {

// What a blade of a yacht is, generously: thickness by chord, chord in mm. Common practice, no source.
constexpr double thinnest = 0.0135, thickest = 0.45, shortest_chord = 60, longest_chord = 2500;
constexpr double usual_thickness = 0.12;  // by chord

std::optional<Unit> unit_between(double found, double usual, double slack, LengthUnit unit) {
  return nearest_unit(found, usual, slack, other_units(unit));
}

/// The chord of one station by the straight line through the others, where there are three of them.
std::optional<double> chord_by_the_others(const job::Job& job, std::size_t k) {
  if (job.stations.size() < 4) return std::nullopt;
  double n = 0, x = 0, y = 0, xx = 0, xy = 0;
  for (std::size_t j = 0; j < job.stations.size(); ++j) {
    if (j == k) continue;
    const double down = job.stations[j].down - job.stations[k].down, chord = job.stations[j].chord;
    n += 1, x += down, y += chord, xx += down * down, xy += down * chord;
  }
  const double spread = n * xx - x * x;
  if (!(spread > 0)) return std::nullopt;
  return (xx * y - x * xy) / spread;  // where down is 0
}

/// Inches among centimetres are no seventh of them: a whole station is told by the line of the other chords.
std::optional<Unit> near_unit(const job::Job& job, std::size_t k) {
  if (job.units == LengthUnit::mm) return std::nullopt;
  const Station& station = job.stations[k];
  const auto others = chord_by_the_others(job, k);
  if (!others || *others < 0.3 * station.chord) return std::nullopt;
  const auto found = unit_between(station.chord, *others, 1.1, job.units);
  const auto inches_and_cm = [](double factor) { return std::abs(std::abs(std::log(factor)) - std::log(2.54)) < 1e-9; };
  return found && inches_and_cm(found->factor) ? found : std::nullopt;
}

double side_size(const Station& station, bool port) {
  std::vector<double> sizes;
  for (const job::Reading& r : station.readings) {
    const auto& value = port ? r.port : r.starboard;
    if (value) sizes.push_back(*value);
  }
  if (sizes.size() < 7) return 0;
  std::sort(sizes.begin(), sizes.end(), std::greater<>());
  return sizes[2];
}

Finding of_the_whole_job(const job::Job& job, const char* code, std::string what, std::string remedy) {
  return {code, Rank::units, Sureness::certain, "", "", std::nullopt, {job.file, 0}, std::move(what), std::move(remedy)};
}

/// All lengths in another unit, told by the chords.
std::optional<Finding> whole_job(const job::Job& job, double chord) {
  const std::string looks = "a blade with a chord of " + in_unit(chord, job.units) + ": this looks like ";
  if (chord < shortest_chord && job.units == LengthUnit::mm) {
    const bool inches = chord < 25;  // they run to some twenty, centimetres to some sixty
    return of_the_whole_job(job, inches ? "inches" : "centimetres",
                            looks + (inches ? "inches" : "centimetres") + " in a job in millimetres",
                            std::string("say \"units\": \"") + (inches ? "in" : "cm") + "\", or write all lengths in mm");
  }
  if (chord > longest_chord && job.units != LengthUnit::mm) {
    return of_the_whole_job(job, "millimetres",
                            looks + "millimetres in a job in " + (job.units == LengthUnit::inch ? "inches" : "centimetres"),
                            "say \"units\": \"mm\", or write all lengths in " + std::string(name_of(job.units)));
  }
  return std::nullopt;
}

/// What is looked for at one station, in this order: the first that is found tells the others.
class OneStation {
 public:
  OneStation(const job::Job& job, std::size_t k, double usual_chord)
      : job_(job),
        k_(k),
        station_(job.stations[k]),
        usual_chord_(usual_chord),
        extent_(furthest_aft(station_)),
        half_(half_thickness(station_)) {}

  std::optional<Finding> find() const {
    for (const auto look : {&OneStation::chord_beside_the_others, &OneStation::near_the_others,
                            &OneStation::chord_beside_readings, &OneStation::readings, &OneStation::one_side}) {
      if (auto found = (this->*look)()) return found;
    }
    return std::nullopt;
  }

 private:
  std::string shown(double mm) const { return in_unit(mm, job_.units); }
  std::string unit() const { return std::string(name_of(job_.units)); }
  Finding told(const Unit& found, std::string what, std::string remedy, Sureness sure = Sureness::certain) const {
    Finding out = of_station(station_, found.code, Rank::units, std::move(what), std::move(remedy));
    out.sure = sure;
    return out;
  }

  std::optional<Finding> chord_beside_the_others() const {
    const double chord = station_.chord;
    if (job_.stations.size() < 2 || (chord >= usual_chord_ / 7 && chord <= usual_chord_ * 7)) return std::nullopt;
    const auto found = unit_between(chord, usual_chord_, 1.6, job_.units);
    if (!found) return std::nullopt;
    const bool all = extent_ < 1.05 * chord;  // the readings are small with it
    return told(*found,
                (all ? "chord and readings are " : "the chord is ") + std::string("in ") + found->words +
                    ", as it seems: chord " + shown(chord) + " where the others have some " + shown(usual_chord_),
                "write them in " + unit());
  }

  std::optional<Finding> near_the_others() const {
    const auto found = near_unit(job_, k_);
    if (!found) return std::nullopt;
    return told(*found,
                "chord and readings look like " + std::string(found->words) + ": chord " + shown(station_.chord) +
                    " where the line of the others has " + shown(*chord_by_the_others(job_, k_)),
                "write them in " + unit() + "; leave them if the outline is so", Sureness::likely);
  }

  std::optional<Finding> chord_beside_readings() const {
    if (!(extent_ > 3 * station_.chord)) return std::nullopt;
    const auto found = unit_between(station_.chord, extent_, 1.2, job_.units);
    if (!found) return std::nullopt;
    return told(*found,
                "the chord looks like " + std::string(found->words) + ": " + shown(station_.chord) +
                    " where the readings run to " + shown(extent_),
                "write it in " + unit());
  }

  std::optional<Finding> readings() const {
    const double chord = station_.chord, by_chord = 2 * half_ / chord;
    const auto in_x = extent_ < chord / 5 || extent_ > 5 * chord ? unit_between(extent_, chord, 1.2, job_.units) : std::nullopt;
    const auto in_size =
        by_chord < thinnest || by_chord > thickest ? unit_between(by_chord, usual_thickness, 2.4, job_.units) : std::nullopt;
    if (!in_x && !in_size) return std::nullopt;
    const Unit found = in_x ? *in_x : *in_size;
    const std::string which = in_x && in_size ? "the readings look" : in_x ? "the places x look" : "the half-breadths look";
    const std::string numbers = in_x ? ": they run to " + shown(extent_) + " on a chord of " + shown(chord)
                                     : ": the blade would be " + shown(2 * half_) + " thick on a chord of " + shown(chord);
    return told(found, which + " like " + found.words + numbers, "write them in " + unit() + ", or say \"units\"",
                in_x ? Sureness::certain : Sureness::likely);
  }

  std::optional<Finding> one_side() const {
    const double port = side_size(station_, true), starboard = side_size(station_, false);
    const double small = std::min(port, starboard), large = std::max(port, starboard);
    if (!(small > 0) || large <= 5 * small) return std::nullopt;
    const auto found = unit_between(small, large, 1.5, job_.units);
    if (!found) return std::nullopt;
    auto out = told(
        *found,
        std::string("one side looks like ") + found->words + ": at most " + shown(small) + " where the other has " + shown(large),
        "write it in " + unit());
    out.side = port < starboard ? "port" : "starboard";
    return out;
  }

  const job::Job& job_;
  std::size_t k_;
  const Station& station_;
  double usual_chord_, extent_, half_;
};

/// Thicknesses written where half-breadths belong, at every station, look like one: a blade twice as thick as most.
std::optional<Finding> whole_thicknesses(const job::Job& job) {
  constexpr double uncommon = 0.2;  // by chord, at every station; common practice, no source
  double least = 1, thick = 0, chord = 0;
  for (const Station& station : job.stations) {
    const bool calipers = std::any_of(station.readings.begin(), station.readings.end(),
                                      [](const job::Reading& r) { return r.caliper.has_value(); });
    if (calipers || station.measured_by == job::MeasuredBy::gaps) return std::nullopt;  // calipers would have told; gaps are none
    const double half = half_thickness(station), whole = station.chord + station.skeg;
    if (!(half > 0)) continue;
    if (2 * half / whole > least) continue;
    least = 2 * half / whole;
    thick = 2 * half;
    chord = whole;
  }
  if (!(thick > 0) || least <= uncommon) return std::nullopt;
  Finding out =
      of_the_whole_job(job, "whole-thickness",
                       "every section is thicker than a fifth of its chord, the thinnest " + in_unit(thick, job.units) + " on " +
                           in_unit(chord, job.units) + ": are these whole thicknesses?",
                       "write half-breadths, from the centre plane to one face, or whole thicknesses as caliper readings; "
                       "leave them if the blade is so thick");
  out.sure = Sureness::look;
  return out;
}

}  // namespace

void judge_units(const job::Job& job, std::vector<bool>& aside, std::vector<Finding>& out) {
  const double chord = median(chords_of(job));
  if (auto found = whole_job(job, chord)) {
    out.push_back(std::move(*found));
    aside.assign(aside.size(), true);
    return;
  }
  for (std::size_t k = 0; k < job.stations.size(); ++k) {
    auto found = OneStation(job, k, chord).find();
    if (!found) continue;
    out.push_back(std::move(*found));
    aside[k] = true;
  }
  if (std::find(aside.begin(), aside.end(), true) != aside.end()) return;
  if (auto found = whole_thicknesses(job)) out.push_back(std::move(*found));
}

}  // namespace fairblade::check
