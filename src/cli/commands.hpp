// Private to the cli room. The commands, each a function of its words and its sinks. Verbs: the commands.
#pragma once
#include <array>
#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace fairblade::cli {

using Run = int (*)(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);

int run_check(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);
int run_choices(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);
int run_offsets(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);
int run_plan(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);
int run_worksheet(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);
int run_recheck(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);

struct Command {
  std::string_view name;
  std::string_view does;
  Run run;
};
inline constexpr std::array<Command, 6> commands{{
    {"plan", "from measured stations to templates, offsets and litres of filler", run_plan},
    {"check", "what is wrong with the readings, and what to do about it; plans nothing", run_check},
    {"choices", "the targets that could be asked for, side by side; writes nothing", run_choices},
    {"worksheet", "blank measuring sheets to print and take to the yard", run_worksheet},
    {"recheck", "new readings after a round of work, against the plan's target: what is left", run_recheck},
    {"offsets", "table of offsets of one published form; no job needed", run_offsets},
}};

}  // namespace fairblade::cli
