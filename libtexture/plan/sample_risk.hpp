#pragma once
// SampleRisk: a sequence in every possible world, along curves that are solved at a few nodes.

#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/risk.hpp"
#include "libtexture/surface/height_field.hpp"

namespace libtexture {

/// The draws of each panel, and what they cost.
struct SampledRisk {
  std::vector<RiskDraws> draws = {};  ///< one per panel of the job
  /// One curve per panel of the job.
  std::vector<std::vector<TextureLeft>> texture_left = {};
  int node_solves = 0;                ///< levelling runs, for all panels together
};

/// Takes the sequence through the worlds of the job (worlds_of): per world and step the removal after each
/// look from the closed law of loading discs, the texture from StepCurves, the clear owed from the closed
/// scratch laws on the quantiles of the removal maps; then the worst of each panel's cells. What simulate()
/// would give in that world follows within about a tenth of the spread (docs/physics.md, risk).
///
/// clarity_light: the share of the texture's image clarity that scratches leave, where the target asks for
/// image clarity. The same bytes for any number of threads.
SampledRisk sample_risk(const Job& job, const HeightField& surface, const Sequence& sequence,
                        double clarity_light = 1, const Progress& progress = {});

}  // namespace libtexture
