#include "libtexture/numerics/erosion.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/numerics/lanes.hpp"

namespace libtexture {
namespace {

using Values = AlignedVector<double>;

// Two implicit stages, each a fraction gamma of the increment (SDIRK2, docs/physics.md (19a)). Both
// weights are positive, so nothing is removed where neither stage touches.
const double gamma_ = 1 - std::sqrt(0.5);

// Weights of a quadrature of third order over the pressures at 0, gamma and 1 of the increment, for the error
// estimate.
const double weight_gamma = 1 / (6 * gamma_ * (1 - gamma_));
const double weight_end = 0.5 - weight_gamma * gamma_;
const double weight_start = 1 - weight_gamma - weight_end;

constexpr double first_over_tolerance =
    100;  // what the first increments may err by, over the tolerance: halving all
          // then meets it in most cases (benchmarks: one halving, seldom two)
constexpr double best_quotient = 0.25;  // by which halving lessens an error of second order, at best
constexpr double least_wish =
    0.7;  // a wary run takes back an increment that ought to have been smaller by this,
constexpr double least_retry = 0.1;   // and makes it so, by no more than this at once
constexpr double first_share = 0.25;  // of the first stretch: no estimate exists before the first increment

// Of the work that is left, for progress: in most cases a run and one in halves, which takes longer.
constexpr double chosen_work = 0.4, halved_work = 0.9;

struct Amplitudes {
  double rms, peak_to_valley, valley_depth;
};

Amplitudes amplitudes_of(const Values& height) {
  LaneSum sum, squares;
  double least = HUGE_VAL, most = -HUGE_VAL;
  over_packs(height.size(), [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> h = pack<W>(&height[i]);
    sum.add(h);
    least = std::min(least, h.minCoeff());
    most = std::max(most, h.maxCoeff());
  });
  const double n = static_cast<double>(height.size()), mean = sum.total() / n;
  over_packs(height.size(), [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> deviation = pack<W>(&height[i]) - mean;
    squares.add(deviation * deviation);
  });
  return {std::sqrt(squares.total() / n), most - least, mean - least};
}

double difference(const Amplitudes& a, const Amplitudes& b) {
  return std::max({std::abs(a.rms - b.rms), std::abs(a.peak_to_valley - b.peak_to_valley),
                   std::abs(a.valley_depth - b.valley_depth)});
}

double greatest_difference(const std::vector<ErosionState>& a, const std::vector<ErosionState>& b) {
  double greatest = 0;
  for (std::size_t k = 0; k < a.size(); ++k)
    greatest = std::max(greatest, difference(amplitudes_of(a[k].height), amplitudes_of(b[k].height)));
  return greatest;
}

// A wary run takes increments back, and has an estimate for the first one too; it costs several times the
// pairs of a bold one, which most surfaces need.
enum class Choice { bold, wary };

// One increment that was taken, kept so that a finer run can take it in halves.
struct Taken {
  double removal;
  bool is_exact;
};

class Eroder {
 public:
  Eroder(const Grid& grid, const Values& height, const Values& stiffness, const ErosionOptions& options,
         Choice choice, Progress progress)
      : increment_(grid, stiffness),
        height_(height),
        options_(options),
        choice_(choice),
        progress_(std::move(progress)) {
    options_.increment.is_continued = true;
    for (Values* field : {&before_, &first_, &second_, &trial_, &worn_}) field->resize(height.size());
    spectrum_.resize(increment_.fft().half_size());
    worn_spectrum_.resize(spectrum_.size());
  }

  // Chooses its own increments; remembers them, stretch by stretch.
  std::vector<ErosionState> choose(const std::vector<double>& at) {
    std::vector<ErosionState> states;
    double next = first_share * at.front(), error = 0;
    double place = 0;
    for (const double target : at) {
      taken_.emplace_back();
      while (place < target) {
        const double left = target - place;
        if (wear_exactly(left)) {
          taken_.back().push_back({left, true});
          place = target;
          tell(place / at.back());
          continue;
        }
        // Two even increments rather than one and a crumb.
        double removal = next >= 0.999 * left ? left : std::min(next, left / 2);
        if (increments_ >= options_.most_increments)
          throw NotConverged("erode: amplitudes", increments_, error, options_.amplitude_tolerance);
        error = wear(removal);
        const double wish =
            0.9 * std::cbrt(first_over_tolerance * options_.amplitude_tolerance / std::max(error, 1e-300));
        if (choice_ == Choice::wary && wish < least_wish) {
          take_back();
          next = std::max(least_retry, wish) * removal;
          continue;
        }
        taken_.back().push_back({removal, false});
        place = removal == left ? target : place + removal;
        tell(place / at.back());
        next = std::max(removal * std::clamp(wish, 0.3, 3.0), wish >= 1 ? next : 0.0);
      }
      states.push_back({target, height_, contact_share_});
    }
    return states;
  }

