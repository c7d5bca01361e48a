#include "libtexture/process/edge.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "libtexture/base/units.hpp"
#include "libtexture/numerics/pressed_profile.hpp"

namespace libtexture {
namespace {

using Values = AlignedVector<double>;

constexpr double infinite = std::numeric_limits<double>::infinity();
// Pixels of a row; the next smooth number is one that a grid may have.
constexpr double most_cols = 16000;
// The stretch over which line loads and areas are reported.
constexpr double near_edge_m = 1.5e-3;
// Pixels in the edge radius and in the skin's bending length, and in the disc's radius.
constexpr double pixels_per_length = 20;
constexpr double least_pixels_per_radius = 100;
// Places of the disc that stand for evenly spread lanes; at a body line, where the contact follows the disc,
// the first stretch is this many pixels.
constexpr double lanes_per_radius = 10;
constexpr double first_stretch_pixels = 5;
// Local give under the mean pressure where nothing is worn: far below a pass.
constexpr double static_give_m = 1e-8;

// The chord's integral from the disc's middle to distance x.
double chord_integral(double x, double radius) {
  x = std::clamp(x, -radius, radius);
  return x * std::sqrt(radius * radius - x * x) + radius * radius * std::asin(x / radius);
}

// How much of a pixel about x lies within the stretch near the edge [m].
double length_near_edge(double x, double pixel) {
  return std::clamp(near_edge_m + pixel / 2 - std::abs(x), 0.0, pixel);
}

// The section of the panel before wear. An edge: flat to x = 0, a quarter circle beyond. A body line: a
// circular arc about x = 0 between two even flanks, in the frame of its bisector.
class Section {
 public:
  explicit Section(const EdgeOptions& options)
      : shape_(options.shape),
        radius_(options.radius_mm * metre_per_mm),
        half_turn_(options.turn_deg / 2 * std::numbers::pi / 180) {}
  double height(double x) const {
    const bool is_edge = shape_ == EdgeShape::edge;
    const double out = is_edge ? -x : std::abs(x);
    if (out <= 0) return 0;
    if (is_edge && out >= radius_) return -infinite;
    if (!is_edge && out > reach()) return height(reach()) - (out - reach()) * std::tan(half_turn_);
    return std::sqrt(radius_ * radius_ - out * out) - radius_;
  }
  double reach() const { return shape_ == EdgeShape::edge ? radius_ : radius_ * std::sin(half_turn_); }
  double flank_slope() const { return shape_ == EdgeShape::edge ? 0 : -std::tan(half_turn_); }

 private:
  EdgeShape shape_;
  double radius_, half_turn_;
};

// A place of the disc, and the lanes that it stands for.
struct Place {
  std::ptrdiff_t centre;  // of the disc, in pixels from x = 0
  double from, to;        // stretch of lane centres, 1 lane per step_over each; from = to: one lane
  PlateLine plate = {};   // as found last, the start of the next search
};

int smooth_even(double least) {
  for (int n = 2 * static_cast<int>(std::ceil(least / 2));; n += 2) {
    int rest = n;
    for (const int prime : {2, 3, 5})
      while (rest % prime == 0) rest /= prime;
    if (rest == 1) return n;
  }
}

double pixel_of(const Backing& backing, const EdgeOptions& options, double disc_radius) {
  double largest =
      std::min(options.radius_mm * metre_per_mm / pixels_per_length, disc_radius / least_pixels_per_radius);
  if (backing.skin)
    largest = std::min(
        largest, std::pow(4 * bending_stiffness_n_m(*backing.skin) / stiffness_pa_per_m(backing, 0), 0.25) /
                     pixels_per_length);
  if (!options.pixel_mm) return largest;
  require(*options.pixel_mm * metre_per_mm <= largest, "EdgeOptions", "pixel_mm",
          "must be <= " + to_text(largest / metre_per_mm) +
              ", a twentieth of the edge radius and of the skin's bending length",
          *options.pixel_mm);
  return *options.pixel_mm * metre_per_mm;
}

// A disc on the section, for any place of it.
class Disc {
 public:
  Disc(const Backing& given, const Motion& motion, const EdgeOptions& options)
      : section(options),
        radius(motion.disc_diameter_mm / 2 * metre_per_mm),
        force(motion.force_n),
        pressure(force / disc_area_m2(motion)),
        is_tilting_(options.is_tilting || options.shape == EdgeShape::body_line) {
    const Backing backing = at_working_pressure(given, pressure / pascal_per_kpa);
    pixel = pixel_of(backing, options, radius);
    const double least_cols = 2 * options.padding_radii * radius / pixel;
    require(least_cols <= most_cols, "EdgeOptions", "pixel_mm", "must be larger: a row may have 16000 pixels",
            pixel / metre_per_mm);
    cols = smooth_even(least_cols);
    const Grid grid{.rows = 1, .cols = cols, .pixel_mm = pixel / metre_per_mm};
    Values stiffness;
    for (const double q : wave_numbers_per_m(grid)) stiffness.push_back(stiffness_pa_per_m(backing, q));
    profile_.emplace(cols, pixel, stiffness);
    for (int i = 0; i < cols; ++i) {
      const double x = (i - 0.5 * cols) * pixel;
      chord.push_back((chord_integral(x + pixel, radius) - chord_integral(x, radius)) / pixel);
    }
    row.resize(static_cast<std::size_t>(cols));
  }

