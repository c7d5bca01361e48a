// A test spot: readings before and after, and what is seen, make the plan's figures surer.
#include <cstdio>

#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/cautions.hpp"
#include "libtexture/plan/predict.hpp"
#include "libtexture/plan/calibrate.hpp"

using namespace libtexture;

int main() {
  const Catalogue& tools = shipped_catalogue();
  const Step level{.name = "level",
                   .abrasive = tools.abrasives.at("P2000 film"),
                   .backing = tools.backings.at("film on firm interface"),
                   .motion = tools.motions.at("150 mm light"),
                   .passes = 12,
                   .look_every_passes = 2,
                   .stop = {.touched_share = 0.995}};
  // A bonnet judged by eye: letters of 25 mm can just be read in it, 2 m away, the eye at half a metre.
  const SeenTexture seen{.wavelength_mm = 3, .letter_mm = 25, .distance_m = 2, .eye_to_paint_m = 0.5};
  const Estimate rms = seen_rms_um(seen);
  std::printf("By eye the texture is %.2f um rms, in 95 %% of cases %.2f to %.2f um.\n", rms.value, rms.least,
              rms.most);
  Job job;
  job.patch = {64, 64, 0.4};
  job.note = "Invented scenario, not measured.";
  job.panel = {{.name = "bonnet", .area_m2 = 1.2, .readings = {{.total_um = 124}, {.total_um = 118}}}};
  job.coating = {.kind = PaintKind::factory, .gauge = {.uncertainty_um = 1}};
  job.texture.seen = seen;
  job.target.preset = TargetPreset::full;
  job.sequence = {{.name = "P2000 first", .step = {level}}};

  // Six passes on 20 by 20 cm; the last glossy valley was gone after the fifth.
  const TestSpot spot{.passes = 6,
                      .before_um = {121, 120, 122, 121, 119, 121},
                      .after_um = {117, 116, 119, 117, 116, 117},
                      .gloss_gone_passes = 5};
  const SpotCurves curves = curves_of(job, spot, starting_surface(job.texture, job.patch, job.seed));
  const auto [result, moved, learned] = calibrate(job, spot, curves);
  std::printf("%s %.1f um gone, known to %.1f um; %.1f um was expected.\n", job.note->c_str(),
              result.removed_um, result.gauge_sd_um, result.expected_um);
  const auto tell = [](const char* name, const Belief& old, const Belief& now) {
    std::printf("%-27s %5.3f (%5.3f to %5.3f)  ->  %5.3f (%5.3f to %5.3f)\n", name, old.median, old.least,
                old.most, now.median, now.least, now.most);
  };
  tell("wear rate, mm3/(N m)", result.before, result.after);
  tell("texture, um rms", *result.texture_before, *result.texture_after);
  tell("stiffness over catalogue's", *result.stiffness_before, *result.stiffness_after);
  for (const Statement& warning : result.warnings) std::printf("%s\n", warning.text().c_str());
  for (const Job& one : {job, learned}) {
    const auto panel = predict(one, starting_surface(one.texture, one.patch, one.seed)).prediction.panels[0];
    std::printf("%.1f um of clear, %d passes, %.0f min\n", panel.removed_um, panel.steps[0].passes,
                panel.labour.total_minutes);
  }
  std::vector<Statement> cautions = general_cautions();
  add_new(cautions, cautions_of(level));
  for (const Statement& caution : cautions) std::printf("- %s\n", caution.text().c_str());
}
