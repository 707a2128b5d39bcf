#include "job/sources.hpp"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <optional>

namespace fairblade::job {
namespace {

/// FNV-1a, 64 bits (RFC 9923).
class Digest {
 public:
  void take(std::string_view bytes) {
    for (const char c : bytes) hash_ = (hash_ ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  }
  std::string words() const {
    std::string out(16, '0');
    std::uint64_t rest = hash_;
    for (std::size_t k = 16; k-- > 0; rest >>= 4) out[k] = "0123456789abcdef"[rest & 15u];
    return out;
  }

 private:
  std::uint64_t hash_ = 0xcbf29ce484222325u;
};

}  // namespace

std::optional<std::string> digest_of_file(const std::string& path) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(path, error)) return std::nullopt;
  std::ifstream in(path, std::ios::binary);
  if (!in) return std::nullopt;
  Digest out;
  std::string piece(1u << 16, '\0');
  do {
    in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
    out.take(std::string_view(piece).substr(0, static_cast<std::size_t>(in.gcount())));
  } while (in);
  if (in.bad()) return std::nullopt;
  return out.words();
}

std::vector<Source> sources_of(const Job& job) {
  std::vector<Source> out{{job.file, {}}};
  for (const Station& station : job.stations) {
    const auto same = [&](const Source& one) { return one.file == station.readings_from; };
    if (station.readings_from.empty() || std::any_of(out.begin(), out.end(), same)) continue;
    out.push_back({station.readings_from, {}});
  }
  for (Source& one : out) {
    one.digest = digest_of_file(one.file).value_or("");
  }
  return out;
}

SourceState state_of(const Source& source) {
  const auto digest = digest_of_file(source.file);
  if (!digest || source.digest.empty()) return SourceState::gone;
  return *digest == source.digest ? SourceState::same : SourceState::changed;
}

}  // namespace fairblade::job
