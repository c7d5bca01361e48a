#pragma once
// StartSurfaces: the few surfaces that stand for all which the worlds bring to a step.

#include <vector>

#include "libtexture/plan/step_curves.hpp"
#include "libtexture/surface/ideal_cut.hpp"

namespace libtexture {

/// Surfaces told apart by their rms height, in units of the patch as it is given.
class StartSurfaces {
 public:
  /// At least one, by rising rms height.
  explicit StartSurfaces(std::vector<HeightField> surfaces);

  const std::vector<HeightField>& surfaces() const { return surfaces_; }
  const std::vector<double>& rms_um() const { return rms_um_; }

  /// Least removal [um] by which any cutter leaves a share of the rms height of a start of so much [um].
  double ideal_removal_um(double start_rms_um, double share_left) const;

 private:
  std::vector<HeightField> surfaces_;
  std::vector<double> rms_um_;
  std::vector<IdealCut> ideal_;
};

/// How the worlds begin and end a step: rms heights of all waves [um], one value per world each.
struct StepEnds {
  std::vector<double> start_rms_um = {};
  std::vector<double> end_rms_um = {};
};

/// Surfaces that span what the step leaves, at most five, each from the start of a world that ends like it: a
/// levelling run for each such start (counted in solves).
StartSurfaces next_starts(const CurvePlan& plan, const StepCurves& curves, const StepEnds& ends, int& solves,
                          const Progress& progress = {});

/// Straight lines through points of rising x; beyond them as at the last.
double between(const std::vector<double>& x, const std::vector<double>& y, double at);

}  // namespace libtexture
