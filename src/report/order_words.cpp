#include "report/order_words.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "fill/stages.hpp"
#include "report/report.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

using fill::Step;
using fill::Task;

std::string zone_words(const Step& step) { return fill::name_of(step.zone.value_or(fill::Zone::faces)); }

StepWords mark_words(const Plan& plan) {
  std::vector<std::string> stations;
  for (const auto& one : plan.measured) stations.push_back(one.station + " at " + both_units(one.down, plan.job.units));
  return {"Draw the stock's line and every station on both faces",
          {"Below the top: " + listed(stations) + ". Paint hides pencil: carry the marks round the edges, and onto a batten."}};
}

std::string dew_words(const Plan& plan) {
  const fill::Schedule& schedule = plan.work.schedule;
  const job::Workshop& shop = plan.job.workshop;
  return "At " + trimmed(shop.temperature, 1) + " °C and " + trimmed(shop.humidity_percent, 0) +
         " % humidity dew falls on what is colder than " + fixed(schedule.dew_point, 1) +
         " °C: fill and coat only while the blade itself is " + fixed(schedule.dew_point + fill::dew_point_room, 1) +
         " °C or more" + (schedule.too_damp ? ". That is warmer than the workshop: it is too damp to begin." : ".");
}

std::string batch_words(const fill::PassBatches& one) {
  const auto g = [](double value) { return fixed(value, value < 20 ? 1 : 0) + " g"; };
  std::string out = counted(static_cast<std::size_t>(one.count), "batch", "batches") + " of " + g(one.batch_g) + ": " +
                    g(one.resin_g) + " resin, " + g(one.hardener_g) + " hardener, " + g(one.powder_g) +
                    " powder. Each stays workable for " + minutes_words(one.minutes) + " and takes " +
                    minutes_words(one.spread_minutes) + " to spread";
  if (one.count > 1) out += "; the pass takes " + minutes_words(one.pass_minutes);
  if (one.cannot_spread_in_time)
    out += ", longer than a batch stays workable, so do it in parts that end at a station, port and starboard apart";
  return out + ".";
}

std::string wait_words(const fill::PassBatches& one, bool last) {
  std::string out;
  if (!last) {
    out = one.overcoat ? "The next pass follows after " + hours_words(*one.overcoat) +
                             " without sanding; later than that wash with clean water and abrade first."
                       : "The filler's data sheet tells when the next pass may follow; once it is hard, wash with clean water "
                         "and abrade first.";
  } else {
    out = one.sand_after_hours ? "Sand after " + trimmed(*one.sand_after_hours, 1) + " hours, not sooner."
                               : "The data sheet tells when it can be sanded: not while it still clogs the paper.";
  }
  return out;
}

StepWords pass_words(const Plan& plan, const Step& step) {
  const std::string where = step.stations.empty() ? "between the stations" : "at " + listed(step.stations);
  StepWords out;
  switch (step.task) {
    case Task::prefill: out.title = "Fill the lows of the " + zone_words(step); break;
    case Task::fill_edge: out.title = "Shape the " + zone_words(step); break;
    default: out.title = "Screed the faces";
  }
  out.title += ", pass " + std::to_string(step.pass) + " of " + std::to_string(step.passes) + ": " + litres(step.litres);
  out.sentences.push_back("Up to " + both_units(step.depth, plan.job.units) + " deep, " + where + ".");
  if (step.task == Task::fill_faces) {
    out.sentences.push_back(
        "Ride the screed from station to station along lines of equal chord fraction, over the whole face "
        "at once: late patches make waves.");
  }
  if (step.task == Task::fill_edge) {
    out.sentences.push_back(*step.zone == fill::Zone::leading_edge
                                ? "Run it along a batten or the nose gauge, and leave it a little proud."
                                : "Build it out against a taped straight batten, fair the taper, then cut to length.");
  }
  if (step.batches) {
    const auto& batches = plan.work.batches[*step.batches];
    out.sentences.push_back(batches.batch_g > 0 && batches.batch_g < least_batch_g
                                ? "That is a few grams at most: take it from another mix of the same paste."
                                : batch_words(batches));
    out.sentences.push_back(wait_words(batches, step.task != Task::prefill));
  }
  return out;
}

