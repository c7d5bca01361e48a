#pragma once
// TargetStop: the stop rule that a target is, so that it is written once.

#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// The stop rule that says what a target asks of height, touch and a defect, all parts together; no rule
/// where it asks for sight alone, or for a defect that is followed, whose cost in clear depends on the step.
Stop target_stop(const Target& target);

/// Whether what stops a step at the target has to be computed for the step: the target asks for sight, or for
/// a defect that is followed.
bool needs_curve(const Target& target);

/// Whether a step has no stop rule of any kind.
bool has_no_rule(const Stop& stop);

/// A sequence as it is worked on a starting surface: where its first step is a disc without a stop rule, it
/// stops at the job's target. A defect that is followed is gone after the clear that its BumpCurve names. A
/// target that asks for sight is then met at an rms height: the one that is left
/// where the computed curve of levelling first meets it, on the panel that needs most; where it never does,
/// all passes are made. All other steps stay as they are.
Sequence worked_sequence(const Job& job, const Sequence& sequence, const HeightField& surface,
                         const Progress& progress = {});

/// A warning where steps stop by a texture that is not what the target asks for; none where one of them does,
/// or where the target asks for sight or for a defect that is followed.
std::vector<Statement> stop_warnings(const Target& target, const Sequence& sequence);

}  // namespace libtexture
