#pragma once
// Recommend: the finest first step that reaches a target, what follows it, and what coarser ones cost more.

#include <string>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/base/statement.hpp"
#include "libtexture/plan/compare.hpp"
#include "libtexture/plan/first_step.hpp"

namespace libtexture {

/// What to do.
struct Recommendation {
  std::optional<std::string> note = {};    ///< of the job: where its figures come from
  Verdict verdict = Verdict::do_not_sand;  ///< of the recommended sequence; do not sand comes first
  std::string recommended =
      {};  ///< name of the sequence; empty where none reaches it, and where there is nothing to do
  std::string finest = {};              ///< name of the sequence with the finest first step that reaches it
  std::vector<Statement> reasons = {};  ///< why
  std::vector<FirstStep> first_steps = {};  ///< all that were weighed, finest first
  std::vector<Sequence> sequences = {};     ///< of those that reach the target, finest first
  Comparison comparison = {};               ///< of these sequences
  std::vector<Statement> cautions = {};     ///< of the whole job; those of the steps stand in the comparison

  bool operator==(const Recommendation&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("note", &Recommendation::note),
                      optional("verdict", &Recommendation::verdict),
                      optional("recommended", &Recommendation::recommended),
                      optional("finest", &Recommendation::finest),
                      optional("reasons", &Recommendation::reasons),
                      optional("first_steps", &Recommendation::first_steps),
                      optional("sequences", &Recommendation::sequences),
                      optional("comparison", &Recommendation::comparison),
                      optional("cautions", &Recommendation::cautions)};
  }
};

/// Weighs every disc of the tools as the first step and compares those that reach the target, with what
/// follows them, in the same worlds. Recommended is, of those with the mildest verdict that are on the front,
/// the finest, unless a coarser one surely spends less. A target out of reach is an answer, "do not sand",
/// that names the waves in the way and what would help. The job's own sequences are not used; its patch is
/// its node_patch().
Recommendation recommend(const Job& job, const HeightField& surface, const Tools& tools,
                         const WorkLimits& limits = {}, const Progress& progress = {});

}  // namespace libtexture
