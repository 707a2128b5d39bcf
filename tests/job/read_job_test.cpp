// The whole job file, in each of its parts. Expected values are the numbers written in the file, converted by hand.
#include "catch.hpp"
#include "scratch.hpp"

using namespace fairblade;
using namespace fairblade::job;

namespace {

const char* const whole_job = R"(// every key of a job
{
  "job": "Invented blade",
  "units": "mm", "reading_error": 0.4, "coating_to_strip": 0.8, "bottom": 1000, "speed": 5.5, "centre_station": "B",
  "stations": [
    { "name": "B", "down": 400, "ahead": -20, "chord": 380, "trailing_edge_off_centre": -2, "skeg": 30, "interpolated": true,
      "measured_by": "thickness", "x_from": "trailing-edge", "readings": [[380, 0], [10, 6]], "max_removal": 2 },
    { "name": "A", "down": 0, "ahead": 78, "chord": 420, "measured_by": "half-breadths", "x_from": "leading-edge", "skeg": 0,
      "readings": [
        [50, 20.5, null],
        [0, 0, 0, 0.5],
        [50, 20, 19.5]
      ] }
  ],
  "target": {
    "approach": "edges-only", "thickness": "12%", "max_thickness_at": 0.35, "leading_edge_radius": { "percent_chord": 1.8 },
    "trailing_edge_thickness": 4, "extend_leading_edge": { "up_to": 15 }, "extend_trailing_edge": 5,
    "keep": [0.25, "300mm"], "leading_edge": "leave", "no_cut": [ { "down": [300, 360], "x": [0, 120] } ],
    "max_removal": 1.5, "spanwise": "straight"
  },
  "coats": [ { "name": "glass", "layers": 2, "stage": "glass", "on": "filled",
               "cloth": { "g_per_m2": 300, "width": 1250, "fibre_weight_percent": 50, "fibre_density": 2.54, "price_per_m": 6 } },
             { "name": "barrier coat", "dry_film_um": 60, "layers": 4, "volume_solids_percent": 60, "stage": "paint", "on": "bare", "spreading_rate": 9.5, "pack": { "litres": 0.75, "price": 40 }, "density": 1.4, "parts_by_weight": [4, 1], "thinner_percent": 5, "working_time": { "minutes": 20, "at": 23 }, "recoat_hours": [0.5, 3], "one_day": true, "life_years": 8 } ],
  "fillers": { "edges": { "unmixed_resin_density": 1.16, "hardener_density": 0.98, "overcoat_hours": [6, 24], "sand_after_hours": 16, "resin_density": 1.1, "resin_to_hardener_by_weight": [100, 30], "powder_density": 2.2, "powder_per_100_epoxy": 8, "layer_limit": 7 },
               "faces": { "unmixed_resin_density": 1.16, "hardener_density": 0.98, "resin_to_hardener_by_volume": [2, 1], "resin_density": 1.1, "powder_density": 0.3, "powder_per_100_epoxy": 30, "layer_limit": 8 } },
  "workshop": { "temperature": 12, "humidity_percent": 70, "pot_life": { "minutes": 20, "at": 23, "mass_g": 150 }, "batch_limit_g": 250, "loss_percent": 10, "sanding_allowance": 0.6,
                "spread_kg_per_minute": 0.04, "paint_m2_per_minute": 0.2, "pinhole_litres_per_m2": 0.15, "coat_tip": false, "coat_top": true, "support_patches_m2": 0.02, "bare_percent": 30, "start": "08:15", "dusk": "20:45" },
  "zones": { "leading_edge": 0.2, "trailing_edge": 0.1 },
  "nose_glass": { "cloth": { "g_per_m2": 600, "width": 100, "fibre_weight_percent": 55, "fibre_density": 2.5 }, "cover": 3 },
  "packs": { "resin": { "kg": 1, "price": 20 }, "hardener": { "kg": 0.4, "price": 12 }, "edges_powder": { "kg": 0.2 }, "faces_powder": { "kg": 0.25, "price": 9 }, "currency": "shells" },
  "compare_coatings": [ { "name": "soft", "price": 100, "life_years": 2 }, { "name": "hard", "price": 400, "life_years": 10 } ],
  "print": { "paper": "a3", "margin": 9, "overlap": 11, "ruler_reads": [99.5, 100.5],
             "clearance": 2, "positives": true, "split": "always", "gauge_spacing": 75, "pages_of": ["Bare", "clearance"] } // the owner's printer
}
)";

}  // namespace

