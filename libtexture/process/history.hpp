#pragma once
// History: what a sequence did to one patch, pass by pass.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/process/scratches.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// The patch after one pass, or after one step. Removals are those of the step so far.
struct HistoryRow {
  std::string name = {};        ///< of the step
  int passes = 0;               ///< passes of the step so far
  double removed_um = 0;        ///< mean clear removed by the step so far [um]
  double removed_p95_um = 0;    ///< 95th percentile over the patch [um]
  double removed_max_um = 0;    ///< [um]
  double total_removed_um = 0;  ///< mean clear removed since the sequence began [um]
  double overshoot_um = 0;  ///< of it, cut by this step between meeting its stop rule and the next look [um]
  double rms_um = 0;        ///< texture left [um]
  double peak_to_valley_um = 0;          ///< [um]
  std::vector<double> band_rms_um = {};  ///< texture left between neighbouring History::band_edges_mm [um]
  double touched_share = 0;          ///< share that the step has cut by more than half its mean groove depth
  double clear_left_mean_um = 0;     ///< [um]; below 0 = struck through
  double clear_left_least_um = 0;    ///< [um]; where the clear is thinnest, often an untouched valley
  double scratch_rms_nm = 0;         ///< roughness of the scratches [nm]
  double deepest_scratch_um = 0;     ///< deepest regular groove expected on a dm2 [um]
  double marks_per_cm2 = 0;          ///< grooves deeper than the visible limit [1/cm2]
  double clear_owed_um = 0;          ///< clear that taking out the scratches still asks for [um]
  double stray_marks_per_dm2 = 0;    ///< rare deep marks expected [1/dm2]
  double gloss_20_gu = 0;            ///< gloss at 20 degrees, ISO 2813, without diffuse light [GU]
  double lamp_visibility = 0;        ///< how clearly a mirrored lamp stands out at 45 degrees, 0 to 1
  double image_clarity_percent = 0;  ///< image clarity, comb .5 mm, 45 degrees, along rows [%]
  /// the same for combs of .125, .25, .5, 1 and 2 mm [%]
  std::vector<double> image_clarity_by_comb_percent = {};
  double image_wander_arcmin = 0;  ///< rms wander of a mirrored point, SimulateOptions::viewer [arcmin]
  /// smallest mirrored letter that this viewer can read [mm]; none = the scratches veil every letter
  std::optional<double> smallest_letter_mm = {};
  int discs = 0;       ///< discs the step has used; pads of a compound are cleaned, not counted
  double minutes = 0;  ///< machine time of the step so far [min]

  bool operator==(const HistoryRow&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("name", &HistoryRow::name),
                      optional("passes", &HistoryRow::passes),
                      optional("removed_um", &HistoryRow::removed_um),
                      optional("removed_p95_um", &HistoryRow::removed_p95_um),
                      optional("removed_max_um", &HistoryRow::removed_max_um),
                      optional("total_removed_um", &HistoryRow::total_removed_um),
                      optional("overshoot_um", &HistoryRow::overshoot_um),
                      optional("rms_um", &HistoryRow::rms_um),
                      optional("peak_to_valley_um", &HistoryRow::peak_to_valley_um),
                      optional("band_rms_um", &HistoryRow::band_rms_um),
                      optional("touched_share", &HistoryRow::touched_share),
                      optional("clear_left_mean_um", &HistoryRow::clear_left_mean_um),
                      optional("clear_left_least_um", &HistoryRow::clear_left_least_um),
                      optional("scratch_rms_nm", &HistoryRow::scratch_rms_nm),
                      optional("deepest_scratch_um", &HistoryRow::deepest_scratch_um),
                      optional("marks_per_cm2", &HistoryRow::marks_per_cm2),
                      optional("clear_owed_um", &HistoryRow::clear_owed_um),
                      optional("stray_marks_per_dm2", &HistoryRow::stray_marks_per_dm2),
                      optional("gloss_20_gu", &HistoryRow::gloss_20_gu),
                      optional("lamp_visibility", &HistoryRow::lamp_visibility),
                      optional("image_clarity_percent", &HistoryRow::image_clarity_percent),
                      optional("image_clarity_by_comb_percent", &HistoryRow::image_clarity_by_comb_percent),
                      optional("image_wander_arcmin", &HistoryRow::image_wander_arcmin),
                      optional("smallest_letter_mm", &HistoryRow::smallest_letter_mm),
                      optional("discs", &HistoryRow::discs),
                      optional("minutes", &HistoryRow::minutes)};
  }
};

/// One patch through a sequence.
struct History {
  HistoryRow start;                   ///< before the first pass
  std::vector<HistoryRow> passes;     ///< one row a pass
  std::vector<HistoryRow> steps;      ///< one row a step: its last pass
  std::vector<double> band_edges_mm;  ///< edges of band_rms_um [mm]
  HeightField before;                 ///< the surface at the start
  std::vector<HeightField> surfaces;  ///< the surface after each step
  std::vector<Scratches> scratches;   ///< the scratches after each step
  std::vector<Statement> warnings;    ///< limits that a step came near
  int transform_pairs = 0;            ///< work done

  /// Mean clear removed by the whole sequence [um].
  double removed_um() const { return steps.empty() ? 0 : steps.back().total_removed_um; }
};

}  // namespace libtexture
