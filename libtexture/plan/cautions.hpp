#pragma once
// Cautions: what can hurt the person or the paint, said with every plan. Values, not advice: local rules and
// licensed practice prevail.

#include <vector>

#include "libtexture/base/statement.hpp"
#include "libtexture/process/step.hpp"

namespace libtexture {

/// Cautions of any job that sands paint: dust and what is in it, vibration, the clear that does not come
/// back.
std::vector<Statement> general_cautions();

/// Cautions of one step, by how wet it is worked: dry means dust, water means electricity.
std::vector<Statement> cautions_of(const Step& step);

}  // namespace libtexture
