// One step on one patch: how much texture is left for how much clear.
#include <cstdio>

#include "libtexture/io/catalogue.hpp"
#include "libtexture/process/sequence.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;

int main() {
  const HeightField surface = synthesize({{.wavelength_mm = 2.5, .rms_um = 0.8}}, {128, 128, 0.2}, 1);
  const Coating coating{{{.name = "clear", .thickness_um = 50}}};
  const Catalogue& tools = shipped_catalogue();
  const Step step{.name = "level",
                  .abrasive = tools.abrasives.at("P2000 film"),
                  .backing = tools.backings.at("film on firm interface"),
                  .motion = tools.motions.at("150 mm light"),
                  .passes = 10,
                  .look_every_passes = 2,
                  .stop = {.touched_share = 0.99}};

  const History history = simulate(surface, coating, {step});
  std::printf("pass  clear removed um  texture left um  touched %%\n");
  for (const HistoryRow& row : history.passes)
    std::printf("%4d %17.2f %16.3f %10.1f\n", row.passes, row.removed_um, row.rms_um,
                100 * row.touched_share);
  const HistoryRow& end = history.steps.back();
  std::printf("Clear left: %.1f um, %.1f um at its thinnest; its scratches owe %.2f um more.\n",
              end.clear_left_mean_um, end.clear_left_least_um, end.clear_owed_um);
}
