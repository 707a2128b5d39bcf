// fairblade worksheet, in process.
#include <algorithm>

#include "catch.hpp"
#include "cli/sandbox.hpp"
#include "job/job.hpp"

using namespace sandbox;

namespace {

/// Run where `out/` may be written.
Result run_in(const Folder& folder, const std::vector<std::string>& args) {
  const fs::path here = fs::current_path();
  fs::current_path(folder.at(""));
  Result result = run(args);
  fs::current_path(here);
  return result;
}

std::vector<std::string> plain(const std::vector<std::string>& more = {}) {
  std::vector<std::string> out{"worksheet", "--stations", "3", "--span", "900", "--chord", "420"};
  out.insert(out.end(), more.begin(), more.end());
  return out;
}

std::size_t lines_of(const std::string& text) { return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')); }

}  // namespace

TEST_CASE("pages for a blade without a job") {
  const Folder folder;
  const Result result = run_in(folder, plain());
  INFO(result.err);
  CHECK(result.status == 0);
  CHECK(has(result.out, "Written to out/worksheet: print.html, 5 in pages/"));
  const auto files = files_in(folder.at("out/worksheet"));
  std::vector<std::string> names;
  for (const auto& [name, bytes] : files) names.push_back(name);
  CHECK(names == std::vector<std::string>{"pages/001-cover.svg", "pages/002-station-A.svg", "pages/003-station-B.svg",
                                          "pages/004-station-C.svg", "pages/005-station-B-a-second-time.svg", "print.html"});
  // The same bytes every time; nothing from outside.
  const Folder again;
  run_in(again, plain());
  CHECK((files_in(again.at("out/worksheet")) == files));
  for (const auto& [name, bytes] : files) {
    INFO(name);
    CHECK_FALSE(has(bytes, "<script"));
    CHECK_FALSE(has(bytes, "url("));
    if (name != "print.html") CHECK(has(bytes, "width=\"210mm\" height=\"279.4mm\""));
  }
}

TEST_CASE("pages for a job, whose paper and way they follow") {
  const Folder folder;
  for (const char* name : {"whimbrel", "turnstone", "dunlin"}) {
    const Result result = run_in(folder, {"worksheet", profile(name)});
    INFO(result.err);
    CHECK(result.status == 0);
    CHECK(fs::exists(folder.at("out/" + std::string(name) + "-worksheet/print.html")));
  }
  const auto words = [&](const std::string& path) { return bytes_of(folder.at(path)); };
  CHECK(has(words("out/dunlin-worksheet/print.html"), "gap from the port board"));
  const std::string job = folder.write("knot.json", R"({ "job": "Knot", "print": { "paper": "roll-610" },
    "stations": [ { "name": "A", "down": 0, "chord": 400 } ] })");
  CHECK(run_in(folder, {"worksheet", job, "--quiet"}).out.empty());
  CHECK(has(words("out/knot-worksheet/pages/001-cover.svg"), "width=\"210mm\" height=\"279.4mm\""));
  CHECK(run_in(folder, {"worksheet", job, "--paper", "a4", "--measured-by", "thickness"}).status == 0);
  CHECK(has(words("out/knot-worksheet/pages/001-cover.svg"), "width=\"210mm\" height=\"297mm\""));
  CHECK(has(words("out/knot-worksheet/pages/002-station-A.svg"), "what you noticed"));
  CHECK(has(words("out/knot-worksheet/print.html"), "size: 210mm 297mm"));
}

