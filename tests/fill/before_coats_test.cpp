// What has to come off before the coats, against closed forms.
#include "catch.hpp"
#include "fill/change_map.hpp"
#include "planned.hpp"

using namespace fairblade;

namespace {

job::Job coated(job::Job job, double thickness, job::CoatedPart on = job::CoatedPart::all) {
  job::Coat coat;
  coat.name = "barrier";
  coat.stage = "paint";
  coat.thickness = thickness / 2;
  coat.layers = 2;
  coat.on = on;
  job.coats = {coat};
  return job;
}

}  // namespace

TEST_CASE("a blade that is its target loses the coats' thickness all over") {
  const auto p = planned::plan(coated(planned::tapered(3, 1000, 400, 400, 0.12, 0.12), 0.5));
  const auto& before = p.work.before_coats;
  REQUIRE(before);
  CHECK(before->over_old == Approx(0.5));
  CHECK(before->over_filler == Approx(0.5));
  CHECK(before->deepest == Approx(0.5).margin(0.01));
  // Girth by straight pieces of the published equation, written out in tests/blade.hpp: girth x span x 0.5 mm, less what the
  // surface's curvature takes of it (half of 0.5² x 2 pi: 0.8 mm² in some 410).
  double girth = 2 * 400 * blade::naca(0.12, 1);
  for (int k = 0; k < 20000; ++k) {
    const double a = k / 20000.0, b = (k + 1) / 20000.0;
    girth += 2 * 400 * std::hypot(b * b - a * a, blade::naca(0.12, b * b) - blade::naca(0.12, a * a));
  }
  CHECK(before->remove == Approx(girth * 1000 * 0.5 / 1e6).epsilon(0.01));
  CHECK(before->beyond == Approx(0).margin(1e-9));
  std::size_t steps = 0;
  for (const auto& step : p.work.order) {
    if (step.task != fill::Task::take_off) continue;
    CHECK(step.litres == Approx(before->remove));
    ++steps;
  }
  CHECK(steps == 1);
}

TEST_CASE("where filler is deeper than the coats nothing comes off, and what is high comes off deeper by them") {
  // 400 mm from 10 to 13 %: 2 mm and more of filler on most of the faces.
  const auto low = planned::plan(coated(planned::tapered(2, 1000, 400, 400, 0.10, 0.13), 0.5));
  REQUIRE(low.work.before_coats);
  CHECK(low.work.before_coats->remove < 0.1 * 0.42);  // of 0.42 L for a blade that is its target: the edges alone
  const auto high = planned::plan(coated(planned::tapered(2, 1000, 400, 400, 0.13, 0.12), 0.5));
  double deepest = 0;
  for (const auto& change : high.changes) deepest = std::max(deepest, change.removal.depth);
  CHECK(high.work.before_coats->deepest == Approx(deepest + 0.5));
  CHECK(high.work.before_coats->remove == Approx(high.volumes.remove + 0.5 * 0.82).epsilon(0.02));
}

TEST_CASE("coats on the filler alone ask for no cut") {
  const auto job = coated(planned::tapered(2, 1000, 400, 400, 0.12, 0.12), 0.5, job::CoatedPart::filled);
  const auto p = planned::plan(job);
  REQUIRE(p.work.before_coats);
  CHECK(p.work.before_coats->over_filler == Approx(0.5));
  CHECK(p.work.before_coats->over_old == 0);
  CHECK(p.work.before_coats->deepest == Approx(0).margin(0.01));
  CHECK(p.work.before_coats->remove == Approx(p.volumes.remove).margin(1e-4));
  CHECK_FALSE(planned::plan(planned::tapered(2, 1000, 400, 400, 0.12, 0.12)).work.before_coats);
}

TEST_CASE("2026-11-27: coats on the old surface ask for room there, and none where filler goes") {
  const auto same = planned::plan(coated(planned::tapered(2, 1000, 400, 400, 0.12, 0.12), 0.5, job::CoatedPart::old));
  REQUIRE(same.work.before_coats);
  CHECK(same.work.before_coats->over_filler == 0);
  CHECK(same.work.before_coats->over_old == Approx(0.5));
  CHECK(same.work.before_coats->deepest == Approx(0.5).margin(0.01));
  CHECK(same.work.before_coats->remove == Approx(0.41).epsilon(0.02));  // girth 820 mm x 1000 mm x 0.5 mm, as above
  // 10 to 13 %: filled nearly everywhere, by less than half a millimetre at the edges alone.
  const auto low = planned::plan(coated(planned::tapered(2, 1000, 400, 400, 0.10, 0.13), 0.5, job::CoatedPart::old));
  CHECK(low.work.before_coats->remove < 0.02);
}

TEST_CASE("2026-11-27: what the blade displaces counts what comes off before the coats") {
  const auto p = planned::plan(coated(planned::tapered(2, 1000, 400, 400, 0.12, 0.12), 0.5));
  // Nothing is filled and 0.41 L come off; a litre of sea water weighs 1.025 kg (ITTC 7.5-02-01-03, at 15 degrees: 1.026).
  CHECK(p.work.floating.buoyancy_gained == Approx(-0.41 * 1.025).epsilon(0.02));
}

