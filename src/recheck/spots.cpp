#include "recheck/spots.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "base/side_by_side.hpp"

namespace fairblade::recheck {
namespace {

constexpr double false_spots = 0.005;  // of whole rounds of noise
constexpr double without_greatest = 2;
constexpr double alone_beyond = 4, neighbours_within = 2;  // standard deviations
constexpr double whole_face = 0.8;                         // of the girth that was read
constexpr double flat_below = 0.4;                         // of the target's roundness
constexpr std::size_t longest_run = 400;                   // readings; a scan's runs are no longer than this

/// z that a normal variable passes, either way, with that probability.
double threshold(double probability) {
  const auto beyond = [&](double z) { return 2 * normal_below(-z) - probability; };
  return root_between(beyond, 0, 12).value_or(12);
}

struct Run {
  std::size_t first = 0, last = 0;  // into the face's list
  double z = 0, mean = 0;
};

double out_by(const Judged& one) { return one.depth / one.sigma; }

/// Those of one face that stand out alone among its readings.
std::vector<std::size_t> alone_in(const HeightRead& height, Face face) {
  std::vector<std::size_t> out;
  const auto own = height.of(face);
  const auto beside = [&](std::size_t k, double sign) { return sign * out_by(height.readings[own[k]]) > neighbours_within; };
  for (std::size_t k = 0; k < own.size() && own.size() >= 3; ++k) {
    const Judged& one = height.readings[own[k]];
    const double sign = one.depth > 0 ? 1 : -1;
    if (std::abs(out_by(one)) < alone_beyond || (k > 0 && beside(k - 1, sign)) || (k + 1 < own.size() && beside(k + 1, sign)))
      continue;
    out.push_back(own[k]);
  }
  return out;
}

double share_of_girth(const HeightRead& height, const Judged& one) {
  return one.girth / height.girth[one.face == Face::port ? 0 : 1];
}

/// Does another height have a reading out the same way at the same share of the girth?
bool shown_by(const HeightRead& other, const HeightRead& height, const Judged& one) {
  constexpr double same_share = 0.03;
  return std::any_of(other.readings.begin(), other.readings.end(), [&](const Judged& each) {
    return each.face == one.face && std::abs(share_of_girth(other, each) - share_of_girth(height, one)) < same_share &&
           out_by(each) * (one.depth > 0 ? 1 : -1) >= alone_beyond;
  });
}

bool read_alike(const Doubted& earlier, const HeightRead& height, const Judged& one) {
  constexpr double same_height = 0.05, same_place = 2;  // mm; a mark found again
  const Judged& then = earlier.reading;
  return std::abs(earlier.down - height.surface.down) < same_height && then.face == one.face && then.both == one.both &&
         std::abs(then.x - one.x) < same_place && alike(then.depth, one.depth, then.sigma, one.sigma);
}

/// Sums of depth x weight and of weight over a stretch of a face's readings, and which of many runs may stand out at all.
class Sums {
 public:
  Sums(const std::vector<double>& depth, const std::vector<double>& weight, const std::vector<char>& out)
      : sum_(depth.size() + 1, 0), weight_(sum_) {
    for (std::size_t k = 0; k < depth.size(); ++k) {
      sum_[k + 1] = sum_[k] + (out[k] ? 0 : depth[k] * weight[k]);
      weight_[k + 1] = weight_[k] + (out[k] ? 0 : weight[k]);
    }
    for (std::size_t k = 0; k < sum_.size(); ++k) {
      if (k % block == 0) ends_.push_back({sum_[k], sum_[k]});
      ends_.back() = {std::min(ends_.back().least, sum_[k]), std::max(ends_.back().greatest, sum_[k])};
    }
  }
  /// False: no run from `first` on, to `last` at most, stands out by more than z.
  bool may_pass(std::size_t first, std::size_t last, double z) const {
    constexpr double rounding = 1 - 1e-9;
    for (std::size_t b = (first + 1) / block; b * block <= last + 1; ++b) {  // in each the longest step over the least weight
      const double from = sum_[first], step = std::max(ends_[b].greatest - from, from - ends_[b].least);
      const double least = weight_[std::max(b * block, first + 1)] - weight_[first];
      if (step > 0 && step * step > z * z * least * rounding) return true;
    }
    return false;
  }

 private:
  static constexpr std::size_t block = 8;
  struct Ends {
    double least, greatest;
  };
  std::vector<double> sum_, weight_;  // before each reading
  std::vector<Ends> ends_;            // of the sums, block by block
};

/// One face at one height.
struct Line {
  std::size_t height = 0;
  Face face = Face::port;
  std::vector<std::size_t> of;        // HeightRead::readings
  std::vector<double> depth, weight;  // less the face's level where that was found; 1/s²
  std::vector<char> out;              // alone: left out of the scan
  std::vector<Spot> found;
};

class Scan {
 public:
  Scan(const std::vector<HeightRead>& heights, double tolerance) : heights_(heights), tolerance_(tolerance) {}

