// Private to the report room. Product: findings said in plain words. Verbs: one per finding.
#pragma once
#include <string>

#include "report/plan.hpp"

namespace fairblade::report {

/// "12.3 mm", and for a job in another unit that unit beside it: "12.3 mm (0.484 in)".
std::string both_units(double mm, LengthUnit unit);
/// "port", "starboard", or "both sides" where the two were not told apart.
std::string side_words(const section::MeasuredSection& measured, section::Face face);
/// The nearest form's name for a table: with a warning word where the blade is no standard section.
std::string nearest_form(const Plan& plan, std::size_t station);
/// How far one station is from its nearest standard section: typical miss, worst miss and where.
std::string nearness(const Plan& plan, std::size_t station);
/// What the litres do not cover, each a sentence; empty when they cover the blade from top to bottom.
std::vector<std::string> not_included(const Plan& plan);

}  // namespace fairblade::report