  // Takes the increments of a coarser run, each in `parts` parts.
  std::vector<ErosionState> follow(const std::vector<double>& at,
                                   const std::vector<std::vector<Taken>>& taken, int parts) {
    std::vector<ErosionState> states;
    double place = 0;
    for (std::size_t k = 0; k < at.size(); ++k) {
      for (const Taken& one : taken[k]) {
        if (!one.is_exact || !wear_exactly(one.removal))
          for (int part = 0; part < parts; ++part) wear(one.removal / parts);
        place += one.removal;
        tell(std::min(1.0, place / at.back()));
      }
      states.push_back({at[k], height_, contact_share_});
    }
    return states;
  }

  const std::vector<std::vector<Taken>>& taken() const { return taken_; }
  bool is_all_exact() const {
    return std::all_of(taken_.begin(), taken_.end(), [](const std::vector<Taken>& stretch) {
      return std::all_of(stretch.begin(), stretch.end(), [](const Taken& one) { return one.is_exact; });
    });
  }
  double residual() const { return residual_; }
  int increments() const { return increments_; }
  int transform_pairs() const { return transform_pairs_; }

 private:
  void tell(double share_done) {
    share_done_ = share_done;
    report(progress_, share_done_);
  }

  void solve(const Values& height, double removal, Values& pressure) {
    const IncrementReport solved = increment_.solve(height, removal, pressure, options_.increment,
                                                    [this](double) { report(progress_, share_done_); });
    transform_pairs_ += solved.transform_pairs;
    residual_ = std::max(residual_, solved.residual);
    contact_share_ = solved.contact_share;
  }

  // One increment; returns the estimate of its error on rms and peak-to-valley.
  double wear(double removal) {
    const std::size_t n = height_.size();
    solve(height_, gamma_ * removal, first_);
    over_packs(n, [&]<int W>(std::size_t i) {
      pack<W>(&trial_[i]) = pack<W>(&height_[i]) - (1 - gamma_) * removal * pack<W>(&first_[i]);
    });
    solve(trial_, gamma_ * removal, second_);
    // Before the first increment no pressure is known. A bold run takes that of the first stage for it; for a
    // wary one the estimate is the difference to first order, which is too much rather than too little.
    const bool is_first_order = choice_ == Choice::wary && !has_before_;
    const Values& start = has_before_ ? before_ : first_;
    const double of_start = is_first_order ? 0 : weight_start, of_first = is_first_order ? 1 : weight_gamma,
                 of_second = is_first_order ? 0 : weight_end;
    over_packs(n, [&]<int W>(std::size_t i) {
      const Eigen::Array<double, W, 1> h = pack<W>(&height_[i]), p1 = pack<W>(&first_[i]),
                                       p2 = pack<W>(&second_[i]);
      pack<W>(&worn_[i]) = h - removal * ((1 - gamma_) * p1 + gamma_ * p2);
      pack<W>(&trial_[i]) = h - removal * (of_start * pack<W>(&start[i]) + of_first * p1 + of_second * p2);
    });
    std::swap(height_, worn_);
    std::swap(before_, second_);
    had_before_ = std::exchange(has_before_, true);
    ++increments_;
    return difference(amplitudes_of(height_), amplitudes_of(trial_));
  }

  // Undoes the last increment.
  void take_back() {
    std::swap(height_, worn_);
    std::swap(before_, second_);
    has_before_ = had_before_;
  }

  // In full contact each mode falls by exp(-S R). Taken only if the pressure 1 + S h is nowhere negative at
  // the start, at the end and at two places between, or cannot be (sum of |S h| <= 1): a plate may leave full
  // contact again.
  bool wear_exactly(double removal) {
    if (contact_share_ < 1) return false;
    increment_.fft().forward(height_, spectrum_);
    ++transform_pairs_;
    const bool cannot_leave = sum_of_amplitudes() <= 1;
    for (const double share : {0.0, 1.0 / 3, 2.0 / 3, 1.0})
      if (!cannot_leave && least_pressure(share * removal) < 0) return false;
    const Values& s = increment_.stiffness();
    for (std::size_t k = 0; k < spectrum_.size(); ++k)
      worn_spectrum_[k] = spectrum_[k] * std::exp(-s[k] * removal);
    worn_spectrum_[0] -= removal * static_cast<double>(height_.size());
    increment_.fft().inverse(worn_spectrum_, height_);
    has_before_ = false;
    ++increments_;
    return true;
  }

