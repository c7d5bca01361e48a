#include "libtexture/plan/defect_answer.hpp"

#include <algorithm>

#include "libtexture/base/units.hpp"
#include "libtexture/plan/sample_risk.hpp"
#include "libtexture/plan/worked_panel.hpp"

namespace libtexture {

namespace {

// Share of the worlds in which no more than so much is left.
double share_within(const std::vector<double>& left_um, double most_um) {
  const auto within = std::count_if(left_um.begin(), left_um.end(), [&](double um) { return um <= most_um; });
  return static_cast<double>(within) / static_cast<double>(left_um.size());
}

DefectWay way_of(DefectWayKind kind, const Defect& defect, const RiskDraws& draws,
                 const std::optional<double>& hidden_um) {
  DefectWay way{.way = kind,
                .clear_um = spread_of(draws.defect_removed_um),
                .left_um = spread_of(draws.defect_left_um),
                .minutes = spread_of(draws.minutes),
                .discs = spread_of(draws.discs),
                .gone_probability = share_within(draws.defect_left_um, may_stay_um(defect)),
                .short_probability = mean_of(draws.is_clear_left_short)};
  if (hidden_um) way.hidden_probability = share_within(draws.defect_left_um, *hidden_um);
  return way;
}

// Nothing is done: all of it stays, and all of the clear.
DefectWay leaving(const Defect& defect, const std::vector<double>& sizes_um, const RiskDraws& draws,
                  const std::optional<double>& hidden_um) {
  DefectWay way{.way = DefectWayKind::leave,
                .left_um = spread_of(sizes_um),
                .gone_probability = share_within(sizes_um, may_stay_um(defect)),
                .short_probability = mean_of(draws.is_short_before)};
  if (hidden_um) way.hidden_probability = share_within(sizes_um, *hidden_um);
  return way;
}

// Whether the slope of the feather is seen.
Statement feather_note(const DefectAnswer& answer, double removed_um) {
  const bool is_shown = *answer.feather_shift_arcmin > resolved_arcmin;
  return {.kind = is_shown ? StatementKind::feather_shows : StatementKind::feather_hidden,
          .figures = {{"removed_um", removed_um},
                      {"feather_mm", *answer.feather_mm},
                      {"shift_arcmin", *answer.feather_shift_arcmin}}};
}

// What rounding a groove's edges can do, or why nobody knows.
Statement round_note(const Defect& defect, const std::optional<double>& hidden_um, const Viewer& viewer) {
  if (is_above(defect)) return {.kind = StatementKind::defect_round_unknown};
  if (hidden_um)
    return {.kind = StatementKind::defect_round_hides,
            .figures = {{"hidden_um", *hidden_um}, {"width_mm", *defect.width_mm}}};
  if (!defect.width_mm) return {.kind = StatementKind::defect_width_missing};
  return {.kind = StatementKind::defect_too_narrow,
          .figures = {{"width_mm", *defect.width_mm}, {"resolved_mm", resolved_mm(viewer.viewer_m)}}};
}

}  // namespace

DefectAnswer defect_answer(const Job& job, std::size_t panel, const SampledRisk& sampled,
                           const Motion& first) {
  const Defect& defect = job.target.defect.value();
  const Viewer viewer = viewer_of(job);
  const RiskDraws& own = sampled.draws[panel];
  DefectAnswer answer;
  answer.size_um = spread_of(sampled.defect_um);
  answer.worked_area_m2 = worked_panel(job.panel[panel], defect, first).area_m2;
  answer.hidden_um = hidden_depth_um(defect, viewer);
  answer.ways.push_back(way_of(sampled_ways(defect, viewer).front(), defect, own, answer.hidden_um));
  for (const SampledWay& other : sampled.other_ways)
    answer.ways.push_back(way_of(other.way, defect, other.draws[panel], answer.hidden_um));
  answer.ways.push_back(leaving(defect, sampled.defect_um, own, answer.hidden_um));
  if (defect.patch_mm) {
    const double removed_um = answer.ways.front().clear_um.p50;
    answer.feather_mm = feather_mm(defect, first);
    const double slope = removed_um * metre_per_um / (*answer.feather_mm * metre_per_mm);
    answer.feather_shift_arcmin = seen_shift_arcmin(slope, viewer);
    answer.notes.push_back(feather_note(answer, removed_um));
  }
  answer.notes.push_back(round_note(defect, answer.hidden_um, viewer));
  return answer;
}

}  // namespace libtexture
