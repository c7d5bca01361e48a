#pragma once
// StatementKind: all that the library has to say, a sentence a kind.

#include <span>
#include <utility>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// What a statement says.
enum class StatementKind {
  // Reasons of a verdict.
  target_met_before,
  target_mostly_missed,
  clear_struck_through,
  clear_short_before,
  budget_kept,
  too_much_removed,
  too_little_left,
  clear_share_unsure,
  film_between_unsure,
  gauge_unsure,
  removal_unsure,
  target_missed,
  waves_left,
  odd_reading,
  defect_leave_it,
  // Findings of a comparison, its headline first.
  spends_least,
  probably_spends_least,
  alone_reaches,
  none_reaches,
  all_meet_before,
  spends_the_same,
  spends_more,
  spends_less,
  cheaper_in,
  difference_unsure,
  misses_target,
  // Reasons of a recommendation.
  no_tool_reaches,
  budget_bears_none,
  plan_spends,
  finest_is_cheapest,
  finest_is_not_cheapest,
  finest_is_riskier,
  // Why a first step does not do.
  no_backing_carries,
  clear_runs_out,
  rms_unmet,
  touch_unmet,
  clarity_unmet,
  defect_unmet,
  letter_unmet,
  no_letter_read,
  waves_resist,
  larger_disc_helps,
  stiffer_backing_helps,
  too_dear,
  too_many_passes,
  too_many_discs,
  too_many_minutes,
  grooves_unreached,
  // Warnings: limits that the model or the plan came near.
  step_not_worked,
  contact_small,
  foam_near_plateau,
  lanes_miss,
  lanes_leave_stripes,
  inertia_left_out,
  grain_extrapolated,
  edge_margin_of_flat,
  edge_margin_left_out,
  edge_margin_failed,
  marks_left,
  stop_is_not_target,
  seen_letter_fine,
  target_letter_fine,
  length_unusual,
  places_unusual,
  form_removed,
  map_not_periodic,
  // Warnings of a test spot.
  spot_says_little,
  film_thicker_after,
  wear_rate_unexpected,
  texture_unexpected,
  stiffness_unexpected,
  // What shows of a defect that is dealt with.
  feather_hidden,
  feather_shows,
  defect_round_hides,
  defect_round_unknown,
  defect_width_missing,
  defect_too_narrow,
  // What moved the belief of a test spot.
  belief_by_readings,
  belief_by_looks,
  belief_by_texture,
  // Cautions.
  local_codes_prevail,
  predictions_are_estimates,
  clear_does_not_return,
  old_paint_harms,
  solvent_burns,
  vibration_harms,
  noise_harms,
  dust_harms,
  water_conducts,
  slurry_harms,
  compound_flings,
  // What to do before the first pass.
  wash,
  strip,
  mask_edges,
  set_light,
  make_test_spot,
  connect_extraction,
  keep_plugs_dry,
};

/// Every kind with its name, in the order above.
std::span<const std::pair<StatementKind, const char*>> names_of(StatementKind);

/// The sentence of a kind. {clear_um} stands for a figure with its unit, {clear_um:2} for the same with so
/// many decimals, {clear_um:film} for both units of a thickness, {share:%1} for a share in percent,
/// {passes:count} for a whole number, {chance:cases} for a probability as chance_text();
/// {low_um..high_um:film} for a range; {panel} and other members of Statement for names. What stands in
/// [brackets] is left out where a figure in it is not given.
const char* sentence_of(StatementKind kind);

}  // namespace libtexture
