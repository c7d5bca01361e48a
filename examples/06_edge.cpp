// Near an edge: what an overhung disc takes off, and the margin to leave unsanded so that enough clear stays.
#include <cstdio>

#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/predict.hpp"

using namespace libtexture;

int main() {
  const Catalogue& tools = shipped_catalogue();
  const Motion& disc = tools.motions.at("150 mm light");
  const EdgeClear clear{.clear_um = 50};  // thinner towards the edge: an estimate, see its fields
  std::printf("4 um off the flat, 50 um of clear there, 35.6 um to be left:\n");
  for (const char* name : {"film on hard pad", "film on firm interface", "film on soft interface"})
    for (const Overhang overhang : {Overhang::none, Overhang::straddle}) {
      const EdgeProfile profile = edge_profile(tools.backings.at(name), disc,
                                               {.removal_um = 4, .overhang = overhang, .clear = clear});
      std::printf("  %-23s %-9s at most %5.1f um go; leave %4.1f mm\n", name, name_of(overhang).data(),
                  profile.peak_removal_um, *profile.margin_mm);
    }

  // The same as a plan asks it: every rule of the budget, and a confidence.
  const Step step{.name = "level",
                  .abrasive = tools.abrasives.at("P2000 film"),
                  .backing = tools.backings.at("film on firm interface"),
                  .motion = disc,
                  .passes = 8,
                  .stop = {.removed_um = 4}};
  Job job;
  job.patch = {64, 64, 0.4};
  job.note = "Invented scenario, not measured.";
  job.panel = {{.name = "wing", .area_m2 = 0.5, .edge_length_m = 2.4, .readings = {{.total_um = 140}}}};
  job.coating = {.kind = PaintKind::repaint, .clear_um = 55, .clear_uncertainty_um = 3};
  job.texture.bands = {{.wavelength_mm = 3, .rms_um = 0.7}};
  job.target.preset = TargetPreset::partial;
  job.edge = {.overhang = Overhang::straddle, .confidence = 0.9};
  job.sequence = {{.name = "P2000 only", .step = {step}}};
  const HeightField surface = starting_surface(job.texture, job.patch, job.seed);
  const Prediction plan = predict(job, surface).prediction;
  const EdgeMargin& edge = *plan.panels[0].edge;
  const auto tell = [](const char* when, const std::optional<double>& margin_mm) {
    if (margin_mm)
      std::printf("%s: leave %.1f mm unsanded\n", when, *margin_mm);
    else
      std::printf("%s: the flat does not keep the budget\n", when);
  };
  tell("by best estimates", edge.margin_mm);
  tell("surely enough", edge.sure_margin_mm);
  std::printf("%s\n", job.note->c_str());
  for (const auto& cautions : {plan.cautions, plan.step_cautions})
    for (const Statement& caution : cautions) std::printf("- %s\n", caution.text().c_str());
}
