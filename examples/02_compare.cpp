// Three first grits on one patch, each followed by what its scratches need. What differs is the clear for those scratches,
// and what is cut past the stop rule before the next look: the levelling itself costs all of them the same.
#include <cstdio>
#include <string>
#include <vector>

#include "libtexture/io/catalogue.hpp"
#include "libtexture/process/sequence.hpp"
#include "libtexture/surface/texture.hpp"

using namespace libtexture;

Step step_of(const std::string& abrasive, const std::string& backing, const Stop& stop, int look_every_passes) {
  const Catalogue& tools = shipped_catalogue();
  Step step;
  step.name = abrasive;
  step.abrasive = tools.abrasives.at(abrasive);
  step.backing = tools.backings.at(backing);
  step.motion = tools.motions.at("150 mm light");
  step.wetness = step.abrasive.made_for.front();
  step.passes = 40;
  step.look_every_passes = look_every_passes;
  step.stop = stop;
  return step;
}

int main() {
  const HeightField surface = synthesize({{.wavelength_mm = 3.5, .rms_um = 0.8}}, {128, 128, 0.2}, 1);
  const Coating coating{{{.name = "clear", .thickness_um = 50}}};
  const Stop flat{.rms_um = 0.1};
  const std::string film = "film on firm interface", foam = "foam-backed disc on pad", fibre = "compound on fibre";
  const Step refine = step_of("P3000 foam-backed", foam, {.clear_owed_um = 0.1}, 1);
  const Step compound = step_of("compound", fibre, {.clear_owed_um = 0.05}, 1);
  const std::vector<std::vector<Step>> sequences{
      {step_of("P1200 film", film, flat, 2), refine, compound},
      {step_of("P2000 film", film, flat, 2), refine, compound},
      {step_of("P3000 film", film, flat, 2), compound},
  };
  for (const std::vector<Step>& steps : sequences) {
    const History history = simulate(surface, coating, steps);
    std::printf("%-10s first: %.2f um of clear\n", steps.front().name.c_str(), history.removed_um());
    for (const HistoryRow& row : history.steps)
      std::printf("    %-18s %2d passes  %.2f um, of it past the rule %.2f, texture left %.3f um\n", row.name.c_str(),
                  row.passes, row.removed_um, row.overshoot_um, row.rms_um);
  }
}