TEST_CASE("a second run replaces the pages, and nothing of the owner's") {
  const Folder folder;
  REQUIRE(run_in(folder, plain({"-o", "w"})).status == 0);
  folder.write("w/photo.jpg", "mine");
  REQUIRE(run_in(folder, {"worksheet", "--stations", "1", "--span", "900", "--chord", "420", "-o", "w"}).status == 0);
  CHECK(bytes_of(folder.at("w/photo.jpg")) == "mine");
  CHECK_FALSE(fs::exists(folder.at("w/pages/003-station-B.svg")));
  CHECK(fs::exists(folder.at("w/pages/003-station-A-a-second-time.svg")));
  // Neither a plan's folder nor a full one is taken.
  REQUIRE(run_in(folder, {"plan", profile("turnstone"), "-o", "p", "--quiet"}).status == 0);
  const auto before = files_in(folder.at("p"));
  const Result over = run_in(folder, plain({"-o", "p"}));
  CHECK(over.status == 3);
  CHECK(over.err == "p: is not empty and holds no earlier worksheet: give a new or an empty folder with -o\n");
  CHECK((files_in(folder.at("p")) == before));
  CHECK(run_in(folder, {"plan", profile("turnstone"), "-o", "w"}).status == 3);
}

TEST_CASE("an empty table, printed or into a file that was not there") {
  const Folder folder;
  const Result printed = run_in(folder, plain({"--csv"}));
  CHECK(printed.status == 0);
  CHECK(printed.err.empty());
  CHECK(has(printed.out,
            "job,Rudder blade\nunits,mm\nbottom,900\ncoating_to_strip,\n"
            "station,down,ahead,chord,x,port,starboard,caliper,trailing_edge_off_centre,skeg,notes\n"
            "A,0,,420,0,,,,,,\nA,,,,3,,,,,,\n"));
  CHECK(lines_of(printed.out) == 5 + 4 * 12);  // three stations, one of them twice
  CHECK_FALSE(fs::exists(folder.at("out")));
  CHECK(run_in(folder, plain({"--csv", "sheet.csv"})).status == 0);
  CHECK(bytes_of(folder.at("sheet.csv")) == printed.out);
  // Filled in meanwhile: never overwritten.
  folder.write("sheet.csv", "filled in");
  const Result again = run_in(folder, plain({"--csv", "sheet.csv"}));
  CHECK(again.status == 2);
  CHECK(again.err == "sheet.csv: is there already, and would be lost: give another name, or move it away first\n");
  CHECK(bytes_of(folder.at("sheet.csv")) == "filled in");
  CHECK(run_in(folder, plain({"--csv", "both.csv", "-o", "w"})).status == 0);
  CHECK(fs::exists(folder.at("w/print.html")));
  CHECK(bytes_of(folder.at("both.csv")) == printed.out);
  // Pages that cannot be written leave no table behind either.
  folder.write("file", "a file");
  CHECK(run_in(folder, plain({"--csv", "late.csv", "-o", "file/below"})).status == 3);
  CHECK_FALSE(fs::exists(folder.at("late.csv")));
}

TEST_CASE("tables by other ways, in inches, of a job") {
  const Folder folder;
  const std::string gaps = run(plain({"--csv", "--measured-by", "gaps"})).out;
  CHECK(has(gaps,
            "station,down,ahead,chord,board_port,board_starboard,x,port_gap,starboard_gap,caliper,trailing_edge_off_centre,skeg,"
            "notes\n"));
  const std::string thickness = run(plain({"--csv", "--measured-by", "thickness"})).out;
  CHECK(has(thickness, "station,down,ahead,chord,x,thickness,trailing_edge_off_centre,skeg,notes\n"));
  const std::string inches =
      run({"worksheet", "--stations", "3", "--span", "36", "--chord", "16 1/2", "--units", "in", "--csv"}).out;
  CHECK(has(inches, "units,in\nbottom,36\n"));
  // 2026-11-27: the unit of the lengths is the sheets' too.
  CHECK(run({"worksheet", "--stations", "3", "--span", "36\"", "--chord", "16 1/2\"", "--csv"}).out == inches);
  CHECK(run({"worksheet", "--stations", "3", "--span", "36in", "--chord", "16.5", "--csv"}).out == inches);
  CHECK(has(inches, "A,0,,16.5,0,,,,,,\nA,,,,0.125,,,,,,\nA,,,,0.25,,,,,,\nA,,,,0.5,,,,,,\n"));
  // A CSV keeps what stood above its header; names that need quotes have them.
  const std::string csv =
      folder.write("j.csv",
                   "job,\"Knot, \"\"the\"\" second\"\ntrailing_edge_thickness,4\nstation,down,chord,x,port,starboard\n"
                   "\"A, top\",0,420,0,0,0\n");
  const std::string kept = run({"worksheet", csv, "--csv"}).out;
  CHECK(has(kept, "job,\"Knot, \"\"the\"\" second\"\n"));
  CHECK(has(kept, "trailing_edge_thickness,4\n"));
  CHECK(has(kept, "\"A, top\",0,,420,0,"));
  // A blank table is itself a job to print pages for.
  const std::string blank = folder.write("blank.csv", kept);
  CHECK(run_in(folder, {"worksheet", blank}).status == 0);
  CHECK(run({"worksheet", blank, "--csv"}).out == kept);
}

