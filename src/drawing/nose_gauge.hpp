// Product: leading-edge gauges, each half a Card just as large as it is, and both halves on a sheet, in mm.
// Verbs: gauge_cards, draw_gauge, draw_gauge_sheet.
//
// Half a gauge is the negative of one face, from its own data: it lies outside the blade. Its working edge runs from the
// leading edge aft to where the tail ends, if it can be on the stock centreline, so that the gauge cannot stand out of
// true. Ahead of the leading edge a horn laps over the chord line; two holes on it take the bolts that join both halves.
// Drawn with the printed side up and forward to the left.
#pragma once
#include <string>
#include <vector>

#include "drawing/sheet.hpp"
#include "fill/nose.hpp"
#include "job/job.hpp"
#include "section/section.hpp"

namespace fairblade::drawing {

/// A piece to cut out of a shared page.
struct Card {
  std::string id;     ///< letters, digits, '-', '.' and '_': for files and names; distinct within one stage
  std::string label;  ///< "A, nose, port, BARE": what a list calls it
  Sheet sheet;
};

constexpr double bolt_hole = 5;  ///< mm across
/// mm ahead of the leading edge where the bolts go, on the chord line.
constexpr double bolt_places[] = {10, 28};

/// The half of one face; `nose` must have a gauge.
Sheet draw_gauge(const job::Job& job, const fill::Nose& nose, section::Face face);
/// Both halves with check bars and the numbers.
Sheet draw_gauge_sheet(const job::Job& job, const fill::Nose& nose);
/// Port and starboard of every height that has a gauge, from the top down.
std::vector<Card> gauge_cards(const job::Job& job, const std::vector<fill::Nose>& noses);

}  // namespace fairblade::drawing
