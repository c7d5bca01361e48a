#pragma once
// Checklist: what to do before the first pass.

#include <string>
#include <vector>

#include "libtexture/plan/panel.hpp"
#include "libtexture/process/step.hpp"

namespace libtexture {

/// What to do before the plan, in order, one sentence each: wash, strip, mask, test spot, light, and
/// extraction or dry plugs as the steps ask for. Common practice, no source.
std::vector<std::string> checklist_of(const std::vector<Panel>& panels, const std::vector<Step>& steps);

}  // namespace libtexture
