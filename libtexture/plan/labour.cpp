#include "libtexture/plan/labour.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/process/pace.hpp"

namespace libtexture {
namespace {

void require_one_row_a_step(const std::vector<Step>& steps, const std::vector<HistoryRow>& rows) {
  require(steps.size() == rows.size(), "Labour", "rows", "must be one a step",
          static_cast<double>(rows.size()));
}

int looks_of(const Step& step, const HistoryRow& row) {
  return (row.passes + step.look_every_passes - 1) / step.look_every_passes;
}

}  // namespace

void Labour::validate() const {
  require_not_negative(wipe_minutes_per_m2, "Labour", "wipe_minutes_per_m2");
  require_not_negative(look_minutes, "Labour", "look_minutes");
  require_not_negative(disc_change_minutes, "Labour", "disc_change_minutes");
  require_not_negative(edge_minutes_per_m_um, "Labour", "edge_minutes_per_m_um");
  require_not_negative(masking_minutes_per_m, "Labour", "masking_minutes_per_m");
  require_not_negative(cleaning_minutes_per_m2, "Labour", "cleaning_minutes_per_m2");
}

LabourMinutes labour_of(const Labour& labour, double area_m2, double edge_length_m,
                        const std::vector<Step>& steps, const std::vector<HistoryRow>& rows) {
  labour.validate();
  require_positive(area_m2, "Labour", "area_m2");
  require_not_negative(edge_length_m, "Labour", "edge_length_m");
  LabourMinutes minutes;
  double removed_um = 0;
  for (const HistoryRow& row : rows) removed_um += row.removed_um;
  for (const DiscSizeMinutes& size : minutes_by_disc_size(labour, area_m2, steps, rows)) {
    minutes.sanding_minutes += size.sanding_minutes;
    minutes.looking_minutes += size.looking_minutes;
    minutes.disc_change_minutes += size.disc_change_minutes;
  }
  minutes.edge_minutes = edge_length_m * labour.edge_minutes_per_m_um * removed_um;
  minutes.masking_minutes = edge_length_m * labour.masking_minutes_per_m;
  minutes.cleaning_minutes = area_m2 * labour.cleaning_minutes_per_m2;
  minutes.total_minutes = minutes.sanding_minutes + minutes.looking_minutes + minutes.disc_change_minutes +
                          minutes.edge_minutes + minutes.masking_minutes + minutes.cleaning_minutes;
  return minutes;
}

std::vector<DiscSizeMinutes> minutes_by_disc_size(const Labour& labour, double area_m2,
                                                  const std::vector<Step>& steps,
                                                  const std::vector<HistoryRow>& rows) {
  require_one_row_a_step(steps, rows);
  const double look_minutes = labour.look_minutes + labour.wipe_minutes_per_m2 * area_m2;
  std::vector<DiscSizeMinutes> sizes;
  for (std::size_t i = 0; i < steps.size(); ++i)
    add(sizes, {.disc_diameter_mm = steps[i].motion.disc_diameter_mm,
                .discs = rows[i].discs,
                .sanding_minutes = rows[i].minutes,
                .looking_minutes = looks_of(steps[i], rows[i]) * look_minutes,
                .disc_change_minutes = rows[i].discs * labour.disc_change_minutes});
  return sizes;
}

void add(std::vector<DiscSizeMinutes>& total, const DiscSizeMinutes& minutes) {
  const auto place = std::find_if(total.begin(), total.end(), [&](const DiscSizeMinutes& one) {
    return one.disc_diameter_mm >= minutes.disc_diameter_mm;
  });
  if (place == total.end() || place->disc_diameter_mm != minutes.disc_diameter_mm) {
    total.insert(place, minutes);
    return;
  }
  place->discs += minutes.discs;
  place->sanding_minutes += minutes.sanding_minutes;
  place->looking_minutes += minutes.looking_minutes;
  place->disc_change_minutes += minutes.disc_change_minutes;
}

void add(LabourMinutes& total, const LabourMinutes& minutes) {
  for_each_field<LabourMinutes>([&](const auto& field) { total.*field.member += minutes.*field.member; });
}

std::vector<DiscLife> disc_lives(const std::vector<Step>& steps, const std::vector<HistoryRow>& rows,
                                 double hardness_mpa) {
  require_one_row_a_step(steps, rows);
  std::vector<DiscLife> lives;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (rows[i].passes == 0) continue;
    DiscLife life{rows[i].name, rows[i].discs, {}};
    const double minutes = disc_life_minutes(steps[i], hardness_mpa);
    if (std::isfinite(minutes)) life.change_after_minutes = minutes;
    lives.push_back(life);
  }
  return lives;
}

}  // namespace libtexture
