#pragma once
// Checklist: what to do before the first pass.

#include <optional>
#include <vector>

#include "libtexture/base/statement.hpp"
#include "libtexture/plan/panel.hpp"
#include "libtexture/plan/spot_plan.hpp"
#include "libtexture/process/step.hpp"

namespace libtexture {

/// What to do before the plan, in order: wash, strip, mask, test spot, light, and
/// extraction or dry plugs as the steps ask for. Common practice, no source. With a plan for the spot, how
/// many readings and passes it takes, and what it gives.
std::vector<Statement> checklist_of(const std::vector<Panel>& panels, const std::vector<Step>& steps,
                                    const std::optional<SpotPlan>& spot = {});

}  // namespace libtexture
