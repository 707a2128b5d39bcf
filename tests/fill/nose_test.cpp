// Leading-edge numbers against noses whose geometry is known in closed form.
#include "fill/nose.hpp"

#include <cmath>
#include <numbers>

#include "base/polyline.hpp"
#include "blade.hpp"
#include "catch.hpp"
#include "shapes.hpp"

using namespace fairblade;

namespace {

constexpr double pi = std::numbers::pi;
const fill::Stage finished;

fill::Stage bare(double to_come) { return {fill::StageKind::bare, to_come, {}}; }

fill::Nose nose(const target::TargetSection& target, const fill::Stage& stage = finished) {
  return fill::nose_of({target.station, target.down, 0, target, false}, stage);
}

}  // namespace

TEST_CASE("the bent strip by quadrature, and by its own differential equation") {
  // D/2 = r * integral of sqrt(sin) over 0..90 degrees, with theta = phi² to make it smooth; Simpson's rule.
  constexpr int steps = 2000;
  const double h = std::sqrt(pi / 2) / steps;
  double across = 0, ahead = 0;
  for (int k = 0; k <= steps; ++k) {
    const double phi = k * h, weight = k == 0 || k == steps ? 1 : k % 2 == 1 ? 4 : 2;
    across += weight * std::sqrt(std::sin(phi * phi)) * 2 * phi;
    ahead += weight * (k == 0 ? 2 : std::cos(phi * phi) / std::sqrt(std::sin(phi * phi)) * 2 * phi);
  }
  CHECK(fill::gap_per_radius == Approx(2 * across * h / 3).epsilon(1e-9));                 // seen below 1e-10
  CHECK(fill::tip_per_gap == Approx(ahead * h / 3 / (2 * across * h / 3)).epsilon(1e-9));  // seen below 1e-10
  CHECK(fill::gap_per_radius == Approx(2.396).margin(5e-4));  // of the two-point bend test of fibres, recalled: D/2.396
  // theta'' = k cos(theta) from a straight, unbent hold; Runge and Kutta's steps until it stands across.
  const double k = 0.5;  // so that the tip's curvature, sqrt(2k), is 1
  double theta = 1e-12, bend = 0, x = 0, y = 0;
  const double ds = 1e-4;
  while (theta < pi / 2) {
    const double k1 = k * std::cos(theta), k2 = k * std::cos(theta + ds / 2 * bend),
                 k3 = k * std::cos(theta + ds / 2 * bend + ds * ds / 4 * k1),
                 k4 = k * std::cos(theta + ds * bend + ds * ds / 2 * k2);
    const double next = theta + ds * bend + ds * ds / 6 * (k1 + k2 + k3);
    x += ds * std::cos((theta + next) / 2);
    y += ds * std::sin((theta + next) / 2);
    bend += ds / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
    theta = next;
  }
  CHECK(bend == Approx(1).margin(1e-7));                      // radius 1 at the tip (seen 5e-10)
  CHECK(2 * y == Approx(fill::gap_per_radius).margin(3e-4));  // seen 8.5e-5, for the last step is whole
  CHECK(x == Approx(2).margin(1e-7));                         // seen 9e-10
}

TEST_CASE("flats touch a parabola where its slope is the angle's tangent") {
  // y = sqrt(2 r x): slope sqrt(r/2x), so x = r/(2 tan²) and y = r/tan. Coats of d move the place along the normal by d,
  // and the leading edge aft by d.
  const double r = 8;
  for (const double d : {0.0, 0.8}) {
    const auto n = nose(shapes::both(shapes::parabola(r), 300, r), d > 0 ? bare(d) : finished);
    REQUIRE(n.why_none.empty());
    CHECK(n.radius == Approx(r - d));
    for (const auto& face : n.flats) {
      for (const auto& flat : face) {
        REQUIRE(flat);
        const double angle = flat->degrees * pi / 180, tan = std::tan(angle);
        // With coats the leading edge is read off the moved outline: tolerance 0.0005 mm (seen 0.00005; below 1e-9 without).
        CHECK(flat->x == Approx(r / (2 * tan * tan) + d * std::sin(angle) - d).margin(d > 0 ? 5e-4 : 1e-6));
        CHECK(flat->half_breadth == Approx(r / tan - d * std::cos(angle)).margin(1e-6));
      }
    }
  }
}

