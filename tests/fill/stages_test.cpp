// The section before its coats, against the normals of the curve itself and the closed form of the edge.
#include "fill/stages.hpp"

#include <array>
#include <cmath>
#include <tuple>

#include "base/polyline.hpp"
#include "blade.hpp"
#include "catch.hpp"
#include "fill/coats.hpp"
#include "line.hpp"
#include "lines.hpp"

using namespace fairblade;

namespace {

target::TargetSection section_of(double chord, double ratio, std::optional<double> radius, std::optional<double> edge) {
  target::TargetSection out;
  out.station = "A";
  out.chord = chord;
  out.leading_edge_x = -3;
  form::Form form;
  form.thickness_ratio = ratio;
  const auto in_chords = [&](std::optional<double> mm) { return mm ? std::optional<double>(*mm / chord) : std::nullopt; };
  out.curve = form::SectionCurve(form, in_chords(radius), in_chords(edge));
  out.thickness_ratio = ratio;
  return out;
}

/// The curve moved along its own normals, sampled finely: the other route.
std::vector<Point> moved_along_normals(const target::TargetSection& target, double by) {
  std::vector<Point> out;
  for (int k = 1; k <= 20000; ++k) {
    const double u = k / 20000.0, x = target.leading_edge_x + target.chord * u * u * (1 - 1e-12);
    const double y = target.half_breadth(section::Face::port, x), slope = target.slope(section::Face::port, x);
    const double size = std::hypot(1, slope);
    out.emplace_back(x - by * slope / size, y + by / size);
  }
  return out;
}

job::Coat coat(const char* stage, double thickness, int layers, job::CoatedPart on = job::CoatedPart::all) {
  job::Coat out;
  out.name = stage;
  out.stage = stage;
  out.thickness = thickness;
  out.layers = layers;
  out.on = on;
  return out;
}

}  // namespace

TEST_CASE("stages are the coats over the filler still to come") {
  job::Job job;
  REQUIRE(fill::stages_of(job).size() == 1);
  CHECK(fill::stages_of(job)[0].kind == fill::StageKind::final);
  CHECK(fill::stages_of(job)[0].to_come == 0);

  job.coats = {coat("glass", 0.37, 2), coat("paint", 0.06, 4), coat("paint", 0.04, 2, job::CoatedPart::bare)};
  const auto all = fill::stages_of(job);
  REQUIRE(all.size() == 3);
  CHECK(all[0].kind == fill::StageKind::bare);
  CHECK(all[0].to_come == Approx(0.98));  // by hand: 2 x 0.37 + 4 x 0.06; what goes on bare places only is none of it
  CHECK(all[1].kind == fill::StageKind::glassed);
  CHECK(all[1].to_come == Approx(0.24));
  CHECK(all[2].to_come == 0);

  job.coats = {coat("paint", 0.06, 4)};
  REQUIRE(fill::stages_of(job).size() == 2);
  job.coats = {coat("glass", 0.37, 2)};
  REQUIRE(fill::stages_of(job).size() == 2);
  CHECK(fill::stages_of(job)[1].surface == "glassed");
}

TEST_CASE("pages are of the stage that the filler is shaped at, or of what was asked for") {
  using fill::StageKind;
  job::Job job;
  CHECK(fill::on_pages(job, StageKind::final, false));  // without coats it is the only one
  CHECK_FALSE(fill::on_pages(job, StageKind::final, true));
  CHECK(fill::template_kinds(job, false) == std::vector<std::string>{"clearance"});

  job.coats = {coat("glass", 0.37, 2), coat("paint", 0.06, 4)};
  CHECK(fill::on_pages(job, StageKind::bare, false));
  CHECK_FALSE(fill::on_pages(job, StageKind::glassed, false));
  CHECK_FALSE(fill::on_pages(job, StageKind::final, false));
  CHECK(fill::template_kinds(job, false) == std::vector<std::string>{"glassed", "final", "clearance"});
  CHECK(fill::template_kinds(job, true) == std::vector<std::string>{"bare"});

  job.print.pages_of = {job::TemplatesOf::final, job::TemplatesOf::clearance};
  CHECK_FALSE(fill::on_pages(job, StageKind::bare, false));
  CHECK(fill::on_pages(job, StageKind::final, false));
  CHECK(fill::on_pages(job, StageKind::bare, true));
  CHECK(fill::template_kinds(job, false) == std::vector<std::string>{"bare", "glassed"});
  CHECK(fill::faults_of(job).empty());

  job.coats.clear();
  job.print.clearance = 0;
  job.print.pages_of.push_back(job::TemplatesOf::bare);
  REQUIRE(fill::faults_of(job).size() == 2);  // nothing stands off, and no coat makes a bare stage
  CHECK(fill::template_kinds(job, false).empty());
}

