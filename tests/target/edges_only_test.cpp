#include "target/edges_only.hpp"

#include "base/numerics.hpp"
#include "base/text.hpp"
#include "blade.hpp"
#include "catch.hpp"

using namespace fairblade;
using section::Face;

namespace {

struct Case {
  job::Job job;
  section::MeasuredSection measured;
  form::FittedForm fitted;
  job::Station& station() { return job.stations[0]; }
  Outcome<target::TargetSection> plan() { return target::plan_edges_only(job, station(), measured, fitted); }
};

Case case_of(job::Station station, double reading_error = 0.5) {
  station.target.approach = job::Approach::edges_only;
  station.place = {"test.json", 7};
  Case out{blade::job_of({std::move(station)}), {}, {}};
  out.job.reading_error = reading_error;
  out.measured = blade::measured(out.job);
  out.fitted = form::fit_form(out.measured, reading_error);
  return out;
}

void ask_radius(Case& c, double mm) { c.station().target.leading_edge_radius = {job::LeadingEdgeRadius::Kind::mm, mm}; }
void ask_edge(Case& c, double mm) { c.station().target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, mm}; }

// A flat side of half-breadth b all the way, a square edge at both ends.
job::Station plate(double chord, double port, double starboard) {
  return blade::station(
      "A", 0, chord, [=](double) { return port / chord; }, [=](double) { return starboard / chord; });
}

std::string refusal(const Outcome<target::TargetSection>& outcome) {
  REQUIRE_FALSE(outcome);
  std::string out;
  for (const auto& fault : outcome.faults()) out += one_line(fault) + "\n";
  return out;
}

// Of the form 12 % thick: Report 460's equation, differentiated by hand.
double form_slope(double x) { return 0.6 * (0.14845 / std::sqrt(x) - 0.1260 - 0.7032 * x + 0.8529 * x * x - 0.4060 * x * x * x); }

// Never hollow: on each rebuilt part no ordinate lies below the line between its neighbours.
double deepest_hollow(const target::TargetSection& t, Face face, double from, double to) {
  constexpr int steps = 400;
  const double h = (to - from) * (1 - 1e-9) / steps;  // beyond the edge there is nothing
  double worst = 0;
  for (int k = 1; k < steps; ++k) {
    const double x = from + k * h;
    worst = std::max(worst, (t.half_breadth(face, x - h) + t.half_breadth(face, x + h)) / 2 - t.half_breadth(face, x));
  }
  return worst;
}

bool crosses(const target::TargetSection& t) {
  for (int k = 0; k <= 1000; ++k) {
    const double x = t.leading_edge_x + t.chord * k / 1000;
    if (t.half_breadth(Face::port, x) + t.half_breadth(Face::starboard, x) < -1e-9) return true;
  }
  return false;
}

// Carries out the first remedy that a refusal names, in the words of the refusal.
bool first_remedy_works(Case c, const std::string& remedy) {
  const auto number_after = [&](const std::string& words) { return std::stod(remedy.substr(words.size())); };
  const auto begins = [&](const std::string& words) { return remedy.rfind(words, 0) == 0; };
  const std::string radius = "ask for a leading-edge radius of ", edge = "ask for a trailing edge of ",
                    from = "keep the body from x ", to = "end the kept part at x ";
  if (begins(radius)) ask_radius(c, number_after(radius));
  else if (begins(edge)) ask_edge(c, number_after(edge));
  else if (begins(from)) c.station().target.keep_from = {true, number_after(from)};
  else if (begins(to)) c.station().target.keep_to = {true, number_after(to)};
  else return begins("nothing about this edge");
  return bool(c.plan());
}

}  // namespace

TEST_CASE("a form with its own radius and edge stays as it is") {
  for (const double t : {0.08, 0.12, 0.18}) {
    auto c = case_of(blade::exact("A", 0, 420, t));
    const auto plan = c.plan();
    REQUIRE(plan);
    double nose = 0, tail = 0;
    for (int k = 0; k <= 2000; ++k) {
      const double f = k / 2000.0;
      for (const Face face : {Face::port, Face::starboard}) {
        const double change = std::abs(plan->half_breadth(face, 420 * f) - 420 * blade::naca(t, f));
        (f < 0.5 ? nose : tail) = std::max(f < 0.5 ? nose : tail, change);
      }
    }
    CHECK(nose < 0.02);  // seen 0.0065 at t = 0.18: the form's x⁴
    CHECK(tail < 0.1);   // seen 0.031: a parabola for the form's last quarter
    CHECK(plan->leading_edge_radius == Approx(1.10187 * t * t * 420).epsilon(1e-4));  // Report 460
    CHECK(plan->trailing_edge_thickness == Approx(0.021 * t * 420).epsilon(1e-4));
    CHECK(plan->max_thickness_at == Approx(0.29983).margin(0.002));  // sampled
    CHECK(plan->thickness_ratio == Approx(1.00029 * t).epsilon(1e-4));
    CHECK(plan->area == Approx(8221.0 / 12000 * t * 420 * 420).epsilon(1e-3));  // exact area of the form
    CHECK(plan->warnings.empty());
  }
}