  // Pressure over `row`, the heights around the disc.
  void press(double compliance, PlateLine& plate) {
    const PressedReport report = profile_->solve(
        row, chord, compliance, {.force = force, .is_tilting = is_tilting_}, plate, pressures);
    transform_pairs += report.transform_pairs;
    residual = std::max(residual, report.residual);
    balance = std::max(balance, report.balance);
  }
  double x_of(std::ptrdiff_t place) const { return (static_cast<double>(place) + 0.5) * pixel; }

  Section section;
  double radius, force, pressure, pixel = 0;
  int cols = 0;
  Values chord, row, pressures;
  int transform_pairs = 0;
  double residual = 0, balance = 0;

 private:
  std::optional<PressedProfile> profile_;
  bool is_tilting_;
};

// The section under wear: heights of pixels `first` and on, x = 0 between pixels -1 and 0.
class WornSection {
 public:
  WornSection(const Motion& motion, const EdgeOptions& options, Disc& disc)
      : disc_(disc),
        is_mirrored_(options.shape == EdgeShape::body_line),
        step_over_(motion.step_over_mm * metre_per_mm) {
    place_lanes(options);
    last_ = places_.front().centre + disc.cols / 2;
    first_ = is_mirrored_ ? -last_ : places_.back().centre - disc.cols / 2;
    for (std::ptrdiff_t k = first_; k < last_; ++k) height_.push_back(disc.section.height(disc.x_of(k)));
    removal_.assign(height_.size(), 0.0);
    weigh_lanes();
  }

  // One pass that takes `removal` [m] off the flat. All lanes meet the section as the pass finds it; the
  // pressures are those that remain when the whole pass has worn it (implicit), which keeps long passes
  // stable.
  void wear(double removal, const Progress& progress) {
    const double per_force = removal * step_over_ / disc_.force;  // wear rate x speed/feed
    const double compliance = per_force * most_chord_;
    Values worn(height_.size(), 0.0);
    PlateLine plate{0, disc_.section.flank_slope()};
    for (std::size_t j = 0; j < places_.size(); ++j) {
      report(progress, static_cast<double>(j) / static_cast<double>(places_.size()));
      Place& place = places_[j];
      const std::ptrdiff_t start = place.centre - disc_.cols / 2 - first_;
      std::copy_n(height_.begin() + start, disc_.cols, disc_.row.begin());
      if (has_plates_) plate = place.plate;
      disc_.press(compliance, plate);
      place.plate = plate;
      for (int i = 0; i < disc_.cols; ++i)
        worn[start + i] += per_force * lane_chord(place, start + i + first_) * disc_.pressures[i];
    }
    has_plates_ = true;
    if (is_mirrored_)
      for (std::size_t k = 0, m = worn.size() - 1; k < m; ++k, --m) worn[k] = worn[m] = worn[k] + worn[m];
    for (std::size_t k = 0; k < worn.size(); ++k) {
      if (x_of(k) > flat_from_) worn[k] = removal;
      if (is_mirrored_ && x_of(k) < -flat_from_) worn[k] = removal;
      height_[k] -= worn[k];
      removal_[k] += worn[k];
    }
  }

