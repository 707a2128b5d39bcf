#include "target/loft.hpp"

#include <random>

#include "blade.hpp"
#include "catch.hpp"

using namespace fairblade;
using section::Face;
using section::MeasuredSection;
using target::TargetSection;

namespace {

TargetSection plain(const std::string& name, double down, double chord, const form::SectionCurve& curve) {
  TargetSection out;
  out.station = name;
  out.down = down;
  out.chord = chord;
  out.ahead = 0.2 * chord;
  out.curve = curve;
  out.leading_edge_radius = chord * curve.radius();
  out.trailing_edge_thickness = chord * curve.edge();
  return out;
}

// A wedge: half-breadth `front` at the leading edge, `aft` at the trailing edge, mm.
class Wedge : public target::FaceShape {
 public:
  Wedge(double leading, double chord, double front, double aft) : leading_(leading), chord_(chord), front_(front), aft_(aft) {}
  double at(double x) const override { return front_ + (aft_ - front_) * (x - leading_) / chord_; }
  double slope(double) const override { return (aft_ - front_) / chord_; }

 private:
  double leading_, chord_, front_, aft_;
};

}  // namespace

TEST_CASE("measured sections loft by fractions of the chord: y/c and c straight") {
  const auto job = blade::job_of({blade::exact("A", 100, 420, 0.14), blade::exact("B", 900, 300, 0.09)});
  const std::vector<MeasuredSection> measured{blade::measured(job, 0), blade::measured(job, 1)};
  const auto at = target::measured_at(job, measured, 340, "at 340");  // three tenths of the way
  REQUIRE(at);
  CHECK(at->station == "at 340");
  CHECK(at->interpolated);
  CHECK(at->points.empty());
  CHECK(at->chord == Approx(384).epsilon(1e-14));
  CHECK(*at->ahead == Approx(0.17 * 384).epsilon(1e-12));
  // Forms of 14 and 9 % on the same fractions: 12.5 %; area 8221/12000 t c².
  for (double x = 0; x <= 1; x += 0.01) CHECK(at->port.at(384 * x) == Approx(384 * blade::naca(0.125, x)).margin(1e-9));
  CHECK(at->figures.area == Approx(8221.0 / 12000 * 0.125 * 384 * 384).epsilon(1e-4));  // seen 5e-6
  CHECK(at->figures.leading_edge_radius == Approx(1.10187 * 0.125 * 0.125 * 384).epsilon(1e-4));
}

TEST_CASE("lofted sides of noisy stations lie on the loft of the two curves") {
  std::mt19937 random(17);
  double worst = 0;
  for (int trial = 0; trial < 30; ++trial) {
    auto a = blade::exact("A", 0, 420, 0.14), b = blade::exact("B", 700, 350, 0.1, {0, 0.02, 0.06, 0.17, 0.33, 0.5, 0.81, 1});
    blade::add_noise(a, 1.5, random);
    blade::add_noise(b, 1.5, random);
    auto job = blade::job_of({a, b});
    job.reading_error = 1.5;
    const std::vector<MeasuredSection> measured{blade::measured(job, 0), blade::measured(job, 1)};
    const double w = 0.05 + 0.03 * trial;
    const auto at = target::measured_at(job, measured, 700 * w, "x");
    REQUIRE(at);
    for (const Face face : {Face::port, Face::starboard}) {
      for (double f = 0; f <= 1; f += 0.00137) {
        const double ratio = (1 - w) * measured[0].side(face).at(420 * f) / 420 + w * measured[1].side(face).at(350 * f) / 350;
        worst = std::max(worst, std::abs(at->side(face).at(at->chord * f) - at->chord * ratio));
      }
    }
  }
  CHECK(worst < 0.015);  // mm, seen 0.008
}

TEST_CASE("at a station's own height it is that station") {
  auto a = blade::exact("A", 0, 420, 0.14);
  std::mt19937 random(2);
  blade::add_noise(a, 1, random);
  const auto job = blade::job_of({a, blade::exact("B", 500, 350, 0.1), blade::exact("C", 900, 350, 0.1)});
  const std::vector<MeasuredSection> measured{blade::measured(job, 0), blade::measured(job, 1), blade::measured(job, 2)};
  for (std::size_t k = 0; k < 3; ++k) {
    const auto at = target::measured_at(job, measured, measured[k].down, "x");
    REQUIRE(at);
    for (double f = 0; f <= 1; f += 0.01) CHECK(at->port.at(f * at->chord) == measured[k].port.at(f * at->chord));
    CHECK(at->figures.area == Approx(measured[k].figures.area).epsilon(1e-5));
  }
}

