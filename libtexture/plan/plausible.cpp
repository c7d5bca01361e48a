#include "libtexture/plan/plausible.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

// Field, refused beyond, unusual beyond. All are estimates, wide on purpose: a slip of the unit is off by 25
// and more. The least that is refused of a clear lies above what anybody writes of it in mil.
constexpr std::array ranges{
    PlausibleRange{"patch.pixel_mm", 5e-4, 5, 5e-3, 1},
    PlausibleRange{"panel.area_m2", 1e-4, 100, 5e-3, 8},
    PlausibleRange{"panel.crown_radius_m", 0.05, 200, 0.2, 30},
    PlausibleRange{"panel.edge_length_m", 0.01, 200, 0.1, 20},
    PlausibleRange{"panel.sheet.thickness_mm", 0.1, 100, 0.4, 8},
    PlausibleRange{"panel.readings.total_um", 15, 5000, 60, 2000},
    PlausibleRange{"coating.clear_um", 8, 5000, 15, 250},
    PlausibleRange{"coating.clear_uncertainty_um", 0.1, 1000, 1, 80},
    PlausibleRange{"coating.gauge.uncertainty_um", 1e-6, 5000, 0.3, 20},
    PlausibleRange{"texture.bands.wavelength_mm", 0.05, 1000, 0.3, 60},
    PlausibleRange{"texture.bands.rms_um", 1e-3, 100, 0.02, 10},
    PlausibleRange{"texture.seen.wavelength_mm", 0.05, 1000, 0.3, 60},
    PlausibleRange{"texture.seen.letter_mm", 0.3, 2000, 1, 400},
    PlausibleRange{"texture.seen.distance_m", 0.1, 100, 0.3, 20},
    PlausibleRange{"texture.seen.eye_to_paint_m", 0.02, 100, 0.1, 10},
    PlausibleRange{"texture.wet_film.film.thickness_um", 8, 5000, 20, 400},
    PlausibleRange{"texture.wet_film.base.wavelength_mm", 0.05, 1000, 0.3, 60},
    PlausibleRange{"texture.wet_film.base.rms_um", 1e-3, 100, 0.02, 20},
    PlausibleRange{"texture.file.rms_um", 0.01, 100, 0.02, 10},
    PlausibleRange{"target.rms_um", 1e-3, 100, 0.01, 5},
    PlausibleRange{"target.band_mm", 0.01, 5000, 0.1, 200},
    PlausibleRange{"target.letter_mm", 0.3, 2000, 1, 400},
    PlausibleRange{"target.distance_m", 0.1, 100, 0.3, 20},
    PlausibleRange{"target.eye_to_paint_m", 0.02, 100, 0.1, 10},
    PlausibleRange{"target.defect.depth_um", 0.02, 500, 0.3, 60},
    PlausibleRange{"target.defect.height_um", 0.1, 5000, 1, 500},
    PlausibleRange{"target.defect.sd_um", 1e-3, 1000, 0.02, 60},
    PlausibleRange{"target.defect.width_mm", 1e-3, 500, 5e-3, 60},
    PlausibleRange{"target.defect.length_mm", 5e-3, 5000, 0.05, 2000},
    PlausibleRange{"target.defect.patch_mm", 5, 5000, 20, 1000},
    PlausibleRange{"target.defect.feather_mm", 1, 2000, 5, 500},
    PlausibleRange{"target.defect.level_within_um", 0.01, 50, 0.05, 5},
    PlausibleRange{"budget.clear_left_least_um", 4, 5000, 15, 200},
    PlausibleRange{"budget.clear_removed_most_um", 0.02, 5000, 2, 150},
    PlausibleRange{"budget.reserve_um", 0.02, 1000, 0.5, 50},
    PlausibleRange{"edge.radius_mm", 0.1, 1000, 0.3, 50},
    PlausibleRange{"edge.taper_mm", 0.1, 5000, 2, 200},
    PlausibleRange{"scratch_limits.visible_depth_um", 1e-3, 50, 0.01, 2},
    PlausibleRange{"viewer.viewer_m", 0.02, 100, 0.1, 10},
    PlausibleRange{"viewer.scene_m", 0.02, 1000, 0.1, 50},
    PlausibleRange{"viewer.pupil_mm", 0.01, 20, 1, 8},
    PlausibleRange{"sequence.step.abrasive.loading_um", 0.1, 1e6, 2, 1e5},
    PlausibleRange{"sequence.step.abrasive.groove_depth_um", 1e-4, 100, 1e-3, 3},
    PlausibleRange{"sequence.step.backing.skin.thickness_um", 1, 1e5, 5, 5000},
    PlausibleRange{"sequence.step.backing.layers.thickness_mm", 0.02, 1000, 0.1, 100},
    PlausibleRange{"sequence.step.motion.disc_diameter_mm", 8, 1000, 25, 300},
    PlausibleRange{"sequence.step.motion.orbit_mm", 0.4, 100, 1, 30},
    PlausibleRange{"sequence.step.motion.step_over_mm", 0.5, 1000, 3, 200},
    PlausibleRange{"sequence.step.stop.rms_um", 1e-3, 100, 0.01, 5},
    PlausibleRange{"sequence.step.stop.band_mm", 0.01, 5000, 0.1, 200},
    PlausibleRange{"sequence.step.stop.removed_um", 0.01, 1000, 0.1, 50},
    PlausibleRange{"sequence.step.stop.clear_owed_um", 1e-3, 100, 0.01, 10},
    PlausibleRange{"sequence.step.stop.defect_um", 0.01, 1000, 0.1, 60},
};

