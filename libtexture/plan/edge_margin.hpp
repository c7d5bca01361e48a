#pragma once
// EdgeMargin: how far from a panel's edge the machine must stay, so that the budget is kept there too.

#include <optional>
#include <vector>

#include "libtexture/plan/budget.hpp"
#include "libtexture/process/edge.hpp"
#include "libtexture/process/history.hpp"
#include "libtexture/process/step.hpp"

namespace libtexture {

/// How the panel's edges are, and how they are worked: the [edge] table of a job.
struct EdgeWork {
  double radius_mm = 3;                ///< of the rounded edge [mm], > 0; estimate
  Overhang overhang = Overhang::none;  ///< the user's habit
  double share_at_edge = 0.8;          ///< clear at the edge over that of the panel, > 0 to 1; estimate
  double taper_mm = 25;                ///< distance over which it rises evenly [mm], > 0; estimate
  double confidence = 0.95;            ///< of sure_margin_mm, .5 to < 1

  void validate() const;
  bool operator==(const EdgeWork&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("radius_mm", &EdgeWork::radius_mm), optional("overhang", &EdgeWork::overhang),
                      optional("share_at_edge", &EdgeWork::share_at_edge),
                      optional("taper_mm", &EdgeWork::taper_mm),
                      optional("confidence", &EdgeWork::confidence)};
  }
};

/// What the sequence does at a straight edge of a flat panel. The panel's crown, which lets a disc touch less
/// of the edge or press it harder, and its corners, where two edges are worn at once, are not in it.
struct EdgeMargin {
  double peak_removal_um = 0;   ///< most clear removed anywhere across the edge [um]
  double removed_area_mm2 = 0;  ///< of the section within 1.5 mm of where the flat ends [mm2]
  double clear_at_edge_um = 0;  ///< expected clear at the edge before work [um]
  /// Least unsanded margin that keeps every rule of the budget, by best estimates [mm]; 0 = the flat may be
  /// sanded to its end (leave the rounding itself); none = no margin helps: the flat does not keep the
  /// budget.
  std::optional<double> margin_mm = {};
  std::optional<double> sure_margin_mm = {};  ///< the same at the confidence asked for, rule by rule [mm]
  double confidence = 0;                      ///< that confidence

  bool operator==(const EdgeMargin&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("peak_removal_um", &EdgeMargin::peak_removal_um),
                      optional("removed_area_mm2", &EdgeMargin::removed_area_mm2),
                      optional("clear_at_edge_um", &EdgeMargin::clear_at_edge_um),
                      optional("margin_mm", &EdgeMargin::margin_mm),
                      optional("sure_margin_mm", &EdgeMargin::sure_margin_mm),
                      optional("confidence", &EdgeMargin::confidence)};
  }
};

/// Whether edge_profile() can follow the backing: layers or springs.
bool has_edge_profile(const Backing& backing);

/// What a step's tools would wear off across an edge by the whole removal of the rows, one a step.
/// InvalidInput for a backing without an edge profile.
EdgeProfile worn_edge(const EdgeWork& work, const std::vector<Step>& steps,
                      const std::vector<HistoryRow>& rows, std::size_t step, const Progress& progress = {});

/// The margin of steps that went as the rows say, over a clear of clear_um +- clear_sd_um [um]: of what each
/// step's tools would wear off by the whole removal, worn_edge(), that step's share, summed. Removal at a
/// place is taken to spread as on the flat (dose_cv) and by the hand's lean along the edge, steps
/// independent; clear and removal normal (docs/physics.md, edges).
EdgeMargin edge_margin(const EdgeWork& work, const Budget& budget, double clear_um, double clear_sd_um,
                       const std::vector<Step>& steps, const std::vector<HistoryRow>& rows,
                       const std::vector<EdgeProfile>& worn);

}  // namespace libtexture
