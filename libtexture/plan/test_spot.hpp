#pragma once
// TestSpot: passes made, film read and texture seen on a small place, which narrow what is known of the wear
// rate, the texture and the backing.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/plan/belief.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/spot_curves.hpp"
#include "libtexture/plan/teach.hpp"

namespace libtexture {

/// A spot of the panel on which a step of the job was tried.
struct TestSpot {
  std::string sequence = {};  ///< of the job; empty = its first
  std::string step = {};      ///< title of the step that was tried; empty = the sequence's first
  int passes = 0;             ///< overlapped passes made with fresh discs, 1 to 1000
  double area_m2 = 0.04;      ///< area of the spot, which sets how discs load [m2], > 0 to 100; estimate
  std::vector<double> before_um = {};  ///< readings of the total film before, all over the spot [um]
  std::vector<double> after_um = {};   ///< readings after, at the same places [um]
  double spot_cv = 0.15;  ///< how much spots worked alike differ, coefficient of variation, 0 to 1; estimate
                          ///< (one person's force)
  /// Passes at which no glossy valley was left anywhere on the spot, 1 to passes; none = not looked for.
  std::optional<int> gloss_gone_passes = {};
  /// Passes at which some were still seen, 0 to passes and under gloss_gone_passes; none = one pass before.
  /// Alone: some were left at the end.
  std::optional<int> gloss_left_passes = {};
  double gloss_log_sd =
      0.12;  ///< of the removal at which the last one goes, between eyes and places; estimate
  /// Texture left after all passes, rms [um], > 0 and no more than there was; none = not known.
  std::optional<double> rms_left_um = {};
  double rms_left_log_sd = 0.15;  ///< how sure that is, standard deviation of its logarithm; estimate
  /// Passes of the sequence's next step, with a fresh disc, at which no mark of the tried step was left on
  /// the spot, 1 to 1000; none = not looked for.
  std::optional<int> marks_gone_passes = {};
  /// Passes of it at which some were still seen, 0 to 1000 and under marks_gone_passes; none = one pass
  /// before. Alone: some were left at the end.
  std::optional<int> marks_left_passes = {};
  double marks_log_sd = 0.12;  ///< of the removal at which the last one goes, between eyes and places;
                               ///< estimate

  void validate() const;
  bool operator==(const TestSpot&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("sequence", &TestSpot::sequence),
                      optional("step", &TestSpot::step),
                      required("passes", &TestSpot::passes),
                      optional("area_m2", &TestSpot::area_m2),
                      required("before_um", &TestSpot::before_um),
                      required("after_um", &TestSpot::after_um),
                      optional("spot_cv", &TestSpot::spot_cv),
                      optional("gloss_gone_passes", &TestSpot::gloss_gone_passes),
                      optional("gloss_left_passes", &TestSpot::gloss_left_passes),
                      optional("gloss_log_sd", &TestSpot::gloss_log_sd),
                      optional("rms_left_um", &TestSpot::rms_left_um),
                      optional("rms_left_log_sd", &TestSpot::rms_left_log_sd),
                      optional("marks_gone_passes", &TestSpot::marks_gone_passes),
                      optional("marks_left_passes", &TestSpot::marks_left_passes),
                      optional("marks_log_sd", &TestSpot::marks_log_sd)};
  }
};

/// What a test spot says.
struct TestSpotResult {
  std::string abrasive = {};  ///< name of the abrasive that was tried
  double removed_um = 0;      ///< mean before - mean after [um]; below 0 = it reads thicker after
  double gauge_sd_um = 0;     ///< standard uncertainty of it from the gauge [um]
  double expected_um = 0;     ///< what the job's wear rate would remove [um]
  Belief before = {};         ///< wear rate of fresh discs, in this hand on this clear [mm3/(N m)]: the job's
  Belief after = {};          ///< the same with the test spot
  bool is_useful = true;      ///< the gauge leaves the wear rate less uncertain than the spot itself, by far
  int passes_needed = 0;      ///< with as many readings, so many passes make the spot useful; at most 1000
  int readings_needed = 0;    ///< with as many passes, so many readings before, and after, do
  std::string backing = {};   ///< name of the backing that was tried
  /// Rms of the texture before work [um], the job's; this and the next three only where texture was seen.
  std::optional<Belief> texture_before = {};
  std::optional<Belief> texture_after = {};  ///< the same with the test spot
  /// Stiffness of the backing over that of the catalogue, the job's.
  std::optional<Belief> stiffness_before = {};
  std::optional<Belief> stiffness_after = {};  ///< the same with the test spot
  /// Mean groove depth at 1.4 kPa, in this hand on this clear [um], the job's; where marks were looked for.
  std::optional<Belief> groove_depth_before = {};
  std::optional<Belief> groove_depth_after = {};  ///< the same with the test spot
  std::vector<TaughtAbrasive> others = {};        ///< the other abrasives of the job whose wear rate it moved
  std::vector<Statement> warnings = {};           ///< what to mind before relying on it

