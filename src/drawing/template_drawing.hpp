// Product: full-size templates of one section, as Sheets in mm. Verbs: draw_card, draw_pair, draw_positive, framed,
// draw_template.
//
// A card is the negative of one face: it lies outside the blade and slides square against its surface. Its working edge
// is the section at that stage of the work, from leading edge to trailing edge; ahead and aft of them it comes in to the
// chord line, so that it stops at both edges, and so that the two sides' cards meet there. The back is straight and
// parallel to the chord line. Drawn with the printed side up and forward to the left.
#pragma once
#include "drawing/sheet.hpp"
#include "fill/stages.hpp"
#include "job/job.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::drawing {

struct TemplateOf {
  const job::Job& job;
  const target::TargetSection& target;
  const fill::StageSection& stage;
  section::Face face = section::Face::port;
  bool thickness_only = false;  ///< read by calipers, which cannot tell port from starboard
  double from_fraction = 0;     ///< of the chord: where an aft half begins; 0 for the whole
};

/// "FINAL", "BARE, clearance 3 mm": what the sheet is headed with.
std::string stage_words(const fill::StageSection& stage);

/// A card with its dimension, just as large as it is.
struct TemplateCard {
  Sheet sheet;
  Point origin;            ///< of the finished leading edge on the chord line
  double first_tenth = 0;  ///< greatest half-breadth in the first tenth of the chord, where no joint should run
};
TemplateCard draw_card(const TemplateOf& wanted);
/// Both sides' cards round one section: they share the chord line, along which they are cut apart.
TemplateCard draw_pair(const TemplateOf& wanted);
/// The section itself, both faces, to cut round; as large as it is.
Sheet draw_positive(const TemplateOf& wanted);
/// A sheet of its own around a card: margins, check bars across and along, how to print.
Sheet framed(const Sheet& card, LengthUnit unit, const std::string& note = {});
/// The card with room on the blade's side and its check bars.
Sheet draw_template(const TemplateOf& wanted);

}  // namespace fairblade::drawing
