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
constexpr double hardness_exponent = -0.5;       // estimate: abrasion of polymers does not go as 1/H
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
Array2d removed_since(const Scratches& scratches, int index) {
  const Array2d& own = scratches.populations[index].removal_um;
  Array2d since = Array2d::Zero(own.rows(), own.cols());
  for (std::size_t later = index + 1; later < scratches.populations.size(); ++later)
    since += scratches.populations[later].removal_um;
  return since;
}

// The grooves of a population at the pixels where any are left.
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

  // From here on only depths within (low, high) are asked about: pixels that need no more comparing go.
  void narrow(double low_um, double high_um) {
    for (const Pixel& pixel : pixels)
      if (pixel.reach_um > high_um) unbounded_per_cm2 += pixel.per_cm2;
    const auto is_settled = [&](const Pixel& p) { return p.reach_um <= low_um || p.reach_um > high_um; };
    pixels.erase(std::remove_if(pixels.begin(), pixels.end(), is_settled), pixels.end());
  }
};

Survivors survivors_of(const Scratches& scratches, int index) {
  const GrooveFigures& figures = scratches.populations[index].figures;
  const Array2d reach_um = cap_um(figures) - removed_since(scratches, index);
  const Array2d coverage = coverage_map(scratches, index);
  const double per_coverage = grooves_per_cm2_and_coverage(figures) / static_cast<double>(coverage.size());
  Survivors survivors{figures.depth_um, {}};
  for (Eigen::Index i = 0; i < coverage.size(); ++i)
    if (coverage.data()[i] > 0 && reach_um.data()[i] > 0)
      survivors.pixels.push_back({coverage.data()[i] * per_coverage, reach_um.data()[i]});
  return survivors;
}

std::vector<Survivors> survivors_of(const Scratches& scratches, Marks marks) {
  std::vector<Survivors> all;
  for (std::size_t index = 0; index < scratches.populations.size(); ++index) {
    const bool is_last_step =
        scratches.populations[index].figures.step == scratches.populations.back().figures.step;
    if (marks == Marks::all || !is_last_step) all.push_back(survivors_of(scratches, static_cast<int>(index)));
  }
  return all;
}

double count_per_cm2(const std::vector<Survivors>& populations, double depth_um) {
  double count = 0;
  for (const Survivors& population : populations) count += population.per_cm2_deeper_than(depth_um);
  return count;
}

// The count steps down at each pixel's cap, so plain bisection.
double depth_exceeded_um(std::vector<Survivors> populations, double per_cm2) {
  if (count_per_cm2(populations, 0) <= per_cm2) return 0;
  double low_um = 0;
  double high_um = 0;
  for (const Survivors& population : populations)
    for (const auto& pixel : population.pixels) high_um = std::max(high_um, pixel.reach_um);
  while (high_um - low_um > depth_resolution_um) {
    const double middle_um = (low_um + high_um) / 2;
    (count_per_cm2(populations, middle_um) > per_cm2 ? low_um : high_um) = middle_um;
    for (Survivors& population : populations) population.narrow(low_um, high_um);
  }
  return high_um;
}

double clear_owed_um(std::vector<Survivors> populations, const ScratchLimits& limits) {
  return std::max(0.0,
                  depth_exceeded_um(std::move(populations), limits.marks_per_cm2) - limits.visible_depth_um);
}

// int_0^y P(a stray mark is deeper than t) dt: all reach the cap, the rest is exponential.
double stray_reach_um(const GrooveFigures& figures, double y) {
  const double beyond_um = stray_depth_in_depths * figures.depth_um;
  const double cap = cap_um(figures);
  return y < cap ? y : cap - beyond_um * std::expm1(-(y - cap) / beyond_um);
}

// Pixels of like coverages, with the law of each such part.
struct Parts {
  std::vector<DepthLaw> laws;
  std::vector<std::size_t> of_pixel;  // which of the laws; empty without scratches
};