TEST_CASE("heights off the stations are refused") {
  const auto job = blade::job_of({blade::exact("A", 100, 420, 0.14), blade::exact("B", 900, 300, 0.09)});
  const std::vector<MeasuredSection> measured{blade::measured(job, 0), blade::measured(job, 1)};
  const std::vector<TargetSection> targets{plain("A", 100, 420, form::SectionCurve{}),
                                           plain("B", 900, 300, form::SectionCurve{})};
  for (const double down : {99.0, 901.0, std::nan("")}) {
    const auto at = target::measured_at(job, measured, down, "x");
    REQUIRE_FALSE(at);
    CHECK(at.faults()[0].what.find("100.0 mm to 900.0 mm") != std::string::npos);
    CHECK_FALSE(target::target_at(job, targets, down, "x"));
  }
  CHECK_FALSE(target::target_at(job, {}, 0, "x"));
  CHECK(target::target_at(job, targets, 900, "x"));
}

TEST_CASE("targets of one family loft into that family, with their own r and e") {
  const auto job = blade::job_of({});
  for (const double m : {0.0, 0.4}) {
    const form::SectionCurve above(form::Form{0.14, 5, m}, 0.03, 0.012), below(form::Form{0.09, 5, m}, 0.010, 0.020);
    const std::vector<TargetSection> targets{plain("A", 0, 420, above), plain("B", 800, 300, below)};
    const double w = 0.35, chord = 420 - 0.35 * 120;
    const auto at = target::target_at(job, targets, 800 * w, "x");
    REQUIRE(at);
    CHECK(at->port_shape == nullptr);
    for (double f = 0; f <= 1; f += 0.01) {
      const double x = f * at->chord;
      CHECK(at->half_breadth(Face::port, x) ==
            Approx(chord * ((1 - w) * above.at(f) + w * below.at(f))).margin(1e-10));  // seen 2e-14
    }
    CHECK(at->leading_edge_radius == Approx(chord * std::pow((1 - w) * std::sqrt(0.03) + w * std::sqrt(0.01), 2)).epsilon(1e-12));
    CHECK(at->curve.radius() * chord == Approx(at->leading_edge_radius).epsilon(1e-12));
    CHECK(at->trailing_edge_thickness == Approx(chord * (0.65 * 0.012 + 0.35 * 0.020)).epsilon(1e-12));
  }
}

TEST_CASE("targets of different families loft exactly, and outlive their parents") {
  const auto job = blade::job_of({});
  std::optional<TargetSection> kept;
  const form::SectionCurve above(form::Form{0.14, 6, 0.3}), below(form::Form{0.09, 4, 0.45});
  const double w = 0.6, chord = 420 - 72;
  {
    std::vector<TargetSection> targets{plain("A", 0, 420, above), plain("B", 1000, 300, below)};
    targets[0].leading_edge_x = -10;
    targets[0].curve = above;
    const auto at = target::target_at(job, targets, 600, "x");
    REQUIRE(at);
    kept = *at;
  }
  CHECK(kept->leading_edge_x == Approx(-4));
  CHECK(kept->chord == Approx(chord));
  double worst = 0;
  for (double f = 0.001; f < 1; f += 0.001) {
    const double x = kept->leading_edge_x + f * kept->chord;
    worst = std::max(worst, std::abs(kept->half_breadth(Face::port, x) - chord * ((1 - w) * above.at(f) + w * below.at(f))));
    const double step = 1e-5;
    if (f < 0.01 || f > 0.99) continue;
    const double slope = (kept->half_breadth(Face::port, x + step) - kept->half_breadth(Face::port, x - step)) / (2 * step);
    CHECK(kept->slope(Face::port, x) == Approx(slope).margin(1e-6));
  }
  CHECK(worst < 1e-9);  // seen 1e-12
  CHECK(kept->half_breadth(Face::port, kept->trailing_edge_x()) > 0.5 * kept->trailing_edge_thickness * 0.999);
  CHECK(kept->thickness_ratio > 0.10);
  CHECK(kept->thickness_ratio < 0.4 * 0.14 + 0.6 * 0.09 + 1e-3);
}