TEST_CASE("a job that says everything has no defaults, and nothing is lost") {
  const Scratch scratch;
  const auto outcome = scratch.read("job.json", whole_job);
  REQUIRE(faults_of(outcome) == "");
  const Job& job = *outcome;
  CHECK(job.defaults.empty());
  CHECK(job.warnings.empty());
  CHECK(job.name == "Invented blade");
  CHECK(job.reading_error == 0.4);
  CHECK(job.coating_to_strip == 0.8);
  CHECK(job.bottom == 1000.0);
  CHECK(job.speed == 5.5);
  CHECK(job.centre_station == "B");
  REQUIRE(job.stations.size() == 2);

  const Station &a = job.stations[0], &b = job.stations[1];  // sorted by down
  CHECK(a.name == "A");
  CHECK(a.place.line == 8);
  CHECK(a.ahead == 78.0);
  CHECK_FALSE(a.trailing_edge_off_centre);
  CHECK_FALSE(a.interpolated);
  REQUIRE(a.readings.size() == 3);
  CHECK(a.readings[0].x == 0);
  CHECK(a.readings[0].caliper == 0.5);
  CHECK(a.readings[0].line == 11);
  CHECK(a.readings[1].port == 20.5);  // repeats stay, in the order of the file
  CHECK_FALSE(a.readings[1].starboard);
  CHECK(a.readings[1].line == 10);
  CHECK(a.readings[2].line == 12);
  CHECK(a.readings_from == job.file);

  CHECK(b.measured_by == MeasuredBy::thickness);
  CHECK(b.ahead == -20.0);
  CHECK(b.trailing_edge_off_centre == -2.0);
  CHECK(b.skeg == 30);
  CHECK(b.interpolated);
  REQUIRE(b.readings.size() == 2);  // from the trailing edge: 380 - 380 and 380 - 10
  CHECK(b.readings[0].x == 0);
  CHECK(b.readings[1].x == 370);
  CHECK(b.readings[1].caliper == 6.0);
  CHECK_FALSE(b.readings[1].port);

  CHECK(job.target.max_removal == 1.5);
  CHECK(a.target.max_removal == 1.5);
  CHECK(b.target.max_removal == 2);
  CHECK(a.target.places.at("max_removal").line == 19);
  CHECK(b.target.places.at("max_removal").line == 7);

  REQUIRE(job.coats.size() == 2);
  // 300 g/m² at 50 %: 0.3 x (1/2.54 + 1/1.15) = 0.378980 mm a layer, worked from the cloth alone.
  CHECK(job.coats[0].thickness == Approx(0.378980).margin(1e-6));
  REQUIRE(job.coats[0].cloth);
  CHECK(job.coats[0].cloth->width == 1250);
  CHECK(job.coats[0].cloth->price_per_m == 6.0);
  CHECK(job.coats[0].on == CoatedPart::filled);
  CHECK(job.coats[1].on == CoatedPart::bare);
  CHECK(job.coats[1].spreading_rate == 9.5);
  CHECK(job.coats[1].pack->size == 0.75);
  CHECK(job.coats[1].pack->price == 40.0);
  CHECK(job.coats[1].density == 1.4);
  CHECK((*job.coats[1].parts_by_weight)[0] == 4);
  CHECK(job.coats[1].thinner_percent == 5.0);
  CHECK(job.coats[1].working_time->minutes == 20);
  CHECK(job.coats[1].working_time->at == 23);
  CHECK(job.coats[1].recoat->to == 3);
  CHECK(job.coats[1].one_day);
  CHECK(job.coats[1].life_years == 8.0);
  CHECK(job.coats[0].layers == 2);
  CHECK(job.coats[1].dry_film_um == 60.0);
  CHECK(job.coats[1].volume_solids_percent == 60.0);
  CHECK(job.coats[1].stage == "paint");
  CHECK(job.edges.layer_limit == 7);
  CHECK(job.edges.hardener_by_weight == 30);
  CHECK_FALSE(job.edges.ratio_by_volume);
  CHECK(job.edges.overcoat->from == 6);
  CHECK(job.edges.sand_after_hours == 16.0);
  CHECK(job.faces.ratio_by_volume);
  CHECK(job.faces.resin_by_weight == Approx(2.32));  // 2 x 1.16 : 1 x 0.98
  CHECK(job.faces.hardener_by_weight == Approx(0.98));
  CHECK_FALSE(job.faces.parts_estimated);
  CHECK(job.faces.powder_density == 0.3);
  CHECK(job.workshop.pot_life_mass_g == 150);
  CHECK(job.workshop.sanding_allowance == 0.6);
  CHECK(job.workshop.spread_kg_per_minute == 0.04);
  CHECK(job.workshop.paint_m2_per_minute == 0.2);
  CHECK(job.workshop.pinhole_litres_per_m2 == 0.15);
  CHECK_FALSE(job.workshop.coat_tip);
  CHECK(job.workshop.coat_top);
  CHECK(job.workshop.support_patches_m2 == 0.02);
  CHECK(job.workshop.bare_percent == 30.0);
  CHECK(job.workshop.start == 8 * 60 + 15);
  CHECK(job.workshop.dusk == 20 * 60 + 45);
  CHECK(job.zones.leading_edge == 0.2);
  CHECK(job.zones.trailing_edge == 0.1);
  REQUIRE(job.nose_glass);
  CHECK(job.nose_glass->cover == 3);
  CHECK(job.nose_glass->cloth.fibre_weight_percent == 55);
  CHECK(job.packs.hardener->size == 0.4);
  CHECK_FALSE(job.packs.edges_powder->price);
  CHECK(job.packs.currency == "shells");
  REQUIRE(job.compare_coatings.size() == 2);
  CHECK(job.compare_coatings[1].price == 400);
  CHECK(job.print.paper == Paper::a3);  // capitals or not
  CHECK(job.print.ruler_along == 100.5);
  CHECK(job.print.clearance == 2);
  CHECK(job.print.positives);
  CHECK(job.print.split == Split::always);
  CHECK(job.print.gauge_spacing == 75);
  CHECK(job.print.pages_of == std::vector<TemplatesOf>{TemplatesOf::bare, TemplatesOf::clearance});
}

