#pragma once
// Chance: a probability as people count it.

#include <string>

namespace libtexture {

/// A probability (0 to 1) rounded as chance_text() prints it: to whole cases of 1000 under a tenth, of 100
/// from there on. A rule about chances that is applied to this figure never contradicts the printed one.
double as_counted(double probability);

/// A probability (0 to 1) that was counted in so many samples: "37 of 100 cases", "4 of 1000 cases", "none of
/// 4000 cases", "all cases".
std::string chance_text(double probability, int samples);

}  // namespace libtexture
