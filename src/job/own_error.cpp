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
  out.more += n - 1;
  out.square += square;
}

}  // namespace

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

std::string apart_words(const RepeatedPlace& place, LengthUnit unit) {
  std::string apart;
  const auto kinds_apart = std::count_if(place.apart.begin(), place.apart.end(), [](double mm) { return mm > 0; });
  long told = 0;
  for (std::size_t kind = 0; kind < kinds_read.size(); ++kind) {
    if (!(place.apart[kind] > 0)) continue;
    apart += (told == 0                 ? ""
              : told + 1 == kinds_apart ? " and "
                                        : ", ") +
             std::string(kind_names[kind]) + " " + in_unit(place.apart[kind], unit);
    ++told;
  }
  const std::string times = place.times == 2 ? "twice" : std::to_string(place.times) + " times";
  std::string lines;
  if (place.lines.front() > 0) {
    lines = " (lines " + std::to_string(place.lines.front()) + " and " + std::to_string(place.lines.back()) + ")";
  }
  return "read " + times + ", " + apart + " apart" + lines;
}

}  // namespace fairblade::job