  double sum_of_amplitudes() const {
    const Values& s = increment_.stiffness();
    double sum = 0;
    for (std::size_t k = 0; k < spectrum_.size(); ++k) sum += s[k] * std::abs(spectrum_[k]);
    return 2 * sum / static_cast<double>(height_.size());  // mirror images counted twice: an upper bound
  }

  double least_pressure(double removal) {
    const Values& s = increment_.stiffness();
    for (std::size_t k = 0; k < spectrum_.size(); ++k)
      worn_spectrum_[k] = spectrum_[k] * (s[k] * std::exp(-s[k] * removal));
    increment_.fft().inverse(worn_spectrum_, trial_);
    ++transform_pairs_;
    return 1 + *std::min_element(trial_.begin(), trial_.end());
  }

  Increment increment_;
  Values height_, before_, first_, second_, trial_;
  Values worn_;  // height_ before the last increment
  Spectrum spectrum_, worn_spectrum_;
  ErosionOptions options_;
  Choice choice_;
  const Progress progress_;
  double share_done_ = 0;  // of the removal
  std::vector<std::vector<Taken>> taken_;
  bool has_before_ = false, had_before_ = false;
  double contact_share_ = 1;  // not known at the start: ask wear_exactly
  double residual_ = 0;
  int increments_ = 0;
  int transform_pairs_ = 0;
};

void check_removals(const std::vector<double>& at) {
  require(!at.empty(), "erode", "at", "must name at least one removal", "none");
  double last = 0;
  for (const double removal : at) {
    require(std::isfinite(removal) && removal > last, "erode", "at", "must be > 0 and rising", removal);
    last = removal;
  }
}

}  // namespace

Erosion erode(const Grid& grid, const Values& height, const Values& stiffness, const std::vector<double>& at,
              const ErosionOptions& options, const Progress& progress) {
  grid.validate();
  check_removals(at);
  require_positive(options.amplitude_tolerance, "erode", "amplitude_tolerance");
  Erosion result;
  const auto add_work = [&](const Eroder& run) {
    result.increments += run.increments();
    result.transform_pairs += run.transform_pairs();
    result.residual = std::max(result.residual, run.residual());
  };
  double done = 0;
  const auto next_part = [&](double of_what_is_left) {
    const double from = std::exchange(done, std::lerp(done, 1.0, of_what_is_left));
    return part_of(progress, from, done);
  };
  for (const Choice choice : {Choice::bold, Choice::wary}) {
    Eroder coarse(grid, height, stiffness, options, choice, next_part(chosen_work));
    result.states = coarse.choose(at);
    add_work(coarse);
    if (coarse.is_all_exact()) return result;
    for (int halvings = 1; halvings <= options.most_halvings; ++halvings) {
      Eroder fine(grid, height, stiffness, options, choice, next_part(halved_work));
      std::vector<ErosionState> states = fine.follow(at, coarse.taken(), 1 << halvings);
      add_work(fine);
      result.amplitude_error = greatest_difference(states, result.states);
      result.states = std::move(states);
      if (result.amplitude_error <= options.amplitude_tolerance) return result;
      const int left = options.most_halvings - halvings;
      if (result.amplitude_error * std::pow(best_quotient, left) > options.amplitude_tolerance) break;
    }
  }
  throw NotConverged("erode: amplitudes", result.increments, result.amplitude_error,
                     options.amplitude_tolerance);
}

Erosion truncate(const Values& height, const std::vector<double>& at) {
  check_removals(at);
  // With the heights sorted from the top, a plane under the k highest removes sum(h_i - plane), linear
  // between heights.
  Values sorted = height;
  std::sort(sorted.begin(), sorted.end(), std::greater<>());
  const double n = static_cast<double>(sorted.size());
  Erosion result;
  std::size_t count = 1;
  double sum = sorted[0];
  for (const double removal : at) {
    while (count < sorted.size() && sum - static_cast<double>(count) * sorted[count] <= removal * n)
      sum += sorted[count++];
    const double plane = (sum - removal * n) / static_cast<double>(count);
    ErosionState state{removal, height, static_cast<double>(count) / n};
    for (double& h : state.height) h = std::min(h, plane);
    result.states.push_back(std::move(state));
  }
  result.increments = static_cast<int>(at.size());
  return result;
}

}  // namespace libtexture
