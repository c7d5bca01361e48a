#include "libtexture/process/scratches.hpp"

#include <algorithm>
#include <boost/math/constants/constants.hpp>
#include <cmath>
#include <map>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/surface/specular_share.hpp"

namespace libtexture {
namespace {

constexpr double reference_pressure_kpa = 1.4;   // the pressure that groove depths are stated at
constexpr double reference_hardness_mpa = 200;   // and the hardness of the clear
constexpr double stray_depth_in_depths = 3;      // mean depth of stray marks beyond the cap; estimate
constexpr double hard_backing_factor = 2;        // stray marks of a backing without a soft layer; estimate
constexpr double soft_interface_pa_per_m = 6e7;  // between pads with (2e7) and without (2e8) one; estimate
constexpr double coverage_levels = 32;           // pixels are alike within this part of the finished coverage
constexpr double depth_resolution_um = 1e-9;     // far below the scatter of any groove
constexpr double mm2_per_cm2 = 100;
constexpr double cm2_per_dm2 = 100;
constexpr double mm_per_um = 1e-3;

double cap_um(const GrooveFigures& figures) {
  return figures.depth_cap * figures.depth_um;
}

// Grooves per cm2 for each unit of coverage, docs/physics.md (36).
double grooves_per_cm2_and_coverage(const GrooveFigures& figures) {
  const double half_width = std::tan(figures.half_angle_deg * boost::math::constants::degree<double>());
  return mm2_per_cm2 / (2 * figures.depth_um * mm_per_um * half_width * figures.groove_length_mm);
}

// What the steps after population `index` have removed at each pixel.
Array2d removed_since(const Scratches& scratches, std::size_t index) {
  const Array2d& own = scratches.populations[index].removal_um;
  Array2d since = Array2d::Zero(own.rows(), own.cols());
  for (std::size_t later = index + 1; later < scratches.populations.size(); ++later)
    since += scratches.populations[later].removal_um;
  return since;
}

Array2d coverage_of(const Scratches& scratches, std::size_t index, const Array2d& since_um) {
  const auto& [figures, removal_um] = scratches.populations[index];
  const bool is_newest = index + 1 == scratches.populations.size();
  const Array2d cut_before = is_newest ? Array2d::Ones(since_um.rows(), since_um.cols())
                                       : Array2d((-since_um / figures.depth_um).exp());
  return figures.coverage * (cut_before - (-(since_um + removal_um) / figures.depth_um).exp());
}

// A population as it is now: what all figures of it rest on.
struct State {
  const ScratchPopulation& population;
  Array2d since_um;  // what later steps have removed
  Array2d coverage;
};

std::vector<State> states_of(const Scratches& scratches) {
  std::vector<State> states;
  states.reserve(scratches.populations.size());
  for (std::size_t index = 0; index < scratches.populations.size(); ++index) {
    Array2d since_um = removed_since(scratches, index);
    Array2d coverage = coverage_of(scratches, index, since_um);
    states.push_back({scratches.populations[index], std::move(since_um), std::move(coverage)});
  }
  return states;
}

// The grooves of a population where any are left: pixels, or neighbours of one reach together.
struct Survivors {
  struct Pixel {
    double per_cm2;   // grooves per cm2, as a part of the patch's mean
    double reach_um;  // depth of the cap below the present top
  };
  double depth_um;
  std::vector<Pixel> pixels;
  double unbounded_per_cm2 =
      0;  // grooves whose cap is known to lie below any depth that is still asked about

  double per_cm2_deeper_than(double z_um) const {
    double reaching = unbounded_per_cm2;
    for (const Pixel& pixel : pixels) reaching += pixel.reach_um > z_um ? pixel.per_cm2 : 0.0;
    return reaching * std::exp(-z_um / depth_um);
  }

