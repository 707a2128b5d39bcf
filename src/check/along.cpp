// Hollows and bumps along the span.
#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>

#include "base/numerics.hpp"
#include "base/plain_form.hpp"
#include "base/units.hpp"
#include "check/blade.hpp"
#include "check/readings.hpp"
#include "check/span.hpp"
#include "target/stray_stations.hpp"

namespace fairblade::check {

using section::Face;
using section::MeasuredSection;

namespace {

/// How thick the section is as a whole: by least squares at nine places, the thickness of a form of the same bulk, mm.
double bulk_of(const MeasuredSection& measured) {
  double product = 0, square = 0;
  const double whole = measured.chord + measured.skeg;
  for (int i = 1; i <= 9; ++i) {
    const double x = i / 10.0 * measured.chord, form = plain_form(std::sqrt((x + measured.skeg) / whole));
    product += form * (measured.port.at(x) + measured.starboard.at(x)) / 2;
    square += form * form;
  }
  return product / square;
}

void judge_bulk(const Stations& blade, double sigma, std::vector<Finding>& out) {
  const std::size_t n = blade.measured.size();
  SpanNumbers bulks;
  double chords = 0;
  for (std::size_t k = 0; k < n; ++k) {
    const MeasuredSection& one = blade.measured[k];
    const double whole = one.chord + one.skeg;
    chords += whole / static_cast<double>(n);
    // Nine places share some seven readings a side; of a caliper both sides are one.
    const double error = (one.thickness_only ? 0.5 : both_sides(one) ? std::sqrt(0.5) : 1.0) * sigma / std::sqrt(0.9);
    bulks.push_back({k, one.down, bulk_of(one) / whole, error / whole});
  }
  const auto found = alone(bulks, std::max(0.008 * bulks.front().value, 1.0 / chords));
  if (!found) return;
  const MeasuredSection& one = blade.measured[found->station];
  const double mm = found->off * (one.chord + one.skeg), thick = bulk_of(one);
  std::string what = "all over, this section is " + in_unit(std::abs(mm), blade.job.units) + (mm > 0 ? " thicker" : " thinner") +
                     " than the others make it";
  if (thick > 1.7 * (thick - mm)) what += "; was the whole thickness written where half was asked?";
  out.push_back(at_station(
      blade, found->station, mm > 0 ? "bump" : "hollow", Rank::blade, n > 3 ? Sureness::likely : Sureness::look, std::move(what),
      "lay a straightedge along the span: if light shows it is the blade, if not measure this station again"));
}

// Chords and leading edges off the line of the others, by far: an outline may be anything, but seldom has a step.
void judge_outline(const Stations& blade, double sigma, std::vector<Finding>& out) {
  auto job = blade.job;
  job.reading_error = sigma;
  const auto found = target::find_strays(job, blade.measured, blade.fitted);
  for (const auto& stray : found.strays) {
    if (stray.figure == target::SpanFigure::thickness) continue;
    if (std::abs(stray.mm) < std::max(beyond * stray.error, 0.03 * blade.measured[stray.station].chord)) continue;
    const bool chord = stray.figure == target::SpanFigure::chord;
    out.push_back(at_station(blade, stray.station, chord ? "chord-off-line" : "ahead-off-line", Rank::outline, Sureness::look,
                             target::words_of(job, blade.measured, stray) + " of the fair line through the others",
                             "measure it again; leave it if that is the blade's outline"));
  }
}

struct Miss {
  double x, mm;
  int line;
};

/// One station's readings against the shape that the others share, and how these misses hang together: each has its own
/// error, and all share what is not known of this station's bulk and centre line (taken from the others too).
struct ShapeMisses {
  std::size_t station = 0;
  std::vector<Face> faces;
  std::vector<Miss> misses;
  std::vector<Eigen::Vector3d> shared;               ///< what bulk, level and slope of the centre line do to each
  Eigen::Vector3d spread = Eigen::Vector3d::Zero();  ///< their standard deviations
};

/// Half-breadth of one face at a chord fraction, about the section's centre line, in shares of its bulk.
double share_of_bulk(const MeasuredSection& measured, const CentreEnds& ends, double bulk, Face face, double share) {
  return (measured.side(face).at(share * measured.chord) - section::sign_of(face) * ends.at(share)) / bulk;
}

struct Foretold {
  double value = 0, error = 0;
};
/// A number of one station by the straight line through the others.
Foretold foretold(const SpanNumbers& numbers, std::size_t k) {
  SpanNumbers others = numbers;
  const SpanNumber own = others[k];
  others.erase(others.begin() + static_cast<std::ptrdiff_t>(k));
  const Straight line = straight_through(others);
  double about = 0, square = 0;
  for (const SpanNumber& one : others) {
    about += (one.down - line.mean) * (one.down - line.mean);
    square += (one.value - line.at(one.down)) * (one.value - line.at(one.down));
  }
  const double n = static_cast<double>(others.size());
  const double scatter = std::max(own.error, std::sqrt(square / std::max(1.0, n - 2)));
  const double apart = own.down - line.mean;
  return {line.at(own.down), scatter * std::sqrt(1 / n + (n > 2 ? apart * apart / about : 0.5))};
}

std::vector<ShapeMisses> misses_of(const Stations& blade, double sigma, const std::vector<std::size_t>& askew) {
  constexpr double from = 0.1, to = 0.98;  // the nose has judges of its own
  const std::size_t n = blade.measured.size();
  std::vector<CentreEnds> ends;
  std::vector<double> bulk;
  SpanNumbers bulks, levels, slopes;
  for (std::size_t k = 0; k < n; ++k) {
    const MeasuredSection& one = blade.measured[k];
    ends.push_back(centre_ends(blade, k, sigma).value_or(CentreEnds{}));
    bulk.push_back(bulk_of(one));
    bulks.push_back({k, one.down, bulk.back() / one.chord, 0.75 * sigma / one.chord});
    levels.push_back({k, one.down, ends.back().at(0.5), 0.25 * sigma});
    slopes.push_back({k, one.down, ends.back().trailing - ends.back().leading, 0.9 * sigma});
  }
  std::vector<ShapeMisses> out;
  for (std::size_t k = 0; k < n; ++k) {
    const MeasuredSection& mine = blade.measured[k];
    const Foretold size = foretold(bulks, k), level = foretold(levels, k), slope = foretold(slopes, k);
    ShapeMisses found;
    found.station = k;
    found.spread = {size.error * mine.chord, both_sides(mine) ? level.error : 0, both_sides(mine) ? slope.error : 0};
    if (std::find(askew.begin(), askew.end(), k) != askew.end()) found.spread[1] = found.spread[2] = 0.1 * mine.chord;
    for (const auto& point : mine.points) {
      const double share = point.x / mine.chord;
      if (share < from || share > to || (!both_sides(mine) && point.face == Face::starboard)) continue;
      std::vector<double> shapes;
      for (std::size_t j = 0; j < n; ++j) {
        if (j != k) shapes.push_back(share_of_bulk(blade.measured[j], ends[j], bulk[j], point.face, share));
      }
      const double side = both_sides(mine) ? section::sign_of(point.face) : 0;
      const Eigen::Vector3d row(median(std::move(shapes)), side, side * (share - 0.5));
      found.faces.push_back(point.face);
      found.misses.push_back({point.x,
                              point.half_breadth - row.dot(Eigen::Vector3d(size.value * mine.chord, level.value, slope.value)),
                              point.line});
      found.shared.push_back(row);
    }
    constexpr std::size_t fewest = 6, most = 300;
    if (found.misses.size() >= fewest && found.misses.size() <= most) out.push_back(std::move(found));
  }
  return out;
}

/// A run of one face's readings, and the bump that makes them likeliest: h'C⁻¹e / h'C⁻¹h, h being 1 on the run.
struct Run {
  const ShapeMisses* of = nullptr;
  Face face = Face::port;
  std::vector<std::size_t> at;  ///< in the misses
  double mm = 0, size = 0;      ///< standard deviations
};

Run worst_run(const ShapeMisses& one, Face face, double spread, double least) {
  const auto n = static_cast<Eigen::Index>(one.misses.size());
  Eigen::MatrixXd together = Eigen::MatrixXd::Identity(n, n) * (spread * spread);
  Eigen::VectorXd left(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    left[i] = one.misses[static_cast<std::size_t>(i)].mm;
    for (Eigen::Index j = 0; j < n; ++j) {
      together(i, j) += one.shared[static_cast<std::size_t>(i)]
                            .cwiseProduct(one.spread)
                            .dot(one.shared[static_cast<std::size_t>(j)].cwiseProduct(one.spread));
    }
  }
  const Eigen::MatrixXd inverse = together.llt().solve(Eigen::MatrixXd::Identity(n, n));
  const Eigen::VectorXd pull = inverse * left;
  std::vector<std::size_t> mine;
  for (std::size_t i = 0; i < one.misses.size(); ++i) {
    if (one.faces[i] == face) mine.push_back(i);
  }
  Run best;
  best.size = 5.2;  // every run of every face is looked at: some thousand
  for (std::size_t i = 0; i < mine.size(); ++i) {
    double numerator = 0, denominator = 0;
    for (std::size_t j = i; j < mine.size() && 3 * (j - i + 1) <= 2 * mine.size(); ++j) {
      const auto last = static_cast<Eigen::Index>(mine[j]);
      numerator += pull[last];
      denominator += inverse(last, last);
      for (std::size_t k = i; k < j; ++k) denominator += 2 * inverse(last, static_cast<Eigen::Index>(mine[k]));
      const double mm = numerator / denominator, size = std::abs(numerator) / std::sqrt(denominator);
      if (size <= best.size || std::abs(mm) < least) continue;
      best = {&one,
              face,
              {mine.begin() + static_cast<std::ptrdiff_t>(i), mine.begin() + static_cast<std::ptrdiff_t>(j) + 1},
              mm,
              size};
    }
  }
  return best;
}

void tell_run(const Stations& blade, const Run& run, std::vector<Finding>& out) {
  const auto unit = blade.job.units;
  const auto& misses = run.of->misses;
  const double from = misses[run.at.front()].x, to = misses[run.at.back()].x;
  std::size_t deepest = run.at.front();
  for (const std::size_t i : run.at) {
    if (misses[i].mm / run.mm > misses[deepest].mm / run.mm) deepest = i;
  }
  const bool low = run.mm < 0;
  const std::string where =
      run.at.size() == 1 ? "at x " + in_unit(from, unit) : "from x " + in_unit(from, unit) + " to " + in_unit(to, unit);
  auto finding = at_station(
      blade, run.of->station, low ? "hollow" : "bump", Rank::blade, run.size > 8 ? Sureness::certain : Sureness::likely,
      where + " this face is some " + in_unit(std::abs(run.mm), unit) + (low ? " low" : " high") +
          ", against the same place of the other stations",
      "lay a straightedge along the span there: if light shows it is the blade, if not measure this place again");
  finding.side = both_sides(blade.measured[run.of->station]) ? section::name_of(run.face) : "";
  finding.x = misses[deepest].x;
  finding.place = {blade.measured[run.of->station].readings_from, misses[deepest].line};
  out.push_back(std::move(finding));
}

void judge_shape(const Stations& blade, double sigma, const std::vector<std::size_t>& askew, std::vector<Finding>& out) {
  const auto all = misses_of(blade, sigma, askew);
  std::vector<double> sizes;
  for (const ShapeMisses& one : all) {
    for (const Miss& miss : one.misses) sizes.push_back(std::abs(miss.mm));
  }
  if (sizes.size() < 20) return;
  const double others = static_cast<double>(blade.measured.size() - 1);
  const double spread = std::max(sigma * std::sqrt(1 + 1.57 / others), 1.4826 * median(sizes));  // of a median
  for (const Face face : {Face::port, Face::starboard}) {
    std::vector<Run> runs;
    for (const ShapeMisses& one : all) {
      if (auto run = worst_run(one, face, spread, 3 * sigma); run.of) runs.push_back(std::move(run));
    }
    std::stable_sort(runs.begin(), runs.end(), [](const Run& a, const Run& b) { return a.size > b.size; });
    // A bump of one station is half a hollow of two others, and a little of one of more: the worst is told.
    if (!runs.empty()) tell_run(blade, runs.front(), out);
    for (std::size_t k = 1; k < runs.size() && blade.measured.size() > 3; ++k) {
      if (runs[k].size > 0.6 * runs.front().size) tell_run(blade, runs[k], out);
    }
  }
}

/// Stations that are already known to be turned or shifted: their own centre lines are not foretold by the others.
std::vector<std::size_t> askew_stations(const Stations& blade, const std::vector<Finding>& told) {
  std::vector<std::size_t> out;
  for (std::size_t k = 0; k < blade.job.stations.size(); ++k) {
    const auto here = [&](const Finding& one) {
      return one.station == blade.job.stations[k].name && (one.code == "twist" || one.code == "off-centre");
    };
    if (std::any_of(told.begin(), told.end(), here)) out.push_back(k);
  }
  return out;
}

}  // namespace

void judge_along_the_span(const Stations& blade, double sigma, std::vector<Finding>& out) {
  if (blade.measured.size() < 3) return;
  judge_outline(blade, sigma, out);
  const bool behind_skeg =
      std::any_of(blade.measured.begin(), blade.measured.end(), [](const MeasuredSection& one) { return one.skeg > 0; });
  const bool plate =
      std::any_of(blade.measured.begin(), blade.measured.end(), [](const MeasuredSection& one) { return !one.port.with_form(); });
  if (plate) return;
  std::vector<Finding> bulk, shape;
  judge_bulk(blade, sigma, bulk);
  if (!behind_skeg) judge_shape(blade, sigma, askew_stations(blade, out), shape);
  // One face is a face; both faces alike are the section.
  for (const Finding& one : bulk) {
    const auto same = std::count_if(shape.begin(), shape.end(), [&](const Finding& s) { return s.station == one.station; });
    if (same == 1) continue;
    std::erase_if(shape, [&](const Finding& s) { return s.station == one.station; });
    out.push_back(one);
  }
  out.insert(out.end(), shape.begin(), shape.end());
}

}  // namespace fairblade::check
