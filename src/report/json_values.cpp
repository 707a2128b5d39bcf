#include "report/json_values.hpp"

#include <cmath>

#include "base/text.hpp"

namespace fairblade::report {

std::string number(double value) { return std::isfinite(value) ? shortest(value) : "null"; }

std::string dumped(const Json& json) { return json.dump(1, ' ', false, Json::error_handler_t::replace); }

std::string left_open(const Json& object) {
  std::string out = dumped(object);
  out.resize(out.size() - 2);  // its line end and brace
  return out + ",\n";
}

}  // namespace fairblade::report