TEST_CASE("the target's keys arrive as they were asked") {
  const Scratch scratch;
  const auto outcome = scratch.read("job.json", whole_job);
  REQUIRE(outcome);
  const TargetRequest& target = outcome->target;
  CHECK(target.approach == Approach::edges_only);
  CHECK(target.thickness.kind == Thickness::Kind::ratio);
  CHECK(target.thickness.value == Approx(0.12).epsilon(1e-15));
  CHECK(target.max_thickness_at.value == 0.35);
  CHECK(target.leading_edge_radius.kind == LeadingEdgeRadius::Kind::percent_chord);
  CHECK(target.leading_edge_radius.value == 1.8);
  CHECK(target.trailing_edge_thickness.value == 4);
  CHECK(target.extend_leading_edge.up_to);
  CHECK(target.extend_leading_edge.mm == 15);
  CHECK_FALSE(target.extend_trailing_edge.up_to);
  CHECK(target.extend_trailing_edge.mm == 5);
  CHECK_FALSE(target.keep_from.in_mm);
  CHECK(target.keep_to.in_mm);
  CHECK(target.keep_to.value == 300);
  CHECK(target.leading_edge == LeadingEdgeWork::leave);
  REQUIRE(target.no_cut.size() == 1);
  CHECK(target.no_cut[0].down_to == 360);
  CHECK(target.no_cut[0].x_to == 120);
  CHECK(target.spanwise == Spanwise::straight);
}

