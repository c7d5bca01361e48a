#include "libtexture/plan/cautions.hpp"

namespace libtexture {

// Figures: Directive 2002/44/EC (vibration), HSE workplace limits (isocyanates), EN 149 (masks); the rest is
// common practice, no source.
std::vector<std::string> general_cautions() {
  return {
      "These are predictions from estimates: prove the first step on a test spot before the panel. Local "
      "rules and licensed "
      "practice prevail.",
      "Clear that is removed does not come back, and it carries the ultraviolet protection. Edges and body "
      "lines burn "
      "through first: leave an unsanded margin and work them by hand.",
      "Fresh or badly cured two-pack paint can release isocyanates (UK limits .02 mg/m3 over 8 h, .07 over "
      "15 min); old paint "
      "may hold lead or chromium. Find out before sanding.",
      "Hand-arm vibration: action value 2.5 m/s2 and limit 5 m/s2 over a working day, A(8) = a sqrt(T/8 h) "
      "(Directive "
      "2002/44/EC, ISO 5349-1). Count all machine time of the day.",
  };
}

std::vector<std::string> cautions_of(const Step& step) {
  if (step.wetness == Wetness::dry && step.abrasive.carrier != Carrier::compound)
    return {"Dry sanding makes fine dust: extract at the tool and wear a mask (EN 149, FFP2 or FFP3)."};
  if (step.wetness != Wetness::dry)
    return {"Water and electric tools: use a residual-current device, keep plugs dry, or use an air tool."};
  return {"Compound and polish fling: wear eye protection, and keep the panel cool enough to touch."};
}

}  // namespace libtexture
