// What reading error does to litres. Verbs: NoiseSum's own, stretches, kept_as_read, each_noisy.
//
// With d the change at a reading, w the surface it stands for, s its standard deviation, z = |d|/s and p = Phi(d/s):
// variance sum (p w s)², and the litres that noise alone would show, sum w s [phi(z) - z (1 - Phi(z))] (tried
// by simulation: within 5 %).
#pragma once
#include <vector>

#include "fill/fill.hpp"
#include "job/job.hpp"

namespace fairblade::fill {

struct WeighedChange {
  double change = 0;  ///< mm, positive to add
  double sigma = 0;   ///< mm, one standard deviation, more than 0
  double weight = 0;  ///< mm² of surface
};

struct Noise {
  double error = 0;   ///< mm³, one standard deviation of what is to be added
  double excess = 0;  ///< mm³ of it that noise alone would show
};
/// Of readings that are added one by one: a scan's are never listed.
class NoiseSum {
 public:
  void add(const WeighedChange& one);
  void add(const NoiseSum& other);
  Noise total() const;

 private:
  double variance_ = 0, excess_ = 0;
};

/// The stretch of chord that each reading stands for, mm: half-way to its neighbours on the same face, the ends carried to the
/// edges. Rows read at one place share its stretch.
std::vector<double> stretches(const Offsets& rows, double chord);

/// Is the target there the blade as it was read, whatever the error? Of an edges-only target what it keeps.
inline bool kept_as_read(const job::Station& station, const OffsetRow& row) {
  constexpr double kept = 1e-6;  // mm
  return station.edges_only() && row.change() < kept && row.change() > -kept;
}

/// The readings of station k whose error strays into the litres: each(row, its standard deviation in mm, the surface that it
/// stands for on its own face in mm²). A caliper's, and one mirrored, come for both faces.
template <class Each>
void each_noisy(const job::Job& job, const std::vector<section::MeasuredSection>& measured, const StationChange& change,
                std::size_t k, const Each& each) {
  const section::MeasuredSection& here = measured[k];
  const double sigma = here.thickness_only ? job.reading_error / 2 : job.reading_error;
  if (!(sigma > 0) || here.interpolated) return;
  const double above = k > 0 ? here.down - measured[k - 1].down : 0;
  const double below = k + 1 < measured.size() ? measured[k + 1].down - here.down : 0;
  const Offsets rows(here, change);
  const auto stretch = stretches(rows, here.chord);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const OffsetRow row = rows[i];
    if (!kept_as_read(job.stations[k], row)) each(row, sigma, (above + below) / 2 * stretch[i]);
  }
}

}  // namespace fairblade::fill
