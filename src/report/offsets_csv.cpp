#include <algorithm>

#include "base/text.hpp"
#include "report/csv_cell.hpp"
#include "report/report.hpp"

namespace fairblade::report {
std::string offsets_csv(const Plan& plan) {
  constexpr int decimals = 3;
  std::string out = "station,down,x,side,measured,target,change\n";
  for (std::size_t k = 0; k < plan.changes.size(); ++k) {
    const std::string start = csv_cell(plan.changes[k].station) + ',' + fixed(plan.measured[k].down, decimals) + ',';
    for (const fill::OffsetRow& row : plan.changes[k].offsets) {
      out += start + fixed(row.x, decimals) + ',' + section::name_of(row.face) + ',' + fixed(row.measured, decimals) + ',' +
             fixed(row.target, decimals) + ',' + fixed(row.change, decimals) + '\n';
    }
  }
  return out;
}

}  // namespace fairblade::report
