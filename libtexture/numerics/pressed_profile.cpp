#include "libtexture/numerics/pressed_profile.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {
namespace {

// Stands for -infinity, which a transform cannot hold.
constexpr double out_of_reach = -1e30;
// Tries of a plate's height, or of its slope.
constexpr int most_tries = 60;
// Most that the slope changes in one try: contacts of a curved section wander as the plate turns.
constexpr double longest_turn = 0.02;

double dot(const AlignedVector<double>& a, const AlignedVector<double>& b) {
  return Eigen::Map<const Eigen::VectorXd>(a.data(), a.size())
      .dot(Eigen::Map<const Eigen::VectorXd>(b.data(), b.size()));
}

// Where error(x) = 0, for an error that falls with x: secants, halving the bracket where they gain too
// little. `fall` is a first guess of -error'. Returns the error left.
template <class Error>
double find_root(double x, double fall, double longest_step, double tolerance, Error&& error) {
  double low = -HUGE_VAL, high = HUGE_VAL, here = error(x);
  bool is_slow = false;
  for (int k = 0; std::abs(here) > tolerance; ++k) {
    if (k == most_tries) throw NotConverged("PressedProfile", k, std::abs(here), tolerance);
    (here > 0 ? low : high) = x;
    double next = x + std::clamp(here / fall, -longest_step, longest_step);
    const bool is_bracketed = std::isfinite(low) && std::isfinite(high);
    if (is_bracketed && (is_slow || next <= low || next >= high)) next = 0.5 * (low + high);
    const double there = error(next), secant = (here - there) / (next - x);
    if (secant > 0) fall = secant;
    is_slow = std::abs(there) > 0.5 * std::abs(here);
    x = next;
    here = there;
  }
  return std::abs(here);
}

}  // namespace

// What the pressure adds up to under the plate.
struct PressedProfile::Balance {
  double force = 0;   // over the force asked for
  double moment = 0;  // over that force x arm
  double give = 0;    // fall of `force` as the plate rises, if the face were springs
};

PressedProfile::PressedProfile(int cols, double pixel, const AlignedVector<double>& stiffness)
    : fft_(Grid{.rows = 1, .cols = cols, .pixel_mm = 1}), pixel_(pixel) {
  require_positive(pixel, "PressedProfile", "pixel");
  require(stiffness.size() == fft_.half_size(), "PressedProfile", "stiffness", "must have cols/2 + 1 values",
          static_cast<double>(stiffness.size()));
  for (const double s : stiffness) {
    require_positive(s, "PressedProfile", "stiffness");
    face_compliance_.push_back(1 / s);
  }
  for (auto* array :
       {&depth_, &pressure_, &misfit_, &active_misfit_, &correction_, &direction_, &response_, &trial_})
    array->resize(fft_.real_size());
}

void PressedProfile::set_compliance(double compliance) {
  compliance_ = compliance;
  total_compliance_.clear();
  inverse_.clear();
  for (const double c : face_compliance_) {
    total_compliance_.push_back(c + compliance);
    inverse_.push_back(1 / (c + compliance));
  }
}

void PressedProfile::set_plate(const AlignedVector<double>& height, const PlateLine& plate) {
  for (std::size_t i = 0; i < depth_.size(); ++i)
    depth_[i] = std::max(height[i] - plate.height - plate.slope * x_of(i), out_of_reach);
}

void PressedProfile::start_pressure() {
  for (std::size_t i = 0; i < depth_.size(); ++i) pressure_[i] = std::max(0.0, depth_[i]) * inverse_[0];
}

PressedProfile::Balance PressedProfile::balance(const AlignedVector<double>& weight, double force) const {
  Balance result;
  for (std::size_t i = 0; i < depth_.size(); ++i) {
    if (pressure_[i] <= 0) continue;
    const double share = weight[i] * pixel_ / force;
    result.force += share * pressure_[i];
    result.moment += share * pressure_[i] * x_of(i) / arm();
    result.give += share * inverse_[0];
  }
  return result;
}

// The plate's height if the face were springs of stiffness S(0): the force falls as the plate rises, so
// bisect.
double PressedProfile::height_on_springs(const AlignedVector<double>& height,
                                         const AlignedVector<double>& weight, const PlateLoad& load,
                                         double slope) {
  set_plate(height, {0, slope});
  double high = out_of_reach;
  for (std::size_t i = 0; i < depth_.size(); ++i)
    if (weight[i] > 0) high = std::max(high, depth_[i]);
  require(high > out_of_reach, "PressedProfile", "height", "must be finite somewhere under the plate",
          "-infinity");
  const AlignedVector<double> depth = depth_;
  const auto force_at = [&](double plate) {
    double force = 0;
    for (std::size_t i = 0; i < depth.size(); ++i)
      force += weight[i] * pixel_ * std::max(0.0, depth[i] - plate) * inverse_[0];
    return force;
  };
  double reach = load.force / (inverse_[0] * pixel_ * static_cast<double>(depth.size()) *
                               *std::max_element(weight.begin(), weight.end()));
  while (force_at(high - reach) < load.force) reach *= 2;
  double low = high - reach;
  for (int k = 0; k < 30; ++k) (force_at(0.5 * (low + high)) > load.force ? low : high) = 0.5 * (low + high);
  return 0.5 * (low + high);
}