StepWords longboard_words(const Plan& plan) {
  const fill::Longboard& board = plan.work.schedule.longboard;
  constexpr double any_board = 12;  // mm: thicker ply than this nobody bends
  const std::string strip = board.thickness >= any_board ? "The faces are so flat that any board bends to them."
                                                         : "Plywood up to " + both_units(board.thickness, plan.job.units) +
                                                               " thick still bends to the roundest place of the faces (radius " +
                                                               both_units(board.radius, plan.job.units) + ").";
  return {
      "Longboard the faces until the marks of the highs vanish",
      {strip, "Work along the blade and slanting, never round the chord. How long a flat block may be is in the table below."}};
}

StepWords template_words(const Plan& plan, const Step& step) {
  StepWords out{"Try the templates at every station, port and starboard", {}};
  const auto stages = fill::stages_of(plan.job);
  if (stages.size() > 1) {
    out.sentences.push_back(
        "Those marked \"" + std::string(fill::name_of(stages.front().kind)) + "\": they leave room for the " +
        both_units(step.depth, plan.job.units) +
        " a side of coats that are still to come. The trailing edge is narrower now by the table under \"coats\".");
  }
  out.sentences.push_back(
      "A template touches all along when the section is right. Fill again only where it stands off, and over a "
      "wide area.");
  return out;
}

void day_words(const Plan& plan, const fill::OneDay& day, StepWords& out) {
  std::vector<std::string> starts;
  for (const auto& one : day.coats) {
    starts.push_back("layer " + std::to_string(one.number) + " at " + fill::clock_text(one.start) + " (" +
                     fill::clock_text(one.latest) + " at the latest)");
  }
  out.sentences.push_back("All in one day, each " + minutes_words(day.coat_minutes) + " to put on: " + listed(starts, 50) +
                          ". Done at " + fill::clock_text(day.coats.back().end) + "; dusk is at " +
                          fill::clock_text(plan.job.workshop.dusk) + ".");
}

void paint_words(const Plan& plan, std::size_t k, StepWords& out) {
  const fill::CoatPlan& coat = plan.work.coats.coats[k];
  out.sentences.push_back(litres(coat.litres_a_layer) + " on the blade a layer, " + litres(coat.litres) + " in all with loss" +
                          (coat.packs > 0 ? ", " + fixed(coat.packs_used, 2) + " of a pack" : "") + ".");
  if (!coat.part_pack) return;
  const fill::PartPack& part = *coat.part_pack;
  const auto g = [](double value) { return fixed(value, value < 20 ? 1 : 0) + " g"; };
  std::string mix = "Weigh out " + counted(static_cast<std::size_t>(part.mixes), "mix", "mixes") + " a layer, each " +
                    (part.grams ? g(*part.grams) : fixed(1000 * part.litres, 0) + " mL");
  if (part.base_g && part.hardener_g) mix += " (" + g(*part.base_g) + " base, " + g(*part.hardener_g) + " hardener)";
  if (part.of_a_pack > 0) mix += ", " + fixed(100 * part.of_a_pack, 0) + " % of a pack";
  if (part.thinner_ml > 0) mix += ", and " + fixed(part.thinner_ml, 0) + " mL of thinner";
  out.sentences.push_back(mix + ". Use each within " + minutes_words(part.minutes) + ": it takes " +
                          minutes_words(part.minutes_to_use) + ".");
}

