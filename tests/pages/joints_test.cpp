// Where lengths are cut, and what of a drawing falls on which page.
#include "pages/joints.hpp"

#include "catch.hpp"
#include "pages/clip.hpp"
#include "pages/nest.hpp"

using namespace fairblade;
using namespace fairblade::pages;

TEST_CASE("windows cover the length, each overlapping the next, as few as can be") {
  // By hand: three windows of 100 overlapping by 10 reach 280.
  CHECK(starts_of(100, 100, 10, {}) == std::vector<double>{0});
  CHECK(starts_of(280, 100, 10, {}) == std::vector<double>{0, 90, 180});
  CHECK(starts_of(280.1, 100, 10, {}).size() == 4);
  for (double length = 50; length < 2000; length += 7.3) {
    const auto starts = starts_of(length, 243, 12, {});
    INFO(length);
    REQUIRE(starts.front() == 0);
    for (std::size_t k = 1; k < starts.size(); ++k) CHECK(starts[k] + 12 <= starts[k - 1] + 243 + 1e-9);
    CHECK(starts.back() + 243 >= length - 1e-6);
  }
}

TEST_CASE("no joint runs where none should, when that can be had") {
  // A window ends at 100 and the stretch from 80 to 120 is to be kept whole: the joint moves to before it.
  const auto starts = starts_of(250, 100, 10, {{80, 120}});
  REQUIRE(starts.size() > 1);
  CHECK(starts[1] == Approx(70));
  for (std::size_t k = 1; k < starts.size(); ++k) {
    const double from = starts[k], to = starts[k] + 10;
    CHECK((to <= 80 + 1e-9 || from >= 120 - 1e-9));
  }
  // A stretch longer than a window cannot be kept whole.
  CHECK(starts_of(250, 100, 10, {{20, 200}}).size() == 3);
}

TEST_CASE("pieces on shared pages lie apart, within the window, each once") {
  std::vector<Point> sizes;
  for (int k = 0; k < 37; ++k) sizes.emplace_back(20 + (k * 37) % 90, 30 + (k * 53) % 70);
  const auto laid = nest(sizes, 180, 243, 4);
  std::vector<int> times(sizes.size());
  for (const auto& page : laid) {
    for (std::size_t a = 0; a < page.size(); ++a) {
      const Point &p = page[a].at, &s = sizes[page[a].piece];
      ++times[page[a].piece];
      CHECK((p.x() >= 0 && p.y() >= 0 && p.x() + s.x() <= 180 + 1e-6 && p.y() + s.y() <= 243 + 1e-6));
      for (std::size_t b = a + 1; b < page.size(); ++b) {
        const Point &q = page[b].at, &t = sizes[page[b].piece];
        const bool apart = p.x() + s.x() + 4 <= q.x() + 1e-6 || q.x() + t.x() + 4 <= p.x() + 1e-6 ||
                           p.y() + s.y() + 4 <= q.y() + 1e-6 || q.y() + t.y() + 4 <= p.y() + 1e-6;
        CHECK(apart);
      }
    }
  }
  for (const int n : times) CHECK(n == 1);
  CHECK(laid.size() <= 6);  // 37 pieces of 65 x 65 mm on the average are 3.6 pages full to the rim
  // Four quarters fill one page.
  CHECK(nest({{88, 119}, {88, 119}, {88, 119}, {88, 119}}, 180, 243, 4).size() == 1);
}

TEST_CASE("lines are cut at a window's rim") {
  const drawing::Box box(Point(10, 0), Point(20, 10));
  const drawing::Path path{{{{0, 5}, {30, 5}}}, false, drawing::Pen::cut, drawing::Fill::none, "line"};
  const auto part = clipped(path, box);
  REQUIRE(part.runs.size() == 1);
  CHECK(part.id == "line");
  CHECK(part.runs[0].front().x() == 10);
  CHECK(part.runs[0].back().x() == 20);
  // A closed line that leaves and comes back is two lines; a filled one stays an area.
  drawing::Path square{{{{5, 2}, {15, 2}, {15, 8}, {5, 8}}}, true, drawing::Pen::cut, drawing::Fill::none, {}};
  CHECK_FALSE(clipped(square, box).closed);
  CHECK(clipped(square, box).runs.size() >= 1);
  square.fill = drawing::Fill::dark;
  CHECK(clipped(square, box).closed);
  CHECK(area(polygon_of(clipped(square, box).runs.at(0))) == Approx(30));
  CHECK(clipped({{{{0, 50}, {30, 50}}}, false, drawing::Pen::cut, drawing::Fill::none, {}}, box).runs.empty());
}

TEST_CASE("a text is on every page that holds it whole, and on one at least") {
  const std::vector<drawing::Box> windows{{Point(0, 0), Point(100, 50)}, {Point(88, 0), Point(188, 50)}};
  const drawing::Text left{Point(10, 20), "left", 3, drawing::Anchor::start, 0, false};
  const drawing::Text both{Point(90, 20), "ab", 3, drawing::Anchor::start, 0, false};
  const drawing::Text across{Point(70, 20), "a text that runs across the joint of two pages", 3, drawing::Anchor::start, 0,
                             false};
  const drawing::Text in_its_way{Point(30, 20), "in its way, quite long", 3, drawing::Anchor::start, 0, false};
  const auto shares = share_out({left, both, across, in_its_way}, windows);
  CHECK(shares[0].size() + shares[1].size() == 5);  // "ab" on both pages, the other three on one each
  for (std::size_t k = 0; k < 2; ++k) {
    for (std::size_t a = 0; a < shares[k].size(); ++a) {
      const auto box = box_of(shares[k][a]);
      CHECK(box.min_corner().x() >= windows[k].min_corner().x() - 1e-9);
      CHECK(box.max_corner().x() <= windows[k].max_corner().x() + 1e-9);
      for (std::size_t b = a + 1; b < shares[k].size(); ++b) {
        const auto other = box_of(shares[k][b]);
        CHECK(drawing::stand_apart(box, other));
      }
    }
  }
}