TEST_CASE("lines of every stage stand off the target along its normals by what is to come") {
  struct Row {
    double chord, ratio;
    std::optional<double> radius, edge;
  };
  double worst = 0;
  for (const Row& row : {Row{420, 0.12, {}, 4.0}, Row{1200, 0.18, {}, 8.0}, Row{90, 0.15, 3.0, 3.0}, Row{420, 0.09, 6.0, 5.0}}) {
    const auto target = section_of(row.chord, row.ratio, row.radius, row.edge);
    for (const double by : {-0.98, -0.24, 3.0}) {
      const fill::Stage stage{fill::StageKind::bare, by < 0 ? -by : 0, ""};
      const auto line = fill::stage_section(target, stage, by > 0 ? by : 0);
      REQUIRE(line);
      INFO("chord " << row.chord << " by " << by);
      double miss = 0;
      for (const Point& p : moved_along_normals(target, by)) {
        // Ahead of the nose and aft of the edge face the other face and the corner cut the offset off.
        if (p.y() < 0 || p.x() > line->trailing_edge_x) continue;
        miss = std::max(miss, lines::to_line(p, line->port));
        miss = std::max(miss, lines::to_line(p, line->starboard));
      }
      CHECK(miss < 0.01);  // seen 0.0034
      worst = std::max(worst, miss);
      // The tip lies on the chord line, by the nose's own radius ahead or aft of where it was.
      CHECK(line->leading_edge_x == Approx(target.leading_edge_x - by).margin(0.01));
      CHECK(line->trailing_edge_x == Approx(target.trailing_edge_x() + by).margin(1e-6));
      CHECK(line->port.front().y() == Approx(0).margin(1e-9));
    }
  }
  INFO("worst " << worst);
  CHECK(worst < 0.01);
}

TEST_CASE("a square edge under coats is e - 2d/cos(beta) + 2d tan(beta) wide") {
  // The closed form w = e - 2d/cos(beta) + 2d tan(beta), on a straight taper, where it is exact: a wedge from 20 mm to 4 mm over
  // the aft 100 mm.
  class Wedge final : public target::FaceShape {
   public:
    double at(double x) const override { return x < 100 ? std::sqrt(std::max(x, 0.0)) : 10 - 0.08 * (x - 100); }
    double slope(double x) const override { return x < 100 ? 0.5 / std::sqrt(std::max(x, 1e-9)) : -0.08; }
  };
  auto target = section_of(200, 0.1, {}, 4.0);
  target.leading_edge_x = 0;
  target.port_shape = target.starboard_shape = std::make_shared<Wedge>();
  const double d = 0.4, beta = std::atan(0.08), e = 4;
  const auto line = fill::stage_section(target, {fill::StageKind::bare, d, ""});
  REQUIRE(line);
  const double wanted = e - 2 * d / std::cos(beta) + 2 * d * std::tan(beta);
  CHECK(line->edge_width == Approx(wanted).margin(1e-4));  // seen below 1e-9
  CHECK(line->edge_width < e - d);                         // by far more than one coat's thickness
  CHECK(fill::narrowed_edge(e, d, beta) == Approx(wanted).margin(1e-12));
}

TEST_CASE("coats thicker than the blade leave no section") {
  const auto target = section_of(90, 0.06, {}, 1.0);
  CHECK_FALSE(fill::stage_section(target, {fill::StageKind::bare, 4, ""}));
  auto job = blade::job_of({blade::exact("A", 0, 90, 0.06)});
  CHECK(fill::warnings_of(job, {target}).empty());
  job.coats = {coat("glass", 4, 1)};
  const auto warnings = fill::warnings_of(job, {target});
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].code == "stage-not-drawn");
  CHECK(warnings[0].where == "station A");
}

