// Private to the report room. What a recheck found, in the words of its list. Verbs: one per thing found.
#pragma once
#include <string>
#include <vector>

#include "recheck/recheck.hpp"

namespace fairblade::report {

/// "60 aft", "12 aft of the stock", "30 from the trailing edge": as on the sheet, in the job's unit, without its name.
std::string place_words(const recheck::Recheck& recheck, const recheck::Judged& one);
/// "C port", "C both sides".
std::string face_words(const recheck::HeightRead& height, const recheck::Judged& one);
/// "C port, 60 aft".
std::string where_words(const recheck::Recheck& recheck, const recheck::HeightRead& height, const recheck::Judged& one);
/// "0.8 low", "1.2 high".
std::string depth_words(const recheck::Recheck& recheck, double depth);

/// A line of the list: a spot, or one reading beyond the tolerance that is part of none.
struct ListLine {
  double depth = 0;  ///< its worst, + to add
  bool sure = true;  ///< a spot, or a reading that stands out by more than its own error is likely to
  /// To be shown: a spot, a reading to take again, or one beyond twice its error while there is work to do at all. The
  /// rest is noise, as far as anyone can tell, and only counted.
  bool shown = true;
  bool again = false;                   ///< a reading that stands alone: to be read again, not yet work
  const recheck::Spot* spot = nullptr;  ///< or none, and then
  std::size_t height = 0, reading = 0;  ///< the reading's place in the last round
};
/// Worst first.
std::vector<ListLine> list_lines(const recheck::Recheck& recheck);
std::string words_of(const recheck::Recheck& recheck, const ListLine& line);
/// What it comes to, in a line or two, for the head of the list.
std::string verdict_words(const recheck::Recheck& recheck);
/// How many readings the list leaves out, and why; empty where none are.
std::string left_out_words(const recheck::Recheck& recheck);
/// Edges that stand off the target's by more than the tolerance: "C trailing edge: 6.0 to cut back".
std::vector<std::string> edge_words(const recheck::Recheck& recheck);
/// Readings to take again: "C port, 60 aft".
std::vector<std::string> alone_words(const recheck::Recheck& recheck);

}  // namespace fairblade::report
