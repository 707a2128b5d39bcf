// Small numerics that every room needs; roots and least values by Boost.Math. Verbs: median,
// normal_density, normal_below, root_between, least_between, polynomial_roots, merged, chord_fractions.
#pragma once
#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace fairblade {

/// The middle value (mean of the two middle ones); `values` must not be empty.
double median(std::vector<double> values);
/// Standard normal density and distribution function.
double normal_density(double z);
double normal_below(double z);
/// A root of f in [low, high], where f changes sign, to about 1e-13 of itself (TOMS 748);
/// nothing when the signs at the ends agree or a value is not finite.
std::optional<double> root_between(const std::function<double(double)>& f, double low, double high);
/// The place of the least f in [low, high] for a f with one dip there (Brent).
double least_between(const std::function<double(double)>& f, double low, double high);
/// The real roots of c[0] + c[1] s + ... in [low, high], by bracketing between the roots of the derivative.
std::vector<double> polynomial_roots(const std::vector<double>& c, double low, double high);

/// The values of two lists that rise, in one that rises.
std::vector<double> merged(const std::vector<double>& a, const std::vector<double>& b);
/// count + 1 chord fractions 0..1, evenly spaced in their square root, because a round nose is root-shaped.
std::vector<double> chord_fractions(std::size_t count);

}  // namespace fairblade
