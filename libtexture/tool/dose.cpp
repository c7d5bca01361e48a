#include "libtexture/tool/dose.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

using std::numbers::pi;

constexpr int places = 96;  // from the middle of a lane to half-way to the next: spreads within 0.5 %

// Pressure summed along a line past the middle of a contact, in units of its radius and mean pressure.
class Profile {
 public:
  Profile(const Motion& motion, const CrownContact& contact)
      : is_whole_(contact.radius_mm >= motion.disc_diameter_mm / 2),
        even_(contact.peak_kpa / contact.pressure_kpa),
        ring_(6 - 3 * even_) {}

  // At a distance, in radii. On a crown the pressure is (1 - s)(even + ring s), s the square of the distance.
  double at(double distance) const {
    const double inside = 1 - distance * distance;
    if (inside <= 0) return 0;
    if (is_whole_) return 2 * std::sqrt(inside);
    const double chord = inside * std::sqrt(inside);
    return chord * (4.0 / 3 * (even_ + ring_ * (1 - inside)) + 4.0 / 15 * ring_ * inside);
  }

 private:
  bool is_whole_;
  double even_, ring_;
};

}  // namespace

LaneDose lane_dose(const Motion& motion, const CrownContact& contact) {
  motion.validate();
  contact.validate();
  const Profile profile(motion, contact);
  const double step = motion.step_over_mm / contact.radius_mm;
  const int lanes = static_cast<int>(std::ceil(1 / step + 0.5));  // to either side
  const double mean = pi / step;                                  // mean pressure over the contact's face
  LaneDose dose{HUGE_VAL, 0, 0, std::max(0.0, 1 - 2 / step)};
  double square = 0;
  for (int place = 0; place <= places; ++place) {
    double sum = 0;
    for (int lane = -lanes; lane <= lanes; ++lane)
      sum += profile.at(step * (0.5 * place / places + lane)) / mean;
    dose.least = std::min(dose.least, sum);
    dose.most = std::max(dose.most, sum);
    const double weight = place == 0 || place == places ? 0.5 : 1;
    square += weight * (sum - 1) * (sum - 1) / places;
  }
  dose.cv = std::sqrt(square);
  return dose;
}

double pass_cv(const Motion& motion, const CrownContact& contact) {
  const double lean = motion.lean_share * motion.disc_diameter_mm / 2 / contact.radius_mm;
  const double leaning = 256 / (15 * pi * pi) * lean * lean * motion.step_over_mm / contact.radius_mm;
  return std::hypot(lane_dose(motion, contact).cv, std::sqrt(leaning));
}

double dose_cv(const Motion& motion, double pass_cv, int passes) {
  require_not_negative(pass_cv, "dose", "pass_cv");
  require(passes >= 1, "dose", "passes", "must be >= 1", passes);
  return std::hypot(motion.dwell_cv, pass_cv / std::sqrt(passes));
}

}  // namespace libtexture
