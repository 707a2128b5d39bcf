// A thousand random blades: each ends in a plan or in a refusal that names its cause.
#include <random>

#include "blade.hpp"
#include "catch.hpp"
#include "plan/plan.hpp"
#include "polygon_areas.hpp"

using namespace fairblade;

namespace {

job::Job random_job(unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> u(0, 1);
  const double t = 0.04 + 0.21 * u(random);
  const double lop = 10 * u(random), noise = 2 * u(random);
  const int readings = 6 + int(54 * u(random));
  const int stations = 1 + int(5 * u(random));
  std::vector<job::Station> list;
  for (int i = 0; i < stations; ++i) {
    const double chord = 250 + 350 * u(random);
    std::vector<double> places;
    for (int k = 0; k < readings; ++k) places.push_back(std::pow(double(k) / (readings - 1), 1.5));
    const auto port = [&](double x) { return blade::naca(t, x) + lop / chord * std::sqrt(x) * (1 - x); };
    const auto starboard = [&](double x) { return blade::naca(t, x); };
    list.push_back(blade::station(std::string(1, char('A' + i)), 300.0 * i, chord, port, starboard, places));
    blade::add_noise(list.back(), noise, random);
    auto& target = list.back().target;
    const double pick = u(random);
    target.thickness.kind = pick < 0.4 ? job::Thickness::Kind::least_fill : job::Thickness::Kind::closest;
    if (pick > 0.8) target.approach = job::Approach::edges_only;
    if (u(random) < 0.5) target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 1 + 7 * u(random)};
    if (u(random) < 0.3) target.leading_edge_radius = {job::LeadingEdgeRadius::Kind::mm, 2 + 12 * u(random)};
    if (u(random) < 0.2) target.max_thickness_at = {job::MaxThicknessAt::Kind::closest, 0};
    if (u(random) < 0.2) target.extend_trailing_edge = {true, 20};
    if (u(random) < 0.2) target.extend_leading_edge = {u(random) < 0.5, 10};
    if (u(random) < 0.1) target.no_cut.push_back({0, 1000, 0.2 * chord, 0.4 * chord});
  }
  auto job = blade::job_of(list);
  job.reading_error = 0.3 + noise;
  job.target.spanwise = u(random) < 0.6 ? job::Spanwise::fair : job::Spanwise::as_measured;
  return job;
}

void check_plan(const plan::Plan& plan) {
  for (std::size_t k = 0; k < plan.targets.size(); ++k) {
    const auto& target = plan.targets[k];
    const auto& change = plan.changes[k];
    CHECK(std::isfinite(target.area));
    CHECK(target.area > 0);
    CHECK(change.add_area >= 0);
    CHECK(change.remove_area >= 0);
    const auto other = polygon_areas(target::common_outlines(plan.measured[k], target));
    const auto agree = [](double a, double b) { return std::abs(a - b) <= std::max(1.0, 1e-3 * std::max(a, b)); };
    CHECK(agree(change.add_area, other.add));
    CHECK(agree(change.remove_area, other.remove));
    CHECK(change.add_area - change.remove_area ==
          Approx(target.area - plan.measured[k].figures.area).margin(1e-3 * target.area));  // ragged edges that cross
    for (int i = 0; i <= 300; ++i) {
      const double x = target.leading_edge_x + target.chord * i / 300.0;
      const double thickness = target.half_breadth(section::Face::port, x) + target.half_breadth(section::Face::starboard, x);
      if (!(thickness >= -1e-9)) {  // NaN fails too
        FAIL_CHECK("the target crosses itself at station " << target.station << ", x " << x << ": " << thickness);
        break;
      }
    }
    for (const auto& row : fill::Offsets(plan.measured[k], change)) CHECK(std::isfinite(row.change()));
  }
  CHECK(std::isfinite(plan.volumes.add));
  CHECK(plan.volumes.add >= 0);
  CHECK(plan.volumes.remove >= 0);
}

}  // namespace

TEST_CASE("a thousand random blades end in a plan or in a refusal that names its cause") {
  int planned = 0, refused = 0;
  for (unsigned seed = 0; seed < 1000; ++seed) {
    INFO("seed " << seed);
    const auto plan = plan::run_line(random_job(seed));
    if (plan) {
      ++planned;
      check_plan(*plan);
    } else {
      ++refused;
      REQUIRE_FALSE(plan.faults().empty());
      for (const auto& fault : plan.faults()) {
        CHECK(fault.what.find("station ") != std::string::npos);
        CHECK_FALSE(fault.remedy.empty());
      }
    }
  }
  INFO(planned << " planned, " << refused << " refused");
  CHECK(planned > 400);
}
