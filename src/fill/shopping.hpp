// Product: what to buy, rounded up to whole packs, with its cost; and what two coatings cost a year.
// Verbs: shopping_of, compare_coatings.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "fill/coats.hpp"
#include "fill/mix.hpp"

namespace fairblade::fill {

struct ShoppingItem {
  std::string what;
  double needed = 0;
  std::string unit;                 ///< "kg", "L" or "m"
  std::optional<double> pack_size;  ///< in that unit
  int packs = 0;                    ///< 0 without a pack size
  std::optional<double> cost;       ///< of the whole packs, or of the metres
};

struct Shopping {
  std::vector<ShoppingItem> items;
  std::optional<double> cost;  ///< of what has a price
  bool all_priced = false;
  std::string currency;  ///< as the owner names it; may be empty
};

/// Resin and hardener of both fillers, glass and pinhole skim are one purchase where the two fillers use one epoxy
/// (same ratio and densities). Pinhole skim is reckoned as neat epoxy.
Shopping shopping_of(const job::Job& job, const std::array<ZoneMix, 3>& mixes, const Coats& coats);

/// Cost of a year of each, and how long the dearer must last to cost no more a year than the cheaper.
struct YearCost {
  std::string cheaper, dearer;
  double cheaper_a_year = 0, dearer_a_year = 0;
  double break_even_years = 0;
};
YearCost compare_coatings(const job::ComparedCoating& a, const job::ComparedCoating& b);

}  // namespace fairblade::fill