Parts parts_of(const Scratches& scratches) {
  const std::vector<ScratchPopulation>& populations = scratches.populations;
  if (populations.empty()) return {{DepthLaw{}}, {}};
  std::vector<Array2d> coverages;
  for (std::size_t index = 0; index < populations.size(); ++index)
    coverages.push_back(coverage_map(scratches, static_cast<int>(index)));
  struct Part {
    std::vector<double> coverage_sum;
    std::vector<Eigen::Index> pixels;
  };
  std::map<std::string, Part> by_levels;  // of each coverage; ordered, so that sums repeat
  std::string key(populations.size(), '\0');
  const Eigen::Index pixels = coverages.front().size();
  for (Eigen::Index pixel = 0; pixel < pixels; ++pixel) {
    for (std::size_t index = 0; index < populations.size(); ++index) {
      const double finished_share = coverages[index].data()[pixel] / populations[index].figures.coverage;
      key[index] = static_cast<char>(std::ceil(coverage_levels * finished_share));
    }
    Part& part = by_levels[key];
    part.coverage_sum.resize(populations.size());
    for (std::size_t index = 0; index < populations.size(); ++index)
      part.coverage_sum[index] += coverages[index].data()[pixel];
    part.pixels.push_back(pixel);
  }
  Parts parts{{}, std::vector<std::size_t>(static_cast<std::size_t>(pixels))};
  for (const auto& [levels, part] : by_levels) {
    const auto count = static_cast<double>(part.pixels.size());
    for (const Eigen::Index pixel : part.pixels) parts.of_pixel[pixel] = parts.laws.size();
    DepthLaw law{{}, count / static_cast<double>(pixels)};
    for (std::size_t index = 0; index < populations.size(); ++index)
      if (part.coverage_sum[index] > 0)
        law.grooves.push_back({populations[index].figures.depth_um, part.coverage_sum[index] / count});
    parts.laws.push_back(law);
  }
  return parts;
}

}  // namespace

void GrooveFigures::validate() const {
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
         std::pow(hardness_mpa / reference_hardness_mpa, hardness_exponent);
}

double groove_length_mm(const Motion& motion) {
  motion.validate();
  return motion.orbit_mm > 0 ? motion.orbit_mm : motion.disc_diameter_mm;
}

double stray_marks_factor(const Backing& backing) {
  return stiffness_pa_per_m(backing, 0) < soft_interface_pa_per_m ? 1 : hard_backing_factor;
}

GrooveFigures groove_figures(const std::string& step, const Abrasive& abrasive, const Motion& motion,
                             double depth_um) {
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
  const auto& [figures, removal_um] = scratches.populations[index];
  const Array2d since_um = removed_since(scratches, index);
  return figures.coverage *
         ((-since_um / figures.depth_um).exp() - (-(since_um + removal_um) / figures.depth_um).exp());
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
  return parts_of(scratches).laws;
}

Array2d specular_share_map(const Scratches& scratches, double angle_deg) {
  const Parts parts = parts_of(scratches);
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
  return count_per_cm2(survivors_of(scratches, marks), depth_um);
}

double depth_exceeded_um(const Scratches& scratches, double grooves_per_cm2, Marks marks) {
  require_positive(grooves_per_cm2, "depth_exceeded_um", "grooves_per_cm2");
  return depth_exceeded_um(survivors_of(scratches, marks), grooves_per_cm2);
}

double deepest_groove_um(const Scratches& scratches) {
  return depth_exceeded_um(scratches, 1 / cm2_per_dm2);
}

double clear_owed_um(const Scratches& scratches, Marks marks, const ScratchLimits& limits) {
  limits.validate();
  return clear_owed_um(survivors_of(scratches, marks), limits);
}

std::vector<double> clear_owed_by_population_um(const Scratches& scratches, const ScratchLimits& limits) {
  limits.validate();
  std::vector<double> owed_um;
  for (std::size_t index = 0; index < scratches.populations.size(); ++index)
    owed_um.push_back(clear_owed_um({survivors_of(scratches, static_cast<int>(index))}, limits));
  return owed_um;
}

double stray_marks(const Scratches& scratches, double depth_um, double area_dm2) {
  require_not_negative(depth_um, "stray_marks", "depth_um");
  require_not_negative(area_dm2, "stray_marks", "area_dm2");
  double marks_per_dm2 = 0;
  for (std::size_t index = 0; index < scratches.populations.size(); ++index) {
    const auto& [figures, removal_um] = scratches.populations[index];
    const Array2d first_um = depth_um + removed_since(scratches, static_cast<int>(index));
    double reach_um = 0;
    for (Eigen::Index pixel = 0; pixel < first_um.size(); ++pixel)
      reach_um += stray_reach_um(figures, first_um.data()[pixel] + removal_um.data()[pixel]) -
                  stray_reach_um(figures, first_um.data()[pixel]);
    marks_per_dm2 += figures.stray_marks_per_dm2_um * reach_um / static_cast<double>(first_um.size());
  }
  return marks_per_dm2 * area_dm2;
}

double stray_mark_probability(const Scratches& scratches, double depth_um, double area_dm2) {
  return -std::expm1(-stray_marks(scratches, depth_um, area_dm2));
}

}  // namespace libtexture