  bool operator==(const TestSpotResult&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("abrasive", &TestSpotResult::abrasive),
                      optional("removed_um", &TestSpotResult::removed_um),
                      optional("gauge_sd_um", &TestSpotResult::gauge_sd_um),
                      optional("expected_um", &TestSpotResult::expected_um),
                      optional("before", &TestSpotResult::before),
                      optional("after", &TestSpotResult::after),
                      optional("is_useful", &TestSpotResult::is_useful),
                      optional("passes_needed", &TestSpotResult::passes_needed),
                      optional("readings_needed", &TestSpotResult::readings_needed),
                      optional("backing", &TestSpotResult::backing),
                      optional("texture_before", &TestSpotResult::texture_before),
                      optional("texture_after", &TestSpotResult::texture_after),
                      optional("stiffness_before", &TestSpotResult::stiffness_before),
                      optional("stiffness_after", &TestSpotResult::stiffness_after),
                      optional("groove_depth_before", &TestSpotResult::groove_depth_before),
                      optional("groove_depth_after", &TestSpotResult::groove_depth_after),
                      optional("others", &TestSpotResult::others),
                      optional("warnings", &TestSpotResult::warnings)};
  }
};

/// The step of a job that a sequence and a step name, each empty = the first; InvalidInput, by its owner's
/// name, where there is none such.
const Step& tried_step(const Job& job, const std::string& sequence, const std::string& step,
                       const char* owner);

/// Whether the spot tells of texture: a look for glossy valleys, or rms_left_um.
bool tells_texture(const TestSpot& spot);

/// The curves that a spot which tells of texture is judged by, on the job's starting surface.
SpotCurves curves_of(const Job& job, const TestSpot& spot, const HeightField& surface,
                     const Progress& progress = {});

/// Bayes' rule by the trapezoid rule on a grid, for ln(wear rate) and, where texture is told, ln(texture
/// scale) and ln(stiffness) with it. Priors are normal: wear_spread() of the step, scale_log_sd() of the
/// texture, the backing's stiffness_log_sd. The mean removal is normal about that of the passes, discs
/// loading and being changed, with the gauge's uncertainty, its scale, and spot_cv; looks bracket the removal
/// at which the last glossy valley goes; the texture left is log-normal. Then kin of the abrasive, and, where
/// marks were looked for, groove depth and the next step's wear rate (docs/physics.md, test spot). A belief
/// whose median leaves its prior by more than two standard deviations, or that lies where the search ends, is
/// warned of. InvalidInput where the job has no such step, where more texture is left than there was, where
/// curves are needed and none are given, where marks were looked for and no step follows, and where the film
/// reads thicker after by more than three times the gauge's uncertainty: then readings were mixed up.
TestSpotResult judge_test_spot(const Job& job, const TestSpot& spot, const SpotCurves& curves = {});

/// The job with what judge_test_spot() made of the spot: the wear rates of the abrasive and of its family,
/// and, where marks were looked for, groove depths and the next step's wear rate (teach.hpp); where texture
/// was told, also texture.scale and scale_log_sd, and stiffness_factor and stiffness_log_sd of that backing.
/// Tools are known by their keys (identity.hpp). Further spots narrow it further. What ties wear, texture,
/// stiffness and grooves together is dropped: taken as independent.
Job learned_from(const Job& job, const TestSpot& spot, const TestSpotResult& result);

}  // namespace libtexture
