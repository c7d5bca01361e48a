#pragma once
// SampleRisk: sequences in every possible world, along curves that are solved at a few nodes.

#include <functional>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/plan/defect_way.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/risk.hpp"
#include "libtexture/surface/height_field.hpp"
#include "libtexture/surface/image_clarity.hpp"

namespace libtexture {

/// A sequence to be sampled.
struct SampledSequence {
  Sequence sequence = {};
  /// What the scratches leave at its end. Called last, and only where the target asks for what a person sees.
  std::function<MirroredLight()> light = [] { return MirroredLight{}; };
};

/// Another way to deal with the target's defect by the same steps.
struct SampledWay {
  DefectWayKind way = DefectWayKind::all_over;  ///< which one
  std::vector<RiskDraws> draws = {};            ///< one per panel of the job
};

/// The draws of each panel, and what they cost.
struct SampledRisk {
  std::vector<RiskDraws> draws = {};  ///< one per panel of the job
  int node_solves = 0;                ///< levelling runs that they rest on, for all panels together
  std::vector<double> defect_um =
      {};  ///< depth or height of the target's defect, by world; none without one [um]
  std::vector<std::vector<TextureLeft>> texture_left = {};  ///< one curve per panel of the job
  /// Of a target with a defect: the ways to deal with it by sanding that the job does not ask for.
  std::vector<SampledWay> other_ways = {};
};

/// The risks of several sequences, in their order.
struct SampledRisks {
  std::vector<SampledRisk> risks = {};
  int node_solves = 0;  ///< levelling runs in all: those that sequences share count once
};

/// Takes the sequences through the worlds of the job (worlds_of), side by side, step by step: per world and
/// step the removal after each look from the closed law of loading discs, the texture from StepCurves, the
/// clear owed from the closed scratch laws on the quantiles of the removal maps; then the worst of each
/// panel's cells. A defect is worked in each of sampled_ways(), along the curves of the job's own. What
/// simulate() would give in that world follows within about a tenth of the spread (docs/physics.md, risk).
/// The same bytes for any number of threads, and for a sequence alone or among others.
SampledRisks sample_risk(const Job& job, const HeightField& surface,
                         const std::vector<SampledSequence>& sequences, const Progress& progress = {});

}  // namespace libtexture
