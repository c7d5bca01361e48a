#include "libtexture/process/press.hpp"

#include "libtexture/base/error.hpp"
#include "libtexture/numerics/contact.hpp"
#include "libtexture/process/levelling.hpp"

namespace libtexture {

Pressed press(const HeightField& field, const Backing& backing, double pressure_kpa,
              const Progress& progress) {
  require(backing.support != Support::rigid, "press", "backing", "must not be rigid: it touches in a point",
          name_of(backing.support));
  require_positive(pressure_kpa, "press", "pressure_kpa");
  const Array2d& h = field.height_um();
  const AlignedVector<double> height(h.data(), h.data() + h.size());
  AlignedVector<double> pressure(height.size()), gap(height.size());
  // With the stiffness over the mean pressure, the pressure comes out over its mean.
  Contact contact(field.grid(), relative_stiffness_per_um(field.grid(), backing, pressure_kpa));
  const ContactReport solved = contact.solve(height, 1.0, pressure, gap, {}, progress);
  report(progress, 1);
  return {.pressure_kpa = Eigen::Map<const Array2d>(pressure.data(), h.rows(), h.cols()) * pressure_kpa,
          .contact_share = solved.contact_share,
          .mean_gap_um = solved.mean_gap,
          .iterations = solved.iterations,
          .transform_pairs = solved.transform_pairs,
          .residual = solved.residual};
}

}  // namespace libtexture
