#pragma once
// Predict: a job through one of its sequences: what it costs, and whether the budget bears it.

#include <string>
#include <vector>

#include "libtexture/base/progress.hpp"
#include "libtexture/plan/job.hpp"
#include "libtexture/plan/prediction.hpp"
#include "libtexture/process/history.hpp"

namespace libtexture {

/// A prediction with the surfaces that it came from.
struct Predicted {
  Prediction prediction;           ///< plain values
  std::vector<History> histories;  ///< one per panel: the patch before and after each step
  std::vector<RiskDraws> draws;    ///< one per panel: what happens in each possible world
};

/// The sequence of a job by name; the first where the name is empty. InvalidInput, with the nearest name,
/// where there is none.
const Sequence& sequence_named(const Job& job, const std::string& name);

/// Predicts a job, its sequence as worked_sequence() has it, on a starting surface (job.texture's own:
/// surface_of() of libtexture/io). Histories, and the rows and sums of a panel, are of best estimates, with
/// the clear at the panel's thinnest reading; risk and verdict are of all possible worlds (sample_risk). Both
/// are worked on fewer pixels where these hold the surface (docs/physics.md, risk); a history's maps are on
/// the surface's own grid.
Predicted predict(const Job& job, const HeightField& surface, const std::string& sequence = "",
                  const Progress& progress = {});

/// Predictions of all sequences of a job, in their order.
struct AllPredicted {
  std::vector<Predicted> predicted;
  int node_solves = 0;  ///< levelling runs of the risks in all: those that sequences share count once
};

/// Predicts every sequence of a job, at least one, side by side: each is the same bytes as by itself.
AllPredicted predict_all(const Job& job, const HeightField& surface, const Progress& progress = {});

}  // namespace libtexture
