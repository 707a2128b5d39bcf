// Private to the job room. Product: coats, fillers, workshop, packs, water and print, out of a job's tree.
// Verbs: one per part. What the owner left out is a default, listed.
#pragma once
#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "job/job.hpp"
#include "job/reader.hpp"

namespace fairblade::job {

/// `root` is the job's object; each reads its own key there.
void read_coats(const Reader& reader, const Node& root, Job& job);
void read_fillers(const Reader& reader, const Node& root, Job& job);
void read_workshop(const Reader& reader, const Node& root, Job& job);
void read_zones(const Reader& reader, const Node& root, Job& job);
void read_nose_glass(const Reader& reader, const Node& root, Job& job);
void read_packs(const Reader& reader, const Node& root, Job& job);
void read_compared_coatings(const Reader& reader, const Node& root, Job& job);
void read_water(const Reader& reader, const Node& root, Job& job);
void read_print(const Reader& reader, const Node& root, Job& job);

/// What several parts are made of. Each is nothing where the value is missing or wrong, and then there is a fault.
/// [a, b] of numbers, each in the range.
std::optional<std::array<double, 2>> pair_of_numbers(const Reader& reader, const Node& node, std::string_view key, Range range,
                                                     std::string_view example);
/// [from, to] in hours, from before to.
std::optional<Window> read_window(const Reader& reader, const Node& node, std::string_view key);
/// { "size": ..., "price": ... }, size in the unit named.
std::optional<Pack> read_pack(const Reader& reader, const Node& node, const std::string& key, std::string_view size_key,
                              std::string_view unit);
/// `listed`: what its defaults are listed under, "coats[0].cloth".
std::optional<Cloth> read_cloth(const Reader& reader, const Node& node, const std::string& key, const std::string& listed);
/// The object under that key, or nothing where it is missing or wrong; `wrong` tells the two apart.
const Node* part(const Reader& reader, const Node* from, std::string_view key, std::span<const std::string_view> known,
                 bool& wrong);

}  // namespace fairblade::job