TEST_CASE("2026-11-27: where less is missing than the coats are thick, the rest of them comes off") {
  // 12.0 to 12.2 %: 0.4 mm at most, everywhere less than half a millimetre. What comes off is the coats' whole volume, girth
  // 820 mm x 1000 mm x 0.5 mm as above, less what is missing to the finished surface.
  const auto p = planned::plan(coated(planned::tapered(2, 1000, 400, 400, 0.120, 0.122), 0.5));
  REQUIRE(p.work.before_coats);
  CHECK(p.volumes.add == Approx(0.685 * 0.002 * 400 * 400 / 1000).epsilon(0.02));  // 0.685: the form's area (Report 460)
  CHECK(p.work.before_coats->remove == Approx(0.41 - p.volumes.add).epsilon(0.03));
}

TEST_CASE("2026-11-27: under coats the map counts to the surface that is shaped") {
  const auto map_of = [](const job::Job& job) {
    const auto p = planned::plan(job);
    return fill::change_map(p.job, p.measured, p.targets, p.changes);
  };
  // A blade that is its target: 0.5 mm comes off all over, where without coats it was left alone.
  const auto same = planned::tapered(3, 1000, 400, 400, 0.12, 0.12);
  CHECK_FALSE(map_of(same).deepest_removal);
  auto read_well = coated(same, 0.5);
  read_well.reading_error = 0.1;
  const auto off = map_of(read_well);
  for (const auto& one : off.readings) CHECK(one.depth == Approx(-0.5).margin(0.02));
  for (const auto& row : off.rows) CHECK(row.port.at(row.port.size() / 2) == Approx(-0.5).margin(0.02));
  REQUIRE(off.deepest_removal);
  CHECK(off.deepest_removal->depth == Approx(-0.5).margin(0.02));
  CHECK_FALSE(off.deepest_add);
  // 400 mm from 10 to 12 %: 4 mm of filler where it is thickest, 3.5 of it under the coats.
  const auto low = planned::tapered(3, 1000, 400, 400, 0.10, 0.12);
  const auto plain = map_of(low), under = map_of(coated(low, 0.5, job::CoatedPart::filled));
  REQUIRE(plain.readings.size() == under.readings.size());
  CHECK(plain.deepest_add->depth == Approx(4).margin(0.02));
  CHECK(under.deepest_add->depth == Approx(plain.deepest_add->depth - 0.5));
  for (std::size_t k = 0; k < plain.readings.size(); ++k)
    CHECK(under.readings[k].depth == Approx(std::max(0.0, plain.readings[k].depth - 0.5)).margin(1e-9));
  // By hand, coats of 0.3 over old surface and of 0.8 over filler: between the two nothing is done.
  const fill::CoatsOver coats{0.8, 0.3};
  CHECK(coats.to_shape(2) == Approx(1.2));
  CHECK(coats.to_shape(0.5) == 0);
  CHECK(coats.to_shape(0.1) == Approx(-0.2));
  CHECK(coats.to_shape(-1) == Approx(-1.3));
  const fill::CoatsOver old_alone{0,
                                  1};  // 2026-11-27: old surface that is the target to rounding is not filled, and gets its coats
  CHECK(old_alone.to_shape(1e-12) == Approx(-1));
  CHECK(old_alone.to_shape(-1e-12) == Approx(-1));
  CHECK(old_alone.to_shape(0.3) == Approx(0.3));
}

TEST_CASE("2026-11-28: nothing comes off for coats where the leading edge is left") {
  const auto with = [](job::LeadingEdgeWork work) {
    auto job = coated(planned::tapered(3, 1000, 400, 400, 0.12, 0.12), 0.5);
    for (auto& station : job.stations) station.target.leading_edge = work;
    return planned::plan(job);
  };
  const auto cut = with(job::LeadingEdgeWork::shape), left = with(job::LeadingEdgeWork::leave);
  // Both faces over 40 mm, and half of it over the 40 mm of the blend: girth by straight pieces of the published equation.
  double girth = 0;
  const auto at = [](double x) { return 400 * blade::naca(0.12, x / 400); };
  for (int k = 0; k < 8000; ++k) {
    const double a = 80 * std::pow(k / 8000.0, 2), b = 80 * std::pow((k + 1) / 8000.0, 2);
    const double s = std::max(0.0, (a + b) / 80 - 1), share = s * s * s * (10 + s * (-15 + 6 * s));
    girth += 2 * (1 - share) * std::hypot(b - a, at(b) - at(a));
  }
  CHECK(cut.work.before_coats->remove - left.work.before_coats->remove == Approx(girth * 1000 * 0.5 / 1e6).epsilon(0.05));
  const auto map = fill::change_map(left.job, left.measured, left.targets, left.changes);
  std::size_t seen = 0;
  for (const auto& one : map.readings) {
    if (one.x > 80) CHECK(one.depth == Approx(-0.5).margin(0.01));
    if (one.x > 40) continue;
    CHECK(one.depth == Approx(0).margin(0.01));
    ++seen;
  }
  CHECK(seen > 10);
}
