#include "libtexture/plan/target_stop.hpp"

#include <algorithm>

#include "libtexture/plan/bump_curve.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/level_cost.hpp"
#include "libtexture/plan/node_patch.hpp"
#include "libtexture/plan/reached.hpp"
#include "libtexture/plan/seen_target.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/identity.hpp"

namespace libtexture {

namespace {

bool stops_by_texture(const Step& step) {
  return step.stop.touched_share || step.stop.rms_um || step.stop.rms_share;
}

// What levelling costs on the panel that needs most.
LevelCost greatest_cost(const Job& job, const Step& step, const HeightField& surface,
                        const Progress& progress) {
  LevelCost greatest;
  for (std::size_t p = 0; p < job.panel.size(); ++p) {
    const Panel& panel = job.panel[p];
    const double clear_um = film_anywhere(film_map(panel, job.coating)).clear_um;
    const LevelCost cost =
        level_cost(surface, job.target, step, {crown_of(panel), job.coating.hardness_mpa, clear_um},
                   nth_part(progress, p, job.panel.size()));
    if (p == 0 || cost.removal_um > greatest.removal_um) greatest = cost;
  }
  return greatest;
}

}  // namespace

Stop target_stop(const Target& target) {
  Stop stop{.rms_um = target.rms_um, .band_mm = target.band_mm};
  if (target.preset == TargetPreset::full) stop.touched_share = full_touched_share;
  if (target.preset == TargetPreset::full) stop.rms_share = full_rms_share;
  if (target.preset == TargetPreset::partial) stop.rms_share = partial_rms_share;
  if (target.defect && !is_followed(*target.defect)) stop.defect_um = size_um(*target.defect);
  const int parts = int{stop.rms_um.has_value()} + stop.touched_share.has_value() +
                    stop.rms_share.has_value() + stop.defect_um.has_value();
  if (parts > 1) stop.when = StopWhen::all;
  return stop;
}

bool needs_curve(const Target& target) {
  return asks_sight(target) || (target.defect && is_followed(*target.defect));
}

bool has_no_rule(const Stop& stop) {
  Stop none;
  none.when = stop.when;
  return stop == none;
}

Sequence worked_sequence(const Job& job, const Sequence& sequence, const HeightField& surface,
                         const Progress& progress) {
  Sequence worked = sequence;
  Step& first = worked.step.front();
  if (first.abrasive.carrier == Carrier::compound || !has_no_rule(first.stop)) return worked;
  if (!needs_curve(job.target)) {
    first.stop = target_stop(job.target);
    return worked;
  }
  const LevelCost cost = working_at("sequence " + sequence.name + ", step " + title_of(first) + ": ",
                                    [&] { return greatest_cost(job, first, node_patch(surface), progress); });
  if (cost.is_reached || !asks_sight(job.target)) first.stop = stop_at(job.target, cost);
  return worked;
}

std::vector<Statement> stop_warnings(const Target& target, const Sequence& sequence) {
  if (needs_curve(target)) return {};
  const Stop wanted = target_stop(target);
  const Step* other = nullptr;
  for (const Step& step : sequence.step) {
    if (!stops_by_texture(step)) continue;
    if (step.stop == wanted) return {};
    other = &step;
  }
  if (!other) return {};
  return {{.kind = StatementKind::stop_is_not_target, .step = title_of(*other)}};
}

}  // namespace libtexture
