#include "job/csv_surplus.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

constexpr std::size_t most_told = 20;     // as many as there are faults
constexpr std::size_t fewest_rows = 3;    // below that decimals agree by chance
constexpr std::size_t most_decimals = 2;  // that a program writes everywhere

bool all_digits(std::string_view cell) { return !cell.empty() && std::all_of(cell.begin(), cell.end(), is_digit); }

/// What stands on either side of a decimal comma.
bool may_be_parted(std::string_view whole, std::string_view decimals) {
  if (whole.starts_with('-')) whole.remove_prefix(1);
  return all_digits(whole) && all_digits(decimals);
}

}  // namespace

void Surplus::take_surplus(int line, const std::vector<std::string_view>& cells, std::size_t surplus) {
  if (padded_++ == 0) surplus_ = surplus;
  alike_ = alike_ && surplus == surplus_;
  std::size_t numbers = 0, free_from = 1;  // numbers in two parts, of which none shares a cell with another
  std::vector<std::size_t> here(cells.size(), 0);
  for (std::size_t i = 1; i < cells.size(); ++i) {
    if (!may_be_parted(cells[i - 1], cells[i])) continue;
    here[i] = cells[i].size();
    if (i < free_from) continue;
    ++numbers;
    free_from = i + 2;
  }
  if (numbers < surplus) return;
  if (parted_++ == 0) decimals_ = here;
  decimals_.resize(std::max(decimals_.size(), here.size()), 0);
  here.resize(decimals_.size(), 0);
  for (std::size_t i = 0; i < here.size(); ++i) {
    if (decimals_[i] != here[i]) decimals_[i] = 0;
  }
  if (first_.size() < most_told) first_.push_back({line, cells.size()});
}

std::vector<Surplus::Row> Surplus::suspect() const {
  const auto fixed = [](std::size_t decimals) { return decimals > 0 && decimals <= most_decimals; };
  const bool as_a_program = parted_ == rows_ && rows_ >= fewest_rows && std::any_of(decimals_.begin(), decimals_.end(), fixed);
  return padded_ == rows_ && alike_ && !as_a_program ? std::vector<Row>() : first_;
}

}  // namespace fairblade::job
