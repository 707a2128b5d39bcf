#include "job/build.hpp"

#include <algorithm>

namespace fairblade::job {

double build_of(const Coat& coat) {
  return coat.layers * (coat.thickness ? *coat.thickness : coat.dry_film_um.value_or(0) / 1000);
}

bool over_filler(const Coat& coat) { return coat.on == CoatedPart::all || coat.on == CoatedPart::filled; }

double build_of(const Job& job) { return coats_over(job).over_filler; }

CoatsOver coats_over(const Job& job) {
  const auto build_on = [&](CoatedPart part) {
    double sum = 0;
    for (const Coat& coat : job.coats) {
      if (coat.on == part) sum += build_of(coat);
    }
    return sum;
  };
  return {build_on(CoatedPart::all) + build_on(CoatedPart::filled),
          build_on(CoatedPart::all) + std::max(build_on(CoatedPart::old), build_on(CoatedPart::bare))};
}

}  // namespace fairblade::job
