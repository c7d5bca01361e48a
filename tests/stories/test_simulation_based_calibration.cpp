// Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari and Gelman 2018): a truth is drawn from
// what is believed before, a test spot and a panel are worked in it, the spot is learned from and the panel
// predicted. Where the whole chain is right, the rank of the truth among the predicted worlds is uniform. The
// truth is worked by simulate(), with random numbers of its own.
#include <Eigen/Dense>
#include <algorithm>
#include <boost/math/distributions/beta.hpp>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/random/gamma_distribution.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/uniform_01.hpp>
#include <cmath>
#include <map>

#include "catch.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/calibrate.hpp"
#include "libtexture/plan/panel_cells.hpp"
#include "libtexture/plan/sample_risk.hpp"
#include "libtexture/plan/test_spot.hpp"
#include "libtexture/process/disc_contact.hpp"
#include "libtexture/process/pace.hpp"
#include "libtexture/process/sequence.hpp"
#include "libtexture/surface/ideal_cut.hpp"
#include "libtexture/tool/dose.hpp"

using namespace libtexture;

namespace {

constexpr int worlds = 199;  // so that ranks fall into 200 places
// Passes are made four times as quickly as is usual, and four of them looked at as one: simulate() then tells
// closely where between two looks a rule was met.
constexpr int thin = 4;
constexpr double spot_m2 = 0.04, film_sd_percent = 8, film_length_mm = 300, clear_sd_um = 9;
const std::vector<Place> reading_places{{0, 0}, {700, 0}, {0, 500}, {700, 500}, {350, 250}};

class Dice {
 public:
  explicit Dice(int seed) : generator_(static_cast<std::uint64_t>(seed)) {}
  double normal() { return normal_(generator_); }
  double uniform() { return uniform_(generator_); }
  /// Log-normal of mean 1.
  double force(double cv) {
    const double sd = std::sqrt(std::log1p(cv * cv));
    return std::exp(sd * normal() - sd * sd / 2);
  }
  /// Log-normal of median 1, a part of it common.
  double kin(double sd, double share, double common) {
    return std::exp(sd * (std::sqrt(share) * common + std::sqrt(1 - share) * normal()));
  }
  double dwell(double cv) { return boost::random::gamma_distribution<>(1 / (cv * cv), cv * cv)(generator_); }