TEST_CASE("a job's table may be its readings_file") {
  const Folder folder;
  const std::string stations =
      R"("stations": [ { "name": "A", "down": 0, "chord": 400 }, { "name": "B", "down": 500, "chord": 400 } ] })";
  const std::string job = folder.write("j.json", R"({ "job": "Knot", "readings_file": "r.csv", )" + stations);
  REQUIRE(run({"worksheet", job, "--csv", folder.at("r.csv")}).status == 0);
  std::string text = bytes_of(folder.at("r.csv"));
  for (std::size_t at; (at = text.find(",,,,,,\n")) != std::string::npos;)
    text.replace(at, 7, ",20,20,,,,\n");  // a plate will do
  folder.write("r.csv", text);
  const Result result = run_in(folder, {"plan", job, "--quiet"});
  INFO(result.err);
  CHECK(result.status == 0);
}

namespace {

/// Behind a skeg, with all that a table can hold and some that it cannot.
std::string behind_a_skeg(const std::string& own = {}, const std::string& more = {}) {
  return R"({ "job": "Phalarope, behind a skeg", "bottom": 990, "coating_to_strip": 0.4, "speed": 5, "centre_station": "two",
    "stations": [
      { "name": "one", "down": 50, "ahead": 22, "chord": 330, "skeg": 230, "trailing_edge_off_centre": 1.5)" +
         own + R"( },
      { "name": "two", "down": 500, "ahead": 22, "chord": 320, "skeg": 200 },
      { "name": "three", "down": 950, "ahead": 22, "chord": 300, "skeg": 140 } ],
    "target": { "trailing_edge_thickness": 4, "leading_edge": "leave", "max_removal": 0.5, "keep": [0.25, "240mm"],
      "leading_edge_radius": { "percent_chord": 1.8 }, "extend_trailing_edge": { "up_to": 6 },
      "no_cut": [ { "down": [300, 360], "x": [0, 120] } ] },
    "fillers": { "edges": { "resin_to_hardener_by_weight": [100, 40] } }, "workshop": { "pot_life": { "minutes": 25, "at": 20, "mass_g": 90 } },
    "print": { "ruler_reads": [99.5, 100.4] })" +
         more + " }";
}

/// A plate's readings in every row that waits for them.
std::string filled(std::string table) {
  for (std::size_t at = 0; (at = table.find('\n', at)) != std::string::npos; ++at) {
    const std::size_t begin = table.rfind('\n', at - 1) + 1;
    std::string line = table.substr(begin, at - begin);
    if (line.rfind("one,", 0) != 0 && line.rfind("two,", 0) != 0 && line.rfind("three,", 0) != 0) continue;
    std::size_t cell = 0;
    for (int commas = 0; commas < 5; ++cell) commas += line[cell] == ',';
    table.insert(begin + cell, "20");
    table.insert(begin + cell + 3, "20");
    at += 4;
  }
  return table;
}

}  // namespace