void PressedProfile::find_misfit() {
  fft_.filter(pressure_, total_compliance_, misfit_);
  for (std::size_t i = 0; i < depth_.size(); ++i) misfit_[i] = depth_[i] - misfit_[i];
}

// p <- max(0, p + step d) in trial_; false if nothing was cut off.
bool PressedProfile::step_along(double step) {
  bool is_cut = false;
  for (std::size_t i = 0; i < depth_.size(); ++i) {
    const double p = pressure_[i] + step * direction_[i];
    is_cut = is_cut || p < 0;
    trial_[i] = std::max(0.0, p);
  }
  return is_cut;
}

void PressedProfile::find_pressure(const PressedOptions& options, PressedReport& report) {
  find_misfit();
  ++report.transform_pairs;
  const auto energy = [&] {  // times -2
    double sum = 0;
    for (std::size_t i = 0; i < depth_.size(); ++i)
      if (pressure_[i] > 0) sum += pressure_[i] * (depth_[i] + misfit_[i]);
    return sum;
  };
  std::fill(direction_.begin(), direction_.end(), 0.0);
  double before = 0;  // <d, (C + tau) d> of the step before; 0 = start afresh
  std::size_t active_before = 0;
  for (;;) {
    std::size_t active = 0;
    for (std::size_t i = 0; i < depth_.size(); ++i) {
      const bool is_active = pressure_[i] > 0 || misfit_[i] > 0;
      active_misfit_[i] = is_active ? misfit_[i] : 0.0;
      active += is_active;
    }
    fft_.filter(active_misfit_, inverse_, correction_);
    ++report.transform_pairs;
    for (std::size_t i = 0; i < depth_.size(); ++i)
      if (pressure_[i] <= 0 && misfit_[i] <= 0) correction_[i] = 0;
    report.residual = std::sqrt(dot(correction_, correction_) / std::max(dot(pressure_, pressure_), 1e-300));
    if (report.residual <= options.residual_tolerance || active == 0) return;
    if (report.transform_pairs >= options.most_pairs)
      throw NotConverged("PressedProfile", report.transform_pairs, report.residual,
                         options.residual_tolerance);

    const double beta =
        before > 0 && active == active_before ? std::max(0.0, -dot(correction_, response_) / before) : 0;
    active_before = active;
    for (std::size_t i = 0; i < depth_.size(); ++i)
      direction_[i] = pressure_[i] > 0 || misfit_[i] > 0 ? correction_[i] + beta * direction_[i] : 0.0;
    fft_.filter(direction_, total_compliance_, response_);
    ++report.transform_pairs;
    before = dot(direction_, response_);
    double step = dot(direction_, active_misfit_) / before;
    if (!step_along(step)) {
      for (std::size_t i = 0; i < depth_.size(); ++i) misfit_[i] -= step * response_[i];
      std::swap(pressure_, trial_);
      continue;
    }
    // Some contact is lost: take the cut step, shorter where it would not gain.
    before = 0;
    const double start = energy();
    AlignedVector<double> kept = pressure_;
    for (int halvings = 0; halvings < 20; ++halvings) {
      std::swap(pressure_, trial_);
      find_misfit();
      ++report.transform_pairs;
      if (energy() >= start) break;
      pressure_ = kept;
      step_along(step *= 0.5);
    }
  }
}

PressedReport PressedProfile::solve(const AlignedVector<double>& height, const AlignedVector<double>& weight,
                                    double compliance, const PlateLoad& load, PlateLine& plate,
                                    AlignedVector<double>& pressure, const PressedOptions& options) {
  require_positive(compliance, "PressedProfile", "compliance");
  require_positive(load.force, "PressedProfile", "force");
  if (compliance != compliance_) set_compliance(compliance);
  PressedReport report;
  plate.height = height_on_springs(height, weight, load, plate.slope);
  set_plate(height, plate);
  start_pressure();
  Balance now = balance(weight, load.force);
  const auto settle =
      [&](double slope) {  // the height for this slope, from a plate that turns about the contact
        plate = {plate.height - (slope - plate.slope) * now.moment * arm(), slope};
        const double error =
            find_root(plate.height, now.give, HUGE_VAL, options.balance_tolerance, [&](double high) {
              plate.height = high;
              set_plate(height, plate);
              find_pressure(options, report);
              ++report.plates;
              const Balance next = balance(weight, load.force);
              now = {next.force, next.moment, next.give > 0 ? next.give : now.give};
              return now.force - 1;
            });
        report.balance = error;
        return now.moment;
      };
  if (load.is_tilting)
    report.balance +=
        find_root(plate.slope, arm() * now.give, longest_turn, options.moment_tolerance, settle);
  else
    settle(plate.slope);
  pressure = pressure_;
  return report;
}

}  // namespace libtexture
