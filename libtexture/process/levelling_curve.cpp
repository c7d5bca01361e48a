#include "libtexture/process/levelling_curve.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

constexpr double least_tolerance_um = 5e-3;

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
      options.rms_tolerance_um, progress);
}

CurvePoint LevellingCurve::at(double removal_um) {
  require(removal_um >= least_removal_um, "LevellingCurve", "removal_um", "must be at least .001, a nanometre",
          removal_um);
  if (curve_) {
    const ErosionState& state = curve_->at(removal_um);
    return {field_of(state.height, grid_), state.contact_share};
  }
  const Erosion cut = truncate(height_, {removal_um});
  return {field_of(cut.states.front().height, grid_), cut.states.front().contact_share};
}

int LevellingCurve::transform_pairs() const {
  return curve_ ? curve_->wearing().transform_pairs() : 0;
}

}  // namespace libtexture
