#include "libtexture/base/statement_kind.hpp"

#include <vector>

namespace libtexture {

namespace {

struct Words {
  const char* name;
  const char* sentence;
};

// The compiler warns of a kind that is missing here.
Words words_of(StatementKind kind) {
  switch (kind) {
    case StatementKind::target_met_before:
      return {"target_met_before",
              "The target is met before any work in {target_met_before_probability:cases}."};
    case StatementKind::target_mostly_missed:
      return {"target_mostly_missed",
              "This way misses the target in {target_missed_probability:cases}: the clear would be spent for "
              "nothing."};
    case StatementKind::clear_short_before:
      return {"clear_short_before",
              "Before any work, less than {must_stay_um:film} of clear is there at the thinnest place in "
              "{short_before_probability:cases}."};
    case StatementKind::clear_struck_through:
      return {"clear_struck_through",
              "The clear is struck through somewhere on {area_m2} in {strike_through_probability:cases}."};
    case StatementKind::budget_kept:
      return {"budget_kept",
              "The work breaks the budget in {broken_by_work_probability:cases}[, counted over the "
              "{kept_worlds:count} of {worlds:count} in which enough clear is there before any work; in all, "
              "{budget_exceeded_probability:cases} end with a rule broken]. In 90 "
              "of 100 cases it removes {removed_p05_um..removed_p95_um:film} of clear and leaves "
              "{clear_left_p05_um..clear_left_p95_um:film} where it is thinnest; at least "
              "{must_stay_um:film} must stay."};
    case StatementKind::too_much_removed:
      return {"too_much_removed",
              "The work breaks the budget in {broken_by_work_probability:cases}[, counted over the "
              "{kept_worlds:count} of {worlds:count} in which enough clear is there before any work; in all, "
              "{budget_exceeded_probability:cases} end with a rule broken], "
              "mostly because too much clear goes. In 90 of 100 cases it removes "
              "{removed_p05_um..removed_p95_um:film}, and {removable_p05_um..removable_p95_um:film} may "
              "go."};
    case StatementKind::too_little_left:
      return {"too_little_left",
              "The work breaks the budget in {broken_by_work_probability:cases}[, counted over the "
              "{kept_worlds:count} of {worlds:count} in which enough clear is there before any work; in all, "
              "{budget_exceeded_probability:cases} end with a rule broken], "
              "mostly because too little clear stays. In 90 of 100 cases it leaves "
              "{clear_left_p05_um..clear_left_p95_um:film} where the clear is thinnest; at least "
              "{must_stay_um:film} must stay."};
    case StatementKind::clear_share_unsure:
      return {"clear_share_unsure",
              "What is least known is how much of the film is clear: it makes {variance_share:%0} of the "
              "variance of the clear left. The painter's record, an ultrasonic gauge, which reads layer by "
              "layer, or a chip seen from the side shows it; more readings of the whole film do not."};
    case StatementKind::film_between_unsure:
      return {"film_between_unsure",
              "What is least known is the film between the readings: it makes {variance_share:%0} of the "
              "variance of the clear left. More readings, close together where the film is thin, show it."};
    case StatementKind::gauge_unsure:
      return {"gauge_unsure",
              "What is least known is what the gauge reads: it makes {variance_share:%0} of the variance of "
              "the clear left. More readings at each place, and a check of the gauge on a film of known "
              "thickness, show it."};
    case StatementKind::removal_unsure:
      return {"removal_unsure",
              "What is least known is how much the work removes[: it makes {variance_share:%0} of the "
              "variance of the clear left]. A test spot shows it."};
    case StatementKind::target_missed:
      return {"target_missed", "The target is missed in {target_missed_probability:cases}."};
    case StatementKind::defect_leave_it:
      return {"defect_leave_it",
              "Leave the defect[: taking it out would cost {clear_um:1} of clear, with too little left in "
              "{short_probability:cases}]."};
    case StatementKind::feather_hidden:
      return {"feather_hidden",
              "The feather does not show: {removed_um:1} over {feather_mm:0} shift what is mirrored by "
              "{shift_arcmin:2}, less than the 1 arcmin that normal sight resolves."};
    case StatementKind::feather_shows:
      return {"feather_shows",
              "The feather may show: {removed_um:1} over {feather_mm:0} shift what is mirrored by "
              "{shift_arcmin:2}, and normal sight resolves 1 arcmin. Make feather_mm wider."};
    case StatementKind::defect_round_hides:
      return {"defect_round_hides",
              "Flanks of a groove {width_mm} wide are too flat to be seen once it is no deeper than "
              "{hidden_um:2}."};
    case StatementKind::defect_round_unknown:
      return {"defect_round_unknown",
              "What rounding the edges of a mark above the paint would hide is not modelled."};
    case StatementKind::defect_width_missing:
      return {"defect_width_missing",
              "Whether rounding its edges would hide the defect is not known: state width_mm."};
    case StatementKind::defect_too_narrow:
      return {
          "defect_too_narrow",
          "Rounding its edges is not modelled: at {width_mm} across, less than the {resolved_mm:2} that "
          "normal sight resolves, the eye sees a line of scattered light and not the slope of its flanks."};
    case StatementKind::waves_left:
      return {"waves_left",
              "Touched all over is not flat: {rms_um:2} rms stays[, mostly of waves about "
              "{wavelength_mm:0} long], and is seen in a mirrored letter. State rms_um or letter_mm where "
              "that is too much."};
    case StatementKind::odd_reading:
      return {"odd_reading",
              "One reading is {reading_um:film} among others of about {usual_um:film}. Check its unit, and "
              "whether there is filler (over = \"filler\" then leaves it out) or the place was sanded "
              "before."};

    case StatementKind::spends_least:
      return {"spends_least",
              "{sequence} spends least clear[ of the {reaching:count} of {sequences:count} that reach the "
              "target]."};
    case StatementKind::probably_spends_least:
      return {"probably_spends_least",
              "{sequence} probably spends least clear[ of the {reaching:count} of {sequences:count} that "
              "reach the target]."};
    case StatementKind::alone_reaches:
      return {"alone_reaches",
              "{sequence} is the only one of {sequences:count} that reaches the target often enough."};
    case StatementKind::none_reaches:
      return {"none_reaches",
              "No sequence reaches the target often enough; {sequence} misses it least, in "
              "{target_missed_probability:cases}."};
    case StatementKind::all_meet_before:
      return {"all_meet_before", "Nothing to do: the target is met before any work."};
    case StatementKind::spends_the_same:
      return {"spends_the_same", "{sequence} spends the same clear as {other_sequence}."};
    case StatementKind::spends_more:
      return {"spends_more",
              "{sequence} spends {more_um:2} more of clear than {other_sequence} "
              "({more_p05_um..more_p95_um:2} in 90 of 100 cases). Of that, levelling takes "
              "{levelling_um:2} ({levelling_p05_um..levelling_p95_um:2}), overshoot {overshoot_um:2} "
              "({overshoot_p05_um..overshoot_p95_um:2}) and scratch debt {debt_um:2} "
              "({debt_p05_um..debt_p95_um:2})."};
    case StatementKind::spends_less:
      return {"spends_less",
              "{sequence} spends {less_um:2} less of clear than {other_sequence} (a difference of "
              "{more_p05_um..more_p95_um:2} in 90 of 100 cases). Of the difference, levelling takes "
              "{levelling_um:2} ({levelling_p05_um..levelling_p95_um:2}), overshoot {overshoot_um:2} "
              "({overshoot_p05_um..overshoot_p95_um:2}) and scratch debt {debt_um:2} "
              "({debt_p05_um..debt_p95_um:2})."};
    case StatementKind::cheaper_in:
      return {"cheaper_in",
              "{sequence} spends less clear than {other_sequence} in {cheaper_probability:cases}[, "
              "counted over the {fair_worlds:count} cases in which both meet the target]."};
    case StatementKind::difference_unsure:
      return {"difference_unsure",
              "Which of {sequence} and {other_sequence} spends less clear is not known. The difference is "
              "uncertain by {levelling_width_um:2} in levelling, {overshoot_width_um:2} in overshoot and "
              "{debt_width_um:2} in scratch debt (5 to 95 %)."};
    case StatementKind::misses_target:
      return {"misses_target", "{sequence} misses the target in {target_missed_probability:cases}."};

    case StatementKind::grooves_unreached:
      return {"grooves_unreached",
              "No finer tool within reach takes out its grooves: grain at most {grain_ratio_most} times "
              "finer from step to step."};
    case StatementKind::no_tool_reaches:
      return {"no_tool_reaches", "No disc and backing at hand reaches the target."};
    case StatementKind::budget_bears_none:
      return {"budget_bears_none",
              "The budget does not bear even {sequence}, which comes first of those that were compared: "
              "{removed_um:1} ({removed_p05_um..removed_p95_um:1} in 90 of 100 cases)."};
    case StatementKind::plan_spends:
      return {"plan_spends",
              "{sequence} spends {removed_um:1} of clear ({removed_p05_um..removed_p95_um:1} in 90 of 100 "
              "cases)."};
    case StatementKind::finest_is_cheapest:
      return {"finest_is_cheapest",
              "{sequence}, the finest first step that reaches the target, spends least clear."};
    case StatementKind::finest_is_not_cheapest:
      return {"finest_is_not_cheapest",
              "{sequence} has the finest first step that reaches the target, but {other_sequence} spends "
              "less clear."};
    case StatementKind::finest_is_riskier:
      return {"finest_is_riskier",
              "The finest is not recommended: {sequence} is in trouble in {trouble_probability:cases}, "
              "{other_sequence} in {other_trouble_probability:cases}."};

    case StatementKind::no_backing_carries:
      return {"no_backing_carries", "No backing at hand carries it at this pressure."};
    case StatementKind::clear_runs_out:
      return {"clear_runs_out",
              "Out of reach: once all the clear is gone, {clear_um:film}, the target is still not met."};
    case StatementKind::rms_unmet:
      return {"rms_unmet", "The texture left is {found_um:2} rms; the target is {wanted_um:2}."};
    case StatementKind::touch_unmet:
      return {"touch_unmet", "{found_share:%1} of the surface is touched; the target is {wanted_share:%1}."};
    case StatementKind::defect_unmet:
      return {"defect_unmet", "Of the defect of {size_um:1}, {left_um:1} is left."};
    case StatementKind::clarity_unmet:
      return {"clarity_unmet", "The image clarity is {found_percent:0}; the target is {wanted_percent:0}."};
    case StatementKind::letter_unmet:
      return {"letter_unmet",
              "The smallest letter that can be read is {found_mm:1}; the target is {wanted_mm:1}."};
    case StatementKind::no_letter_read:
      return {"no_letter_read", "No letter can be read in it; the target is {wanted_mm:1}."};
    case StatementKind::waves_resist:
      return {"waves_resist",
              "Waves of about {wavelength_mm:1} still have {rms_um:2} rms, and each e-fold of them costs "
              "{clear_per_e_fold_um:film} of clear on {backing}."};
    case StatementKind::larger_disc_helps:
      return {"larger_disc_helps",
              "A disc follows such waves whatever its backing; a larger disc would help, or a target that "
              "leaves them out."};
    case StatementKind::stiffer_backing_helps:
      return {"stiffer_backing_helps",
              "A stiffer backing or less pressure would help, or a target that asks less of such waves."};
    case StatementKind::too_dear:
      return {"too_dear", "Levelling takes {levelling_um:film} of clear; about {removable_um:film} may go."};
    case StatementKind::too_many_passes:
      return {"too_many_passes", "Too slow: it needs {passes:count} passes; the limit is {limit:count}."};
    case StatementKind::too_many_discs:
      return {"too_many_discs", "Too slow: it uses {discs:1} discs per square metre; the limit is {limit}."};
    case StatementKind::too_many_minutes:
      return {"too_many_minutes",
              "Too slow: it takes {minutes:0} minutes per square metre; the limit is {limit}."};

    case StatementKind::step_not_worked:
      return {"step_not_worked", "Left out, because its stop rule is met before the first pass."};
    case StatementKind::contact_small:
      return {"contact_small",
              "On this crown the disc touches within {radius_mm:0} only, under half its radius; a softer "
              "interface spreads the load."};
    case StatementKind::foam_near_plateau:
      return {"foam_near_plateau",
              "On this crown the foam is pressed to {peak_kpa:2} in the middle, near its plateau; the "
              "mean of {mean_kpa:2} stands for the whole face."};
    case StatementKind::lanes_miss:
      return {"lanes_miss",
              "A pass misses {untouched_share:%0} of the area: its contact of {contact_mm:0} is narrow for "
              "lanes {lanes_mm:0} apart; lanes of at most {even_lanes_mm:0} cover evenly."};
    case StatementKind::lanes_leave_stripes:
      return {"lanes_leave_stripes",
              "A pass leaves stripes: between lanes {lanes_mm:0} apart its contact of {contact_mm:0} removes "
              "only {least_dose_share:%0} of the mean; lanes of at most {even_lanes_mm:0} cover evenly."};
    case StatementKind::inertia_left_out:
      return {"inertia_left_out",
              "At this speed the inertia of the softest layer matters, which is not modelled."};
    case StatementKind::grain_extrapolated:
      return {"grain_extrapolated",
              "The grain of {grain_um} is an estimate: it continues the table of the standard by a power "
              "law."};
    case StatementKind::edge_margin_of_flat:
      return {"edge_margin_of_flat",
              "The margin along the edges is that of straight edges on a flat panel. The crown of "
              "{crown_radius_m} is left out, and corners, where two edges meet, lose more."};
    case StatementKind::edge_margin_left_out:
      return {"edge_margin_left_out",
              "No margin along the edges is reported: a rigid backing or a half-space has no mean "
              "approach."};
    case StatementKind::edge_margin_failed:
      return {"edge_margin_failed",
              "No margin along the edges is reported[: the work removes {removed_um:film} in all, and at "
              "most {most_um:film} can be followed there][: its solver stopped at a residual of {residual}, "
              "where "
              "{tolerance} was asked for]. Keep off the edges, or work them by hand."};
    case StatementKind::marks_left:
      return {"marks_left",
              "The last step ends too early or is too coarse: it leaves {marks_per_cm2:count} visible "
              "scratches per square centimetre, and {limit_per_cm2} may stay."};
    case StatementKind::stop_is_not_target:
      return {"stop_is_not_target",
              "Its stop rule is not the job's target, so it may end before the target is met, or after. A "
              "first step without a stop rule stops at the target."};

    case StatementKind::seen_letter_fine:
      return {"seen_letter_fine",
              "Letters of {letter_mm} at {distance_m} are at or below the limit of sight, {limit_mm:1}: "
              "is texture.seen.letter_mm in cm? If not, the texture is at most what it shows."};
    case StatementKind::target_letter_fine:
      return {"target_letter_fine",
              "Letters of {letter_mm} at {distance_m} are at or below the limit of sight, {limit_mm:1}: "
              "is target.letter_mm in cm? If not, no surface meets the target."};

    case StatementKind::length_unusual:
      return {
          "length_unusual",
          "Unusual: {field} = {value}; usual are {usual_least} to {usual_most}.[ In nanometres? Then write "
          "{nm_means}.][ In micrometres? Then write {um_means}.][ In mil? Then write {mil_means}.][ In "
          "millimetres? Then write {mm_means}.][ In centimetres? Then write {cm_means}.][ In inches? Then "
          "write {inch_means}.][ In metres? Then write {m_means}.]"};
    case StatementKind::places_unusual:
      return {
          "places_unusual",
          "The places of the readings are {apart_mm:0} apart, on a panel whose side is about {side_mm:0}. "
          "Check that x_mm and y_mm are in millimetres."};
    case StatementKind::form_removed:
      return {"form_removed",
              "The measured map was tilted by {tilt_um:1} and curved by {form_um:1}, from highest to lowest. "
              "Both are taken out; {rms_um:2} rms of {rms_before_um:2} are left as texture."};
    case StatementKind::map_not_periodic:
      return {
          "map_not_periodic",
          "The measured map does not repeat: opposite edges differ by {edge_um:2} rms, {times:1} times as "
          "much "
          "as neighbouring points. The model repeats it, so that a strip along its edges counts as texture "
          "that is not there; a larger map makes that strip matter less."};

    case StatementKind::spot_says_little:
      return {"spot_says_little",
              "The spot says little: the gauge is uncertain by {gauge_sd_um:2}, and about {removed_um:2} "
              "was removed. {passes_needed:count} passes, or {readings_needed:count} readings before and "
              "after, would say more."};
    case StatementKind::film_thicker_after:
      return {"film_thicker_after",
              "The film reads thicker after than before, within the uncertainty of the gauge: less was "
              "removed than the gauge can resolve."};
    case StatementKind::wear_rate_unexpected:
      return {
          "wear_rate_unexpected",
          "The wear rate is now believed to be {ratio:2} times what it was before, {prior_sds:1} standard "
          "deviations away[, at the edge of what is searched, {edge_ratio:2} times]. Check passes, force and "
          "readings before relying on it."};
    case StatementKind::texture_unexpected:
      return {"texture_unexpected",
              "The texture is now believed to be {ratio:2} times what it was before, {prior_sds:1} standard "
              "deviations away[, at the edge of what is searched, {edge_ratio:2} times]. Check rms_left_um "
              "and its "
              "unit, and the passes at which gloss was gone, before relying on it."};
    case StatementKind::stiffness_unexpected:
      return {
          "stiffness_unexpected",
          "The backing is now believed to be {ratio:2} times as stiff as before, {prior_sds:1} standard "
          "deviations away[, at the edge of what is searched, {edge_ratio:2} times]. Check which backing was "
          "used, and rms_left_um and its unit, before relying on it."};

    case StatementKind::belief_by_readings:
      return {"belief_by_readings",
              "The readings moved the belief: by them alone the wear rate is {readings_ratio:2} times what "
              "it was[, with all that was seen {all_ratio:2} times]."};
    case StatementKind::belief_by_looks:
      return {"belief_by_looks",
              "The glossy valleys moved the belief: by the readings alone the wear rate is "
              "{readings_ratio:2} times what it was, with them {all_ratio:2} times. They went sooner or "
              "later than the readings alone lead to expect, and wear rate, texture and backing share that."};
    case StatementKind::belief_by_texture:
      return {"belief_by_texture",
              "The texture left moved the belief: by the readings alone the wear rate is "
              "{readings_ratio:2} times what it was, with it {all_ratio:2} times."};

    // Sources of the figures: docs/physics.md, cautions. The rest is common practice, no source.
    case StatementKind::local_codes_prevail:
      return {"local_codes_prevail", "Local codes and licensed practice prevail over all that is said here."};
    case StatementKind::predictions_are_estimates:
      return {"predictions_are_estimates",
              "These are predictions from estimates: prove the first step on a test spot before the panel."};
    case StatementKind::clear_does_not_return:
      return {"clear_does_not_return",
              "Clear that is removed does not come back, and it carries the ultraviolet protection. Edges "
              "and body lines burn through first: leave an unsanded margin and work them by hand."};
    case StatementKind::old_paint_harms:
      return {"old_paint_harms",
              "Fresh or badly cured two-pack paint can release isocyanates (UK limits 0.02 mg/m3 over 8 "
              "h, 0.07 over 15 min); old paint may hold lead or chromium. Find out before sanding."};
    case StatementKind::solvent_burns:
      return {"solvent_burns",
              "Solvents that strip wax burn, and their vapour harms: keep flames and sparks away, let fresh "
              "air in, wear gloves and eye protection, and put soaked cloths into a closed metal bin."};
    case StatementKind::vibration_harms:
      return {"vibration_harms",
              "Hand-arm vibration: action value 2.5 m/s2 and limit 5 m/s2 over a working day, A(8) = a "
              "sqrt(T/8 h) (Directive 2002/44/EC, ISO 5349-1). Add up the time of the whole day, over all "
              "jobs and machines."};
    case StatementKind::noise_harms:
      return {
          "noise_harms",
          "Machines and extraction are loud: wear hearing protection (action values 80 and 85 dB(A) over a "
          "working day, Directive 2003/10/EC)."};
    case StatementKind::dust_harms:
      return {"dust_harms",
              "Dry sanding makes fine dust: extract at the tool, and wear a mask (EN 149, FFP2 or FFP3) and "
              "eye protection."};
    case StatementKind::water_conducts:
      return {"water_conducts",
              "Water and electric tools: use a residual-current device, keep plugs dry, or use an air "
              "tool."};
    case StatementKind::slurry_harms:
      return {"slurry_harms",
              "Slurry splashes: wear eye protection and gloves, and wipe it up while it is wet; once dry it "
              "is dust, and needs extraction and the mask."};
    case StatementKind::compound_flings:
      return {"compound_flings",
              "Compound and polish fling: wear eye protection and gloves, and keep the panel cool enough to "
              "touch."};

    case StatementKind::wash:
      return {"wash", "Wash and dry: grit that stays on the panel scratches deeper than any disc."};
    case StatementKind::strip:
      return {"strip",
              "Strip wax and polish residue: they clog discs and hide old scratches, and the gauge reads "
              "them."};
    case StatementKind::mask_edges:
      return {"mask_edges", "Mask [{edge_length_m} of ]edges and body lines, trim and openings."};
    case StatementKind::set_light:
      return {"set_light",
              "Set a light that shows the texture and the scratches at a low angle, and keep it there."};
    case StatementKind::make_test_spot:
      return {"make_test_spot",
              "Test spot: read the film[ at {readings:count} places], make [{passes:count} ]passes of "
              "\"{step}\" on a small place, clean, read at the same places again, and calibrate the job "
              "with it.[ They would remove about {removed_um:1}; the wear rate, known within a factor of "
              "{factor_before:1}, would then be known within {factor_after:1}.]"};
    case StatementKind::connect_extraction:
      return {"connect_extraction", "Connect extraction at the tool, check its filter, and put the mask on."};
    case StatementKind::keep_plugs_dry:
      return {"keep_plugs_dry", "Keep plugs and leads out of the water, behind a residual-current device."};
  }
  return {nullptr, ""};
}

}  // namespace

std::span<const std::pair<StatementKind, const char*>> names_of(StatementKind) {
  static const std::vector<std::pair<StatementKind, const char*>> all = [] {
    std::vector<std::pair<StatementKind, const char*>> names;
    for (int i = 0; const char* name = words_of(static_cast<StatementKind>(i)).name; ++i)
      names.emplace_back(static_cast<StatementKind>(i), name);
    return names;
  }();
  return all;
}

const char* sentence_of(StatementKind kind) {
  return words_of(kind).sentence;
}

}  // namespace libtexture