TEST_CASE("a short job lists every default, in the order of the file") {
  const Scratch scratch;
  const auto outcome = scratch.read("job.json", R"({ "job": "J", "stations": [
    { "name": "A", "down": 0, "chord": 400, "skeg": 5, "readings": [[0, 0, 0], [50, 20, 20]] },
    { "name": "B", "down": 9, "chord": 400, "thickness": 0.1, "readings": [[0, 0, 0], [50, 20, 20]] } ],
    "coats": [ { "name": "paint", "dry_film_um": 60 } ] })");
  REQUIRE(faults_of(outcome) == "");
  std::string keys;
  for (const DefaultUsed& used : outcome->defaults) keys += used.key + "=" + used.value + "\n";
  CHECK(
      keys ==
      "units=mm\nreading_error=0.5 mm\ncoating_to_strip=0 mm\ncentre_station=A\n"
      "stations.skeg=0 mm (B)\nstations.measured_by=half-breadths\nstations.x_from=leading-edge\n"
      "target.approach=full-section\ntarget.thickness=least-fill (A)\ntarget.max_thickness_at=form\n"
      "target.leading_edge_radius=form\ntarget.trailing_edge_thickness=form\ntarget.extend_leading_edge=0 mm\n"
      "target.extend_trailing_edge=0 mm\ntarget.keep=0.2 to 0.75 of the chord\ntarget.leading_edge=shape\n"
      "target.no_cut=none\ntarget.max_removal=1 mm\ntarget.spanwise=fair\n"
      "coats[0].layers=1\ncoats[0].stage=paint\ncoats[0].on=all\n"
      "fillers.edges.unmixed_resin_density=1.18 kg/L\nfillers.edges.hardener_density=1.08 kg/L\n"
      "fillers.edges.resin_to_hardener_by_weight=100 : 38\nfillers.edges.resin_density=1.15 kg/L\n"
      "fillers.edges.powder_density=2.2 kg/L\nfillers.edges.powder_per_100_epoxy=8 by weight\nfillers.edges.layer_limit=6 mm\n"
      "fillers.faces.unmixed_resin_density=1.18 kg/L\nfillers.faces.hardener_density=1.08 kg/L\n"
      "fillers.faces.resin_to_hardener_by_weight=100 : 38\nfillers.faces.resin_density=1.15 kg/L\n"
      "fillers.faces.powder_density=0.35 kg/L\nfillers.faces.powder_per_100_epoxy=35 by weight\nfillers.faces.layer_limit=6 mm\n"
      "workshop.temperature=20 degrees C\nworkshop.humidity_percent=60 %\nworkshop.pot_life.minutes=25 minutes\n"
      "workshop.pot_life.at=25 degrees C\nworkshop.pot_life.mass_g=100 g\nworkshop.batch_limit_g=300 g\n"
      "workshop.loss_percent=12 %\nworkshop.sanding_allowance=0.5 mm\n"
      "workshop.spread_kg_per_minute=0.05 kg/min\nworkshop.paint_m2_per_minute=0.1 m2/min\n"
      "workshop.pinhole_litres_per_m2=0.1 L/m2\nworkshop.coat_tip=true\nworkshop.coat_top=false\n"
      "workshop.support_patches_m2=0 m2\nworkshop.bare_percent=0 % (nothing is stripped)\n"
      "workshop.start=09:00\nworkshop.dusk=19:00\n"
      "zones.leading_edge=0.15 of the chord\nzones.trailing_edge=0.15 of the chord\n"
      "print.paper=both\nprint.margin=10 mm\nprint.overlap=12 mm\nprint.ruler_reads=100 mm across, 100 mm along\n"
      "print.clearance=3 mm\nprint.positives=false\nprint.split=when-needed\n"
      "print.gauge_spacing=100 mm\n"
      "print.pages_of=the stage that the filler is shaped at\n");
}

TEST_CASE("gauges of a job in inches stand at whole inches unless told") {
  const Scratch scratch;
  const auto job = [](const std::string& print) {
    return R"({ "job": "J", "units": "in", )" + print + R"("stations": [ { "name": "A", "down": 0, "chord": 16,
      "readings": [[0, 0, 0], [2, 0.8, 0.8], [16, 0.1, 0.1]] } ] })";
  };
  const auto plain = scratch.read("plain.json", job("")),
             told = scratch.read("told.json", job(R"("print": {"gauge_spacing": 3},)"));
  REQUIRE(faults_of(plain) == "");
  REQUIRE(faults_of(told) == "");
  CHECK(plain->print.gauge_spacing == Approx(101.6).epsilon(1e-12));  // 4 times 25.4 by definition
  CHECK(told->print.gauge_spacing == Approx(76.2).epsilon(1e-12));
  const auto listed = [](const Job& read) {
    for (const DefaultUsed& used : read.defaults) {
      if (used.key == "print.gauge_spacing") return used.value;
    }
    return std::string();
  };
  CHECK(listed(*plain) == "4 in");
  CHECK(listed(*told) == "");
}

