#include <algorithm>

#include "base/text.hpp"
#include "report/csv_cell.hpp"
#include "report/report.hpp"

namespace fairblade::report {
namespace {

std::string rows_of(const Plan& plan, std::size_t k) {
  constexpr int decimals = 3;
  const std::string start = csv_cell(plan.changes[k].station) + ',' + fixed(plan.measured[k].down, decimals) + ',';
  std::string out;
  for (const fill::OffsetRow& row : fill::Offsets(plan.measured[k], plan.changes[k])) {
    out += start;
    append_fixed(out, row.x, decimals);
    out.append(",").append(section::name_of(row.face));
    for (const double mm : {row.measured, row.target, row.change()}) {
      out += ',';
      append_fixed(out, mm, decimals);
    }
    out += '\n';
  }
  return out;
}

}  // namespace

Pieces offsets_csv_pieces(const Plan& plan) {
  return {plan.changes.size() + 1,
          [&plan](std::size_t k) { return k == 0 ? "station,down,x,side,measured,target,change\n" : rows_of(plan, k - 1); }};
}

std::string offsets_csv(const Plan& plan) { return whole(offsets_csv_pieces(plan)); }

}  // namespace fairblade::report
