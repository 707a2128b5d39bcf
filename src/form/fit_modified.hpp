// Fit of the modified 4-digit family: thickness, leading-edge index and place of greatest thickness. Verbs: fit_modified.
#pragma once
#include <vector>

#include "form/form.hpp"
#include "form/normal_distance.hpp"

namespace fairblade::form {

struct ModifiedFit {
  Form form;
  double rms = 0;  ///< chords, normal
};

/// Starts from a plain fit. `centred`: shift and skew held where they are. `reading_error` in chords: the least scale.
/// Index held to [1, 9], place to [0.2, 0.6], where the published equations stand.
ModifiedFit fit_modified(const std::vector<Sample>& samples, double thickness, const CentreLine& centre, bool centred,
                         double reading_error);

}  // namespace fairblade::form
