#include "report/edges.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "report/words.hpp"
#include "target/remedies.hpp"

namespace fairblade::report {
namespace {

using target::EdgeCut;
using target::TargetSection;
using Stations = std::vector<std::size_t>;

struct Way {
  std::optional<double> EdgeCut::*length;
  const char* before;
  const char* after;
  std::optional<double> plan::BuiltOut::*all_down = nullptr;  // what serves at every station alike
  const char* option = "";
};

/// One edge of the blade.
struct Edge {
  const char* code;
  const char* cut_words;
  std::optional<EdgeCut> TargetSection::*cut;
  std::array<Way, 3> ways;
  const char* rebuilt_words;
  std::optional<std::array<target::Joint, 2>> target::Joints::*joints;
};
constexpr Way allow_way{&EdgeCut::allow, "allow ", " off there (max_removal, which the faces may lose then as well)"};
constexpr std::array<Edge, 2> both_edges{
    {{"nose-cut",
      "the leading edge",
      &TargetSection::nose_cut,
      {{{&EdgeCut::build_out, "build the leading edge forward by ", "", &plan::BuiltOut::leading, "--extend-leading-edge"},
        {&EdgeCut::radius, "ask for a leading-edge radius of ", ""},
        allow_way}},
      "nose",
      &target::Joints::nose},
     {"tail-cut",
      "the run aft",
      &TargetSection::tail_cut,
      {{{&EdgeCut::build_out, "extend the trailing edge by ", "", &plan::BuiltOut::trailing, "--extend-trailing-edge"},
        {&EdgeCut::thickness, "leave it ", " thick"},
        allow_way}},
      "tail",
      &target::Joints::tail}}};

// "build the leading edge forward by 1.2 to 3.4 mm (no help at station D)".
std::string way_round(const Plan& plan, const Edge& edge, const Way& way, const Stations& cut, bool whole_blade) {
  if (const auto& length = whole_blade && way.all_down ? plan.edges_uncut.*way.all_down : std::nullopt)
    return way.before + both_units(*length, plan.job.units) + " all the way down (" + way.option + " " +
           number_in_unit(*length, plan.job.units) + ")";
  std::vector<double> lengths;
  Stations others;
  for (const std::size_t k : cut) {
    const auto& length = (plan.targets[k].*edge.cut).value().*way.length;
    if (length) lengths.push_back(*length);
    else others.push_back(k);
  }
  if (lengths.empty()) return {};
  const auto [least, most] = std::minmax_element(lengths.begin(), lengths.end());
  return way.before + from_to(*least, *most, plan.job.units) + way.after +
         (others.empty() ? "" : " (no help at " + of_stations(plan, others) + ")");
}

std::optional<Warning> cut_told(const Plan& plan, const Edge& edge, const Stations& stations, bool whole_blade) {
  Stations cut;
  for (const std::size_t k : stations) {
    if (plan.targets[k].*edge.cut) cut.push_back(k);
  }
  if (cut.empty()) return std::nullopt;
  const auto at = [&](std::size_t k) -> const EdgeCut& { return (plan.targets[k].*edge.cut).value(); };
  const std::size_t deepest =
      *std::max_element(cut.begin(), cut.end(), [&](std::size_t a, std::size_t b) { return at(a).depth < at(b).depth; });
  std::vector<std::string> ways;
  for (const Way& way : edge.ways) {
    if (auto words = way_round(plan, edge, way, cut, whole_blade); !words.empty()) ways.push_back(std::move(words));
  }
  const EdgeCut& worst = at(deepest);
  const std::string face = side_words(plan.measured[deepest], worst.face);
  const std::string deep = both_units(worst.depth, plan.job.units), x = both_units(worst.x, plan.job.units);
  const std::string where = cut.size() == 1 ? face + ": " + edge.cut_words + " would be cut " + deep + " deep at x " + x
                                            : edge.cut_words + std::string(" would be cut, deepest at station ") +
                                                  plan.measured[deepest].station + ": " + deep + " at x " + x + ", " + face;
  return Warning{edge.code, of_stations(plan, cut),
                 where + ": " + target::either(ways, "ask for a thicker section (--thickness)")};
}

section::Face worst_face(const std::array<target::Joint, 2>& joints) {
  return std::abs(joints[0].step) >= std::abs(joints[1].step) ? section::Face::port : section::Face::starboard;
}

const target::Joint& worst_of(const std::array<target::Joint, 2>& joints) {
  return joints[worst_face(joints) == section::Face::port ? 0 : 1];
}

// A step that is more than readings stray by, which a fairing board takes away unseen.
std::optional<Warning> step_told(const Plan& plan, const Edge& edge, const Stations& stations) {
  const double told = std::max(0.1, 2 * plan.job.reading_error);
  const auto joints = [&](std::size_t k) -> const std::array<target::Joint, 2>* {
    const auto& of = plan.targets[k].joints;
    return of && (*of).*edge.joints ? &*((*of).*edge.joints) : nullptr;
  };
  Stations stepped;
  for (const std::size_t k : stations) {
    if (joints(k) && std::abs(worst_of(*joints(k)).step) > told) stepped.push_back(k);
  }
  if (stepped.empty()) return std::nullopt;
  const std::size_t k = *std::max_element(stepped.begin(), stepped.end(), [&](std::size_t a, std::size_t b) {
    return std::abs(worst_of(*joints(a)).step) < std::abs(worst_of(*joints(b)).step);
  });
  const target::Joint& worst = worst_of(*joints(k));
  const std::string place = (stepped.size() == 1 ? "" : ", most at station " + plan.measured[k].station + ",");
  return Warning{"edge-step", of_stations(plan, stepped),
                 std::string("the rebuilt ") + edge.rebuilt_words + place + " stands " +
                     both_units(std::abs(worst.step), plan.job.units) + (worst.step > 0 ? " proud of" : " below") +
                     " the kept body at x " + both_units(worst.x, plan.job.units) + " " +
                     side_words(plan.measured[k], worst_face(*joints(k))) +
                     ": it follows the fair line of the body there, not the single reading; blend the two"};
}

std::vector<Warning> told_of(const Plan& plan, const Stations& stations, bool whole_blade) {
  std::vector<Warning> out;
  for (const Edge& edge : both_edges) {
    if (auto step = step_told(plan, edge, stations)) out.push_back(std::move(*step));
  }
  for (const Edge& edge : both_edges) {
    if (auto cut = cut_told(plan, edge, stations, whole_blade)) out.push_back(std::move(*cut));
  }
  return out;
}

}  // namespace

std::vector<Warning> edges_of_station(const Plan& plan, std::size_t k) { return told_of(plan, {k}, false); }

std::vector<Warning> edges_of_blade(const Plan& plan) {
  Stations all(plan.targets.size());
  for (std::size_t k = 0; k < all.size(); ++k) all[k] = k;
  return told_of(plan, all, true);
}

}  // namespace fairblade::report
