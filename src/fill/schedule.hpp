// Product: the numbers of the order of work: dew point, longboard and block, coats of one day by the clock.
// Verbs: dew_point, strip_thickness, flat_block, day_of, schedule_of.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "fill/coats.hpp"

namespace fairblade::fill {

/// °C. Magnus formula with the constants of WMO-No. 8: 6.112 hPa, 17.62, 243.12 °C.
double dew_point(double temperature, double humidity_percent);
/// Surfaces are coated at least so far above the dew point, °C (ISO 8502-4; also common practice).
constexpr double dew_point_room = 3;

/// mm of plywood that still bends to this radius: h/(2R) = 0.5 % strain (common practice).
constexpr double strip_thickness(double radius) { return 2 * radius * 0.005; }
/// mm of flat block that leaves a flat of 0.2 mm at most on this radius: the rise of a chord L is L²/8R, so L =
/// sqrt(1.6R).
double flat_block(double radius);

/// How hollow or round the finished face is at a place.
struct Roundness {
  std::string station;
  Face face = Face::port;
  double x = 0, chord_fraction = 0;
  std::optional<double> radius;  ///< mm; none where it is flat (over 100 m) or hollow
  bool hollow = false;           ///< a flat block or strip bridges it
  std::optional<double> block;   ///< mm
};

struct Longboard {
  double radius = 0;     ///< mm, the least on the faces (between the zones' bounds)
  double thickness = 0;  ///< mm of plywood
};

/// One coat of a day, minutes after midnight. It goes on from `start` to `end`; it may start as late as `latest`.
struct DayCoat {
  int number = 0;
  double start = 0, end = 0, latest = 0;
};
/// Every coat starts as early as it may: when the coat before it was done, and the recoat window has opened where that
/// began. Hours count from a place being coated to its being coated again, the coats going round in the same order.
/// Refused where the window closes before the coat before it is done, or where dusk comes first.
Outcome<std::vector<DayCoat>> day_of(const std::string& name, int coats, double start, double coat_minutes,
                                     const job::Window& recoat_hours, double dusk);
/// "9:05"
std::string clock_text(double minutes);

struct OneDay {
  std::size_t index = 0;  ///< of the coat in the job's list
  std::string coat;
  double coat_minutes = 0;
  std::vector<DayCoat> coats;
};

struct Schedule {
  double dew_point = 0, room = 0;  ///< °C; workshop temperature less dew point
  bool too_damp = false;           ///< room < dew_point_room
  Longboard longboard;
  std::vector<Roundness> blocks;  ///< at 5, 10, 20, 30, 50, 70 and 90 % of each target's chord, each face
  std::vector<OneDay> days;       ///< of the coats that must go on in one
};

Schedule schedule_of(const job::Job& job, const std::vector<target::TargetSection>& targets, const Coats& coats,
                     std::vector<Fault>& faults);
std::vector<Warning> warnings_of(const job::Job& job, const Schedule& schedule);

}  // namespace fairblade::fill