TEST_CASE("joints run on in slope and curvature") {
  // Noise-free, so that the kept body is the form, whose derivatives follow from the published equation.
  auto c = case_of(blade::exact("A", 0, 420, 0.12));
  ask_radius(c, 12);
  ask_edge(c, 4);
  c.station().target.extend_leading_edge.mm = 6;
  const auto plan = c.plan();
  REQUIRE(plan);
  const double x = 0.2;
  const double slope = form_slope(x);
  const double second = 0.6 * (-0.2969 / 4 / (x * std::sqrt(x)) - 0.7032 + 1.7058 * x - 1.218 * x * x) / 420;
  for (const Face face : {Face::port, Face::starboard}) {
    const double at = 84, h = 1e-3;
    CHECK(plan->slope(face, at - 1e-9) == Approx(slope).margin(1e-6));  // seen 0
    CHECK(plan->slope(face, at + 1e-9) == Approx(slope).margin(1e-6));
    const double ahead = (plan->slope(face, at - h) - plan->slope(face, at - 2 * h)) / h;
    const double aft = (plan->slope(face, at + 2 * h) - plan->slope(face, at + h)) / h;
    CHECK(ahead == Approx(second).epsilon(0.01));  // seen 2e-5
    CHECK(aft == Approx(second).epsilon(0.01));
    CHECK(plan->slope(face, 315 - 1e-9) == Approx(plan->slope(face, 315 + 1e-9)).margin(1e-6));
    CHECK(plan->half_breadth(face, 420) == Approx(2));
  }
  REQUIRE(plan->joints->nose);
  CHECK(std::abs((*plan->joints->nose)[0].step) < 1e-5);
  CHECK(std::abs((*plan->joints->tail)[1].step) < 1e-5);
  CHECK(plan->leading_edge_x == -6);
  CHECK(plan->chord == 426);
  CHECK(*plan->ahead == Approx(0.17 * 420 + 6));
  // The radius of the drawn nose is the limit of y²/2x: y² / 2x runs straight in √x near the edge.
  const auto apparent = [&](double xi) { return std::pow(plan->half_breadth(Face::port, -6 + xi), 2) / (2 * xi); };
  CHECK(2 * apparent(1e-6) - apparent(4e-6) == Approx(12).epsilon(1e-3));
}

TEST_CASE("nothing changes inside the kept part") {
  std::mt19937 random(5);
  auto station = blade::exact("A", 0, 420, 0.12);
  blade::add_noise(station, 0.5, random);
  auto c = case_of(station);
  ask_radius(c, 2 * 1.10187 * 0.12 * 0.12 * 420);
  const auto plan = c.plan();
  REQUIRE(plan);
  for (int k = 0; k <= 500; ++k) {
    const double x = 84 + (315 - 84) * k / 500.0;
    for (const Face face : {Face::port, Face::starboard}) {
      CHECK(plan->half_breadth(face, x) == c.measured.side(face).at(x));  // the same number, by definition
    }
  }
}

TEST_CASE("a flat side takes a radius up to 5.12 b²/L") {
  // Closed form: b(1 - (1 - s)³) + √(2rL) 0.3125(1 - s)³... is nowhere hollow up to √(2rL) = 3.2 b.
  for (const double b : {8.0, 12.0, 20.0}) {
    for (const double from : {0.15, 0.20, 0.30}) {
      auto c = case_of(plate(400, b, b));
      c.station().target.keep_from = {false, from};
      c.station().target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 2 * b};
      const double limit = 5.12 * b * b / (400 * from);
      ask_radius(c, limit * 0.999);
      CHECK(c.plan());
      ask_radius(c, limit * 1.001);
      const std::string text = refusal(c.plan());
      INFO(text);
      // Rounded down to the hundredth; the length that the same formula gives for the asked radius.
      const auto down = [](double mm) { return fixed(std::floor(mm * 100 + 1e-3) / 100, 2); };
      CHECK(text.find("radius of " + down(limit) + " mm at most") != std::string::npos);
      CHECK(text.find("which rebuilds " + down(5.12 * b * b / (limit * 1.001)) + " mm at most") != std::string::npos);
      CHECK(text.find("test.json:7:") == 0);
      // Both remedies, carried out.
      ask_radius(c, std::floor(limit * 100) / 100);
      CHECK(c.plan());
      ask_radius(c, limit * 1.001);
      c.station().target.keep_from = {true, std::floor(5.12 * b * b / (limit * 1.001) * 100) / 100};
      CHECK(c.plan());
    }
  }
}

