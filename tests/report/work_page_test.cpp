// The work on the page and in the order of work: the numbers set by hand in hand_made_work.hpp, where a reader looks for them.
#include <regex>

#include "catch.hpp"
#include "has.hpp"
#include "report/hand_made_work.hpp"
#include "report/html_parts.hpp"
#include "report/order_words.hpp"

using namespace fairblade;

namespace {

// The page's words without its markup, blanks run together.
std::string words_of(const std::string& html) {
  const std::string bare = std::regex_replace(html, std::regex("<[^>]*>"), " ");
  return std::regex_replace(bare, std::regex("\\s+"), " ");
}

// Every sentence of one step.
std::string said(const report::Plan& plan, fill::Task task) {
  fill::Step step;
  step.task = task;
  step.zone = fill::Zone::faces;
  step.coat = 0;
  step.depth = 0.5;
  const auto words = report::words_of(plan, step);
  std::string out = words.title + ".";
  for (const auto& one : words.sentences) out += " " + one;
  return out;
}

job::Coat coat(const std::string& stage, double thickness) {
  job::Coat out;
  out.name = out.stage = stage;
  out.thickness = thickness;
  return out;
}

}  // namespace

TEST_CASE("the mixing table shows both ratios, and resin, hardener and powder by mass and by volume") {
  auto plan = hand_made::worked();
  plan.work.mixes[1].mix.litres = 2;
  plan.work.mixes[1].mix.resin_kg = 0.8;
  plan.work.mixes[1].mix.resin_litres = 0.7;
  plan.work.mixes[1].mix.hardener_kg = 0.35;
  plan.work.mixes[1].mix.hardener_litres = 0.34;
  plan.work.mixes[1].mix.powder_kg = 0.45;
  plan.work.mixes[1].mix.ratio_by_weight = {100, 43.5};
  plan.work.mixes[1].mix.paste_density = 0.8;
  const std::string page = words_of(report::mix_part(plan));
  for (const char* words :
       {"Faces", "2.00 L", "800 g (700 mL)", "350 g (340 mL)", "450 g (375 mL)", "100 : 43.5", "100 : 50", "0.80 kg"}) {
    INFO(words << "\n" << page);
    CHECK(has(page, words));
  }
  CHECK_FALSE(has(page, "are estimates too"));
  plan.work.mixes[1].mix.other_ratio_estimated = true;
  CHECK(has(words_of(report::mix_part(plan)), "the ratio that you did not give, and the millilitres, are estimates too"));
}

TEST_CASE("a batch is weighed or poured, and has its minutes") {
  auto plan = hand_made::worked();
  fill::PassBatches& batch = plan.work.batches[0];
  batch.batch_g = 250;
  batch.resin_g = 130;
  batch.resin_ml = 112;
  batch.hardener_g = 50;
  batch.hardener_ml = 46;
  batch.powder_g = 70;
  batch.minutes = 31;
  batch.spread_minutes = 5;
  const std::string page = words_of(report::batches_part(plan));
  for (const char* words : {"250 g", "130 g (112 mL)", "50 g (46 mL)", "70 g (62 mL)", "31 minutes", "5 minutes"}) {
    INFO(words << "\n" << page);
    CHECK(has(page, words));
  }
  CHECK_FALSE(has(page, "smaller than that"));
  batch.smaller_for_time = true;
  CHECK(has(words_of(report::batches_part(plan)), "so that it can be spread before it goes off"));
}

