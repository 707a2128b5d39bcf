// fairblade recheck, in process, from a plan on disk. Expected values: NACA Report 460's equation (tests/blade.hpp), by hand.
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <random>

#include "base/text.hpp"
#include "catch.hpp"
#include "cli/knot.hpp"
#include "fill/stages.hpp"
#include "plan/plan.hpp"
#include "recheck/frozen.hpp"
#include "report/report.hpp"

using namespace knot;

TEST_CASE("recheck: perfect readings of the target leave nothing, and it says stop") {
  const Planned planned;
  const std::string perfect = planned.folder.write("perfect.csv", round_text());
  const Json json = planned.json({perfect}, {"--strict"});
  CHECK(json["verdict"] == "nothing left");
  CHECK(json["readings"]["within"] == 84);
  CHECK(json["litres"]["add"].get<double>() < 1e-3);  // seen 0.0004
  CHECK(json["litres"]["remove"].get<double>() < 1e-3);
  double deepest = 0;
  for (const Json& height : json["heights"]) {
    for (const Json& one : height["readings"]) deepest = std::max(deepest, std::abs(one["change"].get<double>()));
  }
  CHECK(deepest < 0.005);  // mm; seen 0.0016
  const Result screen = planned.recheck({perfect});
  CHECK(has(screen.out, "Nothing left"));
  CHECK(has(screen.out, "Stop here"));
  CHECK_FALSE(has(screen.out, "TAKE OFF"));
  // still-to-do.csv has its header and nothing else.
  CHECK(bytes_of(planned.folder.at("left/still-to-do.csv")) == "station,down,x,x_from,side,measured,target,change,what\n");
}

TEST_CASE("2026-11-26: recheck: a station that was not read is no reason to stop") {
  const Planned planned;
  const std::string some = planned.folder.write("some.csv", round_text(0, 1, {stations[0], stations[1]}));
  const Result screen = planned.recheck({some}, {"--strict"});
  CHECK(screen.status == 1);
  CHECK(has(screen.out, "Read the rest before you stop: where you read, nothing is"));
  CHECK_FALSE(has(screen.out, "Stop here"));
  CHECK_FALSE(has(screen.out, "Next come the coats"));
  const Json json = planned.json({some});
  CHECK(json["verdict"] == "nothing left");  // of what was read
  CHECK_FALSE(has(json.dump(), "Stop here"));
}

TEST_CASE("2026-11-27: recheck: places that an earlier round left are not forgotten where the next read others") {
  const Planned planned;
  const std::string first = planned.folder.write("first.csv", round_text(1.5));  // a hump on port of A and B
  // Then the starboard side alone, which was right.
  std::string text, line;
  for (std::istringstream lines(round_text()); std::getline(lines, line);) {
    const std::size_t last = line.rfind(','), before = last == std::string::npos ? last : line.rfind(',', last - 1);
    const bool row = before != std::string::npos && !has(line, "station");
    text += (row ? line.substr(0, before + 1) + line.substr(last) : line) + "\n";
  }
  const std::string next = planned.folder.write("next.csv", text);
  const Result screen = planned.recheck({first, next}, {"--strict"});
  INFO(screen.out << screen.err);
  CHECK(screen.status == 1);
  CHECK(has(screen.out, "Read the rest before you stop"));
  CHECK(has(screen.out, " places of earlier rounds were not read"));
  CHECK_FALSE(has(screen.out, "Stop here"));
  const Json json = planned.json({first, next});
  CHECK(has(json["next"].dump(), "1.5 high in "));
  CHECK_FALSE(has(planned.json({first, planned.folder.write("all.csv", round_text())})["next"].dump(), "Not read again"));
}

TEST_CASE("recheck: what is high is listed as on a phone, worst first") {
  const Planned planned;
  const Result result = planned.recheck({planned.folder.write("r.csv", round_text(1.5))}, {"--strict"});
  CHECK(result.status == 1);
  INFO(result.out);
  // Two readings side by side at A and at B are one hump; the one at C has no neighbour there to bear it out, but that at B does.
  CHECK(has(result.out,
            "TAKE OFF, worst first (mm)\n  A to B port, 168 to 231 aft: hump, 1.5 high at A\n  C port, 198 aft: 1.5 high\n"));
  std::string text = round_text();
  const double y = 360 * blade::naca(0.12, 0.55);  // of C, 198 mm aft
  const std::string place = "C," + number(600) + "," + number(198) + ",";
  const auto at = text.find(place);
  REQUIRE(at != std::string::npos);
  text.replace(at, place.size() + number(y).size(), place + number(y + 1.5));
  const Result alone = planned.recheck({planned.folder.write("alone.csv", text)});
  INFO(alone.out);
  CHECK(has(alone.out, "READ AGAIN, in no litres (mm)\n  C port, 198 aft: 1.5 high\n\n"));
  CHECK(has(alone.out, "> Read again before you work there: C port, 198 aft. No\n  litres count them.\n"));
  std::istringstream lines(result.out);
  std::size_t widest = 0;
  for (std::string line; std::getline(lines, line);) {
    if (!has(line, planned.folder.at(""))) widest = std::max(widest, line.size());  // the test's own long paths apart
  }
  CHECK(widest <= 61);
  CHECK(run({"recheck", planned.plan, planned.folder.at("r.csv"), "-o", planned.folder.at("q"), "--quiet"}).out.empty());
}

