#include "libtexture/process/pace.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {
namespace {

// dV/dx = fresh gain (w + (1 - w) exp(-V/V_0)) over the pass x = 0..1; with y = exp(V/V_0) it is linear in y.
struct Loading {
  double gain;     // V that an ever fresh disc would gain in one pass [um]
  double worn;     // w = w_end/w_0
  double loading;  // V_0 [um]

  double after(double start, double passes) const {
    const double decay = std::exp(-start / loading), use = gain * passes / loading;
    if (worn == 0) return start + loading * std::log1p(use * decay);
    const double c = (1 - worn) / worn;
    return start + loading * (worn * use + std::log1p(-c * decay * std::expm1(-worn * use)));
  }
  double passes_to(double start, double end) const {
    const double y0 = std::exp(start / loading), y1 = std::exp(end / loading);
    if (worn == 0) return (y1 - y0) * loading / gain;
    const double c = (1 - worn) / worn;
    return std::log((y1 + c) / (y0 + c)) * loading / (gain * worn);
  }
};

// V at which the wear rate has fallen to a share of the fresh one; infinite where it never does.
double changed_at_um(const Loading& disc, double share) {
  return share > disc.worn ? disc.loading * std::log((1 - disc.worn) / (share - disc.worn)) : HUGE_VAL;
}

Loading loading_of(const Step& step, double area_m2, double hardness_mpa) {
  step.validate();
  require_positive(area_m2, "Step", "area_m2");
  const WetnessEffect wetness = wetness_effect(step.abrasive, step.wetness);
  const double fresh =
      step.abrasive.wear_rate_mm3_per_n_m * wetness.wear_rate * hardness_wear_factor(hardness_mpa);
  return {removal_per_pass_um(step.motion, fresh) * area_m2 / disc_area_m2(step.motion),
          step.abrasive.worn_wear_rate_mm3_per_n_m / step.abrasive.wear_rate_mm3_per_n_m,
          step.abrasive.loading_um * wetness.loading};
}

}  // namespace

double disc_life_minutes(const Step& step, double hardness_mpa) {
  const double area_m2 = disc_area_m2(step.motion);  // cancels: as well any other
  const Loading disc = loading_of(step, area_m2, hardness_mpa);
  const double change = changed_at_um(disc, step.change_disc_below_share);
  return std::isinf(change) ? HUGE_VAL : disc.passes_to(0, change) * pass_minutes(step.motion, area_m2);
}

double removal_of_pass_um(const Step& step, double area_m2, double hardness_mpa, DiscUse& use) {
  const double areas = area_m2 / disc_area_m2(step.motion);  // panel over disc
  const Loading disc = loading_of(step, area_m2, hardness_mpa);
  const double change = changed_at_um(disc, step.change_disc_below_share);
  double left = 1, gained = -use.removed_um;  // passes; V over all discs
  const double rest = std::isinf(change) ? HUGE_VAL : std::max(0.0, disc.passes_to(use.removed_um, change));
  if (rest < left) {
    left -= rest;
    const double life = disc.passes_to(0, change), whole = std::ceil(left / life) - 1;
    left -= whole * life;
    gained += (1 + whole) * change;
    use.discs += 1 + static_cast<int>(whole);
    use.removed_um = 0;
  }
  use.removed_um = disc.after(use.removed_um, left);
  gained += use.removed_um;
  return gained / areas;
}

}  // namespace libtexture
