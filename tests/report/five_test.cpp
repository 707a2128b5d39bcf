// Values by hand, from hand_made.hpp.
#include "report/five.hpp"

#include "catch.hpp"
#include "report/hand_made.hpp"

using namespace fairblade;

TEST_CASE("the five numbers, each with its place") {
  report::Plan plan = hand_made::plan();
  plan.work.zones.whole.to_mix = 2.5;
  plan.work.zones.whole.filler = 2;
  plan.work.zones.whole.sanding = 0.2;
  plan.work.zones.whole.loss = 0.3;
  plan.changes[1].add.depth = 4.26;
  plan.fitted[1].form.thickness_ratio = 0.131;
  plan.targets[0].trailing_edge_thickness = 4;
  plan.targets[1].trailing_edge_thickness = 3;
  auto five = report::five_numbers(plan);
  CHECK(five[0].value == "2.50 L");
  CHECK(five[0].note == "2.00 L of it stays on the blade, 0.20 L is sanded off, 0.30 L is lost in pots");
  CHECK(five[1].value == "4.3 mm at station B, 101.6 mm aft of the leading edge, port");
  CHECK(five[2].value == "0.8 mm at station A, 25.4 mm aft of the leading edge, starboard");  // 0.75 at both: the first
  CHECK(five[3].value == "12.0 % now, 12.0 % then");
  CHECK(five[3].note == "nearest standard sections 0012 and 0013");
  CHECK(five[4].what == "Trailing edge");  // no balance without a stock
  CHECK(five[4].value == "2.0 mm now, 3.0 to 4.0 mm then");
  plan.before.balance_percent = 14.84;
  plan.after.balance_percent = 15.2;
  plan.job.units = LengthUnit::inch;
  five = report::five_numbers(plan);
  CHECK(five[4].value == "14.8 % now, 15.2 % then");
  CHECK(five[4].note == "trailing edge 2.0 mm (0.079 in) now, 3.0 to 4.0 mm (0.118 to 0.157 in) then");
  CHECK(five[1].value == "4.3 mm (0.168 in) at station B, 101.6 mm (4.000 in) aft of the leading edge, port");
}

TEST_CASE("2026-11-27: an edge asked for as 3/16 in is told as one figure") {
  report::Plan plan = hand_made::plan();  // it was "0.187 to 0.188 in"
  plan.job.units = LengthUnit::inch;
  plan.targets[0].trailing_edge_thickness = (0.1875 - 1e-12) * mm_per_inch;
  plan.targets[1].trailing_edge_thickness = (0.1875 + 1e-12) * mm_per_inch;
  CHECK(report::five_numbers(plan)[4].value == "2.0 mm (0.079 in) now, 4.8 mm (0.188 in) then");
}

TEST_CASE("a blade that needs nothing says so") {
  report::Plan plan = hand_made::plan();
  for (auto& change : plan.changes) change.add = change.removal = {};
  const auto five = report::five_numbers(plan);
  CHECK(five[0].note == "nothing is filled");
  CHECK(five[1].value == "none");
  CHECK(five[2].value == "none");
}
