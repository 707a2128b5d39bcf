// tests/truth/work.csv: examples worked by hand or published, one a row.
#include <cmath>
#include <functional>
#include <map>

#include "catch.hpp"
#include "planned.hpp"

using namespace fairblade;

namespace {

using Row = std::vector<double>;

double pot_life(const Row& in) {
  job::Workshop shop;
  shop.pot_life_minutes = in[0];
  shop.pot_life_at = in[1];
  return fill::pot_life(shop, in[2], shop.pot_life_mass_g);
}

double working_time(const Row& in) {
  auto job = planned::tapered(2, 1000, 420, 420, 0.12, 0.12);
  job.workshop.temperature = in[2];
  job::Coat coat;
  coat.name = "invented";
  coat.stage = "paint";
  coat.dry_film_um = 50;
  coat.spreading_rate = 10;
  coat.working_time = job::WorkingTime{in[0], in[1]};
  job.coats = {coat};
  return planned::plan(job).work.coats.coats.at(0).part_pack->minutes;
}

double wetted(const Row& in) {
  return planned::plan(planned::tapered(2, in[1], in[0], in[0], in[2], in[2])).work.coats.wetted.faces;
}

const std::map<std::string, std::function<double(const Row&)>>& operations() {
  static const std::map<std::string, std::function<double(const Row&)>> out{
      {"glass", [](const Row& in) { return job::glass_layer(in[0], in[1] / 100, in[2], in[3]); }},
      {"film", [](const Row& in) { return fill::film_spread(in[0], in[1]); }},
      {"pot life", pot_life},
      {"working time", working_time},
      {"dew point", [](const Row& in) { return fill::dew_point(in[0], in[1]); }},
      {"strip", [](const Row& in) { return fill::strip_thickness(in[0]); }},
      {"flat block", [](const Row& in) { return fill::flat_block(in[0]); }},
      {"break even",
       [](const Row& in) {
         return fill::compare_coatings({"soft", in[0], in[1]}, {"hard", in[2], 10}).break_even_years;
       }},
      {"wetted", wetted}};
  return out;
}

}  // namespace

TEST_CASE("the examples worked by hand come out") {
  const auto rows = blade::truth("work.csv");
  for (std::size_t k = 1; k < rows.size(); ++k) {
    const auto& row = rows[k];
    Row in;
    for (std::size_t i = 1; i <= 4; ++i) in.push_back(row[i].empty() ? 0 : std::stod(row[i]));
    INFO("work.csv:" << k + 1 << " " << row[0]);
    // Seen: dew points within 0.01 and 0.04, the wetted area within 1e-5 of itself, the rest to the last digit printed.
    const double found = operations().at(row[0])(in), expected = std::stod(row[5]);
    INFO(found << " against " << expected);
    CHECK(std::abs(found - expected) <= std::stod(row[6]));
  }
}