TEST_CASE("the thinner side governs, as b²") {
  auto c = case_of(plate(400, 14, 10));
  c.station().target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 20};
  // Both readings at x = 0 would shift the nose to the middle: without them it stands on the centre plane.
  c.station().readings.erase(c.station().readings.begin());
  c.measured = blade::measured(c.job);
  c.fitted = form::FittedForm{};
  c.fitted.form.thickness_ratio = 0.06;
  const double limit = 5.12 * 10 * 10 / 80;  // 6.4
  ask_radius(c, limit * 0.999);
  CHECK(c.plan());
  ask_radius(c, limit * 1.001);
  const std::string text = refusal(c.plan());
  INFO(text);
  CHECK(text.find("starboard, the thinner side there, allows 6.40 mm at most") != std::string::npos);
}

TEST_CASE("the edge is at most where the tangents run out") {
  auto c = case_of(blade::exact("A", 0, 420, 0.12));
  // e = 2(y1 + y1' L) by the published equation at x = 0.75.
  const double x = 0.75;
  const double slope = form_slope(x);
  const double limit = 2 * 420 * (blade::naca(0.12, x) + slope * 0.25);
  ask_edge(c, limit - 0.01);
  CHECK(c.plan());
  ask_edge(c, limit + 3);
  const std::string text = refusal(c.plan());
  INFO(text);
  const auto forward = text.find("end the kept part at x ");
  const auto thinner = text.find("a trailing edge of " + fixed(std::floor(limit * 100) / 100, 2) + " mm at most");
  REQUIRE(forward != std::string::npos);
  REQUIRE(thinner != std::string::npos);
  CHECK(forward < thinner);
  c.station().target.keep_to = {true, std::stod(text.substr(forward + 23))};
  const auto plan = c.plan();
  REQUIRE(plan);
  CHECK(plan->trailing_edge_thickness == Approx(limit + 3));
  c.station().target.keep_to.value += 1;
  CHECK_FALSE(c.plan());
  // Extending makes it harder, and is undone last.
  c.station().target.keep_to = {false, 0.75};
  c.station().target.extend_trailing_edge.mm = 40;
  ask_edge(c, limit - 0.5);
  const std::string extended = refusal(c.plan());
  INFO(extended);
  const auto shorten = extended.find("extend the trailing edge by ");
  REQUIRE(shorten != std::string::npos);
  // Each mm of extension lowers the run-out by twice the slope.
  CHECK(std::stod(extended.substr(shorten + 28)) == Approx(0.5 / (-2 * slope)).margin(0.02));
}

TEST_CASE("noise of half a millimetre scatters the rebuilt nose by less than 0.4 mm") {
  std::mt19937 random(23);
  std::vector<double> scatter;
  int refused = 0;
  for (int trial = 0; trial < 200; ++trial) {
    auto station = blade::exact("A", 0, 420, 0.12);
    blade::add_noise(station, 0.5, random);
    auto c = case_of(station);
    const auto plan = c.plan();
    if (!plan) {
      ++refused;
      continue;
    }
    double worst = 0;
    for (int k = 0; k <= 200; ++k) {
      const double x = 84.0 * k / 200 * 0.9999;
      for (const Face face : {Face::port, Face::starboard}) {
        worst = std::max(worst, std::abs(plan->half_breadth(face, x) - 420 * blade::naca(0.12, x / 420)));
      }
    }
    scatter.push_back(worst);
  }
  CHECK(refused == 0);
  INFO("median of the greatest miss " << median(scatter));
  CHECK(median(scatter) < 0.4);  // seen 0.26
}

TEST_CASE("a leading edge that is left stays as measured") {
  std::mt19937 random(4);
  auto station = blade::exact("A", 0, 420, 0.12);
  blade::add_noise(station, 0.5, random);
  station.target.leading_edge = job::LeadingEdgeWork::leave;
  auto c = case_of(station);
  ask_edge(c, 3);
  const auto plan = c.plan();
  REQUIRE(plan);
  CHECK_FALSE(plan->joints->nose);
  for (int k = 0; k <= 100; ++k) CHECK(plan->half_breadth(Face::port, 3.15 * k) == c.measured.port.at(3.15 * k));
  CHECK(plan->leading_edge_radius == c.measured.figures.leading_edge_radius);
  c.station().target.extend_leading_edge.mm = 5;
  CHECK(refusal(c.plan()).find("cannot be built forward by 5.0 mm") != std::string::npos);
}

