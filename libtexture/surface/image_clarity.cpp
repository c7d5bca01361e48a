#include "libtexture/surface/image_clarity.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "libtexture/base/error.hpp"
#include "libtexture/surface/block_letters.hpp"

namespace libtexture {

namespace {

constexpr double radian_per_arcmin = std::numbers::pi / 180 / 60;
constexpr int bins_of_line =
    16384;  // of one line or gap: keeps a sinusoid's contrast, steep at its ends, to 3e-4
constexpr double last_series_term = 3;       // exp(-(3 pi)^2/2) is 5e-20
constexpr double least_series_ratio = 0.01;  // less loses nothing of a comb to 1e-16
constexpr std::int64_t bins_of_period = 2 * bins_of_line;
static_assert(std::has_single_bit(static_cast<unsigned>(bins_of_period)));
constexpr double acuity_exponent = 0.4;  // of contrast; docs/physics.md (53)

double letter_mm(double stroke_arcmin, double distance_m) {
  return distance_m * 1000 * std::tan(strokes_a_height * stroke_arcmin * radian_per_arcmin);
}

/// The greatest whole number that is no more; std::floor() is a call where the machine's own is not asked
/// for.
std::int64_t whole_of(double value) {
  const auto truncated = static_cast<std::int64_t>(value);
  return truncated - (static_cast<double>(truncated) > value ? 1 : 0);
}

/// A place's bin within the period, and how many periods lie before it.
std::size_t bin_of(std::int64_t place) {
  return static_cast<std::size_t>(place & (bins_of_period - 1));
}
double periods_before(std::int64_t place) {
  return static_cast<double>(place >> std::countr_zero(static_cast<unsigned>(bins_of_period)));
}

/// Share of the light in each of bins_of_period places of the comb's period.
std::vector<double> light_in_period(const Array2d& shift_mm, double comb_mm) {
  std::vector<double> light(bins_of_period);
  const double share = 1.0 / static_cast<double>(shift_mm.size());
  for (Eigen::Index i = 0; i < shift_mm.size(); ++i) {
    const double place = shift_mm.data()[i] / (2 * comb_mm) * bins_of_period;
    const std::int64_t whole = whole_of(place);
    const double past = place - static_cast<double>(whole);  // shared by the two nearest places
    light[bin_of(whole)] += share * (1 - past);
    light[bin_of(whole + 1)] += share * past;
  }
  return light;
}

/// Each place's mean over a window of a width about it; the values repeat.
std::vector<double> window_mean(const std::vector<double>& values, double width) {
  std::vector<double> sums(values.size() + 1);
  for (std::size_t i = 0; i < values.size(); ++i) sums[i + 1] = sums[i] + values[i];
  // The integral from 0 to a place that lies `past` a whole one.
  const auto integral = [&](std::int64_t whole, double past) {
    return periods_before(whole) * sums.back() + sums[bin_of(whole)] + past * values[bin_of(whole)];
  };
  const std::int64_t ahead = whole_of(width / 2), behind = whole_of(-width / 2);
  const double past_ahead = width / 2 - static_cast<double>(ahead),
               past_behind = -width / 2 - static_cast<double>(behind);
  std::vector<double> means(values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    const auto centre = static_cast<std::int64_t>(i);
    means[i] = (integral(centre + ahead, past_ahead) - integral(centre + behind, past_behind)) / width;
  }
  return means;
}

Array2d image_shift_mm(const Waves& waves, const ClarityOptions& options) {
  return 2 * options.distance_mm * waves.slope(options.direction);
}

MirroredLight light_of(const std::vector<GroovePopulation>& grooves, double angle_deg,
                       double lens_half_angle_deg) {
  return {specular_share(grooves, angle_deg), haze_share(grooves, angle_deg, 0, lens_half_angle_deg)};
}

/// What scattered light leaves of the contrast.
double unveiled_share(const ClarityOptions& options) {
  return light_of(options.grooves, options.angle_deg, options.lens_half_angle_deg).clarity_share();
}

}  // namespace

void ClarityOptions::validate() const {
  require_positive(comb_mm, "ClarityOptions", "comb_mm");
  require_positive(distance_mm, "ClarityOptions", "distance_mm");
  require(angle_deg >= 0 && angle_deg < 90, "ClarityOptions", "angle_deg", "must be >= 0 and < 90 degrees",
          angle_deg);
  require_not_negative(slit_mm, "ClarityOptions", "slit_mm");
  require_within(lens_half_angle_deg, 0, 90, "ClarityOptions", "lens_half_angle_deg");
}

MirroredLight mirrored_light(const std::vector<DepthLaw>& laws, double angle_deg) {
  MirroredLight mean{0, 0};
  for (const DepthLaw& law : laws) {
    const MirroredLight light = light_of(law.grooves, angle_deg, ClarityOptions{}.lens_half_angle_deg);
    mean.specular += law.area_share * light.specular;
    mean.veil += law.area_share * light.veil;
  }
  return mean;
}

double comb_contrast(const Array2d& shift_mm, double comb_mm, double slit_mm) {
  require_positive(comb_mm, "comb_contrast", "comb_mm");
  require_not_negative(slit_mm, "comb_contrast", "slit_mm");
  require(shift_mm.size() > 0, "comb_contrast", "shift_mm", "must hold at least one shift", "none");
  std::vector<double> light = light_in_period(shift_mm, comb_mm);
  const double slit = slit_mm / comb_mm * bins_of_line;
  if (slit > 1) light = window_mean(light, slit);
  const std::vector<double> through = window_mean(light, bins_of_line);
  const auto [least, most] = std::minmax_element(through.begin(), through.end());
  return (*most - *least) / (*most + *least);
}

double gaussian_comb_contrast(double shift_sd_mm, double comb_mm) {
  require_not_negative(shift_sd_mm, "gaussian_comb_contrast", "shift_sd_mm");
  require_positive(comb_mm, "gaussian_comb_contrast", "comb_mm");
  const double ratio = shift_sd_mm / comb_mm;
  if (ratio < least_series_ratio) return 1;
  double sum = 0;
  for (int k = 1; k * ratio < last_series_term; k += 2) {
    const double phase = std::numbers::pi * k * ratio;
    sum += (k % 4 == 1 ? 1 : -1) * std::exp(-phase * phase / 2) / k;
  }
  return 4 / std::numbers::pi * sum;
}

double image_clarity_percent(const HeightField& field, const ClarityOptions& options) {
  return image_clarity_percent(Waves(field), options);
}

double image_clarity_percent(const Waves& waves, const ClarityOptions& options) {
  options.validate();
  return 100 * comb_contrast(image_shift_mm(waves, options), options.comb_mm, options.slit_mm) *
         unveiled_share(options);
}

std::vector<double> image_clarity_by_comb_percent(const HeightField& field, const ClarityOptions& options) {
  return image_clarity_by_comb_percent(Waves(field), options);
}

std::vector<double> image_clarity_by_comb_percent(const Waves& waves, const ClarityOptions& options) {
  options.validate();
  const Array2d shift_mm = image_shift_mm(waves, options);
  const double unveiled = unveiled_share(options);
  std::vector<double> percent;
  for (const double comb_mm : standard_combs_mm)
    percent.push_back(100 * comb_contrast(shift_mm, comb_mm, options.slit_mm) * unveiled);
  return percent;
}

double image_wander_arcmin(const HeightField& field, Direction direction, double footprint_mm) {
  return 2 * rms_slope(field, direction, footprint_mm) / radian_per_arcmin;
}

double image_wander_arcmin(const Waves& waves, Direction direction, const SpotMean& spot) {
  return 2 * waves.rms_slope(direction, spot) / radian_per_arcmin;
}

double limit_of_sight_mm(double distance_m) {
  require_positive(distance_m, "limit_of_sight_mm", "distance_m");
  return letter_mm(1, distance_m);
}

std::optional<double> smallest_letter_mm(double wander_arcmin, double distance_m, double contrast) {
  require_not_negative(wander_arcmin, "smallest_letter_mm", "wander_arcmin");
  require_positive(distance_m, "smallest_letter_mm", "distance_m");
  require_within(contrast, 0, 1, "smallest_letter_mm", "contrast");
  if (contrast < least_read_contrast) return std::nullopt;
  return letter_mm(std::max(std::pow(contrast, -acuity_exponent), wander_arcmin), distance_m);
}

}  // namespace libtexture
