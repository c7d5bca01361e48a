#pragma once
// OddReadings: readings that do not belong to the others: a slip of the unit, filler, a place sanded before.

#include <vector>

#include "libtexture/base/statement.hpp"
#include "libtexture/plan/paint.hpp"
#include "libtexture/plan/panel.hpp"

namespace libtexture {

/// One statement a reading that lies further from the median of the others than 3.5 times their scatter. That
/// is 1.4826 times their median absolute deviation, and at least 8 % of their median and the gauge's
/// uncertainty together (docs/physics.md, odd readings). Readings over filler are left out; none are odd
/// among fewer than three.
std::vector<Statement> odd_readings(const Panel& panel, const Gauge& gauge);

}  // namespace libtexture
