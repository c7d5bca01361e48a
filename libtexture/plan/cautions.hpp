#pragma once
// Cautions: what can hurt the person or the paint, said with every plan and every bench. Values, not advice:
// local codes and licensed practice prevail.

#include <vector>

#include "libtexture/base/statement.hpp"
#include "libtexture/process/step.hpp"

namespace libtexture {

/// Cautions of any job that sands paint: what is in the paint, solvents, vibration over the day, noise, the
/// clear that does not come back.
std::vector<Statement> general_cautions();

/// Cautions of one step, by how wet it is worked: dry means dust, water means electricity and slurry.
std::vector<Statement> cautions_of(const Step& step);

/// Cautions of wearing discs on a bench, by how wet that is done.
std::vector<Statement> bench_cautions(Wetness wetness);

}  // namespace libtexture
