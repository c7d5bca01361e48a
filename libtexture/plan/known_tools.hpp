#pragma once
// KnownTools: what a job knows of the tools at hand, by its own steps and by test spots.

#include "libtexture/plan/job.hpp"
#include "libtexture/plan/refinement.hpp"

namespace libtexture {

/// Tools as the job knows them. A tool that a step of the job uses has that step's figures (tools are known
/// by their keys, identity.hpp). Where those figures are of this hand, as a test spot leaves them, an
/// abrasive that no step uses learns what its kin teaches (teach.hpp): its wear rate by the family, its
/// groove depth by the clear, each from the abrasive of the job that has come to be known best.
Tools known_tools(Tools tools, const Job& job);

}  // namespace libtexture