TEST_CASE("recheck: the verdict stands first, and noise is counted and not listed as work") {
  // A perfect blade, read with 0.45 mm: by the normal distribution 27 % of 84 readings, 22.4, lie beyond 0.5 mm.
  const Planned planned(with_error(job_text(), 0.45));
  const auto noisy = [&](const std::string& name, unsigned seed, double more) {
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0, 0.45);
    std::istringstream lines(round_text(more));
    std::string out, line;
    std::getline(lines, out);
    while (std::getline(lines, line)) {
      const auto starboard = line.rfind(','), port = line.rfind(',', starboard - 1);
      const double p = std::stod(line.substr(port + 1, starboard - port - 1)) + noise(random),
                   s = std::stod(line.substr(starboard + 1)) + noise(random);
      out += '\n' + line.substr(0, port + 1) + number(p) + ',' + number(s);
    }
    return planned.folder.write(name, out + '\n');
  };
  int stopped = 0;
  for (unsigned seed = 1; seed <= 20; ++seed) {
    const std::string file = noisy("noise.csv", seed, 0);
    const Result result = planned.recheck({file});
    INFO(result.out);
    const Json json = Json::parse(bytes_of(planned.folder.at("left/recheck.json")));
    if (json["verdict"] != "within reading error") continue;
    ++stopped;
    CHECK(has(result.out, "Knot, a test\n> Stop here: what is left is less than these readings can\n  tell.\n"));
    if (!has(result.out, "(alone")) {
      CHECK_FALSE(has(result.out, "TAKE OFF"));
      CHECK_FALSE(has(result.out, "ADD"));
    }
    CHECK(has(result.out, "Not work: "));
    // Left where programs and spreadsheets look: every reading beyond the tolerance has its row.
    const std::string csv = bytes_of(planned.folder.at("left/still-to-do.csv"));
    const auto rows = std::count(csv.begin(), csv.end(), '\n') - 1;
    CHECK(rows == json["readings"]["all"].get<int>() - json["readings"]["within"].get<int>());
    CHECK(rows > 5);
  }
  CHECK(stopped >= 18);  // seen 20
  // A hump in that noise: listed, and single readings no further out than 0.9 mm are not.
  const Result result = planned.recheck({noisy("hump.csv", 3, 2.5)});
  INFO(result.out);
  CHECK(has(result.out, "Knot, a test\n> Go on: "));
  CHECK(has(result.out, ": hump, "));
  CHECK(has(result.out, "Left out: "));
  for (const char* small : {": 0.5 high", ": 0.6 high", ": 0.7 low", ": 0.8 low"}) CHECK_FALSE(has(result.out, small));
}

TEST_CASE("recheck: an edited job moves nothing, and is told") {
  const Planned planned;
  const std::string readings = planned.folder.write("r.csv", round_text(1.5));
  Json before = planned.json({readings});
  CHECK(before["notes"].empty());
  std::string edited = job_text();
  edited.replace(edited.find("0.12,"), 5, "0.15,");
  planned.folder.write("knot.json", edited);
  Json after = planned.json({readings});
  CHECK(said(after["notes"], "knot.json was changed since the plan was made"));
  fs::remove(planned.job);
  Json gone = planned.json({readings});
  CHECK(said(gone["notes"], "knot.json is not to be found from here"));
  for (Json* one : {&before, &after, &gone}) one->erase("notes");
  CHECK(before == after);
  CHECK(before == gone);
}

TEST_CASE("recheck: rounds, oldest first") {
  const Planned planned;
  const std::string one = planned.folder.write("one.csv", round_text(2)), two = planned.folder.write("two.csv", round_text(1)),
                    three = planned.folder.write("three.csv", round_text(0.2));
  const Json json = planned.json({one, two, three});
  REQUIRE(json["progress"].size() == 4);
  // The plan's own: a 0010 on a target of 0012, 0.01 chord thinner a side at 0.3 chord, all but square to the surface there.
  CHECK(json["progress"][0]["deepest_low"].get<double>() == Approx(4.2).epsilon(0.01));
  CHECK(json["progress"][1]["deepest_high"].get<double>() == Approx(2).epsilon(0.01));
  CHECK(json["progress"][2]["deepest_high"].get<double>() == Approx(1).epsilon(0.01));
  CHECK(json["progress"][3]["deepest_high"].get<double>() == Approx(0.2).epsilon(0.02));
  CHECK(json["progress"][3]["within"] == 84);
  const Json plan = Json::parse(bytes_of(planned.plan + "/plan.json"));
  CHECK(json["progress"][0]["add"] == plan["volumes"]["add"]);
  const Result screen = planned.recheck({one, two, three});
  for (const char* row : {"the plan", "1 one", "2 two", "3 three"}) CHECK(has(screen.out, std::string("\n") + row + " "));
}