  // What is left to compare where only depths within (low, high) are asked about.
  Survivors narrowed(double low_um, double high_um) const {
    Survivors left{depth_um, {}, unbounded_per_cm2};
    for (const Pixel& pixel : pixels)
      if (pixel.reach_um > high_um)
        left.unbounded_per_cm2 += pixel.per_cm2;
      else if (pixel.reach_um > low_um)
        left.pixels.push_back(pixel);
    return left;
  }
};

Survivors survivors_of(const State& state) {
  const GrooveFigures& figures = state.population.figures;
  const double per_coverage =
      grooves_per_cm2_and_coverage(figures) / static_cast<double>(state.coverage.size());
  Survivors survivors{figures.depth_um, {}};
  for (Eigen::Index i = 0; i < state.coverage.size(); ++i) {
    const double per_cm2 = state.coverage.data()[i] * per_coverage;
    const double reach_um = cap_um(figures) - state.since_um.data()[i];
    if (per_cm2 <= 0 || reach_um <= 0) continue;
    // The newest population reaches equally deep at every pixel: one stands for all.
    if (!survivors.pixels.empty() && survivors.pixels.back().reach_um == reach_um)
      survivors.pixels.back().per_cm2 += per_cm2;
    else
      survivors.pixels.push_back({per_cm2, reach_um});
  }
  return survivors;
}

std::vector<Survivors> survivors_of(const std::vector<State>& states) {
  std::vector<Survivors> all;
  for (const State& state : states) all.push_back(survivors_of(state));
  return all;
}

// Those that a question is about.
using Asked = std::vector<const Survivors*>;

Asked asked_of(const std::vector<Survivors>& all, const Scratches& scratches, Marks marks) {
  Asked asked;
  for (std::size_t index = 0; index < all.size(); ++index)
    if (marks == Marks::all ||
        scratches.populations[index].figures.step != scratches.populations.back().figures.step)
      asked.push_back(&all[index]);
  return asked;
}

double count_per_cm2(const Asked& populations, double depth_um) {
  double count = 0;
  for (const Survivors* population : populations) count += population->per_cm2_deeper_than(depth_um);
  return count;
}

// The count steps down at each pixel's cap, so plain bisection.
double depth_exceeded_um(const Asked& populations, double per_cm2) {
  if (count_per_cm2(populations, 0) <= per_cm2) return 0;
  double low_um = 0;
  double high_um = 0;
  for (const Survivors* population : populations)
    for (const auto& pixel : population->pixels) high_um = std::max(high_um, pixel.reach_um);
  std::vector<Survivors> left;
  Asked asked = populations;
  while (high_um - low_um > depth_resolution_um) {
    const double middle_um = (low_um + high_um) / 2;
    (count_per_cm2(asked, middle_um) > per_cm2 ? low_um : high_um) = middle_um;
    std::vector<Survivors> narrowed;
    for (const Survivors* population : asked) narrowed.push_back(population->narrowed(low_um, high_um));
    left = std::move(narrowed);
    asked.clear();
    for (const Survivors& population : left) asked.push_back(&population);
  }
  return high_um;
}

double clear_owed_um(const Asked& populations, const ScratchLimits& limits) {
  return std::max(0.0, depth_exceeded_um(populations, limits.marks_per_cm2) - limits.visible_depth_um);
}

// int_0^y P(a stray mark is deeper than t) dt, mean over the pixels: all reach the cap, the rest is
// exponential.
double mean_stray_reach_um(const GrooveFigures& figures, const Array2d& y_um) {
  if (y_um.maxCoeff() <= cap_um(figures)) return y_um.mean();
  const double beyond_um = stray_depth_in_depths * figures.depth_um;
  const Array2d past_cap_um = (y_um - cap_um(figures)).max(0.0);
  return (y_um.min(cap_um(figures)) + beyond_um * (1 - (-past_cap_um / beyond_um).exp())).mean();
}

double stray_marks_of(const std::vector<State>& states, double depth_um, double area_dm2) {
  double marks_per_dm2 = 0;
  for (const auto& [population, since_um, coverage] : states) {
    const auto& [figures, removal_um] = population;
    if (figures.stray_marks_per_dm2_um == 0) continue;
    const Array2d first_um = depth_um + since_um;
    marks_per_dm2 += figures.stray_marks_per_dm2_um * (mean_stray_reach_um(figures, first_um + removal_um) -
                                                       mean_stray_reach_um(figures, first_um));
  }
  return marks_per_dm2 * area_dm2;
}

// Pixels of like coverages, with the law of each such part.
struct Parts {
  std::vector<DepthLaw> laws;
  std::vector<std::size_t> of_pixel;  // which of the laws; empty without scratches
};

Parts parts_of(const std::vector<State>& states) {
  if (states.empty()) return {{DepthLaw{}}, {}};
  struct Part {
    std::vector<double> coverage_sum;
    std::vector<Eigen::Index> pixels;
  };
  std::map<std::string, Part> by_levels;  // of each coverage; ordered, so that sums repeat
  std::string key(states.size(), '\0');
  auto found = by_levels.end();  // neighbours are often alike
  const Eigen::Index pixels = states.front().coverage.size();
  for (Eigen::Index pixel = 0; pixel < pixels; ++pixel) {
    for (std::size_t index = 0; index < states.size(); ++index) {
      const double finished_share =
          states[index].coverage.data()[pixel] / states[index].population.figures.coverage;
      key[index] = static_cast<char>(std::ceil(coverage_levels * finished_share));
    }
    if (found == by_levels.end() || found->first != key) {
      found = by_levels.try_emplace(key).first;
      found->second.coverage_sum.resize(states.size());
    }
    Part& part = found->second;
    for (std::size_t index = 0; index < states.size(); ++index)
      part.coverage_sum[index] += states[index].coverage.data()[pixel];
    part.pixels.push_back(pixel);
  }
  Parts parts{{}, std::vector<std::size_t>(static_cast<std::size_t>(pixels))};
  for (const auto& [levels, part] : by_levels) {
    const auto count = static_cast<double>(part.pixels.size());
    for (const Eigen::Index pixel : part.pixels) parts.of_pixel[pixel] = parts.laws.size();
    DepthLaw law{{}, count / static_cast<double>(pixels)};
    for (std::size_t index = 0; index < states.size(); ++index)
      if (part.coverage_sum[index] > 0)
        law.grooves.push_back({states[index].population.figures.depth_um, part.coverage_sum[index] / count});
    parts.laws.push_back(law);
  }
  return parts;
}

}  // namespace

void GrooveFigures::validate() const {
  require(step >= 0, "GrooveFigures", "step", "must be >= 0", step);
  require_positive(depth_um, "GrooveFigures", "depth_um");
  require_positive(coverage, "GrooveFigures", "coverage");
  require_positive(depth_cap, "GrooveFigures", "depth_cap");
  require(half_angle_deg > 0 && half_angle_deg < 90, "GrooveFigures", "half_angle_deg",
          "must be > 0 and < 90", half_angle_deg);
  require_positive(groove_length_mm, "GrooveFigures", "groove_length_mm");
  require_not_negative(stray_marks_per_dm2_um, "GrooveFigures", "stray_marks_per_dm2_um");
}

void ScratchLimits::validate() const {
  require_not_negative(visible_depth_um, "ScratchLimits", "visible_depth_um");
  require_positive(marks_per_cm2, "ScratchLimits", "marks_per_cm2");
}

double groove_depth_um(const Abrasive& abrasive, Wetness wetness, double pressure_kpa, double contact_share,
                       double hardness_mpa) {
  abrasive.validate();
  require_positive(pressure_kpa, "groove_depth_um", "pressure_kpa");
  require(contact_share > 0 && contact_share <= 1, "groove_depth_um", "contact_share", "must be > 0 and <= 1",
          contact_share);
  require_positive(hardness_mpa, "groove_depth_um", "hardness_mpa");
  const double contact_pressure_kpa = pressure_kpa / contact_share;
  return reference_groove_depth_um(abrasive) * wetness_effect(abrasive, wetness).groove_depth *
         std::pow(contact_pressure_kpa / reference_pressure_kpa, abrasive.groove_pressure_exponent) *
         std::pow(hardness_mpa / reference_hardness_mpa, hardness_groove_exponent);
}

double groove_length_mm(const Motion& motion) {
  motion.validate();
  return motion.orbit_mm > 0 ? motion.orbit_mm : motion.disc_diameter_mm;
}

double stray_marks_factor(const Backing& backing) {
  return stiffness_pa_per_m(backing, 0) < soft_interface_pa_per_m ? 1 : hard_backing_factor;
}

GrooveFigures groove_figures(int step, const Abrasive& abrasive, const Motion& motion, double depth_um) {
  const GrooveFigures figures{step,
                              depth_um,
                              abrasive.groove_coverage,
                              abrasive.groove_depth_cap,
                              abrasive.groove_half_angle_deg,
                              groove_length_mm(motion),
                              abrasive.stray_marks_per_dm2_um};
  figures.validate();
  return figures;
}

void scratch(Scratches& scratches, const GrooveFigures& figures, const Array2d& removal_um) {
  figures.validate();
  require(removal_um.size() > 0, "scratch", "removal_um", "must hold at least one pixel", 0.0);
  require_not_negative(removal_um.minCoeff(), "scratch", "removal_um");
  require(removal_um.allFinite(), "scratch", "removal_um", "must be finite", removal_um.maxCoeff());
  std::vector<ScratchPopulation>& populations = scratches.populations;
  if (!populations.empty()) {
    const Array2d& before = populations.back().removal_um;
    require(before.rows() == removal_um.rows() && before.cols() == removal_um.cols(), "scratch", "removal_um",
            "must have the shape of the earlier maps",
            std::to_string(removal_um.rows()) + " x " + std::to_string(removal_um.cols()));
  }
  if (!populations.empty() && populations.back().figures == figures)
    populations.back().removal_um += removal_um;
  else
    populations.push_back({figures, removal_um});
}

Array2d coverage_map(const Scratches& scratches, int index) {
  require(index >= 0 && index < static_cast<int>(scratches.populations.size()), "coverage_map", "index",
          "must name a population", index);
  const auto place = static_cast<std::size_t>(index);
  return coverage_of(scratches, place, removed_since(scratches, place));
}

double surviving_share(double removal_um, double depth_um, double dwell_cv) {
  require_not_negative(removal_um, "surviving_share", "removal_um");
  require_positive(depth_um, "surviving_share", "depth_um");
  require_not_negative(dwell_cv, "surviving_share", "dwell_cv");
  const double depths = removal_um / depth_um;
  const double variance = dwell_cv * dwell_cv;
  return variance * depths < 1e-12 ? std::exp(-depths) : std::exp(-std::log1p(variance * depths) / variance);
}

std::vector<DepthLaw> depth_laws(const Scratches& scratches) {
  return parts_of(states_of(scratches)).laws;
}

Array2d specular_share_map(const Scratches& scratches, double angle_deg) {
  const Parts parts = parts_of(states_of(scratches));
  std::vector<double> shares;
  for (const DepthLaw& law : parts.laws) shares.push_back(specular_share(law.grooves, angle_deg));
  if (scratches.populations.empty()) return Array2d::Constant(1, 1, shares.front());
  Array2d map(scratches.populations.front().removal_um.rows(),
              scratches.populations.front().removal_um.cols());
  for (Eigen::Index pixel = 0; pixel < map.size(); ++pixel) map.data()[pixel] = shares[parts.of_pixel[pixel]];
  return map;
}

double grooves_per_cm2(const Scratches& scratches, double depth_um, Marks marks) {
  require_not_negative(depth_um, "grooves_per_cm2", "depth_um");
  const std::vector<Survivors> survivors = survivors_of(states_of(scratches));
  return count_per_cm2(asked_of(survivors, scratches, marks), depth_um);
}

double depth_exceeded_um(const Scratches& scratches, double grooves_per_cm2, Marks marks) {
  require_positive(grooves_per_cm2, "depth_exceeded_um", "grooves_per_cm2");
  const std::vector<Survivors> survivors = survivors_of(states_of(scratches));
  return depth_exceeded_um(asked_of(survivors, scratches, marks), grooves_per_cm2);
}

double deepest_groove_um(const Scratches& scratches) {
  return depth_exceeded_um(scratches, 1 / cm2_per_dm2);
}

double clear_owed_um(const Scratches& scratches, Marks marks, const ScratchLimits& limits) {
  limits.validate();
  const std::vector<Survivors> survivors = survivors_of(states_of(scratches));
  return clear_owed_um(asked_of(survivors, scratches, marks), limits);
}

std::vector<double> clear_owed_by_population_um(const Scratches& scratches, const ScratchLimits& limits) {
  limits.validate();
  std::vector<double> owed_um;
  for (const Survivors& survivors : survivors_of(states_of(scratches)))
    owed_um.push_back(clear_owed_um({&survivors}, limits));
  return owed_um;
}

double stray_marks(const Scratches& scratches, double depth_um, double area_dm2) {
  require_not_negative(depth_um, "stray_marks", "depth_um");
  require_not_negative(area_dm2, "stray_marks", "area_dm2");
  return stray_marks_of(states_of(scratches), depth_um, area_dm2);
}

double stray_mark_probability(const Scratches& scratches, double depth_um, double area_dm2) {
  return -std::expm1(-stray_marks(scratches, depth_um, area_dm2));
}

ScratchSummary summary_of(const Scratches& scratches, const ScratchLimits& limits) {
  limits.validate();
  const std::vector<State> states = states_of(scratches);
  const std::vector<Survivors> survivors = survivors_of(states);
  const Asked all = asked_of(survivors, scratches, Marks::all),
              earlier = asked_of(survivors, scratches, Marks::earlier);
  return {.laws = parts_of(states).laws,
          .deepest_um = depth_exceeded_um(all, 1 / cm2_per_dm2),
          .marks_per_cm2 = count_per_cm2(all, limits.visible_depth_um),
          .stray_marks_per_dm2 = stray_marks_of(states, limits.visible_depth_um, 1),
          .clear_owed_um = clear_owed_um(all, limits),
          .earlier_clear_owed_um = clear_owed_um(earlier, limits)};
}

}  // namespace libtexture