 private:
  boost::random::mt19937_64 generator_;
  boost::random::normal_distribution<> normal_;
  boost::random::uniform_01<> uniform_;
};

Step step_with(const std::string& abrasive, int passes, const Stop& stop) {
  Step step;
  step.name = abrasive;
  step.abrasive = shipped_catalogue().abrasives.at(abrasive);
  step.backing = shipped_catalogue().backings.at("film on firm interface");
  step.motion = shipped_catalogue().motions.at("150 mm light");
  step.motion.feed_mm_per_s *= thin;
  step.passes = thin * passes;
  step.look_every_passes = thin * 2;
  step.stop = stop;
  return step;
}

Job job_before() {
  Job job;
  job.patch = {32, 32, 0.5};
  job.panel = {{.name = "lid", .area_m2 = 0.35}};
  job.coating = {.kind = PaintKind::repaint, .clear_um = 60, .clear_uncertainty_um = clear_sd_um};
  job.coating.gauge = {.uncertainty_um = 1.0, .gain_percent = 1.0};
  job.texture.bands = {{.wavelength_mm = 2.5, .rms_um = .7}};
  job.target.rms_um = .2;
  job.sequence = {
      {"two steps",
       {step_with("P2000 film", 60, {.rms_um = .15}), step_with("P3000 film", 40, {.clear_owed_um = .1})}}};
  job.uncertainty.samples = worlds;
  return job;
}

/// One world, drawn as docs/physics.md (risk) says that worlds are.
struct Truth {
  double person = 1, hardness = 1, scale = 1;
  std::vector<Step> steps = {};                         ///< as they are, but for the force of the day
  std::vector<double> depth = {}, cap = {}, wear = {};  ///< factors
};

Truth draw_truth(const Job& job, Dice& dice) {
  const Uncertainty& u = job.uncertainty;
  Truth truth;
  truth.person = dice.force(job.sequence[0].step[0].motion.force_cv);
  truth.hardness = std::exp(u.hardness_log_sd * dice.normal());
  truth.scale = std::exp(scale_log_sd(job.texture) * dice.normal());
  const double family = dice.normal(), size = u.size_exponent_sd * dice.normal(), depth = dice.normal(),
               cap = dice.normal(), loading = dice.normal();
  const double stiffness = std::exp(job.sequence[0].step[0].backing.stiffness_log_sd * dice.normal());
  for (Step step : job.sequence[0].step) {
    Abrasive& abrasive = step.abrasive;
    truth.wear.push_back(dice.kin(abrasive.wear_rate_log_sd, abrasive.wear_rate_family_share, family) *
                         std::exp(size * log_size(abrasive)));
    truth.depth.push_back(dice.kin(u.groove_depth_log_sd, u.clear_share, depth));
    truth.cap.push_back(dice.kin(u.groove_cap_log_sd, u.clear_share, cap));
    abrasive.wear_rate_mm3_per_n_m *= truth.wear.back();
    abrasive.worn_wear_rate_mm3_per_n_m *= truth.wear.back();
    abrasive.groove_depth_um = reference_groove_depth_um(abrasive) * truth.depth.back();
    abrasive.groove_depth_cap *= truth.cap.back();
    abrasive.loading_um *= dice.kin(u.loading_log_sd, u.clear_share, loading);
    step.backing.stiffness_factor *= stiffness;
    truth.steps.push_back(step);
  }
  return truth;
}

/// A step as the person works it one time.
Step worked(const Truth& truth, std::size_t i, const Job& job, Dice& dice) {
  Step step = truth.steps[i];
  step.motion.force_n *= truth.person * dice.force(job.uncertainty.force_within_cv);
  return step;
}

TestSpot make_spot(const Truth& truth, const Job& job, Dice& dice) {
  TestSpot spot;
  spot.passes = thin * 8;
  spot.area_m2 = spot_m2;
  const double hardness_mpa = job.coating.hardness_mpa * truth.hardness;
  const Step first = worked(truth, 0, job, dice), next = worked(truth, 1, job, dice);
  const auto removed_um = [&](const Step& step, int passes) {
    DiscUse use;
    double sum_um = 0;
    for (int pass = 0; pass < passes; ++pass) sum_um += removal_of_pass_um(step, spot_m2, hardness_mpa, use);
    return sum_um;
  };
  const double gone_um = removed_um(first, spot.passes), gain = 1 + .01 * dice.normal();
  for (int i = 0; i < 12; ++i) {
    spot.before_um.push_back(250 + dice.normal());
    spot.after_um.push_back(250 - gain * gone_um + dice.normal());
  }
  // Marks: the deepest of them, a cap's depth less the visible one, are gone with the clear about them.
  const double depth_um = groove_depth_um(first, pressure_kpa(first.motion), 1, hardness_mpa);
  const double owed_um =
      std::max(1e-3, depth_um * first.abrasive.groove_depth_cap - job.scratch_limits.visible_depth_um);
  const double goes_at_um = owed_um * std::exp(spot.marks_log_sd * dice.normal());
  int gone = thin;
  while (gone < thin * 20 && removed_um(next, gone) < goes_at_um) gone += thin;
  const bool is_gone = gone < thin * 20;
  if (is_gone) spot.marks_gone_passes = gone;
  spot.marks_left_passes = is_gone ? gone - thin : gone;
  return spot;
}

using Figures = std::map<std::string, double>;

/// What the panel's film is, and what a gauge reads of it: a normal field about a mean, correlated over
/// film_length_mm; clear is a share of it.
struct PanelFilm {
  Panel panel;
  std::vector<double> clear_um;  ///< by cell
};

PanelFilm draw_film(const Job& job, Dice& dice) {
  PanelFilm film{job.panel[0], {}};
  for (const Place& place : reading_places)
    film.panel.readings.push_back({.x_mm = place.x_mm, .y_mm = place.y_mm, .total_um = 200});
  std::vector<Place> places = reading_places;
  const PanelCells cells = cells_of(film.panel);
  places.insert(places.end(), cells.places.begin(), cells.places.end());
  const auto n = static_cast<Eigen::Index>(places.size());
  Eigen::MatrixXd correlation(n, n);
  for (Eigen::Index i = 0; i < n; ++i)
    for (Eigen::Index j = 0; j < n; ++j) {
      const Place &a = places[static_cast<std::size_t>(i)], &b = places[static_cast<std::size_t>(j)];
      correlation(i, j) = std::exp(-std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) / film_length_mm);
    }
  const double mean_um = 170 + 60 * dice.uniform();
  Eigen::VectorXd field(n);
  for (Eigen::Index i = 0; i < n; ++i) field(i) = dice.normal();
  const Eigen::MatrixXd root = correlation.llt().matrixL();
  const Eigen::VectorXd total = (mean_um * (1 + film_sd_percent / 100 * (root * field).array())).matrix();
  double read_um = 0;
  for (std::size_t i = 0; i < reading_places.size(); ++i) {
    const double reading = total(static_cast<Eigen::Index>(i)) + dice.normal();
    film.panel.readings[i].total_um = reading;
    read_um += reading / static_cast<double>(reading_places.size());
  }
  // clear_um is over the mean of the readings: a share, known to so much.
  using Beta = boost::math::beta_distribution<>;
  const double share = *job.coating.clear_um / read_um, variance = std::pow(clear_sd_um / read_um, 2);
  const double drawn = boost::math::quantile(
      Beta(Beta::find_alpha(share, variance), Beta::find_beta(share, variance)), dice.uniform());
  for (Eigen::Index i = static_cast<Eigen::Index>(reading_places.size()); i < n; ++i)
    film.clear_um.push_back(drawn * total(i));
  return film;
}