TEST_CASE("behind a skeg the rudder's own chord is lofted, skeg and all") {
  const auto job = blade::job_of({});
  const form::SectionCurve above(form::Form{0.14, 6, 0}), below(form::Form{0.09, 6, 0});
  // The skeg a quarter of the rudder at both ends (one family), or not (shapes): the rule is the same.
  for (const double skeg : {75.0, 30.0}) {
    std::vector<TargetSection> targets{plain("A", 0, 400, above), plain("B", 1000, 300, below)};
    targets[0].skeg = 100;
    targets[1].skeg = skeg;
    const auto at = target::target_at(job, targets, 400, "x");
    REQUIRE(at);
    CHECK((at->port_shape == nullptr) == (skeg == 75.0));
    CHECK(at->skeg == Approx(0.6 * 100 + 0.4 * skeg));
    CHECK(at->leading_edge_radius == 0);
    for (double f = 0; f <= 1; f += 0.01) {
      const double a = 500 * blade::naca(0.14, (100 + 400 * f) / 500) / 400;
      const double b = (300 + skeg) * blade::naca(0.09, (skeg + 300 * f) / (300 + skeg)) / 300;
      CHECK(at->half_breadth(Face::port, 360 * f) == Approx(360 * (0.6 * a + 0.4 * b)).margin(1e-9));
    }
  }
}

TEST_CASE("a lofted wedge is a frustum") {
  // Faces plane in plan: half-breadth front/aft mm. Closed form: area = c²·(n_front + n_aft) for both sides, n = y/c.
  const auto job = blade::job_of({});
  TargetSection a = plain("A", 0, 400, form::SectionCurve{}), b = plain("B", 600, 200, form::SectionCurve{});
  a.port_shape = a.starboard_shape = std::make_shared<Wedge>(0, 400, 20, 4);
  b.port_shape = b.starboard_shape = std::make_shared<Wedge>(0, 200, 10, 2);
  const std::vector<TargetSection> targets{a, b};
  for (const double w : {0.25, 0.5, 0.9}) {
    const auto at = target::target_at(job, targets, 600 * w, "x");
    REQUIRE(at);
    const double chord = 400 - 200 * w;  // a frustum of constant y/c: everything scales with c
    CHECK(at->half_breadth(Face::starboard, 0) == Approx(chord * 0.05).epsilon(1e-13));
    CHECK(at->half_breadth(Face::port, at->trailing_edge_x()) == Approx(chord * 0.01).epsilon(1e-13));
    CHECK(at->area == Approx(chord * chord * 0.06).epsilon(1e-9));
    const double side = std::hypot(chord, chord * 0.04);
    CHECK(at->girth == Approx(2 * side + chord * 0.1 + chord * 0.02).epsilon(1e-9));
    CHECK(at->max_thickness_at == 0);
    CHECK(at->thickness_ratio == Approx(0.1).epsilon(1e-13));
  }
  CHECK(std::abs(target::screed_miss(a, b).mm) < 1e-13);  // a cone is ruled
}

TEST_CASE("a straight screed misses the loft by a quarter of taper times thinning") {
  const TargetSection a = plain("A", 0, 420, form::SectionCurve(form::Form{0.14, 6, 0}));
  const TargetSection b = plain("B", 800, 300, form::SectionCurve(form::Form{0.09, 6, 0}));
  const auto miss = target::screed_miss(a, b);
  // Greatest half-breadth of the form is 0.500145 t (so 1.00029 t over both) at 0.29983: 120 · 0.05 · 0.500145 / 4.
  CHECK(miss.mm == Approx(120 * 0.05 * 0.500145 / 4).epsilon(1e-5));
  CHECK(miss.chord_fraction == Approx(0.29983).margin(1e-4));
  CHECK(miss.down == 400);
  // Brute force: the chord of the surface against the surface, over heights and fractions.
  double worst = 0;
  for (double w = 0; w <= 1; w += 0.01) {
    for (double f = 0; f <= 1; f += 0.002) {
      const double screed = (1 - w) * 420 * blade::naca(0.14, f) + w * 300 * blade::naca(0.09, f);
      const double loft = (420 - 120 * w) * ((1 - w) * blade::naca(0.14, f) + w * blade::naca(0.09, f));
      worst = std::max(worst, screed - loft);
    }
  }
  CHECK(miss.mm == Approx(worst).epsilon(1e-4));
  const TargetSection thicker = plain("B", 800, 300, form::SectionCurve(form::Form{0.18, 6, 0}));
  CHECK(target::screed_miss(a, thicker).mm < 0);  // it would cut into the loft
}
