#include "libtexture/plan/worked_panel.hpp"

#include <algorithm>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

double feather_mm(const Defect& defect, const Motion& first) {
  return defect.feather_mm.value_or(first.disc_diameter_mm / 2);
}

double dose_area_m2(double patch_mm, double feather_mm) {
  require_positive(patch_mm, "dose_area_m2", "patch_mm");
  require_not_negative(feather_mm, "dose_area_m2", "feather_mm");
  const double a = patch_mm / 2 * metre_per_mm, f = feather_mm * metre_per_mm;
  return std::numbers::pi * (a * a + a * f + f * f / 3);
}

Panel worked_panel(const Panel& panel, const std::optional<Defect>& defect, const Motion& first) {
  if (!defect || !defect->patch_mm) return panel;
  Panel worked = panel;
  worked.area_m2 = std::min(panel.area_m2, dose_area_m2(*defect->patch_mm, feather_mm(*defect, first)));
  worked.edge_length_m.reset();
  return worked;
}

Job worked_job(const Job& job, const Motion& first) {
  Job worked = job;
  for (Panel& panel : worked.panel) panel = worked_panel(panel, job.target.defect, first);
  return worked;
}

std::optional<Place> patch_place_mm(const std::optional<Defect>& defect) {
  if (!defect || !defect->patch_mm || !defect->x_mm) return std::nullopt;
  return Place{*defect->x_mm, *defect->y_mm};
}

Film film_worked(const Panel& panel, const Paint& paint, const std::optional<Defect>& defect) {
  const FilmMap map = film_map(panel, paint);
  const auto place_mm = patch_place_mm(defect);
  return place_mm ? film_at(map, *place_mm) : film_at_thinnest(map, panel);
}

}  // namespace libtexture
