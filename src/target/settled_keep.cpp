#include "target/settled_keep.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/text.hpp"
#include "target/edge_sites.hpp"

namespace fairblade::target {
namespace {

constexpr int least_from = 5, most_from = 35, least_to = 50;  // per cent of the chord

/// Stations whose edges alone are rebuilt, and for which no kept part was asked.
class Unasked {
 public:
  Unasked(const job::Job& job, const std::vector<section::MeasuredSection>& measured, const std::vector<form::FittedForm>& fitted)
      : job_(job), measured_(measured), fitted_(fitted) {
    for (std::size_t k = 0; k < job.stations.size(); ++k) {
      const job::TargetRequest& request = job.stations[k].target;
      if (request.approach == job::Approach::edges_only && request.places.count("keep") == 0) stations_.push_back(k);
    }
  }
  const std::vector<std::size_t>& stations() const { return stations_; }
  bool noses_fair(double from, double to) const {
    return all(from, to, [](const Blade& blade, const EdgesWish& wish) { return !wish.nose || nose_fair(blade, wish); });
  }
  bool tails_fair(double from, double to) const {
    return all(from, to, [](const Blade& blade, const EdgesWish& wish) { return !wish.tail || tail_fair(blade, wish); });
  }

 private:
  template <typename Fair>
  bool all(double from, double to, const Fair& fair) const {
    return std::all_of(stations_.begin(), stations_.end(), [&](std::size_t k) {
      const Blade blade{job_, job_.stations[k], measured_[k], fitted_[k]};
      EdgesWish wish = edges_wish(blade.station, blade.measured, blade.fitted);
      wish.keep_from = from * blade.measured.chord;
      wish.keep_to = to * blade.measured.chord;
      return fair(blade, wish);
    });
  }

  const job::Job& job_;
  const std::vector<section::MeasuredSection>& measured_;
  const std::vector<form::FittedForm>& fitted_;
  std::vector<std::size_t> stations_;
};

std::optional<double> nearest_to(const Unasked& unasked, double from, double to) {
  for (int percent = static_cast<int>(std::lround(100 * to)); percent >= least_to; --percent) {
    if (unasked.tails_fair(from, percent / 100.0)) return percent / 100.0;
  }
  return std::nullopt;
}

/// Nearer to the edge first: the less is rebuilt.
std::optional<double> nearest_from(const Unasked& unasked, double from, double to) {
  const int start = static_cast<int>(std::lround(100 * from));
  for (int percent = start; percent >= least_from; --percent) {
    if (unasked.noses_fair(percent / 100.0, to)) return percent / 100.0;
  }
  for (int percent = start + 1; percent <= most_from; ++percent) {
    if (unasked.noses_fair(percent / 100.0, to)) return percent / 100.0;
  }
  return std::nullopt;
}

}  // namespace

void settle_keep(job::Job& job, const std::vector<section::MeasuredSection>& measured,
                 const std::vector<form::FittedForm>& fitted) {
  const Unasked unasked(job, measured, fitted);
  if (unasked.stations().empty()) return;
  const job::TargetRequest usual;
  const double usual_from = usual.keep_from.value, usual_to = usual.keep_to.value;
  const double to = nearest_to(unasked, usual_from, usual_to).value_or(usual_to);
  const double from = nearest_from(unasked, usual_from, to).value_or(usual_from);
  if (from == usual_from && to == usual_to) return;
  for (const std::size_t k : unasked.stations()) {
    job.stations[k].target.keep_from = {false, from};
    job.stations[k].target.keep_to = {false, to};
  }
  std::string why;
  if (from != usual_from) why = trimmed(usual_from, 2) + " would leave a hollow behind the nose";
  if (to != usual_to) why += (why.empty() ? "" : ", ") + trimmed(usual_to, 2) + " would leave the run aft hollow";
  for (DefaultUsed& one : job.defaults) {
    if (one.key == "target.keep") one.value = trimmed(from, 2) + " to " + trimmed(to, 2) + " of the chord (" + why + ")";
  }
}

}  // namespace fairblade::target
