#pragma once
// DefectAnswer: what it costs to be rid of a defect on one panel, way by way.

#include <optional>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/plan/defect_way.hpp"
#include "libtexture/plan/job.hpp"

namespace libtexture {

struct SampledRisk;

/// The ways to deal with the target's defect on one panel.
struct DefectAnswer {
  Spread size_um = {};  ///< how deep or how high it is [um]
  double worked_area_m2 =
      0;  ///< area that the job works, a feather by its dose, as worked_panel() has it [m2]
  /// Width of the ring about a patch over which the work fades [mm]; none where the whole panel is worked.
  std::optional<double> feather_mm = {};
  /// How far the slope of that ring shifts what is mirrored in it [arcmin], by the median removal; none
  /// likewise.
  std::optional<double> feather_shift_arcmin = {};
  /// Depth of a groove that its flanks do not show [um]; none where hidden_depth_um() has no answer.
  std::optional<double> hidden_um = {};
  std::vector<DefectWay> ways = {};   ///< the job's own first, leaving it last
  std::vector<Statement> notes = {};  ///< what shows of the feather, and of a rounded groove

  bool operator==(const DefectAnswer&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("size_um", &DefectAnswer::size_um),
                      optional("worked_area_m2", &DefectAnswer::worked_area_m2),
                      optional("feather_mm", &DefectAnswer::feather_mm),
                      optional("feather_shift_arcmin", &DefectAnswer::feather_shift_arcmin),
                      optional("hidden_um", &DefectAnswer::hidden_um),
                      optional("ways", &DefectAnswer::ways),
                      optional("notes", &DefectAnswer::notes)};
  }
};

/// The answer for a panel of the job, by its place there; first: motion of the first step.
DefectAnswer defect_answer(const Job& job, std::size_t panel, const SampledRisk& sampled,
                           const Motion& first);

}  // namespace libtexture