// Thicknesses of clear, which half of the trade has in mil.
constexpr std::array<std::string_view, 5> mil_fields{"coating.clear_um", "coating.clear_uncertainty_um",
                                                     "budget.clear_left_least_um",
                                                     "budget.clear_removed_most_um", "budget.reserve_um"};

struct Unit {
  std::string_view unit;
  double factor;  // into the field's own unit
};

// What people write in place of a unit.
std::vector<Unit> units_beside(std::string_view unit) {
  if (unit == "um") return {{"nm", 1e-3}, {"mil", um_per_mil}, {"mm", 1e3}, {"m", 1e6}};
  if (unit == "mm") return {{"um", 1e-3}, {"cm", 10}, {"inch", 25.4}, {"m", 1e3}};
  if (unit == "m") return {{"mm", 1e-3}, {"cm", 1e-2}};
  return {};
}

// A path without the numbers of list elements.
std::string without_numbers(std::string_view path) {
  std::string plain;
  bool is_number = false;
  for (const char letter : path) {
    if (letter == '[') is_number = true;
    if (!is_number) plain += letter;
    if (letter == ']') is_number = false;
  }
  return plain;
}

bool is_within(double value, double least, double most) {
  return value >= least && value <= most;
}

// "is it mil? then write 35.56": what may have been meant.
std::string question(const PlausibleRange& range, double value) {
  std::string text;
  for (const OtherUnit& other : other_units(range, value)) {
    text.append(text.empty() ? ": is it " : "; is it ").append(other.unit).append("? then write ");
    text += to_text(other.value);
    if (other.unit != "mil" || !takes_mil(range.field)) continue;
    const std::string_view stem = range.field.substr(range.field.find('.') + 1);
    text.append(", or ").append(stem.substr(0, stem.size() - 2)).append("mil = ").append(to_text(value));
    text += " in a job file";
  }
  return text;
}

/// How far the places of a panel's readings lie apart, over the side of a square of its area; none where
/// fewer than two places are stated.
std::optional<double> spread_of_places(const Panel& panel) {
  double left = HUGE_VAL, right = -HUGE_VAL, bottom = HUGE_VAL, top = -HUGE_VAL;
  int count = 0;
  for (const Reading& reading : panel.readings) {
    if (!reading.x_mm) continue;
    ++count;
    left = std::min(left, *reading.x_mm), right = std::max(right, *reading.x_mm);
    bottom = std::min(bottom, *reading.y_mm), top = std::max(top, *reading.y_mm);
  }
  const double diagonal_mm = std::hypot(right - left, top - bottom);
  if (count < 2 || diagonal_mm == 0) return std::nullopt;
  return diagonal_mm * metre_per_mm / std::sqrt(panel.area_m2);
}

// All places within a hundredth of the panel's side: metres; within a tenth: centimetres, or one corner of
// it; more than ten sides apart: another panel's. Estimates.
constexpr double places_least = 0.01, places_usual = 0.1, places_most = 10;

using Visit = std::function<void(double value, const std::string& field)>;

// Goes through the fields of a job, each given its path.
class Walk {
 public:
  explicit Walk(const Visit& visit) : visit_(visit) {}

