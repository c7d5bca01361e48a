#include "libtexture/plan/worlds.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <numeric>

#include "libtexture/base/error.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/plan/tool_spread.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/tool/crown_contact.hpp"

namespace libtexture {

namespace {

// A foam is pressed to at most this share of its plateau; beyond .9 it counts as collapsed.
constexpr double plateau_share = 0.89;

std::uint64_t key_of(std::uint64_t seed, const std::string& name) {
  std::uint64_t key = hash_key({seed});
  for (const char letter : name) key = hash_key({key, static_cast<unsigned char>(letter)});
  return key;
}

std::vector<double> lognormal(std::vector<double> normals, double log_sd) {
  for (double& value : normals) value = std::exp(log_sd * value);
  return normals;
}

/// Log-normal factors of kin: their common numbers by one name, their own by another.
std::vector<double> kin_factors(const Worlds& worlds, const KinSpread& spread, const std::string& common,
                                const std::string& own) {
  const int samples = static_cast<int>(worlds.person.size());
  std::vector<double> factors = stratified_normals(samples, worlds.seed, common);
  const std::vector<double> apart = stratified_normals(samples, worlds.seed, own);
  for (std::size_t i = 0; i < factors.size(); ++i)
    factors[i] = std::exp(spread.common_sd * factors[i] + spread.own_sd * apart[i]);
  return factors;
}

/// How hard each world's person presses, of mean 1.
std::vector<double> person_factors(const Worlds& worlds, const Motion& motion) {
  const double log_sd = log_sd_of_cv(motion.force_cv);
  std::vector<double> factors;
  for (const double person : worlds.person) factors.push_back(std::exp(log_sd * (person - log_sd / 2)));
  return factors;
}

std::vector<double> wear_factors(const Worlds& worlds, const Step& step, const std::vector<double>& persons) {
  const Abrasive& abrasive = step.abrasive;
  std::vector<double> factors =
      kin_factors(worlds, kin_spread(abrasive.wear_rate_log_sd, abrasive.wear_rate_family_share),
                  "wear of family " + family_key_of(abrasive), "wear of " + key_of(abrasive));
  for (std::size_t i = 0; i < factors.size(); ++i) {
    factors[i] *= std::exp(worlds.size_exponent[i] * log_size(abrasive));
    if (abrasive.wear_rate_of == FigureOf::this_hand)
      factors[i] /= persons[i] * std::pow(worlds.hardness_factor[i], hardness_wear_exponent);
  }
  return factors;
}

void draw_grooves(const Worlds& worlds, const Step& step, const std::vector<double>& persons,
                  StepWorlds& drawn) {
  const Abrasive& abrasive = step.abrasive;
  const Uncertainty& uncertainty = worlds.uncertainty;
  drawn.groove_factor = kin_factors(worlds, groove_depth_spread(abrasive, uncertainty), "groove depth",
                                    "groove depth of " + key_of(abrasive));
  drawn.cap_factor = kin_factors(worlds, kin_spread(uncertainty.groove_cap_log_sd, uncertainty.clear_share),
                                 "groove cap", "groove cap of " + key_of(abrasive));
  if (abrasive.groove_depth_of == FigureOf::any_hand) return;
  for (std::size_t i = 0; i < persons.size(); ++i)
    drawn.groove_factor[i] /= drawn.cap_factor[i] * std::pow(persons[i], abrasive.groove_pressure_exponent) *
                              std::pow(worlds.hardness_factor[i], hardness_groove_exponent);
}

// How deep or high the defect is, and where on the texture it lies.
void draw_defect(const Defect& defect, Worlds& worlds) {
  const int samples = static_cast<int>(worlds.person.size());
  const boost::math::normal normal;
  for (const double number : stratified_normals(samples, worlds.seed, "defect"))
    worlds.defect_um.push_back(size_at(defect, boost::math::cdf(normal, number)));
  for (const double number : stratified_normals(samples, worlds.seed, "place of the defect"))
    worlds.defect_rank.push_back(boost::math::cdf(normal, number));
}

double pressure_on_kpa(const Step& step, double force_n, const std::optional<Crown>& crown) {
  Motion motion = step.motion;
  motion.force_n = force_n;
  return crown_contact(motion, step.backing, crown).pressure_kpa;
}

double bearable_force_n(const Step& step, double force_n, const std::optional<Crown>& crown) {
  double least_kpa = HUGE_VAL;
  for (const Layer& layer : step.backing.layers)
    least_kpa = std::min(least_kpa, plateau_share * layer.plateau_kpa.value_or(HUGE_VAL));
  if (std::isinf(least_kpa) || pressure_on_kpa(step, force_n, crown) <= least_kpa) return force_n;
  double low = least_force_n, high = force_n;
  for (int halving = 0; halving < 50; ++halving) {
    const double middle = (low + high) / 2;
    (pressure_on_kpa(step, middle, crown) <= least_kpa ? low : high) = middle;
  }
  return low;
}

}  // namespace

std::vector<double> stratified_normals(int samples, std::uint64_t seed, const std::string& name) {
  require(samples >= 1, "Worlds", "samples", "must be >= 1", samples);
  const std::uint64_t key = key_of(seed, name);
  std::vector<int> layer(static_cast<std::size_t>(samples));
  std::iota(layer.begin(), layer.end(), 0);
  for (int i = samples - 1; i > 0; --i) {
    const double u = uniform_at({key, 1, static_cast<std::uint64_t>(i)});
    std::swap(layer[static_cast<std::size_t>(i)], layer[static_cast<std::size_t>(u * (i + 1))]);
  }
  const boost::math::normal normal;
  std::vector<double> values;
  for (int i = 0; i < samples; ++i) {
    const double within = uniform_at({key, 2, static_cast<std::uint64_t>(i)});
    const double p = (layer[static_cast<std::size_t>(i)] + within) / samples;
    values.push_back(boost::math::quantile(normal, std::clamp(p, 1e-12, 1 - 1e-12)));
  }
  return values;
}

Worlds worlds_of(const Job& job) {
  job.uncertainty.validate();
  Worlds worlds;
  worlds.uncertainty = job.uncertainty;
  worlds.seed = job.seed;
  const int samples = job.uncertainty.samples;
  worlds.texture_scale =
      lognormal(stratified_normals(samples, job.seed, "texture"), scale_log_sd(job.texture));
  worlds.hardness_factor =
      lognormal(stratified_normals(samples, job.seed, "hardness"), job.uncertainty.hardness_log_sd);
  worlds.person = stratified_normals(samples, job.seed, "person");
  worlds.size_exponent = stratified_normals(samples, job.seed, "size exponent");
  for (double& exponent : worlds.size_exponent) exponent *= job.uncertainty.size_exponent_sd;
  if (job.target.defect) draw_defect(*job.target.defect, worlds);
  return worlds;
}

StepWorlds step_worlds(const Worlds& worlds, const Step& step, int place) {
  const int samples = static_cast<int>(worlds.person.size());
  const Uncertainty& uncertainty = worlds.uncertainty;
  const std::vector<double> persons = person_factors(worlds, step.motion);
  StepWorlds drawn;
  drawn.wear_factor = wear_factors(worlds, step, persons);
  draw_grooves(worlds, step, persons, drawn);
  drawn.loading_factor = kin_factors(worlds, kin_spread(uncertainty.loading_log_sd, uncertainty.clear_share),
                                     "loading", "loading of " + key_of(step.abrasive));
  drawn.stiffness_factor =
      lognormal(stratified_normals(samples, worlds.seed, "stiffness of " + key_of(step.backing)),
                step.backing.stiffness_log_sd);
  if (!worlds.defect_um.empty())
    drawn.defect_dwell =
        stratified_normals(samples, worlds.seed, "dwell at the defect, step " + std::to_string(place));
  const double within = log_sd_of_cv(uncertainty.force_within_cv);
  drawn.force_factor = stratified_normals(samples, worlds.seed, "force of step " + std::to_string(place));
  for (std::size_t i = 0; i < drawn.force_factor.size(); ++i)
    drawn.force_factor[i] = persons[i] * std::exp(within * (drawn.force_factor[i] - within / 2));
  return drawn;
}

Step in_world(const Step& step, const StepWorlds& drawn, std::size_t world,
              const std::optional<Crown>& crown) {
  Step scaled = step;
  // Far tails of what an abrasive is believed to do stay within what an abrasive can do.
  const double fresh = step.abrasive.wear_rate_mm3_per_n_m;
  const double wear =
      std::clamp(drawn.wear_factor[world] * fresh, least_wear_mm3_per_n_m, most_wear_mm3_per_n_m) / fresh;
  scaled.abrasive.wear_rate_mm3_per_n_m *= wear;
  scaled.abrasive.worn_wear_rate_mm3_per_n_m *= wear;
  scaled.abrasive.groove_depth_um =
      std::clamp(drawn.groove_factor[world] * reference_groove_depth_um(step.abrasive), least_groove_depth_um,
                 most_groove_depth_um);
  scaled.abrasive.groove_depth_cap = std::clamp(drawn.cap_factor[world] * step.abrasive.groove_depth_cap,
                                                least_groove_depth_cap, most_groove_depth_cap);
  scaled.abrasive.loading_um =
      std::clamp(drawn.loading_factor[world] * step.abrasive.loading_um, least_loading_um, most_loading_um);
  scaled.backing.stiffness_factor *= drawn.stiffness_factor[world];
  const double force_n =
      std::clamp(drawn.force_factor[world] * step.motion.force_n, least_force_n, most_force_n);
  scaled.motion.force_n = bearable_force_n(scaled, force_n, crown);
  return scaled;
}

}  // namespace libtexture
