// settle_readings: from what was read to half-breadths against x aft of the leading edge.
#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "job/own_error.hpp"
#include "job/stations.hpp"

namespace fairblade::job {
namespace {

class Settler {
 public:
  Settler(const Reader& reader, StationDraft& draft, double reading_error, std::vector<Warning>& warnings)
      : reader_(reader),
        draft_(draft),
        station_(draft.station),
        slack_(reading_errors_outside * reading_error),
        warnings_(warnings) {}

  void run() {
    if (station_.measured_by == MeasuredBy::gaps && !(draft_.board_port && draft_.board_starboard)) {
      reader_.faults.add(station_.place, "\"board\" of station " + station_.name + " is missing",
                         "with gaps, give the straightedge's distance from the centre plane");
      return;
    }
    if (station_.measured_by == MeasuredBy::gaps) {
      station_.board_port = draft_.board_port;
      station_.board_starboard = draft_.board_starboard;
    }
    for (Reading& reading : station_.readings) {
      if (reader_.faults.full()) return;
      place_along_chord(reading);
      if (station_.measured_by == MeasuredBy::gaps) gaps_to_breadths(draft_, reading);
      check_sizes(reading);
    }
    std::stable_sort(station_.readings.begin(), station_.readings.end(),
                     [](const Reading& a, const Reading& b) { return a.x < b.x; });
    if (draft_.as_written) return;
    if (!draft_.rows_refused && station_.readings.front().x == station_.readings.back().x) {
      fault(station_.readings.front().line,
            "station " + station_.name + " has readings at one x only (" + shown(station_.readings.front().x) + ")",
            "measure at two places or more, better eight a side");
    }
    warn_of_moved();
  }

 private:
  std::string shown(double mm) const { return in_unit(mm, reader_.unit); }
  void fault(int line, std::string what, std::string remedy) {
    reader_.faults.add({reader_.file, line}, std::move(what), std::move(remedy));
  }

  void place_along_chord(Reading& reading) {
    const double read = reading.x;
    if (draft_.x_from == XFrom::trailing_edge) reading.x = station_.chord - read;
    if (draft_.x_from == XFrom::stock) reading.x = *station_.ahead + read;
    // What rounding leaves of chord - x, of ahead + x, or of two numbers written down, is no distance from an edge. (A reading
    // just behind a round nose is one: its half-breadth is not the nose's.)
    constexpr double rounding = 0.03;  // mm: a thousandth of an inch
    if (std::abs(reading.x) <= 1e-9 * station_.chord || (reading.x < 0 && reading.x >= -rounding)) reading.x = 0;
    if (std::abs(reading.x - station_.chord) <= rounding) reading.x = station_.chord;
    const double outside = std::max(-reading.x, reading.x - station_.chord);
    if (outside <= 0 || draft_.as_written) {
      reading.x += 0.0;  // -0 becomes 0
      return;
    }
    const bool forward = reading.x < 0;
    if (outside > slack_) {
      fault(reading.line,
            "x = " + shown(read) + " lies " + shown(outside) +
                (forward ? " ahead of the leading edge" : " beyond the " + shown(station_.chord) + " chord") + " of station " +
                station_.name,
            "check x, the chord" + std::string(draft_.x_from == XFrom::stock ? ", \"ahead\"" : "") + " and \"x_from\"" +
                (!forward && draft_.x_from == XFrom::leading_edge ? "; at the trailing edge x is the chord" : ""));
      return;
    }
    if (moved_++ == 0) first_moved_ = reading.line;
    furthest_ = std::max(furthest_, outside);
    reading.x = forward ? 0 : station_.chord;
  }

  /// No section is thicker than twice its chord; what is, was read or written wrong.
  void check_sizes(const Reading& reading) {
    if (draft_.as_written) return;
    const double most = 2 * station_.chord;
    const auto check = [&](const std::optional<double>& value, const char* name) {
      if (!value || std::abs(*value) <= most) return;
      fault(reading.line, std::string(name) + " " + shown(*value) + " is more than twice the chord of station " + station_.name,
            station_.measured_by == MeasuredBy::gaps ? "check the gap and \"board\"" : "check the reading and the job's units");
    };
    check(reading.port, "port half-breadth");
    check(reading.starboard, "starboard half-breadth");
    check(reading.caliper, "caliper");
    if (reading.caliper && *reading.caliper < 0)
      fault(reading.line, "caliper is " + shown(*reading.caliper), "a thickness is never negative: check it");
  }

  void warn_of_moved() {
    if (moved_ == 0) return;
    const std::string many = moved_ == 1 ? "one reading lies " : std::to_string(moved_) + " readings lie up to ";
    warnings_.push_back({"x-outside-chord", "station " + station_.name,
                         many + shown(furthest_) + " outside the chord (" + (moved_ == 1 ? "" : "first ") + reader_.file + ":" +
                             std::to_string(first_moved_) + "): taken at its end"});
  }

  const Reader& reader_;
  StationDraft& draft_;
  Station& station_;
  double slack_;
  std::vector<Warning>& warnings_;
  int moved_ = 0, first_moved_ = 0;
  double furthest_ = 0;
};

}  // namespace

void gaps_to_breadths(const StationDraft& draft, Reading& reading) {
  if (reading.port) reading.port = *draft.board_port - *reading.port;
  if (reading.starboard) reading.starboard = *draft.board_starboard - *reading.starboard;
}

void settle_readings(const Reader& reader, StationDraft& draft, double reading_error, std::vector<Warning>& warnings) {
  if (!draft.sound || draft.station.readings.empty()) return;
  const Station& station = draft.station;
  if (station.ahead && *station.ahead < -station.chord) {
    warnings.push_back({"ahead-far", "station " + station.name,
                        "the leading edge stands " + in_unit(-*station.ahead, reader.unit) +
                            " aft of the stock, and the chord is " + in_unit(station.chord, reader.unit) +
                            ": a raked or swept blade has it so; if yours is none, look at "
                            "\"ahead\""});
  }
  Settler(reader, draft, reading_error, warnings).run();
}

}  // namespace fairblade::job