TEST_CASE("flats on an ellipse and on a circle") {
  // (a - x)²/a² + y²/b² = 1: slope tan at a - x = a² tan/root, y = b²/root, root = sqrt(a² tan² + b²). Circle: a = b.
  for (const auto& [a, b] : {std::pair(200.0, 30.0), {100.0, 100.0}, {60.0, 20.0}}) {
    const auto n = nose(shapes::both(shapes::ellipse(a, b), 2 * a, b * b / a));
    for (const auto& flat : n.flats[1]) {
      REQUIRE(flat);
      const double tan = std::tan(flat->degrees * pi / 180), root = std::sqrt(a * a * tan * tan + b * b);
      CHECK(flat->x == Approx(a - a * a * tan / root).margin(1e-6));
      CHECK(flat->half_breadth == Approx(b * b / root).margin(1e-6));
    }
  }
}

TEST_CASE("flats on a 4-digit form lie on it and along it") {
  // Slope of the published equation, written out.
  const double t = 0.12, c = 420;
  const auto slope = [&](double x) {
    return 5 * t * (0.2969 / (2 * std::sqrt(x)) - 0.1260 - 2 * 0.3516 * x + 3 * 0.2843 * x * x - 4 * 0.1015 * x * x * x);
  };
  const auto n = nose(shapes::naca(c, t));
  double last = 0;
  for (const auto& flat : n.flats[0]) {
    REQUIRE(flat);
    CHECK(flat->x > last);
    last = flat->x;
    CHECK(slope(flat->x / c) == Approx(std::tan(flat->degrees * pi / 180)).epsilon(1e-8));
    CHECK(flat->half_breadth == Approx(c * blade::naca(t, flat->x / c)).margin(1e-8));
  }
  CHECK(n.radius == Approx(1.1019 * t * t * c).epsilon(1e-3));  // NACA Report 460
}

TEST_CASE("each face has its own flats") {
  auto target = shapes::both(shapes::parabola(8), 300, 8);
  target.starboard_shape = shapes::parabola(5);
  const auto n = nose(target);
  CHECK(n.flats[0][1]->half_breadth == Approx(8));
  CHECK(n.flats[1][1]->half_breadth == Approx(5));
}

TEST_CASE("girth round a circle, and the cloth that wraps it") {
  // Radius 100, tail on the stock at 85, aft of the last flat: both arcs 100 acos(1 - 0.85); cloth 25 mm further a side.
  auto target = shapes::both(shapes::ellipse(100, 100), 200, 100);
  target.ahead = 85;
  const auto n = nose(target);
  CHECK(n.ends_on_stock);
  CHECK(n.tail == Approx(85));
  CHECK(n.girth == Approx(2 * 100 * std::acos(0.15)).margin(0.005));  // seen 0.0013, by the corners' chords
  CHECK(n.cloth == Approx(n.girth + 50));
}

TEST_CASE("where to hold a sheet on an ellipse") {
  // x = c T(x), T = 2b sqrt(2s - s²), s = x/a, c = 2/2.39628: s = 2k²/(1 + k²) with k = 2cb/a.
  const double a = 200, b = 30, k = 2 * (2 / 2.3962804694711844) * b / a, s = 2 * k * k / (1 + k * k);
  auto target = shapes::both(shapes::ellipse(a, b), 2 * a, b * b / a);
  target.ahead = 80;
  const auto n = nose(target);
  CHECK(n.hold.x == Approx(s * a).margin(0.005));                               // seen 0.0012
  CHECK(n.hold.gap == Approx(2 * b * std::sqrt(2 * s - s * s)).margin(0.005));  // seen 0.0014
  CHECK(n.hold.radius == Approx(n.hold.gap / 2.3962804694711844).epsilon(1e-9));
  CHECK(n.hold.radius > 1.5 * n.radius);
  CHECK_FALSE(n.hold.at_widest);
  CHECK(n.hold.gap_for_radius == Approx(2.39628 * b * b / a).epsilon(1e-5));
  // At the gauge's end: T = 60 sqrt(0.8 - 0.16) = 48; the tip stands 0.83463 x 48 = 40.062 ahead of 80.
  CHECK(n.hold.end_gap == Approx(48).margin(0.005));                 // seen 0.0012
  CHECK(n.hold.short_at_end == Approx(80 - 40.0622).margin(0.005));  // seen 0.0011
  // On a circle the tip reaches even from the greatest breadth: 0.8346 x 2R > R.
  CHECK(nose(shapes::both(shapes::ellipse(100, 100), 200, 100)).hold.at_widest);
}

