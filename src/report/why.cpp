#include "report/why.hpp"

#include <algorithm>
#include <functional>

#include "base/text.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

using job::TargetRequest;

std::string chord_place_words(const job::ChordPlace& place, LengthUnit unit) {
  return place.in_mm ? both_units(place.value, unit) : trimmed(100 * place.value, 1) + " % of the chord";
}

std::string approach_words(const TargetRequest& request, LengthUnit unit) {
  if (request.approach == job::Approach::full_section)
    return "the whole section becomes one of the standard family (NACA 4-digit), both sides alike";
  return "only the edges are rebuilt: the body from " + chord_place_words(request.keep_from, unit) + " to " +
         chord_place_words(request.keep_to, unit) + " stays as it is, and nose and tail are laid onto it, each face on its own";
}

std::string thickness_words(const TargetRequest& request, LengthUnit unit) {
  if (request.approach == job::Approach::edges_only) return {};
  using Kind = job::Thickness::Kind;
  switch (request.thickness.kind) {
    case Kind::least_fill:
      return "it is the thinnest such section that nowhere asks for more than " + both_units(request.max_removal, unit) +
             " to come off (\"max_removal\"), so it takes the least filler; or thicker, as far as that takes no more";
    case Kind::closest: return "its thickness is the one that the readings come nearest to";
    case Kind::ratio: return "it is " + trimmed(100 * request.thickness.value, 2) + " % of the chord thick, as asked";
    case Kind::mm: return "it is " + both_units(request.thickness.value, unit) + " thick, as asked";
  }
  return {};
}

std::string greatest_at_words(const TargetRequest& request) {
  using Kind = job::MaxThicknessAt::Kind;
  if (request.approach == job::Approach::edges_only || request.max_thickness_at.kind == Kind::form) return {};
  if (request.max_thickness_at.kind == Kind::closest)
    return "it is thickest where the blade is, which makes it a modified section";
  return "it is thickest at " + trimmed(100 * request.max_thickness_at.value, 1) +
         " % of the chord, as asked, which makes it a modified section";
}

std::string nose_words(const TargetRequest& request, const target::TargetSection& target, LengthUnit unit) {
  if (target.skeg > 0) return "the fixed skeg ahead is not touched; skeg and rudder make one section between them";
  if (request.leading_edge == job::LeadingEdgeWork::leave) return "the leading edge, a hinge edge, stays as it is";
  using Kind = job::LeadingEdgeRadius::Kind;
  if (request.leading_edge_radius.kind == Kind::form) return "the nose has the radius that belongs to the section";
  if (request.leading_edge_radius.kind == Kind::mm)
    return "the nose has a radius of " + both_units(request.leading_edge_radius.value, unit) + ", as asked";
  return "the nose has a radius of " + trimmed(request.leading_edge_radius.value, 2) + " % of the chord, as asked";
}

std::string asked_edge_words(const TargetRequest& request, LengthUnit unit) {
  if (request.trailing_edge_thickness.kind == job::TrailingEdgeThickness::Kind::form)
    return "the trailing edge is as thin as the section has it (2.5 to 4 mm square is the usual compromise: common practice)";
  return "the trailing edge is " + both_units(request.trailing_edge_thickness.value, unit) + " thick, as asked";
}

std::string extension_words(const job::Extension& extension, const char* edge, LengthUnit unit) {
  if (!(extension.mm > 0)) return {};
  return std::string("the ") + edge + " edge " + (extension.up_to ? "may be built out by up to " : "is built out by ") +
         both_units(extension.mm, unit) + ", as asked";
}

std::string patch_words(const TargetRequest& request) {
  if (request.no_cut.empty()) return {};
  return "nothing comes off at " + counted(request.no_cut.size(), "patch", "patches") + " named in the job (\"no_cut\")";
}

std::string spanwise_words(const TargetRequest& request) {
  switch (request.spanwise) {
    case job::Spanwise::fair: return "from station to station thickness and edges are brought onto a fair line";
    case job::Spanwise::straight: return "from station to station thickness and edges are brought onto a straight line";
    case job::Spanwise::as_measured: return "every station stands as it was measured; none is moved to be fair with the others";
  }
  return {};
}

}  // namespace

std::vector<std::string> why_this_target(const Plan& plan) {
  std::vector<std::string> out;
  const auto each = [&](const std::function<std::string(std::size_t)>& say) {
    std::vector<std::pair<std::string, std::vector<std::string>>> said;  // in the order of the stations
    for (std::size_t k = 0; k < plan.targets.size(); ++k) {
      const std::string words = say(k);
      if (words.empty()) continue;
      auto known = std::find_if(said.begin(), said.end(), [&](const auto& one) { return one.first == words; });
      if (known == said.end()) known = said.insert(said.end(), {words, {}});
      known->second.push_back(plan.targets[k].station);
    }
    for (const auto& [words, stations] : said) {
      const bool everywhere = stations.size() == plan.targets.size();
      out.push_back((everywhere ? "" : "at " + listed(stations) + ": ") + words);
    }
  };
  const auto request = [&](std::size_t k) -> const TargetRequest& { return plan.job.stations[k].target; };
  const LengthUnit unit = plan.job.units;
  each([&](std::size_t k) { return approach_words(request(k), unit); });
  each([&](std::size_t k) { return thickness_words(request(k), unit); });
  each([&](std::size_t k) { return greatest_at_words(request(k)); });
  each([&](std::size_t k) { return nose_words(request(k), plan.targets[k], unit); });
  each([&](std::size_t k) { return asked_edge_words(request(k), unit); });
  each([&](std::size_t k) { return extension_words(request(k).extend_leading_edge, "leading", unit); });
  each([&](std::size_t k) { return extension_words(request(k).extend_trailing_edge, "trailing", unit); });
  each([&](std::size_t k) { return patch_words(request(k)); });
  each([&](std::size_t k) { return spanwise_words(request(k)); });
  return out;
}

}  // namespace fairblade::report
