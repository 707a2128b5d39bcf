#include "drawing/nose_table.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/flow.hpp"
#include "drawing/lettering.hpp"
#include "drawing/template_drawing.hpp"

namespace fairblade::drawing {
namespace {

using fill::Nose;

constexpr double name_width = 20;

/// Every height that has no gauge, those of one reason together.
std::vector<std::string> said_of_none(const std::vector<Nose>& noses) {
  std::vector<std::string> out;
  for (std::size_t k = 0; k < noses.size(); ++k) {
    const std::string& why = noses[k].why_none;
    if (why.empty()) continue;
    const auto same = [&](const Nose& one) { return one.why_none == why; };
    if (std::find_if(noses.begin(), noses.end(), same) != noses.begin() + static_cast<std::ptrdiff_t>(k)) continue;
    std::string names;
    for (const Nose& one : noses) {
      if (same(one)) names += (names.empty() ? "" : ", ") + printable(one.name);
    }
    out.push_back("No gauge (" + names + "): " + why + ".");
  }
  return out;
}

Grid nose_grid(const job::Job& job, const std::vector<Nose>& noses) {
  Grid grid;
  const auto unit = job.units;
  grid.columns = {{"", "", name_width, true},
                  {"", "below the top", 14},
                  {"nose", "radius", 11},
                  {"nose", "gauge to", 12},
                  {"nose", "girth", 12},
                  {"nose", "cloth", 12},
                  {"flexible sheet", "gap for the radius", 16},
                  {"flexible sheet", "hold at", 12},
                  {"flexible sheet", "gap there", 12},
                  {"flexible sheet", "bends to", 12},
                  {"flexible sheet", "blunter by", 13},
                  {"at gauge's end", "gap", 12},
                  {"at gauge's end", "falls short", 16}};
  const auto number = [unit](double mm) { return number_in_unit(mm, unit); };
  for (const Nose& nose : noses) {
    if (!nose.why_none.empty()) {
      grid.rows.push_back({nose.name, number(nose.down), "no gauge: " + nose.why_none});
      continue;
    }
    const fill::Hold& hold = nose.hold;
    const double blunter = hold.radius - nose.radius;
    grid.rows.push_back({nose.name, number(nose.down), number(nose.radius), number(nose.tail), number(nose.girth),
                         number(nose.cloth), number(hold.gap_for_radius), number(hold.x), number(hold.gap), number(hold.radius),
                         blunter > 0 ? number(blunter) : "sharper", number(hold.end_gap),
                         hold.short_at_end > 0 ? number(hold.short_at_end) : "reaches"});
  }
  return grid;
}

/// Do both faces have the same flats, to a hundredth?
bool alike(const std::vector<Nose>& noses) {
  for (const Nose& nose : noses) {
    for (std::size_t k = 0; k < fill::flat_degrees.size(); ++k) {
      const auto &port = nose.flats[0][k], &starboard = nose.flats[1][k];
      if (port.has_value() != starboard.has_value()) return false;
      if (port && std::hypot(port->x - starboard->x, port->half_breadth - starboard->half_breadth) > 0.01) return false;
    }
  }
  return true;
}

Grid flats_grid(const job::Job& job, const std::vector<Nose>& noses) {
  Grid grid;
  const bool one = alike(noses);
  const double each = one ? 16 : 9.6;
  grid.columns.push_back({"", "", name_width, true});
  for (const char* side : {"port ", "starb. "}) {
    if (one && *side == 's') break;
    for (const double degrees : fill::flat_degrees) {
      const std::string group = (one ? "both faces " : side) + trimmed(degrees, 0) + "\xc2\xb0";
      grid.columns.push_back({group, "x", each});
      grid.columns.push_back({group, "half", each});
    }
  }
  for (const Nose& nose : noses) {
    if (!nose.why_none.empty()) continue;
    std::vector<std::string> row{nose.name};
    for (const auto& face : nose.flats) {
      if (one && &face != &nose.flats.front()) break;
      for (const auto& flat : face) {
        row.push_back(flat ? number_in_unit(flat->x, job.units) : "-");
        row.push_back(flat ? number_in_unit(flat->half_breadth, job.units) : "-");
      }
    }
    grid.rows.push_back(row);
  }
  return grid;
}

void what_it_means(Flow& flow, const job::Job& job, const fill::Stage& stage, const std::vector<Nose>& noses) {
  flow.paragraph("All lengths in " + unit_words(job) + ", at this stage of the work; x runs aft from this stage's leading edge.");
  if (stage.to_come > 0) {
    flow.paragraph("Coats still to come are " + length_words(stage.to_come, job) +
                   " a side: the finished leading edge stands that much further forward, and is that much blunter.");
  }
  flow.paragraph(
      "Gauge to: where its tail ends. Girth: round the nose between the gauge's two ends. Cloth: the width that wraps it, girth "
      "and " +
      length_words(fill::cloth_lap, job) + " of lap on either face (common practice, no source).");
  flow.paragraph(
      "Flats: before the nose is rounded, plane flats at 60, 45, 30 and 15 degrees to the chord line; each touches the finished "
      "curve at x and "
      "half-breadth (half). Knock the corners between them off last. They need no gauge.");
  flow.paragraph(
      "Flexible sheet: held with its two sides parallel and a gap apart, it bends to a tip radius of 0.417 of the gap, and its "
      "tip stands "
      "0.835 of the gap ahead of where it is held (two-point bend of an elastic strip). Held on the blade, the gap is the "
      "blade's thickness. "
      "Hold at: the place furthest aft from which the tip still reaches the leading edge. Bends to: its radius there, which is "
      "blunter than "
      "the nose asked for, so that it leaves the nose too full: finish by the gauge. Held further aft the tip falls short and "
      "wipes the nose away.");
  const bool too_sharp = std::any_of(noses.begin(), noses.end(), [&](const Nose& nose) {
    return nose.why_none.empty() && nose.finished_radius <= nose.section.stage.to_come;
  });
  if (too_sharp) {
    flow.paragraph(
        "Where the radius is 0 the coats to come are thicker than the finished nose is round: no coat restores so sharp a nose. "
        "Ask for a "
        "larger leading_edge_radius, or for fewer coats there.");
  }
}

}  // namespace

std::vector<Sheet> nose_tables(const job::Job& job, const fill::Stage& stage, const std::vector<Nose>& noses,
                               const PaperRoom& paper) {
  fill::StageSection words;
  words.stage = stage;
  Flow flow("Leading edge, numbers, " + stage_words(words) + ", " + job.name, {"Leading edge " + stage_words(words), job.name},
            paper.table_height);
  const auto first = std::find_if(noses.begin(), noses.end(), [](const Nose& one) { return one.why_none.empty(); });
  if (first == noses.end()) {
    for (const std::string& each : said_of_none(noses)) flow.paragraph(each, 3);
    return flow.finish();
  }
  flow.grid("Nose, cloth and flexible sheet", nose_grid(job, noses));
  flow.grid("Flats to plane before rounding", flats_grid(job, noses));
  what_it_means(flow, job, stage, noses);
  constexpr double half = Flow::room / 2 - 2, high = 46;
  Sheet pictures;
  pictures.width = Flow::room;
  pictures.height = high;
  add_items(pictures, draw_flats(*first, half, high), {0, 0}, "flats-");
  add_items(pictures, draw_flexible_sheet(*first, half, high), {half + 4, 0}, "sheet-");
  flow.picture(pictures, "");
  return flow.finish();
}

}  // namespace fairblade::drawing
