#include "report/form_offsets.hpp"

#include <nlohmann/json.hpp>

#include "base/text.hpp"
#include "report/layout.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

using Json = nlohmann::ordered_json;
using target::FormOffsets;

/// One place finer than readings are told: a template is cut to a tenth of a millimetre.
std::string in_unit_alone(double mm, LengthUnit unit) { return fixed(mm / millimetres_in(unit), unit == LengthUnit::mm ? 2 : 3); }

std::string percent_of_chord(double mm, const FormOffsets& offsets, int decimals) {
  return fixed(100 * mm / offsets.asked.chord, decimals);
}

std::string figures_words(const FormOffsets& offsets) {
  const auto length = [&](double mm) { return both_units(mm, offsets.asked.units); };
  const auto& section = offsets.section;
  const auto against = [&](double mm, double own) {
    return std::abs(mm - own) < 1e-9 ? " (the form's own)" : " (the form's own: " + length(own) + ")";
  };
  std::string out =
      "Greatest thickness " + length(offsets.max_thickness) + " at x " + length(section.max_thickness_at * section.chord) + ".\n";
  out += "Leading-edge radius " + length(section.leading_edge_radius) + against(section.leading_edge_radius, offsets.own_radius) +
         ".\n";
  out += "Trailing edge " + length(section.trailing_edge_thickness) + " thick" +
         against(section.trailing_edge_thickness, offsets.own_edge) + ".\n";
  // mm² times a metre: a thousandth of a litre each.
  out += "Area " + fixed(section.area / 100, 1) + " cm\xc2\xb2, or " + fixed(section.area / 1000, 2) +
         " litres to a metre of span; " + "girth " + length(section.girth) + ".\n";
  return out;
}

}  // namespace

std::string form_offsets_text(const FormOffsets& offsets) {
  using enum Table::Align;
  const LengthUnit unit = offsets.asked.units;
  const std::string in = "(" + std::string(name_of(unit)) + ")";
  Table table({right, right, right, right, right});
  table.row({"x", "x", "half-breadth", "thickness", "half-breadth"});
  table.row({"(% chord)", in, in, in, "(% chord)"});
  for (const auto& row : offsets.rows) {
    table.row({percent_of_chord(row.x, offsets, 2), in_unit_alone(row.x, unit), in_unit_alone(row.half_breadth, unit),
               in_unit_alone(2 * row.half_breadth, unit), percent_of_chord(row.half_breadth, offsets, 3)});
  }
  std::string out =
      offsets.name + ", chord " + both_units(offsets.asked.chord, unit) + "\n\n" + table.text() + "\n" + figures_words(offsets);
  for (const Warning& one : offsets.warnings) out += wrapped("warning: " + one.text, 2);
  return out;
}

std::string form_offsets_csv(const FormOffsets& offsets) {
  const LengthUnit unit = offsets.asked.units;
  const std::string in(name_of(unit));
  std::string out = "x_percent,x_" + in + ",half_breadth_" + in + ",thickness_" + in + "\n";
  for (const auto& row : offsets.rows) {
    const auto value = [&](double mm) { return fixed(mm / millimetres_in(unit), unit == LengthUnit::mm ? 3 : 4); };
    out += fixed(100 * row.x / offsets.asked.chord, 4) + "," + value(row.x) + "," + value(row.half_breadth) + "," +
           value(2 * row.half_breadth) + "\n";
  }
  return out;
}

std::string form_offsets_json(const FormOffsets& offsets) {
  const auto& form = offsets.asked.form;
  const auto& section = offsets.section;
  Json out = {{"fairblade", FAIRBLADE_VERSION},
              {"form", form::name_of(form)},
              {"thickness_ratio", form.thickness_ratio},
              {"leading_edge_index", form.plain() ? Json(nullptr) : Json(form.leading_edge_index)},
              {"chord", section.chord},
              {"max_thickness", offsets.max_thickness},
              {"max_thickness_at", section.max_thickness_at},
              {"leading_edge_radius", section.leading_edge_radius},
              {"trailing_edge_thickness", section.trailing_edge_thickness},
              {"area", section.area},
              {"girth", section.girth},
              {"warnings", Json::array()},
              {"offsets", Json::array()}};
  for (const Warning& one : offsets.warnings) out["warnings"].push_back({{"code", one.code}, {"text", one.text}});
  for (const auto& row : offsets.rows) out["offsets"].push_back({{"x", row.x}, {"half_breadth", row.half_breadth}});
  return out.dump(1, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace fairblade::report