TEST_CASE("2026-11-27: a job's table says what the job says, and what it cannot hold is told") {
  const Folder folder;
  const Result whole = run({"worksheet", folder.write("whole.json", behind_a_skeg()), "--csv"});
  INFO(whole.out);
  CHECK(whole.err.empty());
  const auto job = fairblade::job::read_job(folder.write("table.csv", filled(whole.out)));
  REQUIRE(job);
  // All by hand, out of the job above.
  CHECK(job->name == "Phalarope, behind a skeg");
  CHECK(*job->bottom == 990);
  CHECK(job->coating_to_strip == 0.4);
  CHECK(*job->speed == 5);
  CHECK(job->centre_station == "two");
  REQUIRE(job->stations.size() == 3);
  CHECK(job->stations[0].skeg == 230);
  CHECK(job->stations[1].skeg == 200);
  CHECK(job->stations[2].skeg == 140);
  CHECK(*job->stations[0].trailing_edge_off_centre == 1.5);
  CHECK(*job->stations[0].ahead == 22);
  CHECK(job->target.trailing_edge_thickness.value == 4);
  CHECK((job->target.leading_edge == fairblade::job::LeadingEdgeWork::leave));
  CHECK(job->target.max_removal == 0.5);
  CHECK(job->target.keep_from.value == 0.25);
  CHECK(job->target.keep_to.in_mm);
  CHECK(job->target.keep_to.value == 240);
  CHECK((job->target.leading_edge_radius.kind == fairblade::job::LeadingEdgeRadius::Kind::percent_chord));
  CHECK(job->target.leading_edge_radius.value == 1.8);
  CHECK(job->target.extend_trailing_edge.up_to);
  CHECK(job->target.extend_trailing_edge.mm == 6);
  REQUIRE(job->target.no_cut.size() == 1);
  CHECK(job->target.no_cut[0].down_to == 360);
  CHECK(job->target.no_cut[0].x_to == 120);
  CHECK(job->edges.hardener_by_weight == 40);
  CHECK(job->workshop.pot_life_mass_g == 90);
  CHECK(job->print.ruler_along == 100.4);

  const std::string coats = folder.write(
      "coats.json", behind_a_skeg(R"(, "thickness": "40mm")", R"(, "coats": [ { "name": "primer", "thickness": 0.1 } ])"));
  const Result part = run({"worksheet", coats, "--csv", folder.at("part.csv")});
  CHECK(part.status == 0);
  CHECK(part.err ==
        "note: a table cannot hold all that " + coats + " says: coats; station one's own thickness\nnote: keep using " + coats +
            " with the new readings: write \"readings_file\": \"part.csv\" in it, in place of the readings " + "that it has\n");
  CHECK(has(part.out, "Then: fairblade check " + coats));
  CHECK(run({"worksheet", coats, "--csv", "--quiet"}).err.empty());
  // The table then stands beside the job file, and what both say is no trouble.
  folder.write("part.csv", filled(bytes_of(folder.at("part.csv"))));
  const auto both = fairblade::job::read_job(folder.write(
      "both.json", behind_a_skeg("", R"(, "readings_file": "part.csv", "coats": [ { "name": "primer", "thickness": 0.1 } ])")));
  REQUIRE(both);
  CHECK(both->stations[0].skeg == 230);
  CHECK(both->coats.size() == 1);
}