TEST_CASE("recheck: inches on the screen, mm in JSON") {
  const Planned planned(job_text("in"));
  const std::string readings = planned.folder.write("r.csv", round_text(1.5, 25.4));
  const Result screen = planned.recheck({readings});
  CHECK(has(screen.out, "(in)"));
  CHECK(has(screen.out, "0.059 high"));  // 1.5 mm
  const Json inches = planned.json({readings});
  const Planned metric;
  const Json mm = metric.json({metric.folder.write("r.csv", round_text(1.5))});
  CHECK(inches["litres"]["remove"].get<double>() == Approx(mm["litres"]["remove"].get<double>()).epsilon(1e-4));
  CHECK(inches["heights"][1]["readings"][8]["change"].get<double>() ==
        Approx(mm["heights"][1]["readings"][8]["change"].get<double>()).margin(1e-4));
  CHECK(mm["heights"][1]["readings"][8]["x"].get<double>() == Approx(0.3 * 390));
}

TEST_CASE("recheck: heights between stations") {
  const Planned planned;
  const Json json = planned.json({planned.folder.write("r.csv", round_text(0, 1, {{"upper", 150}, {"lower", 480}}))});
  CHECK(json["verdict"] == "nothing left");
  CHECK(json["heights"][0]["between"] == "A and B");
  CHECK(json["heights"][1]["between"] == "B and C");
}

TEST_CASE("recheck: the surface that was measured") {
  const Planned planned(
      job_text("mm", R"(, "target_": 0)")
          .replace(job_text("mm", R"(, "target_": 0)").find(", \"target_\": 0"), 14,
                   ", \"coats\": [ { \"name\": \"paint\", \"dry_film_um\": 100, \"layers\": 4, \"stage\": \"paint\" } ]"));
  const std::string readings = planned.folder.write("r.csv", round_text());
  const Json bare = planned.json({readings}), finished = planned.json({readings}, {"--stage", "final"});
  CHECK(bare["stage"]["name"] == "bare");
  CHECK(finished["stage"]["name"] == "final");
  CHECK(finished["verdict"] == "nothing left");
  // Four coats of 0.1 mm are still to come: the finished shape is 0.4 mm too high for them.
  CHECK(bare["heights"][1]["readings"][8]["change"].get<double>() == Approx(-0.4).margin(0.005));
  CHECK(has(planned.recheck({readings}).out, "Surface: bare (filled, before paint)"));
  // 2026-11-27: the question which surface it was stood last, under an order to sand it off; and a file may tell it itself.
  CHECK(has(planned.recheck({readings}).out, "> First settle which surface was measured"));
  CHECK(bare["other_stage"]["name"] == "final");
  CHECK_FALSE(finished.contains("other_stage"));
  const std::string own = planned.folder.write("own.csv", "stage,final\n" + round_text());
  const Json told = planned.json({readings, own});
  CHECK(told["stage"] == finished["stage"]);
  CHECK(told["verdict"] == "nothing left");
  CHECK(told["progress"][0] == finished["progress"][0]);
  CHECK(told["progress"][1]["stage"] == "bare");
  CHECK(has(planned.recheck({readings, own}).out, "1 r, bare"));
  // 2026-11-27: of the file that told its stage --stage was asked for, which the file wins over.
  const std::string bare_told = planned.folder.write("bare.csv", "reading_error,0.4\nstage,Bare\n" + round_text());
  const std::string asked = planned.json({bare_told})["next"][0];
  CHECK(has(asked, "If it was the final surface that you measured, change the row stage,bare to stage,final ("));
  CHECK(has(asked, "bare.csv:2). "));
  CHECK_FALSE(has(asked + planned.recheck({bare_told}).out, "--stage"));
  CHECK(has(planned.json({readings})["next"][0], "say --stage final, or write the row stage,final above the header of "));
  const std::string none = planned.folder.write("none.csv", "stage,glassed\n" + round_text());
  CHECK(has(planned.recheck({none}).err, "none.csv:1: the plan's coats make no stage \"glassed\": choose from bare, final\n"));
  const Result refused = planned.recheck({readings}, {"--stage", "glassed"});
  CHECK(refused.status == 2);
  CHECK(refused.err == "--stage: the plan's coats make no stage \"glassed\": choose from bare, final\n");
}

