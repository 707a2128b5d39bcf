// Private to the report room. plan.json's "water". Verbs: water_json. mm, degrees, knots, Hz, N, Nm; null: not known.
//
// knots, helm, end_plate ("none" | "half" | "full"), heard_hz
// meaning: stall, hum, helm, pull, verdict (sentences), stall_gain, stall_loss, hum_change, helm_change, pull_gain (beyond
//   the readings' error)
// blade.before, .after: area, span, mean_chord, balance_percent, known, why_not, and where known geometric_aspect,
//   effective_aspect, sweep_degrees, lift_slope (per radian), centre_of_pressure (mean chords), lever,
//   class_lever_ahead, class_lever_astern, force, torque
// pull: before, after (degrees of helm that cancel it), error
// stations[]: name, weight (share of the blade), nose, edge.before, edge.after, before, after
//   nose: known, why_not, suction_before, suction_after, ratio (at 8 degrees), same_suction_helm, sure_helm,
//     reading_error_excess, reading_error (one standard deviation)
//   edge.*: thickness, solid_angle, hertz [low, high], humming_knots [low, high]
//   before, after: known, why_not, lift_slope, lift_at_zero_helm, helm_to_cancel, helm_effect, parted, to_port and
//     to_starboard (lists over helm 0 to 12: helm, lift, normal, axial, moment, centre_of_pressure, lowest_pressure, lowest_at,
//     suction, suction_at), pressure (helm, and port and starboard, each x in chords and cp)
// edge_options[]: name, words, hertz; limits[]
#pragma once
#include "flow/water.hpp"
#include "report/pieces.hpp"

namespace fairblade::report {

/// Its text, station by station. The water must outlive it.
Pieces water_json(const flow::Water& water);

}  // namespace fairblade::report
