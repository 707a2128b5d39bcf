// Product of the fill room: how much to add and to take off, where, and in litres. Verbs: compare, Offsets' own, sum_volumes,
// litres_to_add, LitresWithAnother's own.
#pragma once
#include <boost/iterator/counting_iterator.hpp>
#include <boost/iterator/transform_iterator.hpp>
#include <cassert>
#include <memory>
#include <string>
#include <vector>

#include "job/build.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::fill {

using section::Face;

constexpr double mm3_per_litre = 1e6, mm2_per_m2 = 1e6;
using job::no_filler;

/// Half-breadths at a reading, mm.
struct OffsetRow {
  double x = 0, measured = 0, target = 0;
  Face face = Face::port;
  double change() const { return target - measured; }  ///< positive: add filler; negative: take off
};

/// The deepest place of one kind: depth in mm along the target's normal, x in mm aft of the measured leading edge.
struct Deepest {
  double depth = 0;
  double x = 0;
  Face face = Face::port;
};

struct StationChange {
  std::string station;
  /// mm², of the polygons target less measured and measured less target: integrated exactly between common places. Polygon
  /// differences by Boost.Geometry agree within 3e-13 (tests), and lose a piece now and then, so they are not what counts.
  double add_area = 0, remove_area = 0;
  Deepest add, removal;
  std::vector<double> targets;  ///< the target's half-breadth at each of the section's points, mm: see Offsets
};

/// The readings of a section beside its target: one row per point, in the order of MeasuredSection::points. Made as they are
/// asked for, because a scan has millions; both arguments must outlive it, and be of the same station.
class Offsets {
 public:
  Offsets(const section::MeasuredSection& measured, const StationChange& change)
      : points_(measured.points), targets_(change.targets) {
    assert(points_.size() == targets_.size());
  }

  std::size_t size() const { return points_.size(); }
  OffsetRow operator[](std::size_t k) const { return {points_[k].x, points_[k].half_breadth, targets_[k], points_[k].face}; }
  auto begin() const { return at(0); }
  auto end() const { return at(size()); }
  std::vector<OffsetRow> of(Face face) const;

 private:
  struct Row {
    const Offsets* of = nullptr;
    OffsetRow operator()(std::size_t k) const { return (*of)[k]; }
  };
  boost::transform_iterator<Row, boost::counting_iterator<std::size_t>> at(std::size_t k) const {
    return {boost::counting_iterator<std::size_t>(k), Row{this}};
  }

  const std::vector<section::SurfacePoint>& points_;
  const std::vector<double>& targets_;
};

/// Litres.
struct Volumes {
  double add = 0, remove = 0;              ///< between the first and the last station
  double add_error = 0;                    ///< one standard deviation from reading error
  double may_be_reading_error = 0;         ///< litres of `add` that noise alone would show
  bool has_below = false;                  ///< `bottom` was given
  double below_add = 0, below_remove = 0;  ///< from the last station to the bottom
  double above_add = 0, above_remove = 0;  ///< from the top to the first station, when it is not at the top
};

StationChange compare(const section::MeasuredSection& measured, const target::TargetSection& target);

Volumes sum_volumes(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                    const std::vector<target::TargetSection>& targets, const std::vector<StationChange>& changes);
/// Volumes::add alone.
double litres_to_add(const std::vector<section::MeasuredSection>& measured, const std::vector<target::TargetSection>& targets);

/// Volumes::add were one station another, the rest staying as they are: only the bays beside it are looked at again.
class LitresWithAnother {
 public:
  LitresWithAnother(const std::vector<section::MeasuredSection>& measured, const std::vector<target::TargetSection>& targets);
  ~LitresWithAnother();
  double with(std::size_t station, const section::MeasuredSection& measured, const target::TargetSection& target) const;

 private:
  struct Ready;
  std::unique_ptr<const Ready> ready_;
};

}  // namespace fairblade::fill
