// Reading off a polyline that rises in x, as the faces of a section do.
#pragma once
#include "base/geometry.hpp"

namespace fairblade {

/// y where the line passes that x; its end's beyond its ends.
double ordinate_at(const Polyline& line, double x);

}  // namespace fairblade