/// The panel as it is worked in truth.
Figures work_panel(const Truth& truth, const Job& job, const HeightField& surface, const PanelFilm& film,
                   Dice& dice) {
  const std::vector<Step> steps{worked(truth, 0, job, dice), worked(truth, 1, job, dice)};
  const Coating coating{
      {{.name = "clear", .thickness_um = 60, .hardness_mpa = job.coating.hardness_mpa * truth.hardness}}};
  const HeightField start(surface.height_um() * truth.scale, surface.pixel_mm());
  const History history = simulate(start, coating, steps, {.area_m2 = film.panel.area_m2});
  Figures figures;
  const HistoryRow &first = history.steps[0], &end = history.steps[1];
  const double removed_um = history.removed_um();
  figures["removed"] = removed_um;
  figures["overshoot"] = first.overshoot_um;
  figures["levelling"] = first.removed_um - first.overshoot_um;
  figures["debt"] = end.removed_um;
  figures["rms"] = end.rms_um;
  figures["touched"] = first.touched_share;
  figures["minutes"] = first.minutes + end.minutes;
  figures["discs"] = first.discs + end.discs;
  figures["efficiency"] = IdealCut(start).removal_um(end.rms_um) / removed_um;

  double variance_um2 = 0;
  for (std::size_t k = 0; k < steps.size(); ++k) {
    const double pass = disc_contact(steps[k], surface.grid(), std::nullopt).pass_cv;
    if (history.steps[k].passes > 0)
      variance_um2 +=
          std::pow(dose_cv(steps[k].motion, pass, history.steps[k].passes) * history.steps[k].removed_um, 2);
  }
  const double wavelength_mm = mean_wavelength_mm(surface);
  const double patch_m2 = std::pow(32 * .5e-3, 2);
  const PanelCells cells = cells_of(film.panel);
  double thinnest_um = HUGE_VAL, deepest_um = HUGE_VAL;
  for (const double clear_um : film.clear_um) {
    const double local_um = removed_um * dice.dwell(std::sqrt(variance_um2) / removed_um);
    const double deeper = deepest_valley_in_sd(cells.area_m2, wavelength_mm, -std::log(dice.uniform())) /
                          deepest_valley_in_sd(patch_m2, wavelength_mm);
    const double sunk_um = std::max(deeper * start.valley_depth_um() - local_um,
                                    deeper * history.surfaces.back().valley_depth_um());
    thinnest_um = std::min(thinnest_um, clear_um - local_um);
    deepest_um = std::min(deepest_um, clear_um - local_um - sunk_um);
  }
  figures["clear left"] = thinnest_um;
  figures["thinnest point"] = deepest_um;
  return figures;
}

