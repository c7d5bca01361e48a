#include "libtexture/process/sequence.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/process/levelling_curve.hpp"
#include "libtexture/process/pace.hpp"
#include "libtexture/surface/gloss.hpp"
#include "libtexture/surface/image_clarity.hpp"
#include "libtexture/surface/waves.hpp"

namespace libtexture {
namespace {

constexpr double percentile = 0.95;
constexpr double levelling_work = 0.6;  // share of a look's time, for progress; the rest describes its passes
constexpr Eigen::Index most_pixels_of_marks = 65536;  // that a plan reads its scratches from
constexpr std::size_t half_mm_comb = 2;               // of standard_combs_mm
static_assert(standard_combs_mm[half_mm_comb] == ClarityOptions{}.comb_mm);

double percentile_of(const Array2d& values, double share) {
  std::vector<double> sorted(values.data(), values.data() + values.size());
  const auto place =
      sorted.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(sorted.size() - 1));
  std::nth_element(sorted.begin(), place, sorted.end());
  return *place;
}

// Margin by which a row meets the rule: >= 0 = met; the texture before the sequence had start_rms_um.
double margin_of(const Stop& stop, const HistoryRow& row, const Waves& waves, double owed_um,
                 double start_rms_um) {
  std::vector<double> margins;
  if (stop.touched_share) margins.push_back(row.touched_share - *stop.touched_share);
  if (stop.removed_um) margins.push_back(row.removed_um - *stop.removed_um);
  if (stop.defect_um) margins.push_back(row.removed_um - *stop.defect_um);
  if (stop.clear_owed_um) margins.push_back(*stop.clear_owed_um - owed_um);
  if (stop.rms_share) margins.push_back(*stop.rms_share * start_rms_um - row.rms_um);
  if (stop.rms_um) {
    const double rms =
        stop.band_mm ? waves.band_rms_um({stop.band_mm->begin(), stop.band_mm->end()}).front() : row.rms_um;
    margins.push_back(*stop.rms_um - rms);
  }
  if (margins.empty()) return -HUGE_VAL;
  const auto [least, most] = std::minmax_element(margins.begin(), margins.end());
  return stop.when == StopWhen::all ? *least : *most;
}

// Scratches on every second row and column, and again, as long as enough pixels are left: removal maps are
// far smoother than that.
Scratches thinned(const Scratches& scratches) {
  Scratches some = scratches;
  for (ScratchPopulation& population : some.populations) {
    Array2d& map = population.removal_um;
    while (map.size() > most_pixels_of_marks && std::min(map.rows(), map.cols()) > 1) {
      const auto every_second = [](Eigen::Index count) { return Eigen::seqN(0, (count + 1) / 2, 2); };
      map = Array2d(map(every_second(map.rows()), every_second(map.cols())));
    }
  }
  return some;
}

// What rows and stop rules are read from: made once a pass.
struct Seen {
  Waves waves;
  ScratchSummary marks;
};

std::optional<Crown> crown_of(const SimulateOptions& options) {
  if (!options.crown_radius_m) return std::nullopt;
  return Crown{*options.crown_radius_m, options.sheet};
}

// The surfaces after the passes of a step, look by look.
class StepLevelling {
 public:
  StepLevelling(const HeightField& start, const Step& step, const DiscContact& contact,
                const SimulateOptions& options)
      : contact_(contact), options_(options), grain_um_(grain_height_um(step, contact.pressure_kpa)) {
    if (!options.rms_tolerance_share) return;
    const CurveOptions asked{.rms_tolerance_um = rms_tolerance_um(start, *options.rms_tolerance_share),
                             .is_touch_asked = step.stop.touched_share.has_value(),
                             .disc_diameter_mm = contact.footprint_mm,
                             .grain_um = grain_um_};
    curve_.emplace(start, contact.backing, contact.pressure_kpa, asked,
                   [this](double) { report(look_, share_done_); });
  }
  StepLevelling(const StepLevelling&) = delete;
  StepLevelling& operator=(const StepLevelling&) = delete;

  // at_um: removals from `now` on.
  std::vector<CurvePoint> look(const HeightField& now, const std::vector<double>& at_um,
                               const Progress& look) {
    std::vector<CurvePoint> points;
    if (curve_) {
      look_ = look;
      for (const double um : at_um) {
        share_done_ = um / at_um.back();
        points.push_back(curve_->at(removed_um_ + um));
        report(look_, share_done_);
      }
      removed_um_ += at_um.back();
      pairs_ = curve_->transform_pairs();
      return points;
    }
    Levelled levelled = level(now, contact_.backing, contact_.pressure_kpa,
                              {.removal_um = at_um.back(),
                               .report_at_um = at_um,
                               .amplitude_tolerance_um = options_.amplitude_tolerance_um,
                               .disc_diameter_mm = contact_.footprint_mm,
                               .grain_um = grain_um_},
                              look);
    for (std::size_t k = 0; k < at_um.size(); ++k)
      points.push_back({std::move(levelled.surfaces[k]), levelled.contact_share[k]});
    pairs_ += levelled.transform_pairs;
    return points;
  }