TEST_CASE("what no sheet can be made of is refused in one line, and nothing is written") {
  const Folder folder;
  const auto refused = [&](const std::vector<std::string>& args, const std::string& message) {
    std::vector<std::string> words{"worksheet"};
    words.insert(words.end(), args.begin(), args.end());
    const Result result = run_in(folder, words);
    INFO(message);
    CHECK(result.status == 2);
    CHECK(result.out.empty());
    CHECK(has(result.err, message));
    CHECK(lines_of(result.err) >= 1);
    CHECK_FALSE(fs::exists(folder.at("out")));
  };
  refused({}, "--stations: is missing: give a JOB, or --stations, --span and --chord");
  refused({"--stations", "5", "--span", "1000"}, "--chord: is missing");
  refused({"--stations", "5.5", "--span", "1000", "--chord", "420"},
          "--stations: \"5.5\" is no number of stations: give a whole number, such as 5");
  refused({"--stations", "0", "--span", "1000", "--chord", "420"}, "--stations: there cannot be 0 stations");
  refused({"--stations", "27", "--span", "1000", "--chord", "420"}, "--stations: there cannot be 27 stations");
  refused({"--stations", "99999999999999999999", "--span", "1000", "--chord", "420"}, "--stations: \"9999");
  refused({"--stations", "-3", "--span", "1000", "--chord", "420"}, "--stations: there cannot be -3 stations");
  refused({"--stations", "26", "--span", "100", "--chord", "420"},
          "--span: 100 mm is too short for 26 stations: give fewer stations, or check the unit");
  refused({"--stations", "5", "--span", "1", "--chord", "420"},
          "--span: \"1\" is no length for this: give 100.0 mm to 5000.0 mm");
}

TEST_CASE("other refusals") {
  const Folder folder;
  const auto refused = [&](std::vector<std::string> more, const std::string& message) {
    const Result result = run_in(folder, plain(more));
    INFO(message);
    CHECK(result.status == 2);
    CHECK(result.out.empty());
    CHECK(result.err == message + "\n");
    CHECK_FALSE(fs::exists(folder.at("out")));
  };
  refused({"--tip-chord", "4"},
          "--tip-chord: \"4\" is no length for this: give 50.0 mm to 5000.0 mm; if these are inches, add --units in");
  refused({"--tip-chord", "12 1/2"}, "--tip-chord: \"12 1/2\" is a fraction: fractions are for inches: add --units in");
  refused({"--units", "feet"}, "--units: \"feet\" is no unit: use mm, cm or in");
  refused({"--measured-by", "eye"}, "--measured-by: \"eye\" is no way of measuring: use half-breadths, thickness or gaps");
  refused({"--paper", "A3"}, "--paper: \"A3\" is no paper for this: use A4, Letter or both");
  refused({"--job", ""}, "--job: is empty: give the job a short name");
  refused({"--job", "a\nb"}, "--job: holds control characters: write it in plain letters");
  refused({"--job", "   "}, "--job: is blank: give the job a short name");
  refused({"--job", "\xff"}, "--job: is not UTF-8: write it in plain letters");
  refused({"-o", ""}, "fairblade: -o is empty: name a folder");
  const Result both = run_in(folder, {"worksheet", profile("whimbrel"), "--chord", "420"});
  CHECK(both.status == 2);
  CHECK(both.err == "--chord: stands beside a JOB: leave out one of the two: the job says it\n");
  const std::string mixed = folder.write("mixed.json", R"({ "job": "Knot", "stations": [ { "name": "A", "down": 0, "chord": 400 },
    { "name": "B", "down": 500, "chord": 400, "measured_by": "thickness" } ] })");
  CHECK(run({"worksheet", mixed, "--csv"}).err ==
        "--csv: station A is measured by half-breadths, station B by thickness: one table holds one way: "
        "say which with --measured-by\n");
  CHECK(run({"worksheet", mixed, "--csv", "--measured-by", "thickness"}).status == 0);
  CHECK(run_in(folder, {"worksheet", mixed}).status == 0);
  CHECK(run({"worksheet", folder.at("none.json")}).status == 2);
}

TEST_CASE("advice on too few stations, and --strict") {
  const Folder folder;
  const Result result = run_in(folder, {"worksheet", "--stations", "2", "--span", "900", "--chord", "420", "--strict"});
  CHECK(result.status == 1);
  CHECK(has(result.err, "advice: three stations at least are wanted"));
  CHECK(fs::exists(folder.at("out/worksheet/print.html")));
  CHECK(run_in(folder, plain({"--strict"})).status == 0);
}
