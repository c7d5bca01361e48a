#pragma once
// BeliefMoved: what of a test spot moved the belief in the wear rate: readings, glossy valleys or texture.

#include "libtexture/plan/test_spot.hpp"

namespace libtexture {

/// What moved the belief in the wear rate most, by the logarithm of its median: the readings alone, what the
/// glossy valleys add to them, or what the texture left adds to both. Curves as judge_test_spot() has them.
Statement what_moved_belief(const Job& job, const TestSpot& spot, const SpotCurves& curves = {});

}  // namespace libtexture
