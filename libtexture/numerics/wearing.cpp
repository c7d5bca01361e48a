#include "libtexture/numerics/wearing.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "libtexture/numerics/lanes.hpp"

namespace libtexture {
namespace {

// Two implicit stages, each a fraction gamma of the increment (SDIRK2, docs/physics.md (19a)). Both
// weights are positive, so nothing is removed where neither stage touches.
const double gamma_ = 1 - std::sqrt(0.5);

// Weights of a quadrature of third order over the pressures at 0, gamma and 1 of the increment, for the error
// estimate.
const double weight_gamma = 1 / (6 * gamma_ * (1 - gamma_));
const double weight_end = 0.5 - weight_gamma * gamma_;
const double weight_start = 1 - weight_gamma - weight_end;

constexpr double steepest = 3;  // slopes over the chord that keep a cubic monotone (docs/physics.md (19d))

}  // namespace

const double Wearing::first_stage = gamma_;

Wearing::Wearing(const Grid& grid, const Values& height, const Values& stiffness, IncrementOptions options,
                 Progress progress)
    : increment_(grid, stiffness), height_(height), options_(options), progress_(std::move(progress)) {
  options_.is_continued = true;
  for (Values* field : {&before_, &first_, &second_, &companion_, &worn_}) field->resize(height.size());
  spectrum_.resize(increment_.fft().half_size());
  worn_spectrum_.resize(spectrum_.size());
}

void Wearing::tell(double share_done) {
  share_done_ = share_done;
  report(progress_, share_done_);
}

void Wearing::solve(const Values& height, double removal, Values& pressure) {
  const IncrementReport solved = increment_.solve(height, removal, pressure, options_,
                                                  [this](double) { report(progress_, share_done_); });
  transform_pairs_ += solved.transform_pairs;
  residual_ = std::max(residual_, solved.residual);
  contact_share_ = solved.contact_share;
  first_clearance_ = std::exchange(clearance_, solved.clearance);
}

void Wearing::wear(double removal, bool start_is_unknown) {
  const std::size_t n = height_.size();
  contact_share_before_ = contact_share_;
  solve(height_, gamma_ * removal, first_);
  over_packs(n, [&]<int W>(std::size_t i) {
    pack<W>(&companion_[i]) = pack<W>(&height_[i]) - (1 - gamma_) * removal * pack<W>(&first_[i]);
  });
  solve(companion_, gamma_ * removal, second_);
  // Before the first increment no pressure is known: that of the first stage stands for it, or the companion
  // is of first order, which differs by too much rather than too little.
  const bool is_first_order = start_is_unknown && !has_before_;
  const Values& start = has_before_ ? before_ : first_;
  const double of_start = is_first_order ? 0 : weight_start, of_first = is_first_order ? 1 : weight_gamma,
               of_second = is_first_order ? 0 : weight_end;
  over_packs(n, [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> h = pack<W>(&height_[i]), p1 = pack<W>(&first_[i]),
                                     p2 = pack<W>(&second_[i]);
    pack<W>(&worn_[i]) = h - removal * ((1 - gamma_) * p1 + gamma_ * p2);
    pack<W>(&companion_[i]) = h - removal * (of_start * pack<W>(&start[i]) + of_first * p1 + of_second * p2);
  });
  std::swap(height_, worn_);
  std::swap(before_, second_);
  had_before_ = std::exchange(has_before_, true);
  has_spectrum_ = is_pressed_ = false;
  removal_ = removal;
  ++increments_;
}

void Wearing::take_back() {
  std::swap(height_, worn_);
  std::swap(before_, second_);
  has_before_ = had_before_;
  contact_share_ = contact_share_before_;
}

void Wearing::read(double share, Values& height) const {
  height.resize(height_.size());
  const double t = share, u = 1 - t;
  LaneSum sum;
  if (!had_before_) {  // by lines through the stages' pressures
    const double first = t <= gamma_ ? t : gamma_ + (t - gamma_) * (1 - 2 * gamma_) / (1 - gamma_);
    const double of_first = first * removal_, of_end = (t - first) * removal_;
    over_packs(height.size(), [&]<int W>(std::size_t i) {
      pack<W>(&height[i]) =
          pack<W>(&worn_[i]) - of_first * pack<W>(&first_[i]) - of_end * pack<W>(&before_[i]);
    });
    return;
  }
  const double of_chord = t * t * (3 - 2 * t), of_start = t * u * u, of_end = -t * t * u;
  over_packs(height.size(), [&]<int W>(std::size_t i) {
    using Pack = Eigen::Array<double, W, 1>;
    const Pack chord = pack<W>(&worn_[i]) - pack<W>(&height_[i]);
    const Pack most = steepest * chord;
    const Pack start = (removal_ * pack<W>(&second_[i])).min(most);
    const Pack end = (removal_ * pack<W>(&before_[i])).min(most);
    const Pack removed = of_chord * chord + of_start * start + of_end * end;
    pack<W>(&height[i]) = removed;
    sum.add(removed);
  });
  // The limit takes a little from the mean, which is known.
  const double scale = t * removal_ * static_cast<double>(height.size()) / sum.total();
  over_packs(height.size(), [&]<int W>(std::size_t i) {
    pack<W>(&height[i]) = pack<W>(&worn_[i]) - scale * pack<W>(&height[i]);
  });
}

double Wearing::contact_share_at(double share) const {
  return std::lerp(had_before_ ? contact_share_before_ : contact_share_, contact_share_, share);
}

// `modes` = the spectrum times factor(S) of each mode.
template <class Factor>
void Wearing::each_mode(const Factor& factor, Spectrum& modes) const {
  const Values& stiffness = increment_.stiffness();
  over_packs(modes.size(), [&]<int W>(std::size_t k) {
    const Eigen::Array<double, W, 1> by = factor(pack<W>(&stiffness[k]));
    for (int l = 0; l < W; ++l) modes[k + l] = spectrum_[k + l] * by[l];
  });
}

bool Wearing::wear_exactly(double removal) {
  if (contact_share_ < 1) return false;
  if (!has_spectrum_) {
    increment_.fft().forward(height_, spectrum_);
    ++transform_pairs_;
    has_spectrum_ = true;
    cannot_leave_ = false;
  }
  cannot_leave_ = cannot_leave_ || sum_of_amplitudes() <= 1;  // which falls from here on
  if (!cannot_leave_) {
    if (!is_pressed_ && least_pressure(0) < 0) return false;
    for (const double share : {1.0 / 3, 2.0 / 3, 1.0})
      if (least_pressure(share * removal) < 0) return false;
  }
  is_pressed_ = true;
  each_mode([&](const auto& s) { return (-removal * s).exp().eval(); }, spectrum_);
  spectrum_[0] -= removal * static_cast<double>(height_.size());
  std::copy(spectrum_.begin(), spectrum_.end(), worn_spectrum_.begin());
  increment_.fft().inverse(worn_spectrum_, height_);
  has_before_ = false;
  ++increments_;
  return true;
}

double Wearing::sum_of_amplitudes() const {
  const Values& stiffness = increment_.stiffness();
  LaneSum sum;
  over_packs(spectrum_.size(), [&]<int W>(std::size_t k) {
    Eigen::Array<double, W, 1> power;
    for (int l = 0; l < W; ++l) power[l] = std::norm(spectrum_[k + l]);
    sum.add(pack<W>(&stiffness[k]) * power.sqrt());
  });
  // Mirror images counted twice: an upper bound.
  return 2 * sum.total() / static_cast<double>(height_.size());
}

double Wearing::least_pressure(double removal) {
  each_mode([&](const auto& s) { return (s * (-removal * s).exp()).eval(); }, worn_spectrum_);
  increment_.fft().inverse(worn_spectrum_, companion_);
  ++transform_pairs_;
  return 1 + *std::min_element(companion_.begin(), companion_.end());
}

}  // namespace libtexture
