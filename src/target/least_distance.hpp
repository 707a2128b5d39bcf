// Private to the target room. Product: the shortest vector that satisfies a set of inequalities.
// Verbs: least_distance.
//
// Lawson & Hanson, Solving Least Squares Problems (1974), ch. 23: algorithms NNLS and LDP.
#pragma once
#include <Eigen/Core>

namespace fairblade::target {

/// The least |z| with G z >= h. Some z must satisfy them; few unknowns (one to three here), any number of rows.
Eigen::VectorXd least_distance(const Eigen::MatrixXd& G, const Eigen::VectorXd& h);

}  // namespace fairblade::target
