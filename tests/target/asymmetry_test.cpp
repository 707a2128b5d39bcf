#include "target/asymmetry.hpp"

#include "blade.hpp"
#include "catch.hpp"
#include "section/outline.hpp"

using namespace fairblade;

namespace {

// Port of one thickness ratio, starboard of another.
job::Station lopsided(const std::string& name, double down, double chord, double port, double starboard) {
  return blade::station(
      name, down, chord, [=](double x) { return blade::naca(port, x); }, [=](double x) { return blade::naca(starboard, x); });
}

target::Asymmetry asymmetry(const job::Job& job, std::size_t k = 0) {
  const auto measured = blade::measured(job, k);
  return target::asymmetry_of(measured, form::fit_form(measured, job.reading_error));
}

}  // namespace

TEST_CASE("two forms of different thickness: closed form") {
  const auto job = blade::job_of({lopsided("A", 0, 420, 0.14, 0.11)});
  const auto found = asymmetry(job);
  CHECK(found.known);
  // Difference is the form of 3 %: greatest half-breadth 0.500145 t c, area of one side 8221/24000 t c².
  CHECK(found.greatest == Approx(0.500145 * 0.03 * 420).epsilon(1e-5));
  CHECK(found.greatest_x == Approx(0.29983 * 420).margin(1));
  CHECK(found.add_area == Approx(8221.0 / 24000 * 0.03 * 420 * 420).epsilon(1e-4));  // seen 4e-6
  CHECK(found.halfway_area == Approx(found.add_area / 2));
  CHECK(found.halfway_cut == Approx(found.greatest / 2));
  const auto measured = blade::measured(job);
  CHECK(found.rms == Approx(measured.figures.lopsided).epsilon(1e-4));
  CHECK(target::words_of(job, found).find("port is 6.3 mm fuller than starboard 12") == 0);

  const auto mirrored = asymmetry(blade::job_of({lopsided("A", 0, 420, 0.11, 0.14)}));
  CHECK(mirrored.greatest == Approx(-found.greatest).epsilon(1e-12));
  CHECK(mirrored.add_area == Approx(found.add_area).epsilon(1e-12));
  CHECK(target::words_of(job, mirrored).find("starboard is 6.3 mm fuller than port") == 0);
}

TEST_CASE("the area to add is that of the envelope without the blade") {
  // Sides that cross: a form carried over by a camber that changes sign. Second route: polygons.
  const auto camber = [](double x) { return 0.01 * std::sin(9 * x) * x * (1 - x); };
  const auto job = blade::job_of({blade::station(
      "A", 0, 500, [=](double x) { return blade::naca(0.12, x) + camber(x); },
      [=](double x) { return blade::naca(0.12, x) - camber(x); })});
  const auto measured = blade::measured(job);
  const auto found = asymmetry(job);
  std::vector<Point> envelope;
  const auto places = section::sample_places(measured, 2000);
  for (const double x : places) envelope.emplace_back(x, std::max(measured.port.at(x), measured.starboard.at(x)));
  for (auto x = places.rbegin(); x != places.rend(); ++x) {
    envelope.emplace_back(*x, -std::max(measured.port.at(*x), measured.starboard.at(*x)));
  }
  const double added = area(polygon_of(envelope)) - area(polygon_of(section::outline(measured, places)));
  CHECK(found.add_area == Approx(added).epsilon(1e-4));  // seen 2e-6
}

TEST_CASE("a section askew is told from one of unlike sides") {
  const auto askew = [](double x) { return 0.01 * (x - 0.2); };
  const auto job = blade::job_of({blade::station(
      "A", 0, 420, [=](double x) { return blade::naca(0.12, x) + askew(x); },
      [=](double x) { return blade::naca(0.12, x) - askew(x); })});
  const auto found = asymmetry(job);
  CHECK(found.greatest == Approx(2 * 0.008 * 420).epsilon(1e-6));
  CHECK(found.greatest_x == Approx(420));
  CHECK(found.own_rms < 0.05);  // seen 0.01: sheared, not turned
  CHECK(target::words_of(job, found).find("askew") != std::string::npos);
}

TEST_CASE("litres to make both sides one, on the loft") {
  // Prism: area · length.
  const auto prism = blade::job_of({lopsided("A", 0, 420, 0.14, 0.11), lopsided("B", 1000, 420, 0.14, 0.11)});
  const auto both = [](const job::Job& job) {
    return std::vector<section::MeasuredSection>{blade::measured(job, 0), blade::measured(job, 1)};
  };
  const double area = 8221.0 / 24000 * 0.03 * 420 * 420;
  CHECK(target::make_one(both(prism)).add_litres == Approx(area * 1000 * 1e-6).epsilon(1e-4));
  // The fuller side changes over half-way: |0.03 (1 - 2w)|, on average half of 0.03.
  const auto crossed = blade::job_of({lopsided("A", 0, 420, 0.14, 0.11), lopsided("B", 1000, 420, 0.11, 0.14)});
  CHECK(target::make_one(both(crossed)).add_litres == Approx(area / 2 * 1000 * 1e-6).epsilon(1e-4));
  // Tapering chord and difference: integral of (420 - 120w)²(0.03 - 0.01w) by hand.
  const auto taper = blade::job_of({lopsided("A", 0, 420, 0.14, 0.11), lopsided("B", 800, 300, 0.12, 0.10)});
  const double integral = 420 * 420 * (0.03 - 0.005) - 2 * 420 * 120 * (0.03 / 2 - 0.01 / 3) + 120 * 120 * (0.03 / 3 - 0.01 / 4);
  const auto made = target::make_one(both(taper));
  CHECK(made.add_litres == Approx(8221.0 / 24000 * integral * 800 * 1e-6).epsilon(1e-4));
  CHECK(made.complete);
}

TEST_CASE("calipers and one side alone cannot tell") {
  const auto job = blade::job_of({lopsided("A", 0, 420, 0.14, 0.11)});
  auto measured = blade::measured(job);
  measured.thickness_only = true;
  const auto found = target::asymmetry_of(measured, form::FittedForm{});
  CHECK_FALSE(found.known);
  CHECK(found.add_area == 0);
  CHECK(target::words_of(job, found).empty());
  CHECK_FALSE(target::make_one({measured, measured}).complete);
  const auto same = asymmetry(blade::job_of({blade::exact("A", 0, 420, 0.12)}));
  CHECK(same.add_area < 1e-9);
  CHECK(target::words_of(job, same).empty());
}
