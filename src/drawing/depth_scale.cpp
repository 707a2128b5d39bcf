#include "drawing/depth_scale.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "drawing/hatch.hpp"
#include "drawing/round_step.hpp"

namespace fairblade::drawing {
namespace {

constexpr double most_lines = 5;
// mm between lines, by band. Each is half the last, so that the closer ones hold the wider ones.
constexpr std::array<double, 3> spacings{3.2, 1.6, 0.8};
constexpr double crossed_wider = 1.25;  // crossed lines stand wider apart, so that both kinds grow as dark

}  // namespace

DepthScale depth_scale(double sign, double deepest, double error, LengthUnit unit) {
  DepthScale out{sign, error, {}, {error}};
  // Lines closer than the readings are sure of would show their noise, and closer than a rule can tell nothing at all.
  const double least = std::max(error, unit == LengthUnit::inch ? 0.01 * millimetres_in(unit) : 0.2);
  const double step = round_step(std::max(0.99 * least, 1.0001 * deepest / most_lines), millimetres_in(unit));
  for (int k = 1; k * step < deepest; ++k) {
    if (k * step > 1.05 * error) out.lines.push_back(k * step);
  }
  const std::size_t n = out.lines.size();
  if (n > 0) out.bands.push_back(out.lines[(n - 1) / 3]);
  if (n > 1) out.bands.push_back(out.lines[(2 * n - 1) / 3]);
  return out;
}

std::string signed_depth(double mm, LengthUnit unit) {
  const std::string size = number_in_unit(std::abs(mm), unit);
  const bool nothing = size.find_first_not_of("0.") == std::string::npos;
  return nothing ? size : (mm > 0 ? "+" : minus) + size;
}

std::string round_depth(double mm, LengthUnit unit) { return trimmed(mm / millimetres_in(unit), 3); }

std::vector<std::string> band_words(const DepthScale& scale, LengthUnit unit) {
  std::vector<std::string> out;
  const std::string name = " " + std::string(name_of(unit));
  for (std::size_t k = 0; k < scale.bands.size(); ++k) {
    const std::string from = round_depth(scale.bands[k], unit);
    out.push_back(k + 1 < scale.bands.size() ? from + " to " + round_depth(scale.bands[k + 1], unit) + name
                                             : "more than " + from + name);
  }
  return out;
}

std::vector<Path> band_hatch(const MultiPolygon& area, const DepthScale& scale, std::size_t band) {
  const double spacing = spacings[std::min(band, spacings.size() - 1)];
  if (scale.sign > 0) return {hatch(area, spacing, true)};
  return {hatch(area, crossed_wider * spacing, true), hatch(area, crossed_wider * spacing, false)};
}

}  // namespace fairblade::drawing