TEST_CASE("behind a skeg the section keeps its upright front, set back by the coats") {
  auto target = section_of(300, 0.12, {}, 4.0);
  target.leading_edge_x = 0;
  target.skeg = 100;
  const double y = target.half_breadth(section::Face::port, 0);
  REQUIRE(y > 15);
  const auto line = fill::stage_section(target, {fill::StageKind::bare, 1, ""});
  REQUIRE(line);
  CHECK(line->leading_edge_x == Approx(1).margin(1e-6));
  CHECK(line->port.front().y() > y - 1.2);
  CHECK(line->port[1].x() > line->port[0].x() + 0.01);
}

TEST_CASE("2026-11-27: a nose off the centre plane is set back by its coats, and no line runs forward") {
  // A half circle of 4 mm for a nose, a wedge aft of it, the whole moved across: to the closed form it stands 0.6 mm further aft.
  class Moved final : public target::FaceShape {
   public:
    explicit Moved(double by) : by_(by) {}
    double at(double x) const override { return by_ + (x < 4 ? std::sqrt(std::max(0.0, x * (8 - x))) : 4 - (x - 4) * 0.005); }
    double slope(double x) const override {
      if (x >= 4) return -0.005;
      return (4 - x) / std::sqrt(std::max(1e-12, x * (8 - x)));
    }

   private:
    double by_;
  };
  for (const double off : {0.0, 1.1, 2.0, 3.0}) {
    CAPTURE(off);
    target::TargetSection target;
    target.station = "A";
    target.chord = 400;
    target.port_shape = std::make_shared<Moved>(off);
    target.starboard_shape = std::make_shared<Moved>(-off);
    target.trailing_edge_thickness = 2 * (4 - 396 * 0.005);
    const auto section = fill::stage_section(target, {fill::StageKind::bare, 0.6, ""});
    REQUIRE(section);
    CHECK(section->leading_edge_x == Approx(0.6).margin(0.01));
    for (const auto* line : {&section->port, &section->starboard}) {
      for (std::size_t k = 1; k < line->size(); ++k) REQUIRE((*line)[k].x() >= (*line)[k - 1].x() - 1e-9);
    }
  }
}

