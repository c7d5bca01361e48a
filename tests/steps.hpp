#pragma once
// Steps with the catalogue's own tools, named after their abrasive and worked as it is made for.

#include <string>

#include "libtexture/io/catalogue.hpp"
#include "libtexture/process/step.hpp"

namespace steps {

inline libtexture::Step step_of(const std::string& abrasive,
                                const std::string& backing = "film on firm interface",
                                const std::string& motion = "150 mm light", int passes = 1) {
  const libtexture::Catalogue& catalogue = libtexture::shipped_catalogue();
  libtexture::Step step;
  step.name = abrasive;
  step.abrasive = catalogue.abrasives.at(abrasive);
  step.backing = catalogue.backings.at(backing);
  step.motion = catalogue.motions.at(motion);
  step.wetness = step.abrasive.made_for.front();
  step.passes = passes;
  return step;
}

}  // namespace steps