  std::vector<Spot> run() {
    double runs = 0;
    for (std::size_t h = 0; h < heights_.size(); ++h) {
      for (const Face face : {Face::port, Face::starboard}) {
        if (heights_[h].calipers && face == Face::starboard) continue;
        Line line{h, face, heights_[h].of(face), {}, {}, {}, {}};
        const auto n = static_cast<double>(line.of.size());
        runs += n * (n - 1) / 2;
        for (const std::size_t k : line.of) {
          line.depth.push_back(heights_[h].readings[k].depth);
          line.weight.push_back(1 / (heights_[h].readings[k].sigma * heights_[h].readings[k].sigma));
          line.out.push_back(heights_[h].readings[k].alone ? 1 : 0);
        }
        lines_.push_back(std::move(line));
      }
    }
    least_ = threshold(false_spots / std::max(1.0, runs));
    side_by_side(lines_.size(), [&](std::size_t k) {
      if (lines_[k].of.size() >= 2) face(lines_[k]);
    });
    return joined();
  }

 private:
  void face(Line& line) const {
    const std::size_t last = line.of.size() - 1;
    if (const Run level = best(line, Sums(line.depth, line.weight, line.out), 0, last); level.z > 0 && spans(line, level)) {
      add(line, level, level.mean > 0 ? SpotKind::face_low : SpotKind::face_high);
      for (double& one : line.depth) one -= level.mean;  // what stands out of that level is a spot of its own
    }
    search(line, Sums(line.depth, line.weight, line.out), 0, last);
  }

  void search(Line& line, const Sums& sums, std::size_t from, std::size_t to) const {
    const Run found = best(line, sums, from, to);
    if (!(found.z > 0)) return;
    if (!spans(line, found)) add(line, found, found.mean > 0 ? low_kind(line, found) : SpotKind::hump);
    if (found.first > from) search(line, sums, from, found.first - 1);
    if (found.last < to) search(line, sums, found.last + 1, to);
  }

  bool spans(const Line& line, const Run& run) const {
    const auto& readings = heights_[line.height].readings;
    const auto girth = [&](std::size_t k) { return readings[line.of[k]].girth; };
    return girth(run.last) - girth(run.first) >= whole_face * (girth(line.of.size() - 1) - girth(0));
  }

  /// The run that stands out most; z = 0 where none does.
  Run best(const Line& line, const Sums& sums, std::size_t from, std::size_t to) const {
    Run best;
    for (std::size_t i = from; i <= to; ++i) {
      if (line.out[i] || !sums.may_pass(i, std::min(to, i + longest_run - 1), std::max(least_, best.z))) continue;
      double sum = 0, weight = 0, greatest = 0, least = 0;
      int count = 0;
      for (std::size_t j = i; j <= to && j - i < longest_run; ++j) {
        if (line.out[j]) continue;
        const double part = line.depth[j] * line.weight[j];
        sum += part;
        weight += line.weight[j];
        greatest = std::max(greatest, part);
        least = std::min(least, part);
        if (++count < 2) continue;
        const double to_pass = std::max(least_, best.z);
        if (sum * sum <= to_pass * to_pass * weight) continue;
        const double z = std::abs(sum) / std::sqrt(weight), mean = sum / weight;
        if (z <= to_pass || std::abs(mean) < tolerance_ / 2) continue;
        const double rest = sum > 0 ? sum - greatest : -(sum - least);
        if (rest < without_greatest * std::sqrt(weight * (count - 1) / count)) continue;
        best = {i, j, z, mean};
      }
    }
    return best;
  }

  /// Twice the leading coefficient of the least-squares parabola, and its standard deviation for values of that error.
  static std::pair<double, double> bend(const std::vector<double>& x, const std::vector<double>& y, double sigma) {
    const auto n = static_cast<double>(x.size());
    double mean = 0;
    for (const double one : x) mean += one / n;
    double s2 = 0, s3 = 0, s4 = 0;
    for (const double one : x) {
      const double d = one - mean;
      s2 += d * d;
      s3 += d * d * d;
      s4 += d * d * d * d;
    }
    // The part of d² that neither a constant nor d explains.
    double square = 0, product = 0;
    for (std::size_t k = 0; k < x.size(); ++k) {
      const double d = x[k] - mean, q = d * d - s2 / n - s3 / s2 * d;
      square += q * q;
      product += q * y[k];
    }
    if (!(square > 1e-9 * s4)) return {0, 1e9};
    return {2 * product / square, 2 * sigma / std::sqrt(square)};
  }

  SpotKind low_kind(const Line& line, const Run& run) const {
    const HeightRead& height = heights_[line.height];
    const auto& section = height.surface.section;
    const double chord = section.trailing_edge_x - section.leading_edge_x;
    std::vector<double> x, is, wanted;
    double sigma = 0;
    const std::size_t from = run.first > 0 ? run.first - 1 : 0, to = std::min(run.last + 1, line.of.size() - 1);
    for (std::size_t k = from; k <= to; ++k) {
      const Judged& one = height.readings[line.of[k]];
      if (one.x < section.leading_edge_x + 0.1 * chord || line.out[k]) continue;  // no parabola is like a nose
      x.push_back(one.x);
      is.push_back(one.half_breadth);
      wanted.push_back(one.target);
      sigma = std::max(sigma, one.sigma);
    }
    if (x.size() < 4) return SpotKind::low;
    const auto [curve, error] = bend(x, is, sigma);
    const double target = bend(x, wanted, sigma).first;
    if (curve > 2 * error) return SpotKind::hollow;
    const bool told = 2 * error < (1 - flat_below) * -target;
    return told && -curve < flat_below * -target ? SpotKind::flat : SpotKind::low;
  }

