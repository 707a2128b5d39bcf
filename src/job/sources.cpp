#include "job/sources.hpp"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>

namespace fairblade::job {
namespace {

std::optional<std::string> bytes_of(const std::string& path) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(path, error)) return std::nullopt;
  std::ifstream in(path, std::ios::binary);
  if (!in) return std::nullopt;
  std::string out{std::istreambuf_iterator<char>(in), {}};
  if (in.bad()) return std::nullopt;
  return out;
}

}  // namespace

std::string digest_of(std::string_view bytes) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : bytes) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  std::string out(16, '0');
  for (std::size_t k = 16; k-- > 0; hash >>= 4) out[k] = "0123456789abcdef"[hash & 15u];
  return out;
}

std::vector<Source> sources_of(const Job& job) {
  std::vector<Source> out{{job.file, {}}};
  for (const Station& station : job.stations) {
    const auto same = [&](const Source& one) { return one.file == station.readings_from; };
    if (station.readings_from.empty() || std::any_of(out.begin(), out.end(), same)) continue;
    out.push_back({station.readings_from, {}});
  }
  for (Source& one : out) {
    if (const auto bytes = bytes_of(one.file)) one.digest = digest_of(*bytes);
  }
  return out;
}

SourceState state_of(const Source& source) {
  const auto bytes = bytes_of(source.file);
  if (!bytes || source.digest.empty()) return SourceState::gone;
  return digest_of(*bytes) == source.digest ? SourceState::same : SourceState::changed;
}

}  // namespace fairblade::job