  void job(const Job& job) const {
    at(job.patch.pixel_mm, "patch.pixel_mm");
    for (std::size_t i = 0; i < job.panel.size(); ++i) panel(job.panel[i], numbered("panel", i));
    at(job.coating.clear_um, "coating.clear_um");
    at(job.coating.clear_uncertainty_um, "coating.clear_uncertainty_um");
    at(job.coating.gauge.uncertainty_um, "coating.gauge.uncertainty_um");
    texture(job.texture);
    target(job.target);
    at(job.budget.clear_left_least_um, "budget.clear_left_least_um");
    at(job.budget.clear_removed_most_um, "budget.clear_removed_most_um");
    at(job.budget.reserve_um, "budget.reserve_um");
    at(job.edge.radius_mm, "edge.radius_mm");
    at(job.edge.taper_mm, "edge.taper_mm");
    at(job.scratch_limits.visible_depth_um, "scratch_limits.visible_depth_um");
    if (job.viewer) viewer(*job.viewer);
    for (std::size_t i = 0; i < job.sequence.size(); ++i)
      for (std::size_t j = 0; j < job.sequence[i].step.size(); ++j)
        step(job.sequence[i].step[j], numbered(numbered("sequence", i) + ".step", j));
  }

 private:
  static std::string numbered(const std::string& list, std::size_t i) {
    return list + "[" + std::to_string(i) + "]";
  }
  void at(double value, const std::string& field) const {
    if (value != 0) visit_(value, field);
  }
  void at(const std::optional<double>& value, const std::string& field) const {
    if (value) at(*value, field);
  }
  void at(const std::optional<std::array<double, 2>>& band, const std::string& field) const {
    if (band)
      for (const double edge : *band) at(edge, field);
  }

  void panel(const Panel& panel, const std::string& path) const {
    at(panel.area_m2, path + ".area_m2");
    at(panel.crown_radius_m, path + ".crown_radius_m");
    at(panel.edge_length_m, path + ".edge_length_m");
    at(panel.sheet.thickness_mm, path + ".sheet.thickness_mm");
    for (std::size_t i = 0; i < panel.readings.size(); ++i)
      at(panel.readings[i].total_um, numbered(path + ".readings", i) + ".total_um");
  }

  void bands(const std::vector<TextureBand>& bands, const std::string& path) const {
    for (std::size_t i = 0; i < bands.size(); ++i) {
      at(bands[i].wavelength_mm, numbered(path, i) + ".wavelength_mm");
      at(bands[i].rms_um, numbered(path, i) + ".rms_um");
    }
  }

  void texture(const TextureSource& texture) const {
    bands(texture.bands, "texture.bands");
    if (texture.seen) {
      at(texture.seen->wavelength_mm, "texture.seen.wavelength_mm");
      at(texture.seen->letter_mm, "texture.seen.letter_mm");
      at(texture.seen->distance_m, "texture.seen.distance_m");
      at(texture.seen->eye_to_paint_m, "texture.seen.eye_to_paint_m");
    }
    if (texture.wet_film) {
      at(texture.wet_film->film.thickness_um, "texture.wet_film.film.thickness_um");
      bands(texture.wet_film->base, "texture.wet_film.base");
    }
  }

  void target(const Target& target) const {
    at(target.rms_um, "target.rms_um");
    at(target.band_mm, "target.band_mm");
    at(target.letter_mm, "target.letter_mm");
    at(target.distance_m, "target.distance_m");
    at(target.eye_to_paint_m, "target.eye_to_paint_m");
    if (target.defect) defect(*target.defect, "target.defect");
  }

  void defect(const Defect& defect, const std::string& path) const {
    at(defect.depth_um, path + ".depth_um");
    at(defect.height_um, path + ".height_um");
    at(defect.sd_um, path + ".sd_um");
    at(defect.width_mm, path + ".width_mm");
    at(defect.length_mm, path + ".length_mm");
    at(defect.patch_mm, path + ".patch_mm");
    at(defect.feather_mm, path + ".feather_mm");
    at(defect.level_within_um, path + ".level_within_um");
  }

  void viewer(const Viewer& viewer) const {
    at(viewer.viewer_m, "viewer.viewer_m");
    at(viewer.scene_m, "viewer.scene_m");
    at(viewer.pupil_mm, "viewer.pupil_mm");
  }

