#pragma once
// Teach: what a lesson on one abrasive changes in a job.

#include <string>

#include "libtexture/base/fields.hpp"
#include "libtexture/plan/belief.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/kinship.hpp"

namespace libtexture {

/// What a spot says of another abrasive of the job.
struct TaughtAbrasive {
  std::string abrasive = {};  ///< its name
  Belief before = {};         ///< wear rate of fresh discs [mm3/(N m)]: the job's
  Belief after = {};          ///< the same with the test spot

  bool operator==(const TaughtAbrasive&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("abrasive", &TaughtAbrasive::abrasive),
                      optional("before", &TaughtAbrasive::before), optional("after", &TaughtAbrasive::after)};
  }
};

/// What is learned of the wear rate of an abrasive that was tried, as this hand gets it from this clear
/// (wear_spread), in one step. Where the step uses that abrasive: fresh and worn wear rate, wear_rate_log_sd,
/// the part of it that the family shares, the range of the wear rate, wear_rate_of. Where it uses kin of its
/// family, the same as far as the lesson reaches (docs/physics.md (66d)). Else nothing.
void teach_wear(Step& step, const Abrasive& tried, const Lesson& lesson, const Uncertainty& uncertainty);

/// The same of the depth of its deepest grooves (groove_spread): groove_depth_um and what goes with it, of
/// any abrasive, as all share a part on one clear.
void teach_grooves(Step& step, const Abrasive& tried, const Lesson& lesson, const Uncertainty& uncertainty);

/// In every step of a job.
void teach_wear(Job& job, const Step& tried, const Lesson& lesson);
void teach_grooves(Job& job, const Step& tried, const Lesson& lesson);

}  // namespace libtexture