TEST_CASE("recheck: the plan's folder or its plan.json, and the tolerance") {
  const Planned planned;
  const std::string readings = planned.folder.write("r.csv", round_text(1.5));
  const Result by_file = run({"recheck", planned.plan + "/plan.json", readings, "-o", planned.folder.at("a"), "--json"});
  const Result by_folder = run({"recheck", planned.plan, readings, "-o", planned.folder.at("b"), "--json"});
  CHECK(by_file.status == 0);
  CHECK(by_file.out == by_folder.out);
  CHECK(files_in(planned.folder.at("a")) == files_in(planned.folder.at("b")));
  CHECK(planned.json({readings}, {"--tolerance", "2mm"})["verdict"] == "nothing left");
  for (const char* wrong : {"0", "-1", "thick", "6mm", "30mm", "nan"}) {
    const Result refused = planned.recheck({readings}, {"--tolerance", wrong});
    CHECK(refused.status == 2);
    CHECK(has(refused.err, std::string("--tolerance: \"") + wrong + "\" is no tolerance: give a length from"));
  }
  // 2026-11-27: 0.5 in a job in inches was 12.7 mm, within which nothing was left to do.
  const Folder folder;
  REQUIRE(run({"plan", profile("dunlin"), "-o", folder.at("dunlin"), "--quiet"}).status == 0);
  const auto told = [&](const char* tolerance) {
    return run({"recheck", folder.at("dunlin"), readings, "-o", folder.at("c"), "--tolerance", tolerance}).err;
  };
  CHECK(told("0.5") ==
        "--tolerance: \"0.5\" is 12.7 mm (0.500 in), no tolerance: give a length from 0.01 mm to 5 mm, as in 0.5mm\n");
  CHECK(told("0.3in") ==
        "--tolerance: \"0.3in\" is 7.6 mm (0.300 in), no tolerance: give a length from 0.01 mm to 5 mm, as in 0.5mm\n");
  CHECK(has(told("1.25"), ", as in 1.25mm\n"));
  for (const std::string option : {"--tolerance", "--stage"})  // 2026-11-26: the default was taken without a word
    CHECK(planned.recheck({readings}, {option, ""}).err == option + ": is empty: give it a value, or leave it out\n");
}

TEST_CASE("2026-11-28: a hinge edge that was left, under coats, leaves nothing to do") {
  const Folder folder;
  std::string stations, round = "station,down,x,port,starboard\n";
  for (const auto& [name, down] : knot::stations) {
    std::string rows;
    for (const double f : blade::places14()) {
      const double x = 400 * f, y = 400 * blade::naca(0.12, f);
      const std::string row = knot::number(x) + ", " + knot::number(y) + ", " + knot::number(y);
      rows += (rows.empty() ? "[" : ", [") + row + "]";
      // Shaped to the surface under 0.5 mm of coats, but for the leading edge; the blend from 40 to 80 mm is not read.
      const double slope = f > 0 && f < 1 ? (blade::naca(0.12, f + 1e-4) - blade::naca(0.12, f - 1e-4)) / 2e-4 : 0;
      const std::string shaped = knot::number(x > 40 ? y - 0.5 * std::hypot(1, slope) : y);
      if ((x <= 40 || x >= 80) && f < 1)
        round += name + "," + knot::number(down) + "," + knot::number(x) + "," + shaped + "," + shaped + "\n";
    }
    stations += std::string(stations.empty() ? "" : ",") + "{\"name\": \"" + name + "\", \"down\": " + knot::number(down) +
                ", \"ahead\": 60, \"chord\": 400, \"readings\": [" + rows + "]}";
  }
  const std::string job = folder.write(
      "job.json", R"({"job": "Knot, a test", "reading_error": 0.2, "target": {"thickness": 0.12, "leading_edge": "leave"},)"
                  R"("coats": [{"name": "barrier", "thickness": 0.25, "layers": 2, "stage": "paint"}], "stations": [)" +
                      stations + "]}");
  REQUIRE(run({"plan", job, "-o", folder.at("plan"), "--quiet"}).status == 0);
  const Result result =
      run({"recheck", folder.at("plan"), folder.write("round.csv", round), "-o", folder.at("left"), "--tolerance", "0.2"});
  INFO(result.out << result.err);
  CHECK(result.status == 0);
  const auto json = Json::parse(bytes_of(folder.at("left") + "/recheck.json"));
  CHECK(json["verdict"] == "nothing left");
  CHECK(json["readings"]["within"] == 3 * 2 * 12);
  CHECK_FALSE(has(result.out, "TAKE OFF"));
}
