#include <algorithm>

#include "catch.hpp"
#include "planned.hpp"

using namespace fairblade;
using fill::Task;
using fill::Zone;

namespace {

std::vector<std::string> tasks_of(const std::vector<fill::Step>& order) {
  std::vector<std::string> out;
  for (const auto& step : order) out.push_back(fill::name_of(step.task));
  return out;
}

job::Coat paint(const std::string& name) {
  job::Coat coat;
  coat.name = name;
  coat.stage = "paint";
  coat.dry_film_um = 50;
  coat.layers = 2;
  coat.spreading_rate = 10;
  return coat;
}

}  // namespace

TEST_CASE("the work comes in the yard's order") {
  // 18 mm deep at the faces of a 400 mm chord, layer limit 6: three passes and a core; edges in one or two.
  auto job = planned::tapered(2, 1000, 400, 400, 0.06, 0.15);
  job.coating_to_strip = 0.5;
  job.workshop.support_patches_m2 = 0.03;
  job.nose_glass = job::NoseGlass{job::Cloth{300, 1000, 50, 2.54, {}}, 2};
  job.coats = {paint("barrier"), paint("antifouling")};
  for (auto& station : job.stations) {
    station.target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 4};
    station.target.extend_leading_edge.mm = 8;  // room for cloth round the nose
  }
  const auto p = planned::plan(job);
  const auto tasks = tasks_of(p.work.order);
  const auto first = [&](const std::string& task) { return std::find(tasks.begin(), tasks.end(), task) - tasks.begin(); };
  const auto count = [&](const std::string& task) { return std::count(tasks.begin(), tasks.end(), task); };
  // Common practice, no source: the order of the words of the trade.
  const std::vector<std::string> order{"look-over",  "mark",    "strip",     "clean",      "core",
                                       "nose-glass", "prefill", "fill-edge", "fill-faces", "longboard",
                                       "templates",  "seal",    "coat",      "patches",    "measure"};
  for (std::size_t k = 0; k < order.size(); ++k) {
    INFO(order[k]);
    CHECK(count(order[k]) >= 1);
    if (k > 0) CHECK(first(order[k - 1]) < first(order[k]));
  }
  CHECK(count("coat") == 2);
  CHECK(count("patches") == 1);
}

TEST_CASE("every pass is a step, with its batches, and the litres add up") {
  for (const double to : {0.105, 0.13, 0.16}) {
    const auto p = planned::plan(planned::tapered(3, 900, 420, 380, 0.10, to));
    double litres = 0;
    std::size_t passes = 0, steps = 0;
    for (const auto& zone : p.work.passes) passes += zone.passes.size();
    for (const auto& step : p.work.order) {
      if (!step.batches) continue;
      ++steps;
      litres += step.litres;
      const auto& batch = p.work.batches.at(*step.batches);
      CHECK(batch.zone == *step.zone);
      CHECK(batch.pass == step.pass);
      CHECK(step.depth <= 6 + 1e-9);
      if (step.task == Task::prefill) CHECK(step.pass < step.passes);
      if (step.task == Task::fill_faces) CHECK(*step.zone == Zone::faces);
    }
    CHECK(steps == passes);
    CHECK(litres == Approx(p.work.zones.whole.to_mix).epsilon(1e-9));  // seen 1e-16
  }
}

TEST_CASE("what a job has not is no step") {
  // Thinner than it is: everything comes off, nothing is filled or coated.
  const auto p = planned::plan(planned::tapered(3, 900, 420, 380, 0.13, 0.12));
  CHECK(tasks_of(p.work.order) ==
        std::vector<std::string>{"look-over", "mark", "take-off", "clean", "templates", "seal", "measure"});
  const auto& off = p.work.order.at(2);
  CHECK(off.litres == Approx(p.volumes.remove));
  CHECK(off.depth > 0.005 * 380 * 0.9);  // half of 1 % of the chord, a little less along the normal
  const auto filled = planned::plan(planned::tapered(3, 900, 420, 380, 0.12, 0.13));
  const auto tasks = tasks_of(filled.work.order);
  CHECK(std::count(tasks.begin(), tasks.end(), "take-off") == 0);
  CHECK(std::count(tasks.begin(), tasks.end(), "seal") == 1);
}

TEST_CASE("2026-11-27: a blade that is only cut is sealed all the same") {
  const auto count = [](const planned::Plan& p) {
    const auto tasks = tasks_of(p.work.order);
    return std::count(tasks.begin(), tasks.end(), "seal");
  };
  auto job = planned::tapered(2, 1000, 400, 400, 0.13, 0.12);
  const auto cut = planned::plan(job);
  REQUIRE(cut.work.coats.wetted.filled == 0);
  CHECK(count(cut) == 1);
  job.coats = {paint("barrier")};
  CHECK(count(planned::plan(job)) == 0);  // its coats seal it
  CHECK(count(planned::plan(planned::tapered(2, 1000, 400, 400, 0.12, 0.12))) == 0);
}