  int transform_pairs() const { return pairs_; }

 private:
  const DiscContact& contact_;
  const SimulateOptions& options_;
  const double grain_um_;
  std::optional<LevellingCurve> curve_;
  Progress look_;
  double share_done_ = 0, removed_um_ = 0;
  int pairs_ = 0;
};

class Simulation {
 public:
  Simulation(const HeightField& surface, const Coating& coating, const SimulateOptions& options)
      : coating_(coating),
        options_(options),
        crown_(crown_of(options)),
        surface_(surface),
        pupil_spot_(pupil_spot(options.viewer, surface.grid())),
        history_{.start = {},
                 .passes = {},
                 .steps = {},
                 .band_edges_mm = options.band_edges_mm,
                 .before = surface,
                 .surfaces = {},
                 .scratches = {},
                 .warnings = {}} {
    history_.start = row_of(surface, seen_in(surface), surface, surface, {}, 0);
    history_.start.name = "start";
  }

  // `place`: of the step in the sequence, from 0.
  void work(const Step& step, int place, const Progress& progress) {
    const DiscContact contact = disc_contact(step, surface_.grid(), crown_, &history_.warnings);
    const HeightField before = surface_;
    DiscUse use;
    double removed = 0;
    const auto share_made = [&](int passes) { return static_cast<double>(passes) / step.passes; };
    const Seen first = seen_in(surface_);
    HistoryRow row = row_of(surface_, first, before, history_.before, step, 0);
    report(progress, 0);
    double margin = margin_of(step.stop, row, first.waves, first.marks.clear_owed_um, history_.start.rms_um);
    if (margin >= 0)
      history_.warnings.push_back({.kind = StatementKind::step_not_worked, .step = title_of(step)});
    StepLevelling levelling(surface_, step, contact, options_);
    for (int made = 0; made < step.passes && margin < 0;) {
      std::vector<double> at;
      for (int k = 0; k < step.look_every_passes && made + k < step.passes; ++k) {
        const double pass = removal_of_pass_um(step, options_.area_m2, coating_.clear().hardness_mpa, use);
        require(pass >= least_removal_um, title_of(step), "pass_removal_um",
                "must be at least .001: more force, speed or wear rate", pass);
        at.push_back((at.empty() ? 0 : at.back()) + pass);
      }
      const Progress look =
          part_of(progress, share_made(made), share_made(made + static_cast<int>(at.size())));
      const std::vector<CurvePoint> made_at = levelling.look(surface_, at, part_of(look, 0, levelling_work));
      const Progress describing = part_of(look, levelling_work, 1);
      double overshoot = 0;
      for (std::size_t k = 0; k < at.size(); ++k) {
        const HeightField& now = made_at[k].surface;
        const GrooveFigures figures = figures_of(step, place, contact.pressure_kpa, made_at[k].contact_share);
        scratch(scratches_, figures, (surface_.height_um() - now.height_um()).max(0.0));
        surface_ = now;
        const Seen seen = seen_in(now);
        row = row_of(now, seen, before, history_.before, step, figures.depth_um * touched_in_depths);
        const Progress of_pass = nth_part(describing, k, at.size());
        report(of_pass, 0.5);
        row.passes = ++made;
        row.discs = step.abrasive.carrier == Carrier::compound ? 0 : use.discs;
        row.minutes = made * pass_minutes(step.motion, options_.area_m2);
        const double last = std::exchange(
            margin,
            margin_of(step.stop, row, seen.waves, seen.marks.earlier_clear_owed_um, history_.start.rms_um));
        const double pass = row.removed_um - std::exchange(removed, row.removed_um);
        // Met within this pass: the part of it after the moment (margin taken as linear), then every whole
        // pass to the look.
        if (margin >= 0) overshoot += last >= 0 ? pass : pass * margin / (margin - last);
        row.overshoot_um = overshoot;
        history_.passes.push_back(row);
        report(of_pass, 1);
      }
    }
    history_.transform_pairs += levelling.transform_pairs();
    history_.steps.push_back(row);
    history_.surfaces.push_back(surface_);
    history_.scratches.push_back(scratches_);
  }

  History take() { return std::move(history_); }

