#include "base/file_names.hpp"

#include <set>

#include "base/text.hpp"

namespace fairblade {

std::vector<std::string> file_names_of(const std::vector<std::string>& names) {
  std::set<std::string> taken;
  std::vector<std::string> out;
  for (const std::string& one : names) {
    std::string name = file_name_of(one);
    if (name == file_name_of("")) name = "number-" + std::to_string(out.size() + 1);  // no letter that every file system takes
    std::string unique = name;
    for (int k = 2; !taken.insert(lower_case(unique)).second; ++k) unique = name + "_" + std::to_string(k);
    out.push_back(unique);
  }
  return out;
}

}  // namespace fairblade
