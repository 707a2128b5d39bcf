// The distance of a point from a curve, along the curve's normal, with its derivatives. Verbs: normal_distance.
#pragma once
#include <algorithm>
#include <cmath>
#include <vector>

namespace fairblade::form {

/// A point of a section in chords: x aft, y to port; `sign` +1 for a port reading, -1 for starboard.
struct Sample {
  double x = 0, y = 0, sign = 1;
};

/// Centre line of the fitted section: y = shift + skew (x - 1/2), in chords.
struct CentreLine {
  double shift = 0, skew = 0;
  double at(double x) const { return shift + skew * (x - 0.5); }
};

struct Distance {
  double value = 0;   ///< chords, positive outside
  double u = 0;       ///< sqrt(x) of the nearest point of the curve
  double cosine = 0;  ///< share of a half-breadth change that shows along the normal
};

/// Nearest point by Newton's rule in u, from sqrt(x) unless a better place is known. Curve: f(u), slope(u), second(u),
/// half-breadths of unit thickness. By the envelope theorem d(value)/dp = -cosine d(half-breadth)/dp at that u.
template <class Curve>
Distance normal_distance(const Sample& p, const Curve& f, double thickness, const CentreLine& centre, double u) {
  const double scale = p.sign * thickness;
  for (int step = 0; step < 8; ++step) {
    const double dx = u * u - p.x;
    const double dy = scale * f.at(u) + centre.at(u * u) - p.y;
    const double rise = scale * f.slope(u) + 2 * u * centre.skew;
    const double bend = scale * f.second(u) + 2 * centre.skew;
    const double gradient = 2 * u * dx + dy * rise;
    const double whole = 4 * u * u + 2 * dx + rise * rise + dy * bend, least = 0.25 * (4 * u * u + rise * rise);
    const double curvature = std::max(whole, least);
    if (!(curvature > 0)) break;
    const double next = std::clamp(u - gradient / curvature, 0.0, 1.0);
    const double move = next - u;
    u = next;
    // What a step of Newton's leaves in u is about its square, and in the distance the square of this.
    if (std::abs(move) < (whole >= least ? 1e-5 : 1e-7)) break;
  }
  const double rise = scale * f.slope(u) + 2 * u * centre.skew;
  const double length = std::sqrt(4 * u * u + rise * rise);
  if (!(length > 0)) return {std::abs(p.y), u, 1};
  const double along_normal = (p.x - u * u) * -rise + (p.y - scale * f.at(u) - centre.at(u * u)) * 2 * u;
  return {p.sign * along_normal / length, u, 2 * u / length};
}
template <class Curve>
Distance normal_distance(const Sample& p, const Curve& f, double thickness, const CentreLine& centre) {
  return normal_distance(p, f, thickness, centre, std::sqrt(std::clamp(p.x, 0.0, 1.0)));
}

/// The same of all samples, each from where its nearest point was before; `all` is empty the first time.
template <class Curve>
void find_distances(const std::vector<Sample>& samples, const Curve& f, double thickness, const CentreLine& centre,
                    std::vector<Distance>& all) {
  const bool first = all.size() != samples.size();
  all.resize(samples.size());
  for (std::size_t k = 0; k < samples.size(); ++k) {
    all[k] =
        first ? normal_distance(samples[k], f, thickness, centre) : normal_distance(samples[k], f, thickness, centre, all[k].u);
  }
}

/// All samples, or where there are many some 400, evenly taken from each face: enough to tell where to begin.
inline std::vector<Sample> spread(const std::vector<Sample>& samples) {
  constexpr std::size_t many = 400;
  const std::size_t every = std::max<std::size_t>(1, samples.size() / many);
  std::vector<Sample> out;
  std::size_t port = 0, starboard = 0;
  for (const Sample& sample : samples) {
    if ((sample.sign > 0 ? port : starboard)++ % every == 0) out.push_back(sample);
  }
  return out;
}

}  // namespace fairblade::form