 private:
  GrooveFigures figures_of(const Step& step, int place, double pressure_kpa, double contact_share) const {
    const double depth_um = groove_depth_um(step, pressure_kpa, contact_share, coating_.clear().hardness_mpa);
    GrooveFigures figures = groove_figures(place, step.abrasive, step.motion, depth_um);
    figures.stray_marks_per_dm2_um *= stray_marks_factor(step.backing);
    return figures;
  }

  Seen seen_in(const HeightField& now) const {
    const Scratches marks = options_.rms_tolerance_share ? thinned(scratches_) : scratches_;
    return {Waves(now), summary_of(marks, options_.scratch_limits)};
  }

  HistoryRow row_of(const HeightField& now, const Seen& seen, const HeightField& step_start,
                    const HeightField& start, const Step& step, double touched_beyond_um) const {
    const Array2d removed = step_start.height_um() - now.height_um();
    const double clear_um = coating_.clear().thickness_um, start_um = start.mean_um();
    const auto& [waves, marks] = seen;
    HistoryRow row;
    row.name = title_of(step);
    row.removed_um = removed.mean();
    row.removed_p95_um = percentile_of(removed, percentile);
    row.removed_max_um = removed.maxCoeff();
    row.total_removed_um = start_um - now.mean_um();
    row.rms_um = now.rms_um();
    row.peak_to_valley_um = now.peak_to_valley_um();
    row.band_rms_um = waves.band_rms_um(options_.band_edges_mm);
    row.touched_share = (removed > touched_beyond_um).cast<double>().mean();
    row.clear_left_mean_um = clear_um - row.total_removed_um;
    row.clear_left_least_um = clear_um + now.height_um().minCoeff() - start_um;
    row.scratch_rms_nm = depth_rms_nm(marks.laws);
    row.deepest_scratch_um = marks.deepest_um;
    row.marks_per_cm2 = marks.marks_per_cm2;
    row.clear_owed_um = marks.clear_owed_um;
    row.stray_marks_per_dm2 = marks.stray_marks_per_dm2;
    row.gloss_20_gu =
        gloss_of_share_gu(20, options_.refractive_index, mirrored_light(marks.laws, 20).specular);
    const MirroredLight light = mirrored_light(marks.laws);
    row.lamp_visibility = light.contrast();
    row.image_clarity_by_comb_percent = image_clarity_by_comb_percent(waves);
    for (double& percent : row.image_clarity_by_comb_percent) percent *= light.clarity_share();
    row.image_clarity_percent = row.image_clarity_by_comb_percent[half_mm_comb];
    row.image_wander_arcmin = seen_wander_arcmin(waves, options_.viewer, pupil_spot_);
    row.smallest_letter_mm =
        seen_letter_mm(seen_smear_arcmin(waves, options_.viewer), options_.viewer, row.lamp_visibility);
    return row;
  }

  const Coating& coating_;
  const SimulateOptions& options_;
  const std::optional<Crown> crown_;
  HeightField surface_;
  const SpotMean pupil_spot_;
  Scratches scratches_;
  History history_;
};

}  // namespace

void SimulateOptions::validate() const {
  require_positive(area_m2, "SimulateOptions", "area_m2");
  if (crown_radius_m) require_positive(*crown_radius_m, "SimulateOptions", "crown_radius_m");
  sheet.validate();
  require_positive(amplitude_tolerance_um, "SimulateOptions", "amplitude_tolerance_um");
  if (rms_tolerance_share) require_positive(*rms_tolerance_share, "SimulateOptions", "rms_tolerance_share");
  require(refractive_index > 1 && refractive_index <= 4, "SimulateOptions", "refractive_index",
          "must be > 1 and <= 4", refractive_index);
  require(band_edges_mm.size() >= 2 &&
              std::is_sorted(band_edges_mm.begin(), band_edges_mm.end(), std::less_equal<>()),
          "SimulateOptions", "band_edges_mm", "must be at least two, rising",
          static_cast<double>(band_edges_mm.size()));
  scratch_limits.validate();
  viewer.validate();
}

History simulate(const HeightField& surface, const Coating& coating, const std::vector<Step>& steps,
                 const SimulateOptions& options, const Progress& progress) {
  coating.validate();
  options.validate();
  require(!steps.empty(), "simulate", "steps", "must hold at least one step", "none");
  for (const Step& step : steps) step.validate();
  Simulation simulation(surface, coating, options);
  const std::vector<Step> titled = with_titles(steps);
  for (std::size_t i = 0; i < titled.size(); ++i)
    working_at("step " + titled[i].name + ": ", [&] {
      simulation.work(titled[i], static_cast<int>(i), nth_part(progress, i, titled.size()));
    });
  report(progress, 1);
  return simulation.take();
}

}  // namespace libtexture
