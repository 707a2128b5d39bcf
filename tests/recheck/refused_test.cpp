// Readings that are refused, each with its line, cause and remedy.
#include "catch.hpp"
#include "recheck/blades.hpp"

using namespace blades;

namespace {

std::string told(const std::string& text) { return blades::told(plan(), text); }

}  // namespace

TEST_CASE("refused readings") {
  const std::string header = "station,down,ahead,chord,x,port,starboard\n";
  CHECK(told(header + "A,,,,10,8,8\nD,,,,10,8,8\n") ==
        "r.csv:3: station \"D\" is not in the plan: give its height in a column \"down\"\n");
  CHECK(told("station,x,port\nstern,10,8\n") ==
        "r.csv:2: station \"stern\" is not in the plan: give its height in a column \"down\"\n");
  CHECK(told(header + "low,620,,,10,8,8\n") ==
        "r.csv:2: station low: no section at 620.0 mm down: the stations run from 0.0 mm to 600.0 mm: the plan has no "
        "target there: leave "
        "these readings out, or correct \"down\"\n");
  CHECK(told(header + "B,310,,,10,8,8\n") ==
        "r.csv:2: station B is at 310.0 mm down here and at 300.0 mm in the plan: correct \"down\", or give the new "
        "height a name of its own\n");
  CHECK(told(header + "X,300,,,10,8,8\n") ==
        "r.csv:2: station \"X\" is at 300.0 mm down, where the plan has station B: use the plan's name\n");
  CHECK(told(header + "X,310,,,10,8,8\nY,310,,,10,8,8\n") ==
        "r.csv:3: stations X and Y are at the same height: give them one name\n");
  CHECK(told(header + "B,,,,410,1,1\n") ==
        "r.csv:2: x = 410.0 mm lies 20.0 mm beyond the trailing edge of station B, whose chord is in the target 390.0 "
        "mm: check x and x_from, "
        "or give the chord as it is now in a column \"chord\"\n");
  CHECK(told(header + "B,,,395,400,1,1\n") ==
        "r.csv:2: x = 400.0 mm lies 5.0 mm beyond the trailing edge of station B, whose chord is 395.0 mm: check x, "
        "chord, ahead and x_from\n");
  CHECK(told(header + "B,,,,100,900,1\n") ==
        "r.csv:2: port 900.0 mm is more than twice the chord of station B: check the reading, and the units\n");
  CHECK(told("station,x,thickness\nB,100,-3\n") ==
        "r.csv:2: caliper -3.0 mm is less than nothing: check the reading, and the units\n");
  CHECK(told("thickness_of_paint,3\nstation,x,port\nB,10,8\n") ==
        "r.csv:1: \"thickness_of_paint\" stands above the header row: only units, x_from, board, measured_by, "
        "reading_error and stage may stand here: the target is "
        "the plan's\n");
  CHECK(told("stage,painted\nstation,x,port\nB,10,8\n") ==
        "r.csv:1: \"painted\" is no stage: write stage,bare or stage,glassed or stage,final\n");
  CHECK(told("x_form,stock\nstation,x,port\nB,10,8\n") ==
        "r.csv:1: \"x_form\" stands above the header row: did you mean \"x_from\"?\n");
  CHECK(told("reading_error,0\nstation,x,port\nB,10,8\n") ==
        "r.csv:1: \"reading_error\" is 0: give a length from 0.001 to 50 mm\n");
  CHECK(told("station,x,port_gap\nB,10,8\n") ==
        "r.csv:2: \"board\" of station B is missing: these are gaps: put a row board,DISTANCE above the header, the "
        "straightedge's distance "
        "from the centre plane\n");
  CHECK(has(told("station,x,port\nB,1O,8\n"), "r.csv:2: x is \"1O\", not a number"));
  CHECK(has(told("station,x,port\n"), "r.csv:1: "));
  CHECK(has(told("nothing here"), "r.csv: "));
  CHECK(has(told(""), "r.csv: the file is empty"));
  const auto gone = recheck::recheck(plan(), {"no-such.csv"}, {});
  REQUIRE_FALSE(gone);
  CHECK(one_line(gone.faults().front()) == "no-such.csv: there is no such file: check its name and folder");
}

TEST_CASE("2026-11-27: a row that stands twice above a round, or has too many values, is refused; a capital is none") {
  // The second won silently, and what stood beyond the first value counted for nothing.
  const std::string rows = "station,x,port\nB,10,8\n";
  CHECK(told("stage,final\nstage,bare\n" + rows) == "r.csv:2: \"stage\" stands twice (first on line 1): keep one of the two\n");
  CHECK(told("reading_error,0.5\nreading_error,2\n" + rows) ==
        "r.csv:2: \"reading_error\" stands twice (first on line 1): keep one of the two\n");
  CHECK(told("x_from,leading-edge\nboard,60\nx_from,stock\n" + rows) ==
        "r.csv:3: \"x_from\" stands twice (first on line 1): keep one of the two\n");
  CHECK(told("units,mm\nunits,in\nstation,x,port\nB,418.5,8\n") ==
        "r.csv:2: \"units\" stands twice (first on line 1): keep one of the two\n");
  CHECK(told("stage,final,bare\n" + rows) == "r.csv:1: \"stage\" is a list: write stage,bare or stage,glassed or stage,final\n");
  CHECK(has(told("reading_error,0,5\n" + rows), "r.csv:1: \"reading_error\" is a list: give a length from 0.001 to 50 mm"));
  CHECK(told("stage,Final\n" + round(none)) == "not refused");
}

TEST_CASE("a plan that knows no stock cannot use what is counted from it") {
  auto blind = plan();
  for (auto& station : blind.stations) station.target_ahead.reset();
  const Scratch folder;
  for (const auto& [text, words] :
       {std::pair<std::string, std::string>{"station,ahead,x,port\nB,60,10,8\n", "\"ahead\" of station B cannot be used"},
        {"x_from,stock\nstation,x,port\nB,10,8\n", "x of station B is counted from the stock"}}) {
    const auto out = recheck::recheck(blind, {folder.write("r.csv", text)}, {});
    REQUIRE_FALSE(out);
    CHECK(has(one_line(out.faults().front()), words));
  }
}

TEST_CASE("faults of every round are told") {
  const Scratch folder;
  const auto out = recheck::recheck(
      plan(), {folder.write("a.csv", "station,x,port\nZ,1,1\n"), folder.write("b.csv", "station,x,port\nY,1,1\n")}, {});
  REQUIRE_FALSE(out);
  REQUIRE(out.faults().size() == 2);
  CHECK(out.faults()[1].place.line == 2);
}

TEST_CASE("an ahead that puts the leading edge where none can be is refused") {
  // 2026-11-26: it was taken, and everything judged from there.
  const std::string text = "station,ahead,x,port\nB,600,0,0\nB,600,100,20\nB,600,200,20\n";
  CHECK(has(told(plan(), text), "\"ahead\" of station B puts its leading edge 540.0 mm ahead of the target's: "));
  CHECK(has(told(plan(), "station,ahead,x,port\nB,-200,0,0\nB,-200,100,20\n"),
            "puts its leading edge 260.0 mm aft of the target's: "));
}