TEST_CASE("a blade that stands off the centre plane keeps its own mean line") {
  // The whole section moved 6 mm to port: so does the target.
  const double t = 0.12, shift = 6.0 / 420;
  auto c = case_of(blade::station(
      "A", 0, 420, [=](double x) { return blade::naca(t, x) + shift; }, [=](double x) { return blade::naca(t, x) - shift; }));
  const auto plan = c.plan();
  REQUIRE(plan);
  CHECK(plan->half_breadth(Face::port, 0) == Approx(6).margin(1e-3));
  for (int k = 1; k <= 100; ++k) {
    const double f = k / 100.0;
    CHECK(std::abs(plan->half_breadth(Face::port, 420 * f) - 420 * blade::naca(t, f) - 6) < 0.05);
    CHECK(std::abs(plan->half_breadth(Face::starboard, 420 * f) - 420 * blade::naca(t, f) + 6) < 0.05);
  }
}

TEST_CASE("a step between body and joint is known") {
  auto station = blade::exact("A", 0, 420, 0.12);
  for (auto& reading : station.readings) {
    if (reading.x == 84) *reading.port += 3;  // one reading, proud of the body that the others make
  }
  auto c = case_of(station);
  const auto plan = c.plan();
  REQUIRE(plan);
  CHECK((*plan->joints->nose)[0].step < -0.5);
  CHECK(std::abs((*plan->joints->nose)[1].step) < 0.1);
}

TEST_CASE("a joint just aft of a reading uses that reading") {
  // A curved body of another family: half-breadth 30 (1 - (2x - 1)⁴) read without noise, so the fair line is known.
  const auto shape = [](double x) { return 30.0 / 400 * (1 - std::pow(2 * x - 1, 4)); };
  const std::vector<double> places{0, 0.04, 0.1, 0.192, 0.296, 0.414, 0.544, 0.686, 0.838, 1};
  auto c = case_of(blade::station("A", 0, 400, shape, shape, places));
  const auto plan = c.plan();
  REQUIRE(plan);
  for (const auto& joint : *plan->joints->nose) {
    INFO(joint.half_breadth);
    CHECK(std::abs(joint.half_breadth - 400 * shape(0.2)) < 0.5);  // seen 0.13
  }
}

TEST_CASE("any blade ends in a fair target or a refusal with its cause") {
  std::mt19937 random(300);
  std::uniform_real_distribution<double> unit(0, 1);
  int planned = 0, singles = 0, remedied = 0;
  for (int trial = 0; trial < 300; ++trial) {
    const double t = 0.04 + 0.21 * unit(random);
    const double chord = 150 + 900 * unit(random);
    const double lopsided = 10 * unit(random) / chord;
    const int count = 6 + static_cast<int>(54 * unit(random));
    std::vector<double> places;
    for (int k = 0; k < count; ++k) places.push_back(std::pow(static_cast<double>(k) / (count - 1), 1.5));
    const auto port = [=](double x) { return blade::naca(t, x) + lopsided * 4 * x * (1 - x); };
    const auto starboard = [=](double x) { return blade::naca(t, x) - lopsided * x; };
    auto station = blade::station("A", 0, chord, port, starboard, places);
    blade::add_noise(station, 2 * unit(random), random);
    station.target.extend_leading_edge.mm = trial % 3 == 0 ? 8 * unit(random) : 0;
    station.target.extend_trailing_edge.mm = trial % 4 == 0 ? 20 * unit(random) : 0;
    station.target.approach = job::Approach::edges_only;
    const auto job = blade::job_of({station});
    const auto measured = section::measure_section(job, job.stations[0]);
    if (!measured) continue;  // noise beyond a slip at a sharp edge is refused at the door
    Case c{job, *measured, form::fit_form(*measured, 0.5)};
    if (trial % 2 == 0) ask_radius(c, 0.03 * chord * unit(random));
    if (trial % 5 < 2) ask_edge(c, 8 * unit(random));
    const auto plan = c.plan();
    INFO("trial " << trial);
    if (!plan) {
      for (const auto& fault : plan.faults()) {
        CHECK(fault.what.find("station A: ") == 0);
        CHECK_FALSE(fault.remedy.empty());
        CHECK(one_line(fault).find("nan") == std::string::npos);
      }
      if (plan.faults().size() == 1) remedied += first_remedy_works(c, plan.faults()[0].remedy) ? 1 : 0;
      singles += plan.faults().size() == 1 ? 1 : 0;
      continue;
    }
    ++planned;
    CHECK_FALSE(crosses(*plan));
    CHECK(std::isfinite(plan->area));
    CHECK(plan->area > 0);
    for (const Face face : {Face::port, Face::starboard}) {
      CHECK(deepest_hollow(*plan, face, plan->leading_edge_x, 0.1999 * chord) < 1e-9);
      CHECK(deepest_hollow(*plan, face, 0.7501 * chord, plan->trailing_edge_x()) < 1e-9);
    }
  }
  CHECK(planned > 90);
  CHECK(singles > 40);
  CHECK(remedied == singles);
}