TEST_CASE("options win over the file and over the stations") {
  const Scratch scratch;
  const auto outcome = scratch.read("job.json", whole_job,
                                    {{"max_removal", "3"},
                                     {"leading-edge-radius", "8"},
                                     {"keep", "0.3,0.6"},
                                     {"extend_leading_edge", "up_to 12"},
                                     {"no_cut", "1,2,3,4"}});
  REQUIRE(faults_of(outcome) == "");
  for (const Station& station : outcome->stations) {
    CHECK(station.target.max_removal == 3);
    CHECK(station.target.leading_edge_radius.kind == LeadingEdgeRadius::Kind::mm);
    CHECK(station.target.leading_edge_radius.value == 8);
    CHECK(station.target.keep_from.value == 0.3);
    CHECK(station.target.extend_leading_edge.up_to);
    CHECK(station.target.extend_leading_edge.mm == 12);
    CHECK(station.target.no_cut.at(0).x_to == 4);
    CHECK(station.target.places.at("leading_edge_radius").file == "--leading-edge-radius");
  }
  const auto refused = scratch.read("job.json", whole_job, {{"max_removal", "much"}, {"max_removals", "1"}, {"thickness", "45"}});
  CHECK(faults_of(refused) ==
        "--max-removal: \"max_removal\" is \"much\": give a length from 0 to 100 mm\n"
        "--max-removals: no such key of the target: did you mean max_removal?\n"
        "--thickness: \"thickness\" is 45: write \"45mm\" if 45 mm thick is meant");
}

TEST_CASE("a byte-order mark and both kinds of comment are accepted") {
  const Scratch scratch;
  const auto outcome = scratch.read("job.json", std::string("\xef\xbb\xbf") + "/* one\n two */ " + whole_job);
  REQUIRE(faults_of(outcome) == "");
  CHECK(outcome->stations[0].place.line == 9);
}

TEST_CASE("twenty faults at most, by line") {
  const Scratch scratch;
  std::string text = "{ \"job\": \"J\", \"stations\": [\n";
  for (int i = 0; i < 30; ++i) text += "{ \"down\": " + std::to_string(i) + " },\n";
  text += "{} ] }";
  const auto outcome = scratch.read("job.json", text);
  REQUIRE(outcome.faults().size() == 20);
  for (std::size_t i = 1; i < 20; ++i) CHECK(outcome.faults()[i - 1].place.line <= outcome.faults()[i].place.line);
}

TEST_CASE("the demo jobs are taken") {
  for (const char* name : {"whimbrel/whimbrel.json", "turnstone/turnstone.json", "dunlin/dunlin.json"}) {
    const std::string path = std::string(PROFILES_DIR) + "/" + name;
    INFO(name);
    CHECK(faults_of(read_job(path)) == "");
  }
}

TEST_CASE("what is asked of the water page") {
  const Scratch scratch;
  const auto job = scratch.read("job.json", R"({ "job": "Invented", "water": { "end_plate": "Half", "helm": 6, "heard": 180 },
    "stations": [ { "name": "A", "down": 0, "chord": 400, "readings": [[0, 0, 0], [200, 20, 20], [400, 2, 2]] } ] })");
  INFO(faults_of(job));
  REQUIRE(job);
  CHECK(job->water.end_plate == EndPlate::half);
  CHECK(job->water.helm == 6);
  CHECK(job->water.heard == 180);
  const auto csv = scratch.read("job.csv",
                                "water.heard,180\nstation,down,ahead,chord,x,port,starboard\n"
                                "A,0,60,400,0,0,0\nA,,,,200,20,20\nA,,,,400,2,2\n");
  INFO(faults_of(csv));
  REQUIRE(csv);
  CHECK(csv->water.heard == 180);
  CHECK_FALSE(csv->water.helm);
}

TEST_CASE("numbers that break off and halves of characters are named") {
  // 2026-11-27: the one was told to be a comma with no value before it, the other a text without quotes.
  const Scratch scratch;
  const auto told = [&](const std::string& value) {
    const auto job =
        job::read_job(scratch.write("j.json", "{ \"job\": \"Knot\",\n  \"bottom\": " + value + ",\n  \"stations\": [] }"));
    return job ? std::string("not refused") : one_line(job.faults().front());
  };
  for (const std::string broken : {"0.1e", "5.", "-", "1e+"}) {
    INFO(broken << ": " << told(broken));
    CHECK(told(broken).find("j.json:2: ") != std::string::npos);
    if (broken != "-") CHECK(told(broken).ends_with(broken + " breaks off: write the whole number"));
  }
  for (const std::string half : {"\"\\ud800\"", "\"a\\ud800 b\"", "\"\\u12\""}) {
    INFO(half << ": " << told(half));
    CHECK(told(half).ends_with("j.json:2: a \\u that stands for no whole character: write the character itself"));
  }
  CHECK(told("\"\\u00e9\" 5").find("\\u that stands") == std::string::npos);
}
