// fairblade recheck and what lies on the disk: plans that are none, earlier results, and where results go.
#include "catch.hpp"
#include "cli/knot.hpp"

using namespace knot;

TEST_CASE("recheck: plans that are refused") {
  const Planned planned;
  const Folder& folder = planned.folder;
  const std::string readings = folder.write("r.csv", round_text());
  const std::string whole = bytes_of(planned.plan + "/plan.json");
  const auto told = [&](const std::string& plan) {
    const Result result = run({"recheck", plan, readings, "-o", folder.at("never")});
    CHECK(result.status == 2);
    CHECK(result.out.empty());
    CHECK_FALSE(fs::exists(folder.at("never")));
    return result.err;
  };
  fs::create_directory(folder.at("empty"));
  const std::string give = "give the folder that fairblade plan wrote, or its plan.json\n";
  CHECK(told(folder.at("empty")) == folder.at("empty") + ": there is no plan.json in this folder: " + give);
  CHECK(told(folder.at("none")) == folder.at("none") + ": there is no such file: check its name and folder\n");
  CHECK(told(planned.job) ==
        planned.job + ": this is a job file, not a plan: plan it first, and give the folder that fairblade plan wrote\n");
  const std::string foreign = folder.write("plan.json", "{ \"version\": 3, \"stations\": [] }");
  CHECK(told(foreign) == foreign + ": this is no plan of fairblade's: " + give);
  const std::string cut = folder.write("cut.json", whole.substr(0, whole.size() / 2));
  CHECK(has(told(cut), ": the file breaks off here: "));
  const auto without = [&](const std::string& key, auto&& change) {
    Json json = Json::parse(whole);
    change(json);
    const std::string file = folder.write(key + ".json", json.dump(1));
    return told(file).substr(file.size());
  };
  const std::string older =
      " it was written by another version of fairblade: plan the job again with this one, into a new folder\n";
  CHECK(without("stages", [](Json& json) { json.erase("stages"); }) == ":1: this plan has no \"stages\":" + older);
  CHECK(has(without("curve", [](Json& json) { json["stations"][0]["target"].erase("curve"); }),
            "this plan has no \"curve\":" + older));
  CHECK(has(without("short", [](Json& json) { json["stations"][0]["target"]["curve"]["port"].erase(5); }),
            "the target's curve of station A is not whole: " + give));
  const auto not_whole = [&](const std::string& name, auto&& change) {
    return has(without(name, [&](Json& json) { change(json["stations"][0]["target"]); }),
               "the target's curve of station A is not whole: ");
  };
  CHECK(not_whole("wide", [](Json& target) { target["curve"]["port"][50] = 5000; }));  // 2026-11-26
  CHECK(not_whole("chord", [](Json& target) { target["chord"] = target["chord"].get<double>() * 10; }));
  CHECK(not_whole("long", [](Json& target) {
    for (Json& x : target["curve"]["x"]) x = x.get<double>() * 10;
  }));
  CHECK(has(without("text", [](Json& json) { json["stations"][1]["down"] = "300"; }),
            "\"down\" is the text \"300\": take the quotes off the number\n"));
  CHECK(has(without("unit", [](Json& json) { json["units"] = "cubits"; }), "\"units\" is none of mm, cm and in: "));
  CHECK(has(without("list", [](Json& json) { json["stations"] = 3; }), "\"stations\" is 3: " + give));
  CHECK(has(without("emptied", [](Json& json) { json["stations"] = Json::array(); }), ": this plan has no stations: " + give));
  CHECK(has(without("order", [](Json& json) { json["stations"][2]["down"] = 10; }),
            "station C does not lie below the one before it: " + give));
  // Readings of the plan are taken as the file is read, and told at their line all the same, the first that is wrong.
  CHECK(has(without("offset", [](Json& json) { json["stations"][1]["offsets"][3]["x"] = "12"; }),
            "\"x\" is the text \"12\": take the quotes off the number\n"));
  CHECK(has(without("side", [](Json& json) { json["stations"][2]["offsets"][0]["side"] = "upper"; }),
            "\"side\" is \"upper\": " + give));
  CHECK(has(without("row", [](Json& json) { json["stations"][0]["offsets"][1] = 7; }), "\"offsets\" is 7: " + give));
  CHECK(
      has(without("no-rows", [](Json& json) { json["stations"][0].erase("offsets"); }), "this plan has no \"offsets\":" + older));
  CHECK(has(without("rows", [](Json& json) { json["stations"][0]["offsets"] = "none"; }),
            "\"offsets\" is the text \"none\": " + give));
  CHECK(has(without("both",
                    [](Json& json) {
                      json["stations"][0]["offsets"][1].erase("measured");
                      json["stations"][1]["down"] = "300";
                    }),
            "\"down\" is the text \"300\""));
  const Result check = run({"check", planned.job, "--json"});
  CHECK(has(told(folder.write("check.json", check.out)), ": fairblade wrote this, but it is no plan: " + give));
}

TEST_CASE("recheck: earlier results stay whole") {
  const Planned planned;
  const std::string good = planned.folder.write("r.csv", round_text(1.5)),
                    bad = planned.folder.write("bad.csv", "station,x,port\nZ,1,1\n");
  REQUIRE(planned.recheck({good}).status == 0);
  const auto before = files_in(planned.folder.at("left"));
  CHECK(before.size() == 3);
  CHECK(planned.recheck({bad}).status == 2);
  CHECK(planned.recheck({good, bad}).status == 2);
  CHECK(files_in(planned.folder.at("left")) == before);
  // Again: the same bytes, and what the owner put beside them stays.
  planned.folder.write("left/note.txt", "mine");
  REQUIRE(planned.recheck({good}).status == 0);
  auto after = files_in(planned.folder.at("left"));
  CHECK(after["note.txt"] == "mine");
  after.erase("note.txt");
  CHECK(after == before);
  // Not into the plan's own folder, nor another's, nor below a file.
  const auto plan = files_in(planned.plan);
  const Result own = run({"recheck", planned.plan, good, "-o", planned.plan});
  CHECK(own.status == 3);
  CHECK(own.err == planned.plan + ": is not empty and holds no earlier recheck: give a new or an empty folder with -o\n");
  CHECK(files_in(planned.plan) == plan);
  CHECK(run({"recheck", planned.plan, good, "-o", good + "/under"}).status == 3);
  CHECK(run({"recheck", planned.plan, good, "-o", ""}).status == 2);
}

TEST_CASE("recheck: where results go unless told") {
  const Planned planned;
  const fs::path here = fs::current_path();
  const std::string good = planned.folder.write("r.csv", round_text());
  fs::current_path(planned.folder.at(""));
  const int by_folder = run({"recheck", "knot", "r.csv", "--quiet"}).status;
  const bool there = fs::exists("out/knot-recheck/what-is-left.svg");
  fs::remove_all("out");
  fs::current_path("knot");
  const int from_inside = run({"recheck", ".", "../r.csv", "--quiet"}).status;
  const bool there_too = fs::exists("out/knot-recheck/recheck.json");
  fs::current_path(here);
  CHECK(by_folder == 0);
  CHECK(there);
  CHECK(from_inside == 0);
  CHECK(there_too);
}