double rank_of(const std::vector<double>& draws, double truth, Dice& dice) {
  double below = 0, equal = 0;
  for (const double draw : draws) {
    const bool is_equal = std::abs(draw - truth) < 1e-9;
    equal += is_equal;
    below += !is_equal && draw < truth;
  }
  return (below + dice.uniform() * (equal + 1)) / (static_cast<double>(draws.size()) + 1);
}

double rank_of(const Belief& belief, double truth) {
  return boost::math::cdf(boost::math::normal(), std::log(truth / belief.median) / belief.log_sd);
}

/// Ranks of one truth under what is believed of it.
Figures ranks_of_panel(int seed) {
  Dice dice(seed);
  Job job = job_before();
  job.seed = static_cast<std::uint64_t>(1000 + seed);  // worlds of its own
  const HeightField surface = starting_surface(job.texture, job.patch, 1);
  const Truth truth = draw_truth(job, dice);
  const PanelFilm film = draw_film(job, dice);
  job.panel = {film.panel};
  const TestSpot spot = make_spot(truth, job, dice);
  const TestSpotResult result = judge_test_spot(job, spot);
  const Figures figures = work_panel(truth, job, surface, film, dice);
  // The panel is planned by the readings alone: a look at marks ties groove depth to the next step's wear
  // rate, which a calibrated job drops (docs/physics.md, test spot).
  TestSpot unmarked = spot;
  unmarked.marks_gone_passes = unmarked.marks_left_passes = {};
  const Job taught = calibrate(job, unmarked).job;
  const RiskDraws draws = sample_risk(taught, surface, {{taught.sequence[0]}}).risks.front().draws.front();

  Figures ranks;
  const double hand = truth.person * std::pow(truth.hardness, -1.3);
  const double groove = std::pow(truth.person, .25) * std::pow(truth.hardness, -.5);
  const auto rate = [&](std::size_t i) {
    return job.sequence[0].step[i].abrasive.wear_rate_mm3_per_n_m * truth.wear[i] * hand;
  };
  ranks["wear rate"] = rank_of(result.after, rate(0));
  ranks["wear rate of kin"] = rank_of(result.others.at(0).after, rate(1));
  ranks["groove depth"] =
      rank_of(*result.groove_depth_after, *truth.steps[0].abrasive.groove_depth_um * truth.cap[0] * groove);
  const std::map<std::string, const std::vector<double>*> predicted{
      {"removed", &draws.removed_um},
      {"overshoot", &draws.overshoot_um},
      {"levelling", &draws.levelling_um},
      {"debt", &draws.debt_um},
      {"rms", &draws.rms_um},
      {"touched", &draws.touched_share},
      {"minutes", &draws.minutes},
      {"discs", &draws.discs},
      {"efficiency", &draws.levelling_efficiency},
      {"clear left", &draws.clear_left_um},
      {"thinnest point", &draws.clear_left_least_um}};
  for (const auto& [name, values] : predicted) ranks[name] = rank_of(*values, figures.at(name), dice);
  return ranks;
}

/// Ranks are counted in bins of equal probability; the chi-square of their counts exceeds its limit once in
/// 1000 cases for each figure where all is right (Pearson), once in 70 for any of 14 (Bonferroni).
void check_ranks(int panels, int bins) {
  std::vector<Figures> all(static_cast<std::size_t>(panels));
  parallel_for(panels, [&](int i) { all[static_cast<std::size_t>(i)] = ranks_of_panel(i + 1); });
  const double limit =
      boost::math::quantile(boost::math::complement(boost::math::chi_squared(bins - 1), .001));
  for (const auto& [name, first] : all.front()) {
    std::vector<double> counts(static_cast<std::size_t>(bins), 0.0);
    for (const Figures& ranks : all)
      ++counts[static_cast<std::size_t>(std::min(bins - 1, static_cast<int>(ranks.at(name) * bins)))];
    const double expected = static_cast<double>(panels) / bins;
    double chi_square = 0;
    for (const double count : counts) chi_square += (count - expected) * (count - expected) / expected;
    INFO(name << ": counts by bin " << Catch::Detail::stringify(counts));
    CHECK(chi_square < limit);
  }
}

}  // namespace

TEST_CASE("the truth ranks evenly among what is predicted of it: 60 panels after a test spot") {
  check_ranks(60, 6);
}

TEST_CASE("the truth ranks evenly among what is predicted of it: 500 panels after a test spot", "[.long]") {
  check_ranks(500, 20);
}