TEST_CASE("a pass tells when the next may follow, when it may be sanded, and whether it outlasts its batch") {
  auto plan = hand_made::worked();
  fill::Step step;
  step.task = fill::Task::prefill;
  step.zone = fill::Zone::faces;
  step.batches = 0;
  step.pass = 1;
  step.passes = 2;
  step.litres = 1.25;
  step.stations = {"B"};
  const auto all = [&] {
    std::string out;
    for (const auto& one : report::words_of(plan, step).sentences) out += one + " ";
    return out;
  };
  CHECK(report::words_of(plan, step).title == "Fill the lows of the faces, pass 1 of 2: 1.25 L");
  CHECK(has(all(),
            "The next pass follows after 6 to 24 hours without sanding; later than that wash with clean water and "
            "abrade first."));
  CHECK_FALSE(has(all(), "do it in parts"));
  plan.work.batches[0].cannot_spread_in_time = true;
  CHECK(has(all(), "longer than a batch stays workable, so do it in parts that end at a station"));
  plan.work.batches[0].overcoat.reset();
  CHECK(has(all(), "data sheet tells when the next pass may follow"));
  step.task = fill::Task::fill_faces;
  plan.work.batches[0].sand_after_hours = 16;
  CHECK(has(all(), "Sand after 16 hours, not sooner."));
}

TEST_CASE("how thick a strip bends, and how long a block may be") {
  auto plan = hand_made::worked();
  plan.work.schedule.longboard = {300, 3};
  CHECK(has(said(plan, fill::Task::longboard),
            "Plywood up to 3.0 mm thick still bends to the roundest place of the faces "
            "(radius 300.0 mm)."));
  plan.work.schedule.longboard = {1e5, 1000};
  CHECK(has(said(plan, fill::Task::longboard), "any board bends to them"));
  plan.work.schedule.blocks = {{"A", fill::Face::port, 120, 0.3, 1000.0, false, 40.0},
                               {"A", fill::Face::starboard, 120, 0.3, 900.0, false, 37.9},
                               {"B", fill::Face::port, 120, 0.3, {}, true, {}}};
  const std::string page = words_of(report::order_part(plan));
  CHECK(has(page, "Station 30 % A 38 B any"));  // the shorter of the two faces'
}

TEST_CASE("passes with their stations, and the offer of a board") {
  const std::string page = words_of(report::passes_part(hand_made::worked()));
  CHECK(has(page, "Faces 1 of 1 5.5 0.0 1.25 L A and B"));
  CHECK(has(page,
            "a board of wood or foam 12.0 mm thick, bonded in over 0.050 m² under 3.0 mm of filler, would save 0.60 L and "
            "leave 1 pass"));
}

TEST_CASE("strips of cloth round the nose: how many, how wide, and what is left") {
  auto plan = hand_made::worked();
  std::string page = words_of(report::coats_part(plan));
  CHECK(has(page, "One layer of the cloth is 0.25 mm thick"));
  CHECK(has(page, "A 4.0 8 90 and 60 2.0"));  // to build up, layers, widths, left
  CHECK(has(page, "B 1.0 0 none 1.0"));
  plan.work.coats.nose_glass->stations[0].strip_widths = {90.2, 89.8, 90, 60, 59.6, 30};  // like ones are counted
  CHECK(has(words_of(report::coats_part(plan)), "3 × 90, 2 × 60 and 30"));
  plan.work.coats.nose_glass->cloth_area = 0;
  page = words_of(report::coats_part(plan));
  CHECK_FALSE(has(page, "90 and 60"));
  CHECK(has(page, "it is all filler"));
}

TEST_CASE("a part-pack is weighed out and used in time, and the coats of a day go by the clock") {
  auto plan = hand_made::worked();
  plan.job.workshop.dusk = 19 * 60;
  plan.work.coats.coats[0].cloth.reset();
  plan.work.coats.coats[0].patches = 0.02;
  const std::string page = words_of(report::coats_part(plan));
  // Two mixes of 50 mL or 80 g, a tenth of a pack: 64 g base, 16.0 g hardener, 2 or 3 mL of thinner.
  for (const char* words : {"50 mL, 80 g", "10 %", "64 g", "16.0 g", "20 minutes", "15 minutes"}) {
    INFO(words << "\n" << page);
    CHECK(has(page, words));
  }
  const std::string step = said(plan, fill::Task::coat);
  INFO(step);
  CHECK(has(step, "Weigh out 2 mixes a layer, each 80 g (64 g base, 16.0 g hardener), 10 % of a pack"));
  CHECK(has(step, "Use each within 20 minutes: it takes 15 minutes."));
  CHECK(has(step, "layer 1 at 9:00 (10:00 at the latest). Done at 9:29; dusk is at 19:00."));
  CHECK(has(step, "coated again 0.5 to 3 hours after it was coated; later it must be sanded first"));
  CHECK(has(step, "Leave 0.02 m² under the supports for later."));
}

