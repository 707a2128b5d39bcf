// Product of the check room: Findings, what a mate who measured many rudders would say of a job's readings.
// Verbs: find, spoils, almost_certain_slips. Nothing is planned, nothing is changed. mm and degrees.
//
// Every threshold is set for a whole set of readings, not for one: a single reading is named beyond 4.5 standard
// deviations of what the others say (one in 150 000 by chance), port + starboard against a caliper beyond 4.5 sqrt(3).
// Measured (tests/check): no false alarm in 200 clean sets of 28 readings, nor in 200 blades of five such stations.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "job/job.hpp"
#include "section/section.hpp"

namespace fairblade::check {

enum class Sureness { certain, likely, look };  ///< "almost certain", "likely", "worth a look"
const char* name_of(Sureness sureness);

/// The order in which a mate would tell them: the first spoils everything, the last only a little.
enum class Rank { units, heights, outline, reading, sides, caliper, blade, coverage, habit };

/// One reading against the others of its station, mm.
struct Slip {
  double read = 0, expected = 0;
  std::optional<double> fits;  ///< what was probably meant
  std::string how{};           ///< "two digits changed places", ...
  /// Where gaps were read: the board's distance from the centre plane, of which the gap is what lacks.
  std::optional<double> board{};
  /// A length of this reading's: "36.0 mm", or "36.0 mm (a gap of 24.0 mm)", which is what stands on the sheet.
  std::string shown(double mm, LengthUnit unit) const;
};

struct Finding {
  std::string code;  ///< short and stable: "slipped-digit", "sides-swapped", "inches", ...
  Rank rank = Rank::reading;
  Sureness sure = Sureness::likely;
  std::string station;      ///< empty: the job as a whole
  std::string side;         ///< "port", "starboard", "caliper", or empty
  std::optional<double> x;  ///< mm aft of the leading edge
  Place place;
  std::string what, remedy;
  std::optional<Slip> slip{};  ///< where one reading is meant
};

/// How far one reading strays, one standard deviation, mm.
struct OwnError {
  double mm = 0;    ///< what the thresholds were worked with
  double told = 0;  ///< the job's reading_error
  bool told_by_owner = false;
  std::optional<double> from_repeats;
  int repeats = 0;                         ///< readings beyond the first at one place
  std::optional<double> about_fair_lines;  ///< how the readings scatter about their stations' fair lines
  int left_out = 0;                        ///< places whose repeats are too far apart to be scatter
};

struct Findings {
  std::vector<Finding> list;  ///< worst first
  OwnError own;
  int stations = 0, readings = 0;
  std::vector<std::string> notes;  ///< what would make the readings tell more; no faults
};

/// Of a job as it was written (job/as_written.hpp): nothing in it is refused yet.
Findings find(const job::Job& job);

/// Would a plan made of such readings mislead? Not what is wrong with the blade, nor with where it was read.
bool spoils(const Finding& finding);
/// The almost certain ones among them, worst first.
std::vector<Finding> almost_certain_slips(const Findings& findings);

}  // namespace fairblade::check
