#include "job/own_error.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::job {
namespace {

constexpr std::array<MaybeMm Reading::*, 3> kinds_read{&Reading::port, &Reading::starboard, &Reading::caliper};
constexpr std::array<const char*, 3> kind_names{"port", "starboard", "caliper"};

/// What was read of one kind at one place.
void count_kind(std::span<const Reading> rows, std::size_t kind, RepeatedPlace& out) {
  double low = 0, high = 0, mean = 0, square = 0;
  int n = 0;
  for (const Reading& row : rows) {
    const MaybeMm& read = row.*kinds_read[kind];
    if (!read) continue;
    low = n == 0 ? *read : std::min(low, *read);
    high = n == 0 ? *read : std::max(high, *read);
    const double off = *read - mean;
    mean += off / ++n;
    square += off * (*read - mean);
  }
  out.times = std::max(out.times, n);
  if (n < 2) return;
  out.apart[kind] = high - low;
  out.mores[kind] = n - 1;
  out.squares[kind] = square;
  out.more += n - 1;
  out.square += square;
}

/// " (lines 8, 9 and 10)"; nothing where the readings stand on no lines.
std::string lines_named(std::vector<int> lines) {
  constexpr std::size_t most = 6;
  lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
  if (lines.front() <= 0) return "";
  if (lines.size() == 1) return " (line " + std::to_string(lines.front()) + ")";
  if (lines.size() > most)
    return " (" + std::to_string(lines.size()) + " lines from " + std::to_string(lines.front()) + " to " +
           std::to_string(lines.back()) + ")";
  std::string out = " (lines " + std::to_string(lines.front());
  for (std::size_t k = 1; k < lines.size(); ++k) out += (k + 1 == lines.size() ? " and " : ", ") + std::to_string(lines[k]);
  return out + ")";
}

}  // namespace

std::vector<std::size_t> RepeatedPlace::kinds_apart(double sigma) const {
  std::vector<std::size_t> out, all;
  for (std::size_t kind = 0; kind < apart.size(); ++kind) {
    if (!(apart[kind] > 0)) continue;
    all.push_back(kind);
    // Of chi squared with so many degrees of freedom, as rare as three standard deviations: by chance, one in 370.
    const double limit = 3 * 3 + 2.6 * (mores[kind] - 1);
    if (squares[kind] > limit * sigma * sigma) out.push_back(kind);
  }
  return out.empty() ? all : out;
}

std::vector<RepeatedPlace> repeated_places(const Station& station) {
  std::vector<RepeatedPlace> out;
  const auto& rows = station.readings;
  for (std::size_t from = 0, end = 0; from < rows.size(); from = end) {
    for (end = from + 1; end < rows.size() && rows[end].x - rows[from].x <= same_place; ++end) {
    }
    if (end - from < 2) continue;
    RepeatedPlace place;
    place.x = rows[from].x;
    const std::span<const Reading> here(&rows[from], end - from);
    for (std::size_t kind = 0; kind < kinds_read.size(); ++kind) count_kind(here, kind, place);
    if (place.more == 0) continue;
    for (const Reading& row : here) place.lines.push_back(row.line);
    std::sort(place.lines.begin(), place.lines.end());
    out.push_back(std::move(place));
  }
  return out;
}

Repeats repeats_of(std::span<const Station> stations, double told, bool told_by_owner) {
  std::vector<RepeatedPlace> places;
  for (const Station& station : stations) {
    auto here = repeated_places(station);
    std::move(here.begin(), here.end(), std::back_inserter(places));
  }
  // The closest first: each is held against those that lie closer, and against what was told.
  std::sort(places.begin(), places.end(),
            [](const RepeatedPlace& a, const RepeatedPlace& b) { return a.square * b.limit() < b.square * a.limit(); });
  Repeats out;
  for (const RepeatedPlace& place : places) {
    if (out.left_out > 0 || place.disagrees(own_error(told, told_by_owner, out))) {
      ++out.left_out;
      continue;
    }
    out.more += place.more;
    out.square += place.square;
  }
  return out;
}

double own_error(double told, bool told_by_owner, const Repeats& repeats) {
  const double weight = told_by_owner ? 6 : 3;
  return std::sqrt((weight * told * told + repeats.square) / (weight + repeats.more));
}

std::string apart_words(const RepeatedPlace& place, double sigma, LengthUnit unit) {
  std::string apart;
  const auto kinds = place.kinds_apart(sigma);
  for (std::size_t k = 0; k < kinds.size(); ++k) {
    apart += (k == 0                  ? ""
              : k + 1 == kinds.size() ? " and "
                                      : ", ") +
             std::string(kind_names[kinds[k]]) + " " + in_unit(place.apart[kinds[k]], unit);
  }
  const std::string times = place.times == 2 ? "twice" : std::to_string(place.times) + " times";
  return "read " + times + ", " + apart + " apart" + lines_named(place.lines);
}

}  // namespace fairblade::job
