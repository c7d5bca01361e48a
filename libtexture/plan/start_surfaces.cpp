#include "libtexture/plan/start_surfaces.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "libtexture/base/parallel.hpp"
#include "libtexture/plan/spread.hpp"

namespace libtexture {

namespace {

// Nodes of what earlier steps leave. Three of them, read by lines or parabolas, moved a tenth of the looks by
// one against running every world again.
constexpr int most_starts = 4;
constexpr double start_spacing = 0.35;  // of ln(rms) between them, where they are fewer
constexpr double rare = 0.002;          // share of worlds at either end that take the outermost surface
constexpr double apart = 1.001;         // rms heights nearer than this are one

// A levelled surface with about the wished rms height: where it starts, and how much goes.
struct Wish {
  std::size_t start;
  double removal_um;
};

Wish wish_of(const CurvePlan& plan, const StepCurves& curves, const StepEnds& ends, double rms_um) {
  std::size_t like = 0;
  const auto distance = [&](std::size_t i) { return std::abs(ends.end_rms_um[i] - rms_um); };
  for (std::size_t i = 1; i < ends.end_rms_um.size(); ++i)
    if (distance(i) < distance(like)) like = i;
  const double from_um = ends.start_rms_um[like];
  const auto nearer = [&](const HeightField& a, const HeightField& b) {
    return std::abs(a.rms_um() - from_um) < std::abs(b.rms_um() - from_um);
  };
  const auto start = std::min_element(plan.starts.begin(), plan.starts.end(), nearer);
  return {static_cast<std::size_t>(start - plan.starts.begin()),
          curves.removal_to_um(start->rms_um(), rms_um)};
}

}  // namespace

StartSurfaces::StartSurfaces(std::vector<HeightField> surfaces) : surfaces_(std::move(surfaces)) {
  for (const HeightField& surface : surfaces_) {
    rms_um_.push_back(surface.rms_um());
    ideal_.emplace_back(surface);
  }
}

double StartSurfaces::ideal_removal_um(double start_rms_um, double share_left) const {
  // Between the surfaces, in shares of their rms heights.
  std::vector<double> shares;
  for (std::size_t i = 0; i < surfaces_.size(); ++i)
    shares.push_back(
        rms_um_[i] > 0 ? ideal_[i].removal_um(rms_um_[i] * std::min(1.0, share_left)) / rms_um_[i] : 0);
  return start_rms_um * between(rms_um_, shares, start_rms_um);
}

StartSurfaces next_starts(const CurvePlan& plan, const StepCurves& curves, const StepEnds& ends, int& solves,
                          const Progress& progress) {
  const double least = quantile_of(ends.end_rms_um, rare), most = quantile_of(ends.end_rms_um, 1 - rare);
  if (!(least > 0)) return StartSurfaces({plan.starts.back()});
  const int count =
      std::clamp(1 + static_cast<int>(std::ceil(std::log(most / least) / start_spacing)), 1, most_starts);
  std::vector<std::vector<double>> removals_um(plan.starts.size());  // a levelling run a start
  for (int k = 0; k < count; ++k) {
    const double rms_um =
        count == 1 ? quantile_of(ends.end_rms_um, .5) : least * std::pow(most / least, k / (count - 1.0));
    const Wish wish = wish_of(plan, curves, ends, rms_um);
    removals_um[wish.start].push_back(wish.removal_um);
  }
  std::vector<std::vector<HeightField>> by_start(plan.starts.size());
  parallel_for(static_cast<int>(plan.starts.size()), progress, [&](int i, const Progress& part) {
    const auto start = static_cast<std::size_t>(i);
    std::sort(removals_um[start].begin(), removals_um[start].end());
    if (!removals_um[start].empty())
      by_start[start] = surfaces_after(plan, plan.starts[start], removals_um[start], part);
    report(part, 1);
  });
  std::vector<HeightField> made;
  for (std::vector<HeightField>& surfaces : by_start) {
    solves += surfaces.empty() ? 0 : 1;
    std::move(surfaces.begin(), surfaces.end(), std::back_inserter(made));
  }
  std::sort(made.begin(), made.end(),
            [](const HeightField& a, const HeightField& b) { return a.rms_um() < b.rms_um(); });
  std::vector<HeightField> kept;
  for (HeightField& surface : made)
    if (kept.empty() || surface.rms_um() > apart * kept.back().rms_um()) kept.push_back(std::move(surface));
  return StartSurfaces(std::move(kept));
}

double between(const std::vector<double>& x, const std::vector<double>& y, double at) {
  const auto above = std::upper_bound(x.begin(), x.end(), at) - x.begin();
  if (above == 0) return y.front();
  const auto high = static_cast<std::size_t>(above);
  if (high == x.size()) return y.back();
  return y[high - 1] + (at - x[high - 1]) / (x[high] - x[high - 1]) * (y[high] - y[high - 1]);
}

}  // namespace libtexture
