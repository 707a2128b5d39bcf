// What a station's target is to be, before the span is looked along and before it is drawn. Verbs: draft_of,
// fair_drafts.
#pragma once
#include <optional>
#include <vector>

#include "target/least_fill.hpp"

namespace fairblade::target {

struct Draft {
  Wish wish;
  double thickness_ratio = 0;
  std::optional<Need> need;  ///< least-fill only, for the wish as it stands
  Pull pull;
};

/// The station by itself: family, extensions and thickness as asked, fitted, or least.
Draft draft_of(const job::Station& station, const section::MeasuredSection& measured, const form::FittedForm& fitted);

/// May the tool choose how far an edge is built out?
inline bool chooses_extension(const job::TargetRequest& request) {
  return request.extend_leading_edge.up_to || request.extend_trailing_edge.up_to;
}

/// Is the job's blade faired along the span?
inline bool fairs_the_span(const job::Job& job) {
  return job.target.spanwise != job::Spanwise::as_measured && job.stations.size() >= 2;
}

/// Fairs outline, family and thickness along the span, by the job's "spanwise". Thickness ratios that the owner gave stand.
/// The outline is faired only when no station would move by more than `outline_reach` reading errors; a blade whose edges
/// are no such line keeps them, and that is said. Least-fill stations keep their cut limits: the line runs above them.
/// Moves within one reading error are not made.
constexpr double outline_reach = 4;
void fair_drafts(const job::Job& job, const std::vector<section::MeasuredSection>& measured, std::vector<Draft>& drafts,
                 std::vector<Warning>& warnings);

}  // namespace fairblade::target
