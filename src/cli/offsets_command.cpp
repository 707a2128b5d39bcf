// fairblade offsets FORM --chord LENGTH: the offsets of one published form, no job needed.
#include <optional>
#include <ostream>

#include "cli/arguments.hpp"
#include "cli/cli.hpp"
#include "cli/commands.hpp"
#include "cli/lengths.hpp"
#include "drawing/form_drawing.hpp"
#include "emit/one_file.hpp"
#include "emit/svg.hpp"
#include "form/named.hpp"
#include "report/form_offsets.hpp"

namespace fairblade::cli {
namespace {

struct OffsetsArguments {
  std::string form, chord, radius, edge, places, units, drawing;
  bool csv = false, json = false, quiet = false, strict = false;
};

void describe(CLI::App& app, OffsetsArguments& arguments) {
  app.get_formatter()->column_width(42);
  app.add_option("FORM", arguments.form, "the form: 0012, 0012-45, 12% or 0.12")->required()->type_name("");
  app.add_option("--chord", arguments.chord, "its chord; 420, or with a unit, 16.5in")->required()->type_name("LENGTH");
  app.add_option("--leading-edge-radius", arguments.radius, "the form's own unless told")->type_name("LENGTH");
  app.add_option("--trailing-edge-thickness", arguments.edge, "the form's own unless told")->type_name("LENGTH");
  app.add_option("--at", arguments.places, "offsets at these x too, e.g. 12,35")->type_name("X,...");
  app.add_option("--units", arguments.units,
                 "of lengths without a unit, and of the table: mm, cm or in;\nthe chord's own, or mm, unless told")
      ->type_name("UNIT");
  app.add_option("--svg", arguments.drawing, "draw it too, full size")->type_name("FILE");
  app.add_flag("--csv", arguments.csv, "print the table as CSV");
  app.add_flag("--json", arguments.json, "print JSON instead of the table (mm)");
  app.add_flag("--quiet", arguments.quiet, "print nothing but refusals");
  app.add_flag("--strict", arguments.strict, "exit status 1 when there are warnings");
  app.footer(
      "exit status: 0 done; 1 done with warnings, under --strict; 2 refused; 3 the drawing was not written\n"
      "example: fairblade offsets 0012 --chord 420 --trailing-edge-thickness 4");
}

Outcome<target::FormAsked> asked_of(const CLI::App& app, const OffsetsArguments& arguments) {
  std::vector<Fault> faults;
  target::FormAsked out;
  const auto unit = app.count("--units") > 0 ? length_unit(arguments.units) : std::optional(unit_of_first({arguments.chord}));
  if (!unit) return Fault{{"--units", 0}, "\"" + arguments.units + "\" is no unit", "use mm, cm or in"};
  out.units = *unit;
  const auto form = form::form_named(arguments.form);
  if (form) out.form = *form;
  else faults = form.faults();
  Lengths lengths(*unit, faults);
  const auto chord = lengths.read("--chord", arguments.chord, 10, 5000);
  out.chord = chord.value_or(5000);
  if (app.count("--leading-edge-radius") > 0)
    out.radius = lengths.read("--leading-edge-radius", arguments.radius, 0.05, out.chord / 2);
  if (app.count("--trailing-edge-thickness") > 0)
    out.edge = lengths.read("--trailing-edge-thickness", arguments.edge, 0, out.chord / 2);
  for (std::string_view rest = arguments.places; !rest.empty();) {
    const std::size_t comma = rest.find(',');
    if (const auto x = lengths.read("--at", rest.substr(0, comma), 0, out.chord)) out.more_places.push_back(*x);
    rest = comma == std::string_view::npos ? std::string_view() : rest.substr(comma + 1);
  }
  constexpr std::size_t most_places = 500;
  if (out.more_places.size() > most_places) faults.push_back({{"--at", 0}, "there are more than 500 places", "ask for fewer"});
  if (arguments.csv && arguments.json) faults.push_back({{"--csv", 0}, "stands with --json", "ask for one of the two"});
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace

int run_offsets(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  CLI::App app("Table of offsets of one published form at your chord; no job needed.", "fairblade offsets");
  OffsetsArguments arguments;
  describe(app, arguments);
  if (const auto status = parse(app, args, out, err)) return *status;
  if (app.count("--svg") > 0 && arguments.drawing.empty()) return refuse("--svg is empty", "name a file", err);

  const auto asked = asked_of(app, arguments);
  if (!asked) return refuse(asked.faults(), err);
  const auto offsets = target::offsets_of(*asked);
  if (!offsets) return refuse(offsets.faults(), err);
  if (!arguments.drawing.empty()) {
    if (const auto fault = emit::write_drawing(arguments.drawing, emit::to_svg(drawing::draw_form(*offsets)))) {
      err << one_line(*fault) << '\n';
      return ExitStatus::not_written;
    }
  }
  if (arguments.json) out << report::form_offsets_json(*offsets);
  else if (arguments.csv) out << report::form_offsets_csv(*offsets);
  else if (!arguments.quiet) out << report::form_offsets_text(*offsets);
  return arguments.strict && !offsets->warnings.empty() ? ExitStatus::done_with_warnings : ExitStatus::done;
}

}  // namespace fairblade::cli