TEST_CASE("2026-11-27: a leading edge that is left, flat and worn, has a section under its coats") {
  // Two stations whose outline, moved inwards, came with crumbs of 0.08 and 0.04 mm² inside the flat of the nose: no template was
  // drawn of them, and no new reading was taken. Half-breadths as they were read.
  using Rows = std::vector<std::array<double, 3>>;
  const auto station = [](double chord, double ahead, const Rows& rows) {
    job::Station out;
    out.name = "A";
    out.chord = chord;
    out.ahead = ahead;
    for (const auto& [x, port, starboard] : rows) {
      job::Reading reading;
      reading.x = x;
      reading.port = port;
      reading.starboard = starboard;
      out.readings.push_back(reading);
    }
    out.target.leading_edge = job::LeadingEdgeWork::leave;
    out.target.spanwise = job::Spanwise::as_measured;
    return out;
  };
  const auto mm = [](double length) { return job::TrailingEdgeThickness{job::TrailingEdgeThickness::Kind::mm, length}; };
  job::Station first = station(212.5, 35,
                               {{0, 1.74688, 1.74688},
                                {1.275, 2.7132, 2.71116},
                                {3.1875, 3.67063, 3.66372},
                                {6.375, 4.78904, 4.77105},
                                {10.625, 5.86215, 5.82559},
                                {17, 7.01935, 6.94987},
                                {25.5, 8.08499, 7.96681},
                                {42.5, 9.28087, 9.0652},
                                {63.75, 9.7197, 9.41017},
                                {89.25, 9.28769, 8.93469},
                                {116.875, 8.08911, 7.77572},
                                {148.75, 6.16361, 5.96732},
                                {180.625, 3.92775, 3.85706},
                                {201.875, 2.32973, 2.3152},
                                {212.5, 1.5, 1.5}});
  first.target.approach = job::Approach::edges_only;
  first.target.keep_from = {false, 0.3};
  first.target.keep_to = {false, 0.5};
  first.target.extend_trailing_edge.mm = 15;
  first.target.trailing_edge_thickness = mm(4);
  job::Station second = station(417, -25,
                                {{0, 8.88255, 8.88255},
                                 {2.502, 9.61523, 9.61523},
                                 {6.255, 10.57969, 10.57969},
                                 {12.51, 11.92715, 11.92715},
                                 {20.85, 13.37213, 13.37213},
                                 {33.36, 15.03127, 15.03127},
                                 {50.04, 16.60024, 16.60024},
                                 {83.4, 18.31327, 18.31327},
                                 {125.1, 18.73968, 18.73968},
                                 {175.14, 17.65766, 17.65766},
                                 {229.35, 15.23305, 15.23305},
                                 {291.9, 11.40398, 11.40398},
                                 {354.45, 6.80343, 6.80343},
                                 {396.15, 3.35218, 3.35218},
                                 {417, 1.5, 1.5}});
  second.target.thickness = {job::Thickness::Kind::ratio, 0.11};
  second.target.trailing_edge_thickness = mm(5);
  for (const auto& [one, strip, coats] : {std::tuple{first, 0.0, 0.48}, std::tuple{second, 0.5, 0.3}}) {
    auto job = blade::job_of({one});
    job.reading_error = 0.3;
    job.coating_to_strip = strip;
    auto target = line::to_targets(job).targets.front();
    target.left_to = 0;  // as if room were made for coats over all of it
    const auto bare = fill::stage_section(target, {fill::StageKind::bare, coats, ""});
    REQUIRE(bare);
    CHECK(bare->leading_edge_x == Approx(target.leading_edge_x + coats).margin(0.01));
    CHECK(bare->trailing_edge_x == Approx(target.trailing_edge_x() - coats).margin(0.01));
    const double middle = target.leading_edge_x + target.chord / 2;  // flat enough there for the normal to stand upright
    CHECK(ordinate_at(bare->port, middle) == Approx(target.half_breadth(section::Face::port, middle) - coats).margin(0.01));
  }
}

TEST_CASE("2026-11-28: no room is made for coats on a leading edge that stays as it is") {
  // The bare templates stood 1.1 mm inside a hinge edge that was to be left, and the owner was told to take that off it.
  auto station = blade::exact("A", 0, 400, 0.12);
  station.target.thickness = {job::Thickness::Kind::ratio, 0.12};
  station.target.leading_edge = job::LeadingEdgeWork::leave;
  const auto target = line::to_targets(blade::job_of({station})).targets.front();
  CHECK(target.left_to == Approx(80));  // 0.2 of the chord: half of the way to it stays
  constexpr double coats = 1.1;
  const auto bare = fill::stage_section(target, {fill::StageKind::bare, coats, ""});
  REQUIRE(bare);
  CHECK(bare->leading_edge_x == Approx(0).margin(1e-6));
  for (const auto* line : {&bare->port, &bare->starboard}) {
    for (const double x : {5.0, 20.0, 39.0})
      CHECK(ordinate_at(*line, x) == Approx(400 * blade::naca(0.12, x / 400)).margin(0.05));
    for (const double x : {81.0, 120.0, 250.0}) {
      // Moved square to itself: by 1.1 mm over the cosine of its slope, all but the curvature.
      const double slope = (blade::naca(0.12, x / 400 + 1e-4) - blade::naca(0.12, x / 400 - 1e-4)) / 2e-4;
      CHECK(ordinate_at(*line, x) == Approx(400 * blade::naca(0.12, x / 400) - coats * std::hypot(1, slope)).margin(0.02));
    }
    CHECK(ordinate_at(*line, 60) == Approx(400 * blade::naca(0.12, 0.15) - coats / 2).margin(0.05));  // half-way along the blend
  }
  const auto clear = fill::stage_section(target, {fill::StageKind::bare, coats, ""}, 3);
  REQUIRE(clear);
  CHECK(clear->leading_edge_x == Approx(-3).margin(0.01));
}
