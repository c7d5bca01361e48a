#pragma once
// Knowledge: what the figures of a prediction rest on, as a mark of three levels: not how far they spread.

#include <array>
#include <utility>

#include "libtexture/plan/job.hpp"

namespace libtexture {

/// What was measured on this paint, with these tools, by this person; from the least to the most.
enum class Knowledge {
  estimates,      ///< nothing to speak of: the catalogue's figures and what is assumed of the kind of paint
  own_readings,   ///< the clear is known, or the film was read often enough; tools are the catalogue's
  own_test_spot,  ///< a tool of the sequence cuts as a test spot showed
};
constexpr std::array<std::pair<Knowledge, const char*>, 3> names_of(Knowledge) {
  return {{{Knowledge::estimates, "estimates"},
           {Knowledge::own_readings, "own readings"},
           {Knowledge::own_test_spot, "own test spot"}}};
}

/// Fewer readings on a panel, those over filler left out, do not show how its film varies (estimate).
inline constexpr int least_own_readings = 3;

/// What the figures of a job by one of its sequences rest on. Readings count where every panel has enough.
Knowledge knowledge_of(const Job& job, const Sequence& sequence);

}  // namespace libtexture