TEST_CASE("the tail ends on the stock where it can") {
  auto target = shapes::naca(420, 0.12);
  const auto reach = [&](std::optional<double> ahead) {
    target.ahead = ahead;
    return nose(target);
  };
  CHECK(reach(78).tail == 78);
  CHECK(reach(78).ends_on_stock);
  CHECK(reach(78).stock == 78.0);
  // Too near to gauge the nose: it goes on, and carries the mark. 0.12 x 420 = 50.4, up to the next 5 %: 63.
  CHECK(reach(10).tail == Approx(63));
  CHECK(reach(10).tail_fraction == Approx(0.15));
  CHECK(reach(10).stock == 10.0);
  CHECK_FALSE(reach(10).ends_on_stock);
  // Too far, or not known.
  CHECK(reach(300).tail == Approx(63));
  CHECK_FALSE(reach(300).stock);
  CHECK(reach({}).tail == Approx(63));
  // Ahead of the leading edge the horn goes out to it, as far as it can.
  CHECK(reach(-20).horn == fill::shortest_horn);
  CHECK(reach(-20).stock == -20.0);
  CHECK(reach(-90).horn == 90);
  CHECK(reach(-90).ends_on_stock);
  CHECK_FALSE(reach(-260).stock);
  for (const double ahead : {-260.0, -150.0, -90.0, 10.0, 78.0, 200.0, 300.0}) {
    CHECK(reach(ahead).horn + reach(ahead).tail <= fill::longest_gauge);
  }
}

TEST_CASE("coats move nose and stock together, and may be thicker than the nose is round") {
  auto target = shapes::naca(420, 0.12);
  target.ahead = 78;
  const auto n = nose(target, bare(0.8));
  CHECK(n.section.leading_edge_x == Approx(0.8).margin(0.001));  // seen 0.00008
  CHECK(*n.ahead == Approx(77.2).margin(0.001));
  CHECK(n.radius == Approx(target.leading_edge_radius - 0.8));
  for (const auto& flat : n.flats[0]) {  // two routes: the moved place lies on the moved outline (seen 0.0018 mm)
    CHECK(ordinate_at(n.section.port, n.section.leading_edge_x + flat->x) == Approx(flat->half_breadth).margin(0.006));
  }
  auto sharp = shapes::naca(150, 0.04);  // radius 0.264
  CHECK(nose(sharp, bare(0.3)).radius == 0);
  CHECK(nose(sharp, bare(0.3)).finished_radius == Approx(0.264).margin(0.001));
}

TEST_CASE("a clearance gauge stands off") {
  // 3 mm outside a circle of radius 100: its flats are those of a circle of radius 103.
  const auto round = shapes::both(shapes::ellipse(100, 100), 200, 100);
  const auto n = fill::nose_of({"A", 0, 0, round, false}, finished, 3);
  CHECK(n.radius == Approx(103));
  CHECK(n.section.leading_edge_x == Approx(-3).margin(0.01));
  const double angle = 45 * pi / 180;
  CHECK(n.flats[0][1]->x == Approx(103 * (1 - std::sin(angle))).margin(0.01));
  CHECK(n.flats[0][1]->half_breadth == Approx(103 * std::cos(angle)).margin(1e-6));
}

TEST_CASE("no gauge where there is no nose") {
  auto target = shapes::naca(420, 0.12);
  target.skeg = 100;
  CHECK(nose(target).why_none == "behind a fixed skeg: there is no nose");
  target.skeg = 0;
  CHECK(fill::nose_of({"A", 0, 0, target, true}, finished).why_none == "the leading edge is left as it is");
}

TEST_CASE("heights: every station, and a spacing from the first one down") {
  auto job =
      blade::job_of({blade::exact("A", 60, 420, 0.12), blade::exact("B", 365, 400, 0.12), blade::exact("C", 700, 380, 0.12)});
  job.stations[2].target.leading_edge = job::LeadingEdgeWork::leave;
  std::vector<target::TargetSection> targets;
  for (const auto& station : job.stations) {
    targets.push_back(shapes::naca(station.chord, 0.12));
    targets.back().station = station.name;
    targets.back().down = station.down;
  }
  std::vector<std::string> names;
  for (const auto& height : fill::heights_down(job, targets, 100)) {
    names.push_back(height.name);
    CHECK(height.target.down == Approx(height.down));
    CHECK(height.edge_left == (height.down > 365));
  }
  // 360 is nearer to B than a tenth of the spacing.
  CHECK(names == std::vector<std::string>{"A", "at 160", "at 260", "B", "at 460", "at 560", "at 660", "C"});
  CHECK(fill::heights_down(job, targets, 1000).size() == 3);
  CHECK(fill::heights_down(job, {targets[0]}, 100).size() == 1);
}