  void describe(EdgeProfile& result) const {
    double area = 0;
    for (std::size_t k = 0; k < removal_.size(); ++k) {
      const double x = x_of(k);
      area += removal_[k] * length_near_edge(x, disc_.pixel);
      if (std::isinf(height_[k]) || x > flat_from_ || (is_mirrored_ && x < 0)) continue;
      result.distance_mm.push_back(x / metre_per_mm);
      result.removal_um.push_back(removal_[k] / metre_per_um);
    }
    result.removed_area_mm2 = area / (metre_per_mm * metre_per_mm);
    result.peak_removal_um = *std::max_element(result.removal_um.begin(), result.removal_um.end());
  }

 private:
  double x_of(std::size_t k) const { return disc_.x_of(static_cast<std::ptrdiff_t>(k) + first_); }

  // From the flat inwards to the edge. At an edge one lane follows it; those beyond differ from pass to pass,
  // so they spread evenly. A body line is crossed anywhere; its other side is the mirror image.
  void place_lanes(const EdgeOptions& options) {
    const double a = disc_.radius;
    const double innermost = is_mirrored_ ? 0 : options.overhang == Overhang::none ? a : a / 2;
    const double begin = is_mirrored_ ? 0 : innermost + step_over_ / 2;
    flat_from_ = is_mirrored_ ? disc_.section.reach() + 2 * a : begin + a;
    const double coarse = a / lanes_per_radius;
    double stretch = is_mirrored_ ? first_stretch_pixels * disc_.pixel : coarse;
    for (double from = begin, to; from < flat_from_ + a;
         from = to, stretch = std::min(coarse, 1.2 * stretch)) {
      to = from + stretch;
      places_.push_back({std::lround((from + to) / 2 / disc_.pixel), from, to});
    }
    std::reverse(places_.begin(), places_.end());
    if (!is_mirrored_) places_.push_back({std::lround(innermost / disc_.pixel), innermost, innermost});
  }

  // Chord over a pixel, integrated over the lanes that a place stands for, in lanes x length.
  double lane_chord(const Place& place, std::ptrdiff_t k) const {
    const double x = disc_.x_of(k);
    if (place.from < place.to)
      return (chord_integral(x - place.from, disc_.radius) - chord_integral(x - place.to, disc_.radius)) /
             step_over_;
    const double half = disc_.pixel / 2;
    return (chord_integral(x - place.from + half, disc_.radius) -
            chord_integral(x - place.from - half, disc_.radius)) /
           disc_.pixel;
  }

  // The greatest sum of chords over any pixel: with it one local compliance suits all.
  void weigh_lanes() {
    for (std::ptrdiff_t k = first_; k < last_; ++k) {
      double sum = 0;
      for (const Place& place : places_)
        sum += lane_chord(place, k) + (is_mirrored_ ? lane_chord(place, -1 - k) : 0);
      most_chord_ = std::max(most_chord_, sum);
    }
  }