TEST_CASE("the shopping list has packs and cost, and what two coatings cost a year") {
  auto plan = hand_made::worked();
  plan.job.packs.currency = plan.work.shopping.currency = "shells";
  plan.work.shopping.cost = 40;
  const std::string page = words_of(report::shopping_part(plan));
  CHECK(has(page, "Epoxy resin 1.50 kg 2 × 1 kg 40.00 shells"));
  CHECK(has(page, "40.00 shells; not everything has one."));
  CHECK(has(page, "A year of soft costs 50.00 shells, a year of hard 40.00 shells. The dearer must last 8 years"));
}

TEST_CASE("the blade is kept three degrees above the dew point, or nothing is begun") {
  auto plan = hand_made::worked();
  plan.work.schedule.dew_point = 12;  // 20 °C and 60 %
  CHECK(has(said(plan, fill::Task::clean), "colder than 12.0 °C: fill and coat only while the blade itself is 15.0 °C or more."));
  plan.work.schedule.too_damp = true;
  CHECK(has(said(plan, fill::Task::clean), "it is too damp to begin"));
}

TEST_CASE("each stage of the work is tried with its own templates") {
  auto plan = hand_made::worked();
  plan.job.coats.clear();
  CHECK_FALSE(has(said(plan, fill::Task::templates), "marked"));
  plan.job.coats = {coat("glass", 0.4), coat("paint", 0.1)};
  const std::string bare = said(plan, fill::Task::templates);
  CHECK(has(bare, "Those marked \"bare\": they leave room for the 0.5 mm a side of coats that are still to come."));
  CHECK(has(bare, "touches all along when the section is right"));
  plan.work.coats.coats[0].stage = "glass";
  CHECK(has(said(plan, fill::Task::coat), "try the templates marked \"glassed\""));
  plan.job.coats = {coat("paint", 0.1)};
  plan.work.coats.coats[0].stage = "paint";
  CHECK_FALSE(has(said(plan, fill::Task::coat), "glassed"));
}

TEST_CASE("a zone with nothing to add has no range, and a mix too small to weigh is taken from another") {
  auto plan = hand_made::worked();
  plan.work.zones.by_zone[1].high = plan.work.zones.whole.high = 1.5;  // the other two have nothing
  std::string page = words_of(report::litres_part(plan));
  CHECK_FALSE(has(page, "0.00 and 0.00"));
  CHECK(has(page, "nothing to add"));
  CHECK(has(page, "The readings are not perfect"));
  plan.work.zones.whole.low = plan.work.zones.whole.high = 0;
  CHECK_FALSE(has(words_of(report::litres_part(plan)), "The readings are not perfect"));
  plan.work.batches.push_back(plan.work.batches.front());
  for (auto& one : plan.work.batches) one.batch_g = 50;
  CHECK_FALSE(has(words_of(report::batches_part(plan)), "from another mix"));
  const auto pass_words = [&] {
    std::string out;
    for (const auto& one : report::words_of(plan, plan.work.order.front()).sentences) out += one + " ";
    return out;
  };
  CHECK(has(pass_words(), "4 batches of 50 g"));
  plan.work.batches[1].batch_g = 0.4;  // as Dunlin's leading edge was told to be mixed, 2026-11-26
  CHECK(has(words_of(report::batches_part(plan)), "less than 5 g"));
  plan.work.batches[0].batch_g = 0.4;
  CHECK(words_of(report::batches_part(plan)).empty());
  CHECK(has(pass_words(), "take it from another mix"));
  CHECK_FALSE(has(pass_words(), "4 batches"));
}
