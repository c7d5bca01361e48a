#include "libtexture/process/levelling_curve.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

constexpr double least_tolerance_um = 5e-3;

// What the shape may err by in one increment, over the tolerance of the rms height. Errors of shape lie in
// the few places that come into contact, and of the rms height they move a hundredth
// (tests/numerics/test_wear_curve.cpp). What comes into contact last does so up to a third of an increment
// too early: where the shape is judged, increments are so small that the removal which touches nearly all is
// found to 2 % (tests/process/test_levelling_curve.cpp).
constexpr double shape_over_rms = 2, shape_over_rms_if_asked = 0.15;

double shape_tolerance_um(double rms_tolerance_um, bool is_shape_asked) {
  return rms_tolerance_um * (is_shape_asked ? shape_over_rms_if_asked : shape_over_rms);
}

HeightField field_of(const AlignedVector<double>& height, const Grid& grid) {
  return HeightField(Eigen::Map<const Array2d>(height.data(), grid.rows, grid.cols), grid.pixel_mm);
}

}  // namespace

double rms_tolerance_um(const HeightField& start, double share) {
  return std::max(least_tolerance_um, share * start.rms_um());
}

LevellingCurve::LevellingCurve(const HeightField& field, const Backing& backing, double pressure_kpa,
                               const CurveOptions& options, const Progress& progress)
    : grid_(field.grid()),
      height_(field.height_um().data(), field.height_um().data() + field.height_um().size()) {
  require_positive(options.rms_tolerance_um, "CurveOptions", "rms_tolerance_um");
  backing.validate();
  if (backing.support == Support::rigid) return;
  curve_.emplace(
      grid_, height_,
      relative_stiffness_per_um(grid_, backing, pressure_kpa, options.disc_diameter_mm, options.grain_um),
      shape_tolerance_um(options.rms_tolerance_um, options.is_shape_asked), progress);
}

LevellingCurve::LevellingCurve(const HeightField& field, const AlignedVector<double>& stiffness_per_um,
                               double rms_tolerance_um, bool is_shape_asked, const Progress& progress)
    : grid_(field.grid()),
      height_(field.height_um().data(), field.height_um().data() + field.height_um().size()) {
  require_positive(rms_tolerance_um, "LevellingCurve", "rms_tolerance_um");
  curve_.emplace(grid_, height_, stiffness_per_um, shape_tolerance_um(rms_tolerance_um, is_shape_asked),
                 progress);
}

CurvePoint LevellingCurve::at(double removal_um) {
  require(removal_um >= least_removal_um, "LevellingCurve", "removal_um",
          "must be at least .001, a nanometre", removal_um);
  if (curve_) {
    const ErosionState& state = curve_->at(removal_um);
    return {field_of(state.height, grid_), state.contact_share};
  }
  const Erosion cut = truncate(height_, {removal_um});
  return {field_of(cut.states.front().height, grid_), cut.states.front().contact_share};
}

std::optional<double> LevellingCurve::touched_at_um() const {
  require(curve_.has_value(), "LevellingCurve", "backing", "must not be rigid: a cut touches all at its end",
          "rigid");
  return curve_->touched_at();
}

int LevellingCurve::transform_pairs() const {
  return curve_ ? curve_->wearing().transform_pairs() : 0;
}

}  // namespace libtexture
