#include "libtexture/numerics/erosion.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/numerics/lanes.hpp"
#include "libtexture/numerics/wearing.hpp"

namespace libtexture {
namespace {

using Values = AlignedVector<double>;

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
      : wearing_(grid, height, stiffness, options.increment, std::move(progress)),
        options_(options),
        choice_(choice) {}

  // Chooses its own increments; remembers them, stretch by stretch.
  std::vector<ErosionState> choose(const std::vector<double>& at) {
    std::vector<ErosionState> states;
    double next = first_share * at.front(), error = 0;
    double place = 0;
    for (const double target : at) {
      taken_.emplace_back();
      while (place < target) {
        const double left = target - place;
        if (wearing_.wear_exactly(left)) {
          taken_.back().push_back({left, true});
          place = target;
          wearing_.tell(place / at.back());
          continue;
        }
        // Two even increments rather than one and a crumb.
        double removal = next >= 0.999 * left ? left : std::min(next, left / 2);
        if (wearing_.increments() >= options_.most_increments)
          throw NotConverged("erode: amplitudes", wearing_.increments(), error, options_.amplitude_tolerance);
        wearing_.wear(removal, choice_ == Choice::wary);
        error = difference(amplitudes_of(wearing_.height()), amplitudes_of(wearing_.companion()));
        const double wish =
            0.9 * std::cbrt(first_over_tolerance * options_.amplitude_tolerance / std::max(error, 1e-300));
        if (choice_ == Choice::wary && wish < least_wish) {
          wearing_.take_back();
          next = std::max(least_retry, wish) * removal;
          continue;
        }
        taken_.back().push_back({removal, false});
        place = removal == left ? target : place + removal;
        wearing_.tell(place / at.back());
        next = std::max(removal * std::clamp(wish, 0.3, 3.0), wish >= 1 ? next : 0.0);
      }
      states.push_back({target, wearing_.height(), wearing_.contact_share()});
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
        if (!one.is_exact || !wearing_.wear_exactly(one.removal))
          for (int part = 0; part < parts; ++part) wearing_.wear(one.removal / parts);
        place += one.removal;
        wearing_.tell(std::min(1.0, place / at.back()));
      }
      states.push_back({at[k], wearing_.height(), wearing_.contact_share()});
    }
    return states;
  }

  const std::vector<std::vector<Taken>>& taken() const { return taken_; }
  bool is_all_exact() const {
    return std::all_of(taken_.begin(), taken_.end(), [](const std::vector<Taken>& stretch) {
      return std::all_of(stretch.begin(), stretch.end(), [](const Taken& one) { return one.is_exact; });
    });
  }
  const Wearing& wearing() const { return wearing_; }

 private:
  Wearing wearing_;
  const ErosionOptions& options_;
  const Choice choice_;
  std::vector<std::vector<Taken>> taken_;
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
    result.increments += run.wearing().increments();
    result.transform_pairs += run.wearing().transform_pairs();
    result.residual = std::max(result.residual, run.wearing().residual());
  };
  double done = 0;
  const auto next_part = [&](double of_what_is_left) {
    const double from = std::exchange(done, std::lerp(done, 1.0, of_what_is_left));
    return part_of(progress, from, done);
  };
  for (const Choice choice : {Choice::bold, Choice::wary}) {
    std::vector<std::vector<Taken>> taken;
    {  // one run at a time: each holds a dozen fields
      Eroder coarse(grid, height, stiffness, options, choice, next_part(chosen_work));
      result.states = coarse.choose(at);
      add_work(coarse);
      if (coarse.is_all_exact()) return result;
      taken = coarse.taken();
    }
    for (int halvings = 1; halvings <= options.most_halvings; ++halvings) {
      Eroder fine(grid, height, stiffness, options, choice, next_part(halved_work));
      std::vector<ErosionState> states = fine.follow(at, taken, 1 << halvings);
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