  void add(Line& line, const Run& run, SpotKind kind) const {
    Spot out;
    out.kind = kind;
    out.face = line.face;
    out.both = heights_[line.height].calipers;
    out.worst_at = {line.height, line.of[run.first], line.of[run.last]};
    out.reach = {out.worst_at};
    out.chance = run.z;
    double weight = 0;
    for (std::size_t k = run.first; k <= run.last; ++k) {
      if (line.out[k]) continue;
      const double depth = heights_[line.height].readings[line.of[k]].depth;
      if (std::abs(depth) > std::abs(out.worst) && (depth > 0) == (run.mean > 0)) out.worst = depth;
      out.mean += depth * line.weight[k];
      weight += line.weight[k];
    }
    out.mean /= weight;
    // Low only against a face that is high as a whole, or the other way about: that face's spot says it.
    if (out.mean * run.mean < 0 || std::abs(out.mean) < tolerance_ / 2) return;
    line.found.push_back(out);
  }

  /// From where to where, in fractions of the girth.
  std::pair<double, double> ends(const Reach& reach, Face face) const {
    const HeightRead& height = heights_[reach.height];
    const double girth = height.girth[face == Face::port ? 0 : 1];
    return {height.readings[reach.first].girth / girth, height.readings[reach.last].girth / girth};
  }

  /// The same at neighbouring heights is one spot.
  std::vector<Spot> joined() {
    std::vector<Spot> out;
    std::vector<Spot> found;
    for (Line& line : lines_) found.insert(found.end(), line.found.begin(), line.found.end());
    for (const Spot& one : found) {
      const auto joins = [&](const Spot& other) {
        const auto [a, b] = ends(one.reach.front(), one.face);
        const auto [c, d] = ends(other.reach.back(), one.face);
        const bool whole = one.kind == SpotKind::face_high || one.kind == SpotKind::face_low;
        const bool other_whole = other.kind == SpotKind::face_high || other.kind == SpotKind::face_low;
        return other.face == one.face && other.both == one.both && (other.mean > 0) == (one.mean > 0) && whole == other_whole &&
               other.reach.back().height + 1 == one.reach.front().height && a <= d && c <= b;
      };
      const auto same = std::find_if(out.begin(), out.end(), joins);
      if (same == out.end()) {
        out.push_back(one);
        continue;
      }
      auto reach = same->reach;
      reach.push_back(one.reach.front());
      if (std::abs(one.worst) > std::abs(same->worst)) *same = one;
      same->reach = std::move(reach);
    }
    std::stable_sort(out.begin(), out.end(), [](const Spot& a, const Spot& b) { return std::abs(a.worst) > std::abs(b.worst); });
    return out;
  }

  const std::vector<HeightRead>& heights_;
  double tolerance_;
  double least_ = 0;
  std::vector<Line> lines_;
};

}  // namespace

const char* name_of(SpotKind kind) {
  switch (kind) {
    case SpotKind::hump: return "hump";
    case SpotKind::low: return "low place";
    case SpotKind::flat: return "flat";
    case SpotKind::hollow: return "hollow";
    case SpotKind::face_high: return "whole face high";
    case SpotKind::face_low: return "whole face low";
  }
  return "";
}

void mark_alone(std::vector<HeightRead>& heights, std::vector<Doubted>& doubted) {
  std::vector<Doubted> now;
  for (std::size_t h = 0; h < heights.size(); ++h) {
    HeightRead& height = heights[h];
    const auto elsewhere = [&](const Judged& one) {
      return (h > 0 && shown_by(heights[h - 1], height, one)) ||
             (h + 1 < heights.size() && shown_by(heights[h + 1], height, one));
    };
    for (const Face face : {Face::port, Face::starboard}) {
      if (height.calipers && face == Face::starboard) continue;
      for (const std::size_t k : alone_in(height, face)) {
        Judged& one = height.readings[k];
        const auto again = [&](const Doubted& earlier) { return read_alike(earlier, height, one); };
        if (one.sure || elsewhere(one) || std::any_of(doubted.begin(), doubted.end(), again)) continue;
        one.alone = true;
        now.push_back({height.surface.down, one});
        if (!height.calipers) continue;
        for (Judged& other : height.readings) {
          if (other.face == Face::starboard && other.x == one.x) other.alone = true;
        }
      }
    }
  }
  doubted.insert(doubted.end(), now.begin(), now.end());
}

std::vector<Spot> find_spots(const std::vector<HeightRead>& heights, double tolerance) { return Scan(heights, tolerance).run(); }

}  // namespace fairblade::recheck
