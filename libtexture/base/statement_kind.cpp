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
    case StatementKind::clear_struck_through:
      return {"clear_struck_through",
              "The clear is struck through somewhere on {area_m2} in {strike_through_probability:cases}."};
    case StatementKind::budget_kept:
      return {"budget_kept",
              "The budget is exceeded in {budget_exceeded_probability:cases}. In 90 of 100 cases the work "
              "removes {removed_p05_um..removed_p95_um:film} of clear and leaves "
              "{clear_left_p05_um..clear_left_p95_um:film} where it is thinnest; at least "
              "{must_stay_um:film} must stay."};
    case StatementKind::too_much_removed:
      return {"too_much_removed",
              "The budget is exceeded in {budget_exceeded_probability:cases}, mostly because too much "
              "clear goes. In 90 of 100 cases the work removes {removed_p05_um..removed_p95_um:film}; "
              "about {removable_um:film} may go."};
    case StatementKind::too_little_left:
      return {"too_little_left",
              "The budget is exceeded in {budget_exceeded_probability:cases}, mostly because too little "
              "clear stays. In 90 of 100 cases the work leaves "
              "{clear_left_p05_um..clear_left_p95_um:film} where the clear is thinnest; at least "
              "{must_stay_um:film} must stay. More readings or a surer figure for the clear would help; a "
              "test spot shows what goes, not what is there."};
    case StatementKind::target_missed:
      return {"target_missed", "The target is missed in {target_missed_probability:cases}."};

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

    case StatementKind::no_tool_reaches:
      return {"no_tool_reaches", "No disc and backing at hand reaches the target."};
    case StatementKind::budget_bears_none:
      return {"budget_bears_none",
              "The budget does not bear even the sequence that spends least clear, {sequence}: "
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
      return {"too_many_discs",
              "Too slow: it uses {discs_per_m2:1} discs per square metre; the limit is {limit}."};
    case StatementKind::too_many_minutes:
      return {"too_many_minutes",
              "Too slow: it takes {minutes_per_m2:0} minutes per square metre; the limit is {limit}."};

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
    case StatementKind::marks_left:
      return {"marks_left",
              "The last step ends too early or is too coarse: it leaves {marks_per_cm2:count} visible "
              "scratches per square centimetre, and {limit_per_cm2} may stay."};
    case StatementKind::odd_reading:
      return {"odd_reading",
              "One reading is {reading_um:film} among others of about {usual_um:film}. Check its unit, "
              "and whether there is filler or the place was sanded before."};

    case StatementKind::seen_letter_fine:
      return {"seen_letter_fine",
              "Letters of {letter_mm} at {distance_m} are at or below the limit of sight, {limit_mm:1}: "
              "is texture.seen.letter_mm in cm? If not, the texture is at most what it shows."};
    case StatementKind::target_letter_fine:
      return {"target_letter_fine",
              "Letters of {letter_mm} at {distance_m} are at or below the limit of sight, {limit_mm:1}: "
              "is target.letter_mm in cm? If not, no surface meets the target."};

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
      return {"wear_rate_unexpected",
              "The wear rate lies outside its expected range; check passes, force and readings before "
              "relying on it."};

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