StepWords coat_words(const Plan& plan, const Step& step) {
  const std::size_t k = *step.coat;
  const fill::CoatPlan& coat = plan.work.coats.coats[k];
  const job::Coat& asked = plan.job.coats[k];
  StepWords out{capital(coat.name) + ": " + counted(static_cast<std::size_t>(coat.layers), "layer") + " over " +
                    fixed(coat.area, 2) + " m²",
                {}};
  if (coat.cloth) {
    out.sentences.push_back("Cut " + fixed(coat.cloth->area, 2) + " m² of cloth and mix " + grams(coat.cloth->resin_kg) +
                            " of resin and hardener to wet it out.");
  } else {
    paint_words(plan, k, out);
  }
  const auto& days = plan.work.schedule.days;
  const auto day = std::find_if(days.begin(), days.end(), [&](const auto& one) { return one.index == k; });
  if (day != days.end()) day_words(plan, *day, out);
  if (asked.recoat) {
    out.sentences.push_back("A place may be coated again " + hours_words(*asked.recoat) +
                            " after it was coated; later it must be sanded first.");
  } else if (coat.layers > 1) {
    out.sentences.push_back("The data sheet tells how long to wait between layers, and how long at most.");
  } else if (k + 1 < plan.job.coats.size()) {
    out.sentences.push_back("The data sheet tells how long to wait before the next coat, and how long at most.");
  }
  const bool last_of_glass = coat.stage == "glass" && (k + 1 == plan.job.coats.size() || plan.job.coats[k + 1].stage != "glass");
  const auto stages = fill::stages_of(plan.job);
  const bool glassed =
      std::any_of(stages.begin(), stages.end(), [](const auto& one) { return one.kind == fill::StageKind::glassed; });
  if (last_of_glass && glassed) out.sentences.push_back("When it is hard and smooth, try the templates marked \"glassed\".");
  if (coat.patches > 0) out.sentences.push_back("Leave " + fixed(coat.patches, 2) + " m² under the supports for later.");
  return out;
}

}  // namespace

StepWords words_of(const Plan& plan, const Step& step) {
  const auto mm = [&](double value) { return both_units(value, plan.job.units); };
  switch (step.task) {
    case Task::look_over:
      return {"Look the blade over before anything is filled",
              {"Cracks, a wet core or a corroded stock go to a surveyor first: fairing adds no strength. Support it so that it "
               "cannot fall, and never work under a hanging rudder."}};
    case Task::mark: return mark_words(plan);
    case Task::strip:
      return {"Strip the " + mm(step.depth) + " of old coating that was measured over",
              {"Wet, contained, and taken away as hazardous waste."}};
    case Task::take_off:
      return {"Take off the highs: " + litres(step.litres) + " in all",
              plan.work.before_coats ? std::vector<std::string>{capital(before_coats_words(plan)) + ".", under_coats_words(plan)}
                                     : std::vector<std::string>{"Deepest " + deepest_place(plan, true) +
                                                                ". The tables of the stations and the templates tell where."}};
    case Task::clean:
      return {plan.work.coats.wetted.filled > 0 ? "Wash, abrade and dust off what will be filled"
                                                : "Wash, abrade and dust off what will be sealed or coated",
              {"Clean water first, then coarse paper (80 grit is usual), then no more fingers on it.", dew_words(plan)}};
    case Task::core:
      return {"If you like: bond a board of wood or foam " + mm(step.depth) + " thick into the " + zone_words(step),
              {"Over " + fixed(step.area, 3) + " m² it saves " + litres(step.litres) +
               " of filler; the passes below are without it."}};
    case Task::nose_glass:
      return {"Build up the nose in cloth: " + fixed(step.area, 2) + " m² in strips",
              {"Innermost and widest first, as the table under \"coats\" has them. They take " + litres(step.litres) +
               " that is then not filler."}};
    case Task::prefill:
    case Task::fill_edge:
    case Task::fill_faces: return pass_words(plan, step);
    case Task::longboard: return longboard_words(plan);
    case Task::templates: return template_words(plan, step);
    case Task::seal:
      if (!(step.area > 0)) {
        return {"Seal what was cut",
                {"Wood, cloth and old filler that were cut or sanded bare take up water: neat epoxy over them, sanded when hard, "
                 "and then the coats that the rest of the blade has."}};
      }
      return {"Seal what is filled with neat epoxy, and close its pinholes: " + litres(step.litres),
              {"Over " + fixed(step.area, 2) +
               " m²: squeeze it in with a flat spreader, look again from the side in low light, and "
               "sand when hard. What was cut bare elsewhere is sealed as well."}};
    case Task::coat: return coat_words(plan, step);
    case Task::patches:
      return {"Turn the blade and coat the " + fixed(step.area, 2) + " m² that the supports hid",
              {"The same layers as the rest."}};
    case Task::measure:
      return {"Measure again at the stations, and keep the readings",
              {"They tell what was reached, and begin the next refit.",
               "After every round of filling too: fairblade recheck FOLDER READINGS.csv, with the folder of this report and a "
               "CSV of the new readings, lists what is still high or low."}};
  }
  return {};
}

}  // namespace fairblade::report
