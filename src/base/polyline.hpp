// Reading off a polyline that rises in x, as the faces of a section do. Verbs: ordinate_at, length_of.
#pragma once
#include "base/geometry.hpp"

namespace fairblade {

/// y where the line passes that x; its end's beyond its ends.
double ordinate_at(const Polyline& line, double x);
/// From end to end along it; any line.
double length_of(const std::vector<Point>& line);

}  // namespace fairblade
