#include "form/form.hpp"

#include <cmath>
#include <string>

namespace fairblade::form {

std::string name_of(const Form& form) {
  const int percent = static_cast<int>(std::lround(100 * form.thickness_ratio));
  std::string out = "00";
  if (percent < 10) out += '0';
  out += std::to_string(percent);
  if (form.plain()) return out;
  out += '-';
  out += std::to_string(std::lround(form.leading_edge_index));
  out += std::to_string(std::lround(10 * form.max_thickness_at));
  return out;
}

}  // namespace fairblade::form
