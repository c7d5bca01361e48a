#include "libtexture/plan/edge_margin.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/process/identity.hpp"
#include "libtexture/tool/dose.hpp"

namespace libtexture {
namespace {

constexpr int most_passes = 8;  // within 2 % of sixteen in what an overhung edge loses: docs/physics.md

/// What the steps remove across the section, and how sure that is.
struct Across {
  std::vector<double> distance_mm;
  std::vector<double> removal_um;
  std::vector<double> variance_um2;
};

double at(const EdgeProfile& profile, double distance_mm) {
  const std::vector<double>& x = profile.distance_mm;
  const auto above = std::lower_bound(x.begin(), x.end(), distance_mm);
  if (above == x.begin()) return profile.removal_um.front();
  if (above == x.end()) return profile.removal_um.back();
  const auto i = static_cast<std::size_t>(above - x.begin());
  const double part = (distance_mm - x[i - 1]) / (x[i] - x[i - 1]);
  return profile.removal_um[i - 1] + part * (profile.removal_um[i] - profile.removal_um[i - 1]);
}

/// How far a step's removal spreads at a distance from the edge: as on the flat, and by a lean that the hand
/// keeps along the edge, which tilts the pressure of the innermost lane.
class EdgeSpread {
 public:
  EdgeSpread(const Step& step, int passes, Overhang overhang)
      : disc_mm_(step.motion.disc_diameter_mm / 2),
        lane_mm_(overhang == Overhang::none ? disc_mm_ : disc_mm_ / 2),
        lean_share_(step.motion.lean_share) {
    const double flat_kpa = pressure_kpa(step.motion);
    const LaneDose lanes = lane_dose(step.motion, {disc_mm_, flat_kpa, flat_kpa, false});
    flat_cv_ = dose_cv(step.motion, lanes.cv, std::max(1, passes));
  }
  double at(double distance_mm) const {
    const double towards_edge = std::max(0.0, lane_mm_ - distance_mm) / disc_mm_;
    return std::hypot(flat_cv_, 4 * lean_share_ * towards_edge);
  }

 private:
  double disc_mm_, lane_mm_, lean_share_, flat_cv_;
};

void add(Across& across, const EdgeProfile& profile, double share, const EdgeSpread& spread) {
  if (across.distance_mm.empty()) {
    across.distance_mm = profile.distance_mm;
    across.removal_um.assign(profile.distance_mm.size(), 0);
    across.variance_um2.assign(profile.distance_mm.size(), 0);
  }
  for (std::size_t k = 0; k < across.distance_mm.size(); ++k) {
    const double removal_um = share * at(profile, across.distance_mm[k]);
    across.removal_um[k] += removal_um;
    across.variance_um2[k] += std::pow(spread.at(across.distance_mm[k]) * removal_um, 2);
  }
}

double total_removed_um(const std::vector<HistoryRow>& rows) {
  double total_um = 0;
  for (const HistoryRow& row : rows) total_um += row.removed_um;
  return total_um;
}

/// A clear and its share at a distance from the edge.
struct Clear {
  double clear_um, sd_um, share_at_edge, taper_mm;
  double share(double distance_mm) const {
    return share_at_edge + (1 - share_at_edge) * std::clamp(distance_mm / taper_mm, 0.0, 1.0);
  }
};

/// Whether every rule is kept by `reach` standard deviations.
bool is_kept(const Budget& budget, const Clear& clear, double distance_mm, double removal_um,
             double variance_um2, double reach) {
  const double share = clear.share(distance_mm);
  for (const BudgetRule& rule : budget_rules(budget, share * clear.clear_um)) {
    if (!rule.is_on) continue;
    const double weight = rule.limit == BudgetLimit::clear_removed ? 0 : rule.limit_share.value_or(1);
    const double of_clear = weight * share * clear.sd_um;
    if (rule.removable_um - removal_um < reach * std::sqrt(of_clear * of_clear + variance_um2)) return false;
  }
  return true;
}

std::optional<double> margin_of(const Across& across, const Budget& budget, const Clear& clear,
                                double reach) {
  const std::size_t n = across.distance_mm.size();
  for (std::size_t k = n; k-- > 0;) {
    const double distance_mm = across.distance_mm[k];
    if (is_kept(budget, clear, distance_mm, across.removal_um[k], across.variance_um2[k], reach)) continue;
    if (k == n - 1) return std::nullopt;
    return std::max(0.0, distance_mm);
  }
  return 0;
}

}  // namespace

void EdgeWork::validate() const {
  require_positive(radius_mm, "EdgeWork", "radius_mm");
  require(share_at_edge > 0 && share_at_edge <= 1, "EdgeWork", "share_at_edge", "must be > 0 and <= 1",
          share_at_edge);
  require_positive(taper_mm, "EdgeWork", "taper_mm");
  require(confidence >= 0.5 && confidence < 1, "EdgeWork", "confidence", "must be >= .5 and < 1", confidence);
}

bool has_edge_profile(const Backing& backing) {
  return backing.support == Support::layers || backing.support == Support::springs;
}

EdgeProfile worn_edge(const EdgeWork& work, const std::vector<Step>& steps,
                      const std::vector<HistoryRow>& rows, std::size_t step, const Progress& progress) {
  int passes = 0;
  for (const HistoryRow& row : rows) passes += row.passes;
  return working_at("edge, step " + titles_of(steps).at(step) + ": ", [&] {
    return edge_profile(steps[step].backing, steps[step].motion,
                        {.removal_um = total_removed_um(rows),
                         .passes = std::clamp(passes, 1, most_passes),
                         .radius_mm = work.radius_mm,
                         .overhang = work.overhang},
                        progress);
  });
}

EdgeMargin edge_margin(const EdgeWork& work, const Budget& budget, double clear_um, double clear_sd_um,
                       const std::vector<Step>& steps, const std::vector<HistoryRow>& rows,
                       const std::vector<EdgeProfile>& worn) {
  work.validate();
  require_not_negative(clear_um, "EdgeMargin", "clear_um");
  require_not_negative(clear_sd_um, "EdgeMargin", "clear_sd_um");
  require(!steps.empty(), "EdgeMargin", "steps", "must hold at least one step", "none");
  require(steps.size() == rows.size(), "EdgeMargin", "rows", "must be one a step",
          static_cast<double>(rows.size()));
  require(steps.size() == worn.size(), "EdgeMargin", "worn", "must be one a step",
          static_cast<double>(worn.size()));
  EdgeMargin result;
  Across across;
  const double total_um = total_removed_um(rows);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const double share = rows[i].removed_um / total_um;
    add(across, worn[i], share, EdgeSpread(steps[i], rows[i].passes, work.overhang));
    result.removed_area_mm2 += share * worn[i].removed_area_mm2;
  }
  result.peak_removal_um = *std::max_element(across.removal_um.begin(), across.removal_um.end());
  const Clear clear{clear_um, clear_sd_um, work.share_at_edge, work.taper_mm};
  result.clear_at_edge_um = clear.share(0) * clear_um;
  result.margin_mm = margin_of(across, budget, clear, 0);
  result.sure_margin_mm =
      margin_of(across, budget, clear, boost::math::quantile(boost::math::normal(), work.confidence));
  result.confidence = work.confidence;
  return result;
}

}  // namespace libtexture