  Disc& disc_;
  bool is_mirrored_, has_plates_ = false;
  double step_over_, flat_from_ = 0, most_chord_ = 0;
  std::vector<Place> places_;
  std::ptrdiff_t first_ = 0, last_ = 0;
  Values height_, removal_;
};

void check(const Backing& backing, const Motion& motion, const EdgeOptions& options) {
  backing.validate();
  motion.validate();
  options.validate();
  require(backing.support == Support::layers || backing.support == Support::springs, "edge_profile",
          "backing.support", "must be layers or springs: the approach at an edge has no meaning otherwise",
          name_of(backing.support));
}

}  // namespace

void EdgeClear::validate() const {
  require_positive(clear_um, "EdgeClear", "clear_um");
  require(share_at_edge > 0 && share_at_edge <= 1, "EdgeClear", "share_at_edge", "must be > 0 and <= 1",
          share_at_edge);
  require_positive(taper_mm, "EdgeClear", "taper_mm");
  require_not_negative(clear_left_least_um, "EdgeClear", "clear_left_least_um");
  require_positive(removal_factor, "EdgeClear", "removal_factor");
}

void EdgeOptions::validate() const {
  require(removal_um > 0 && removal_um <= most_edge_removal_um, "EdgeOptions", "removal_um",
          "must be > 0 and <= 1000", removal_um);
  require_within(passes, 1, 1000, "EdgeOptions", "passes");
  require_positive(radius_mm, "EdgeOptions", "radius_mm");
  require(turn_deg > 0 && turn_deg <= 60, "EdgeOptions", "turn_deg", "must be > 0 and <= 60", turn_deg);
  if (clear) clear->validate();
  if (pixel_mm) require_positive(*pixel_mm, "EdgeOptions", "pixel_mm");
  require_within(padding_radii, 2, 4, "EdgeOptions", "padding_radii");
}

EdgePressure edge_pressure(const Backing& backing, const Motion& motion, const EdgeOptions& options,
                           double centre_mm) {
  check(backing, motion, options);
  require_not_negative(centre_mm, "edge_pressure", "centre_mm");
  Disc disc(backing, motion, options);
  const std::ptrdiff_t start = std::lround(centre_mm * metre_per_mm / disc.pixel) - disc.cols / 2;
  for (int i = 0; i < disc.cols; ++i) disc.row[i] = disc.section.height(disc.x_of(start + i));
  const bool is_on_flank = centre_mm * metre_per_mm > disc.section.reach();
  PlateLine plate{0, is_on_flank ? disc.section.flank_slope() : 0};
  disc.press(static_give_m / disc.pressure, plate);
  EdgePressure result;
  result.plate_slope = plate.slope;
  for (int i = 0; i < disc.cols; ++i) {
    if (disc.chord[i] <= 0 || std::isinf(disc.row[i])) continue;
    const double x = disc.x_of(start + i);
    result.distance_mm.push_back(x / metre_per_mm);
    result.pressure_kpa.push_back(disc.pressures[i] / pascal_per_kpa);
    result.line_load_n_per_mm += disc.pressures[i] * length_near_edge(x, disc.pixel) * metre_per_mm;
  }
  return result;
}

EdgeProfile edge_profile(const Backing& backing, const Motion& motion, const EdgeOptions& options,
                         const Progress& progress) {
  check(backing, motion, options);
  Disc disc(backing, motion, options);
  WornSection section(motion, options, disc);
  for (int pass = 0; pass < options.passes; ++pass) {
    const auto report_pass = [&](double share) { report(progress, (pass + share) / options.passes); };
    section.wear(options.removal_um * metre_per_um / options.passes, report_pass);
  }
  report(progress, 1);
  EdgeProfile result;
  section.describe(result);
  if (options.clear) result.margin_mm = unsanded_margin_mm(result, *options.clear);
  result.pixel_mm = disc.pixel / metre_per_mm;
  result.transform_pairs = disc.transform_pairs;
  result.residual = disc.residual;
  result.balance = disc.balance;
  return result;
}

double unsanded_margin_mm(const EdgeProfile& profile, const EdgeClear& clear) {
  clear.validate();
  const std::size_t n = profile.distance_mm.size();
  for (std::size_t k = n; k-- > 0;) {
    const double distance = profile.distance_mm[k];
    const double share =
        clear.share_at_edge + (1 - clear.share_at_edge) * std::clamp(distance / clear.taper_mm, 0.0, 1.0);
    const double left_um = share * clear.clear_um - clear.removal_factor * profile.removal_um[k];
    if (left_um >= clear.clear_left_least_um) continue;
    return k == n - 1 ? infinite : std::max(0.0, distance);
  }
  return 0;
}

}  // namespace libtexture
