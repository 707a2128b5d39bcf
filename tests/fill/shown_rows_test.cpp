#include "fill/shown_rows.hpp"

#include "blade.hpp"
#include "catch.hpp"
#include "fill/planned.hpp"

using namespace fairblade;

TEST_CASE("readings are thinned for the eye: ends, the deepest of each kind, some between") {
  std::vector<fill::OffsetRow> rows;
  for (int k = 0; k < 5000; ++k) {
    fill::OffsetRow row;
    row.x = k;
    row.face = section::Face::starboard;
    row.target = k == 1234 ? 9.0 : k == 4321 ? -7.0 : 0.001 * (k % 7);
    rows.push_back(row);
  }
  const auto few = fill::rows_shown(rows, 40);
  CHECK(few.size() <= 40);
  CHECK(few.size() >= 38);
  CHECK(few.front().x == 0);
  CHECK(few.back().x == 4999);
  bool deepest = false, highest = false;
  for (std::size_t k = 0; k < few.size(); ++k) {
    CHECK(few[k].face == section::Face::starboard);
    if (k > 0) CHECK(few[k].x > few[k - 1].x);
    deepest = deepest || few[k].change() == 9.0;
    highest = highest || few[k].change() == -7.0;
  }
  CHECK((deepest && highest));
  CHECK(fill::rows_shown(rows, 5000).size() == 5000);
}

TEST_CASE("2026-11-26: a reading past an edge of the target is told from one at it") {
  target::TargetSection target;
  target.leading_edge_x = 3;  // cut back by 3 mm, and 100 long: from 3 to 103
  target.chord = 100;
  CHECK(fill::past_of(target, 2.9) == fill::Past::leading_edge);
  CHECK(fill::past_of(target, 3) == fill::Past::none);
  CHECK(fill::past_of(target, 50) == fill::Past::none);
  CHECK(fill::past_of(target, 103) == fill::Past::none);
  CHECK(fill::past_of(target, 103.1) == fill::Past::trailing_edge);
}

TEST_CASE("2026-11-26: where nothing was read the rows are the laid outline's, at the published places") {
  auto station = blade::exact("A", 0, 400, 0.12);
  station.target.thickness = {job::Thickness::Kind::ratio, 0.15};
  const auto p = planned::change(blade::job_of({station}));
  const auto rows = fill::rows_laid(p.measured[0], p.targets[0], section::Face::starboard);
  REQUIRE(rows.size() == 18);
  CHECK(rows[1].x == Approx(5));
  CHECK(rows.back().x == Approx(400));
  for (const auto& row : rows) {
    CHECK(row.face == section::Face::starboard);
    CHECK(row.measured == Approx(400 * blade::naca(0.12, row.x / 400)).margin(1e-9));
    CHECK(row.target == Approx(400 * blade::naca(0.15, row.x / 400)).margin(1e-9));
  }
}
