#pragma once
// Job: everything that a prediction starts from, as plain values: the keys of a job file.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/numerics/grid.hpp"
#include "libtexture/plan/budget.hpp"
#include "libtexture/plan/defect.hpp"
#include "libtexture/plan/edge_margin.hpp"
#include "libtexture/plan/labour.hpp"
#include "libtexture/plan/paint.hpp"
#include "libtexture/plan/panel.hpp"
#include "libtexture/plan/texture_source.hpp"
#include "libtexture/plan/uncertainty.hpp"
#include "libtexture/process/scratches.hpp"
#include "libtexture/process/step.hpp"
#include "libtexture/surface/viewer.hpp"

namespace libtexture {

/// Shares of levelling that have a name: full = 99.5 % touched and at most 35 % of the starting rms left,
/// partial = half of the starting rms gone.
enum class TargetPreset { full, partial };
constexpr std::array<std::pair<TargetPreset, const char*>, 2> names_of(TargetPreset) {
  return {{{TargetPreset::full, "full"}, {TargetPreset::partial, "partial"}}};
}

/// What is to be reached: at least one of rms_um, preset, image_clarity_percent, letter_mm, defect; all that
/// are given.
struct Target {
  std::optional<double> rms_um = {};  ///< texture left [um], > 0
  std::optional<std::array<double, 2>> band_mm =
      {};                                   ///< shortest and longest wavelength that rms_um counts [mm]
  std::optional<TargetPreset> preset = {};  ///< a share of levelling with a name
  std::optional<double> image_clarity_percent = {};  ///< at least [%], > 0 to 100
  std::optional<double> letter_mm = {};  ///< letters of this height can be read in the reflection [mm], > 0
  std::optional<double> distance_m =
      {};  ///< with letter_mm: from the eye over the paint to the letters [m], > 0
  /// of it, from the eye to the paint [m], >= 0; none = a third of it, as viewer_along() has it
  std::optional<double> eye_to_paint_m = {};
  std::optional<Defect> defect = {};  ///< a mark that is to be gone from each panel

  void validate() const;
  bool operator==(const Target&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("rms_um", &Target::rms_um),
                      optional("band_mm", &Target::band_mm),
                      optional("preset", &Target::preset),
                      optional("image_clarity_percent", &Target::image_clarity_percent),
                      optional("letter_mm", &Target::letter_mm),
                      optional("distance_m", &Target::distance_m),
                      optional("eye_to_paint_m", &Target::eye_to_paint_m),
                      optional("defect", &Target::defect)};
  }
};

/// The eye that a target's letters are for, where it asks for letters.
Viewer eye_of(const Target& target);

/// Steps in order, under a name.
struct Sequence {
  std::string name = {};        ///< as results name it: one line, not empty
  std::vector<Step> step = {};  ///< at least one; names that are given differ

  void validate() const;
  bool operator==(const Sequence&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("name", &Sequence::name), required("step", &Sequence::step)};
  }
};

/// A job. Its lists are named as the tables of a job file, [[panel]] and [[sequence]].
struct Job {
  int schema = 1;  ///< of the job file; 1
  /// Where its figures come from, or anything else that every answer is to say under its heading: "invented";
  /// at most 10 lines.
  std::optional<std::string> note = {};
  std::uint64_t seed = 1;               ///< of everything drawn at random
  Grid patch = {};                      ///< the surface that is simulated; at most 2^24 pixels
  std::vector<Panel> panel = {};        ///< at least one; names differ
  Paint coating = {};                   ///< what is known of the paint
  TextureSource texture = {};           ///< its waves fit the patch
  Target target = {};                   ///< what is to be reached; its band overlaps the patch's waves
  Budget budget = {};                   ///< what may be spent; without a rule of its own see budget_of()
  Labour labour = {};                   ///< how long this person takes for what is not sanding
  EdgeWork edge = {};                   ///< how the panels' edges are, and how they are worked
  ScratchLimits scratch_limits = {};    ///< what counts as a visible scratch
  std::optional<Viewer> viewer = {};    ///< who reads the mirrored letters; none = viewer_of() the job
  Uncertainty uncertainty = {};         ///< how many worlds are drawn, and how far apart they are
  std::vector<Sequence> sequence = {};  ///< to predict and compare; names differ; one tool has one name
  std::optional<std::string> catalogue =
      {};  ///< a catalogue file of the user's own that the tools were looked up in

  void validate() const;
  bool operator==(const Job&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("schema", &Job::schema),     optional("note", &Job::note),
                      optional("seed", &Job::seed),         required("patch", &Job::patch),
                      required("panel", &Job::panel),       required("coating", &Job::coating),
                      required("texture", &Job::texture),   required("target", &Job::target),
                      optional("budget", &Job::budget),     optional("scratch_limits", &Job::scratch_limits),
                      optional("viewer", &Job::viewer),     optional("uncertainty", &Job::uncertainty),
                      optional("labour", &Job::labour),     optional("edge", &Job::edge),
                      optional("sequence", &Job::sequence), optional("catalogue", &Job::catalogue)};
  }
};

/// The rules that a job is judged by: its own; where it states none (a reserve is none), those of
/// default_budget() for its paint, with its reserve.
Budget budget_of(const Job& job);

/// The eye that results are for: the job's viewer; else the one that judged its texture, so that the first
/// row says what was seen; else the one that its target's letters are for; else Viewer's own defaults.
Viewer viewer_of(const Job& job);

/// InvalidInput where the band of a job's target, or of a stop rule, overlaps none of the waves that a patch
/// holds, from two pixels to its longer side: such a rule would be met before the first pass.
void require_bands_held(const Job& job, const Grid& patch);

}  // namespace libtexture