  void step(const Step& step, const std::string& path) const {
    at(step.abrasive.loading_um, path + ".abrasive.loading_um");
    at(step.abrasive.groove_depth_um, path + ".abrasive.groove_depth_um");
    if (step.backing.skin) at(step.backing.skin->thickness_um, path + ".backing.skin.thickness_um");
    for (std::size_t i = 0; i < step.backing.layers.size(); ++i)
      at(step.backing.layers[i].thickness_mm, numbered(path + ".backing.layers", i) + ".thickness_mm");
    at(step.motion.disc_diameter_mm, path + ".motion.disc_diameter_mm");
    at(step.motion.orbit_mm, path + ".motion.orbit_mm");
    at(step.motion.step_over_mm, path + ".motion.step_over_mm");
    at(step.stop.rms_um, path + ".stop.rms_um");
    at(step.stop.band_mm, path + ".stop.band_mm");
    at(step.stop.removed_um, path + ".stop.removed_um");
    at(step.stop.clear_owed_um, path + ".stop.clear_owed_um");
    at(step.stop.defect_um, path + ".stop.defect_um");
  }

  const Visit& visit_;
};

}  // namespace

const PlausibleRange& plausible_range(std::string_view field) {
  const std::string plain = without_numbers(field);
  const auto found = std::find_if(ranges.begin(), ranges.end(),
                                  [&](const PlausibleRange& range) { return range.field == plain; });
  require(found != ranges.end(), "Plausible", "field", "must be a thickness or length of a job", field);
  return *found;
}

std::vector<OtherUnit> other_units(const PlausibleRange& range, double value) {
  std::vector<OtherUnit> others;
  for (const Unit& unit : units_beside(unit_of(range.field)))
    if (is_within(value * unit.factor, range.usual_least, range.usual_most))
      others.push_back({unit.unit, value * unit.factor});
  return others;
}

bool takes_mil(std::string_view field) {
  return std::find(mil_fields.begin(), mil_fields.end(), field) != mil_fields.end();
}

void require_plausible(double value, std::string_view owner, const std::string& field) {
  const PlausibleRange& range = plausible_range(field);
  if (is_within(value, range.least, range.most)) return;
  const std::string limit = value < range.least ? "must be at least " + to_text(range.least)
                                                : "must be at most " + to_text(range.most);
  require(false, owner, field, limit + question(range, value), value);
}

void require_plausible(const Job& job) {
  const Visit check = [](double value, const std::string& field) { require_plausible(value, "Job", field); };
  Walk(check).job(job);
  for (std::size_t i = 0; i < job.panel.size(); ++i) {
    const auto spread = spread_of_places(job.panel[i]);
    require(
        !spread || *spread >= places_least, "Job", "panel[" + std::to_string(i) + "].readings",
        "must have places in mm, which no panel of this area has within so little: are x_mm and y_mm in m?",
        spread ? to_text(*spread * std::sqrt(job.panel[i].area_m2) / metre_per_mm) + " mm apart" : "");
  }
}

std::vector<Statement> unusual_length(double value, const std::string& field) {
  const PlausibleRange& range = plausible_range(field);
  if (is_within(value, range.usual_least, range.usual_most)) return {};
  Statement statement{
      .kind = StatementKind::length_unusual,
      .field = field,
      .figures = {{"value", value}, {"usual_least", range.usual_least}, {"usual_most", range.usual_most}}};
  for (const OtherUnit& other : other_units(range, value))
    statement.figures[std::string(other.unit) + "_means"] = other.value;
  return {statement};
}

std::vector<Statement> unusual_lengths(const Job& job) {
  std::vector<Statement> all;
  const Visit check = [&](double value, const std::string& field) {
    add_new(all, unusual_length(value, field));
  };
  Walk(check).job(job);
  for (std::size_t i = 0; i < job.panel.size(); ++i) {
    const auto spread = spread_of_places(job.panel[i]);
    if (!spread || (*spread >= places_usual && *spread <= places_most)) continue;
    const double side_mm = std::sqrt(job.panel[i].area_m2) / metre_per_mm;
    all.push_back({.kind = StatementKind::places_unusual,
                   .panel = job.panel[i].name,
                   .figures = {{"apart_mm", *spread * side_mm}, {"side_mm", side_mm}}});
  }
  return all;
}

}  // namespace libtexture
