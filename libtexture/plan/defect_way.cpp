#include "libtexture/plan/defect_way.hpp"

#include "libtexture/base/units.hpp"

namespace libtexture {

std::optional<double> hidden_depth_um(const Defect& defect, const Viewer& viewer) {
  if (is_above(defect) || !defect.width_mm) return std::nullopt;
  if (*defect.width_mm < resolved_mm(viewer.viewer_m)) return std::nullopt;
  return hidden_slope(viewer) * *defect.width_mm / 2 * metre_per_mm / metre_per_um;
}

std::vector<DefectWayKind> sampled_ways(const Defect& defect, const Viewer& viewer) {
  std::vector<DefectWayKind> ways;
  if (defect.patch_mm) ways.push_back(DefectWayKind::patch);
  ways.push_back(DefectWayKind::all_over);
  if (hidden_depth_um(defect, viewer)) ways.push_back(DefectWayKind::round);
  return ways;
}

double done_at_um(DefectWayKind way, const Defect& defect, const Viewer& viewer) {
  return way == DefectWayKind::round ? hidden_depth_um(defect, viewer).value() : may_stay_um(defect);
}

Defect worked_as(DefectWayKind way, const Defect& defect) {
  Defect worked = defect;
  if (way != DefectWayKind::all_over) return worked;
  worked.patch_mm.reset();
  worked.feather_mm.reset();
  return worked;
}

}  // namespace libtexture
