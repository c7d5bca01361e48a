// The solvers measured: transform pairs and seconds, beside the classic method, with an outside checker and
// the gates. libtexture_benchmarks [FIGURES.json]

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <numbers>
#include <string>
#include <vector>

#include "allocations.hpp"
#include "battery.hpp"
#include "classic_projected_cg.hpp"
#include "figures.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/io/job_file.hpp"
#include "libtexture/numerics/contact.hpp"
#include "libtexture/numerics/erosion.hpp"
#include "libtexture/numerics/plane_transform.hpp"
#include "libtexture/plan/calibrate.hpp"
#include "libtexture/plan/compare.hpp"
#include "libtexture/plan/predict.hpp"
#include "libtexture/plan/recommend.hpp"
#include "libtexture/plan/spot_curves.hpp"
#include "libtexture/process/scratches.hpp"
#include "libtexture/surface/image_clarity.hpp"
#include "libtexture/surface/reflection.hpp"
#include "libtexture/surface/viewer.hpp"

using namespace libtexture;

namespace {

using Values = AlignedVector<double>;

constexpr double accuracy = 1e-6;  // asked of all solves compared, by the outside checker
constexpr int most_classic_pairs = 2000;
const IncrementOptions increment_options{.residual_tolerance = 1e-7, .gap_tolerance = accuracy};

benchmark::Figures figures;

// Processor time of work on one thread: other work on the machine counts less than in time by the clock.
double seconds_of(const auto& work) {
  const std::clock_t start = std::clock();
  work();
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

// Mean time of one forward and one inverse transform.
double pair_seconds(const Grid& grid, int pairs) {
  Fft fft(grid);
  Values values(fft.real_size(), 1.0);
  Spectrum half(fft.half_size());
  return seconds_of([&] {
           for (int k = 0; k < pairs; ++k) {
             fft.forward(values, half);
             fft.inverse_unscaled(half, values);
           }
         }) /
         pairs;
}

// Processor time of the library's own transform over that of the build's: the median of rounds, each of one
// and then the other.
double own_over_build(const Grid& grid) {
  const Fft fft(grid);
  PlaneTransform own(grid.rows, grid.cols);
  Values values(fft.real_size());  // zeros, because pairs without a scale would let others grow without bound
  Spectrum half(fft.half_size());
  const int pairs = 1 + 1000000 / grid.size();
  const auto seconds_of_pairs = [&](const auto& pair) {
    return seconds_of([&] {
      for (int k = 0; k < pairs; ++k) pair();
    });
  };
  std::vector<double> ratios;
  for (int round = 0; round < 15; ++round) {
    const double of_build = seconds_of_pairs([&] {
      fft.forward(values, half);
      fft.inverse_unscaled(half, values);
    });
    const double of_own = seconds_of_pairs([&] {
      own.forward(values.data(), half.data());
      own.inverse(half.data(), values.data());
    });
    ratios.push_back(of_own / of_build);
  }
  std::sort(ratios.begin(), ratios.end());
  return ratios[ratios.size() / 2];
}

void run_transforms() {
  std::printf("Processor time of a transform pair: the library's own over that of the build\n");
  double worst = 0;
  for (const int n : {64, 128, 256, 512, 1024, 100, 243, 360, 600, 1000}) {
    const double ratio = own_over_build({n, n, .1});
    std::printf("  %4d x %-4d  %.2f\n", n, n, ratio);
    figures.add("own_transform.ratio_" + std::to_string(n), ratio);
    worst = std::max(worst, ratio);
  }
  for (const int n : {64, 512, 4096}) std::printf("     1 x %-4d  %.2f\n", n, own_over_build({1, n, .1}));
  figures.gate("own_transform.worst_ratio", worst, 2);
}

// A plate on springs of about a film disc on an interface pad, on 1.5 um of texture.
battery::Case typical(int n, double removal_m) {
  const Grid grid{n, n, .1};
  return {grid, battery::flat_band(grid, 1, 8, 1.5e-6, 1),
          battery::plate_on_springs(grid, 1.6e-4, 0, 3e7, 1500), removal_m};
}

benchmark::ClassicReport solve_classic(const battery::Case& c, Values& pressure) {
  Values compliance(c.stiffness.size(), 0.0);
  for (std::size_t k = 1; k < compliance.size(); ++k) compliance[k] = 1 / c.stiffness[k] + c.removal_m;
  return benchmark::solve_classic(c.grid, c.height_m, compliance, accuracy, most_classic_pairs, pressure);
}

struct Tally {
  std::vector<int> pairs;
  double greatest_error = 0;
  int failures = 0;

  void add(int transform_pairs, double error) {
    pairs.push_back(transform_pairs);
    greatest_error = std::max(greatest_error, error);
    failures += !(error <= accuracy);
  }
  int median() { return std::sort(pairs.begin(), pairs.end()), pairs[pairs.size() / 2]; }
  int worst() const { return *std::max_element(pairs.begin(), pairs.end()); }
  void print(const char* name) {
    std::printf("  %-32s %6d %6d %8d   %.1e\n", name, median(), worst(), failures, greatest_error);
  }
};

void run_battery() {
  std::printf(
      "\nLevelling increments, 40 random cases, N = 256, to %g\n  %-32s median  worst failures   greatest "
      "error\n",
      accuracy, "pairs");
  Tally ours, classic;
  for (int index = 0; index < 40; ++index) {
    const battery::Case c = battery::make_case(index);
    Values pressure;
    try {
      const int pairs = Increment(c.grid, c.stiffness)
                            .solve(c.height_m, c.removal_m, pressure, increment_options)
                            .transform_pairs;
      ours.add(pairs, battery::error_of(c, pressure));
    } catch (const NotConverged& stopped) {
      ours.add(stopped.iterations, HUGE_VAL);
    }
    const int pairs = solve_classic(c, pressure).transform_pairs;
    classic.add(pairs, battery::error_of(c, pressure));
  }
  ours.print("increment");
  classic.print("classic projected CG");
  figures.add("battery.classic_median_pairs", classic.median());
  figures.gate("battery.median_pairs", ours.median(), 15);
  figures.gate("battery.worst_pairs", ours.worst(), 80);
  figures.gate("battery.failures", ours.failures, 0);
}

void run_typical_increments() {
  std::printf("\nOne increment of a film disc on a pad, N = 512, to %g\n  %-32s   .5 um   .1 um   .05 um\n",
              accuracy, "pairs");
  int ours[3], classic[3], k = 0;
  for (const double removal_m : {.5e-6, .1e-6, .05e-6}) {
    const battery::Case c = typical(512, removal_m);
    Values pressure;
    ours[k] = Increment(c.grid, c.stiffness)
                  .solve(c.height_m, c.removal_m, pressure, increment_options)
                  .transform_pairs;
    classic[k++] = solve_classic(c, pressure).transform_pairs;
  }
  std::printf("  %-32s %7d %7d %8d\n", "increment", ours[0], ours[1], ours[2]);
  figures.add("increment_0_1_um.pairs", ours[1]);
  figures.add("increment_0_1_um.classic_pairs", classic[1]);
  std::printf("  %-32s %7d %7d %8d\n", "classic projected CG", classic[0], classic[1], classic[2]);
}

void run_times() {
  std::printf("\nProcessor time of an increment of .1 um over its pairs x one pair\n");
  for (const int n : {512, 1024}) {
    const battery::Case c = typical(n, .1e-6);
    Increment increment(c.grid, c.stiffness);
    Values pressure;
    int pairs = 0;
    double pair = 0, total = 0;
    constexpr int rounds = 4;  // both in turn, so that both meet the same machine
    for (int k = 0; k < rounds; ++k) {
      total += seconds_of([&] {
                 pairs =
                     increment.solve(c.height_m, c.removal_m, pressure, increment_options).transform_pairs;
               }) /
               rounds;
      pair += pair_seconds(c.grid, pairs) / rounds;
    }
    std::printf("  N = %-4d  %d pairs, %.3f s, one pair %.2f ms, ratio %.2f\n", n, pairs, total, 1e3 * pair,
                total / (pairs * pair));
    figures.gate("increment.seconds_over_pairs_" + std::to_string(n), total / (pairs * pair), 2.5);
  }
}

void run_allocations() {
  const battery::Case c = typical(256, .1e-6);
  Increment increment(c.grid, c.stiffness);
  Values pressure;
  increment.solve(c.height_m, c.removal_m, pressure, increment_options);
  const long before = benchmark::allocations();
  increment.solve(c.height_m, c.removal_m, pressure, increment_options);
  const auto made = static_cast<double>(benchmark::allocations() - before);
  std::printf("\nA second increment on one grid asks for memory %.0f times\n", made);
  figures.gate("increment.allocations", made, 0);
}

// A picture of the levelled surface beside an increment of the same size, on one thread each.
void run_reflection() {
  const battery::Case c = typical(512, .1e-6);
  Increment increment(c.grid, c.stiffness);
  Values pressure;
  const Array2d height_um = Eigen::Map<const Array2d>(c.height_m.data(), 512, 512) * 1e6;
  const HeightField field(height_um, c.grid.pixel_mm);
  const Array2d share = Array2d::Constant(512, 512, .5);
  const ReflectionView view{.rows = 512, .cols = 512};
  const ThreadLimit one(1);
  double increment_seconds = 0, picture_seconds = 0;
  constexpr int rounds = 4;  // both in turn, so that both meet the same machine
  for (int k = 0; k < rounds; ++k) {
    increment_seconds +=
        seconds_of([&] { increment.solve(c.height_m, c.removal_m, pressure, increment_options); }) / rounds;
    picture_seconds += seconds_of([&] { render_reflection(field, share, view); }) / rounds;
  }
  std::printf(
      "\nProcessor time of a mirrored scene, 512 x 512, against an increment of .1 um of that size\n");
  std::printf("  picture %.3f s, increment %.3f s, ratio %.2f\n", picture_seconds, increment_seconds,
              picture_seconds / increment_seconds);
  figures.gate("reflection.seconds_over_increment", picture_seconds / increment_seconds, 10);
}

// What a row of a history reads of a surface after four steps: its waves, and its scratches.
void run_row() {
  const battery::Case c = typical(512, .1e-6);
  const Array2d height_um = Eigen::Map<const Array2d>(c.height_m.data(), 512, 512) * 1e6;
  const HeightField field(height_um, c.grid.pixel_mm);
  const Viewer viewer;
  const SpotMean spot = pupil_spot(viewer, field.grid());
  const auto read_waves = [&] {
    const Waves waves(field);
    waves.band_rms_um({.5, 1, 2, 4, 8, 16});
    image_clarity_by_comb_percent(waves);
    seen_wander_arcmin(waves, viewer, spot);
    seen_smear_arcmin(waves, viewer);
  };
  Scratches scratches;
  int step = 0;
  for (const double depth_um : {.2, .1, .05, .02})
    scratch(scratches,
            {.step = step++, .depth_um = depth_um, .groove_length_mm = 5, .stray_marks_per_dm2_um = depth_um},
            (.3 * (height_um - height_um.mean()) + 1).max(0.0));
  double pair = 0, waves = 0, marks = 0;
  constexpr int rounds = 8;  // in turn, so that all meet the same machine
  for (int k = 0; k < rounds; ++k) {
    pair += pair_seconds(field.grid(), 10) / rounds;
    waves += seconds_of(read_waves) / rounds;
    marks += seconds_of([&] { summary_of(scratches); }) / rounds;
  }
  std::printf("\nProcessor time of a row of a history, 512 x 512, in transform pairs of that size\n");
  std::printf("  waves %.1f, scratches %.1f, a pair %.2f ms\n", waves / pair, marks / pair, 1e3 * pair);
  figures.gate("row.waves_pairs", waves / pair, 20);
  figures.gate("row.scratches_pairs", marks / pair, 80);
}

void run_contact() {
  const Grid grid{512, 512, .1};
  const double pressure_pa = 5.9e5;
  const Values height = battery::flat_band(grid, 1, 8, 1.5e-6, 1);
  Values stiffness, compliance, pressure, gap;
  for (const double q : wave_numbers_per_m(grid)) {
    stiffness.push_back(1e9 * q / 2);  // a half-space of 1 GPa
    compliance.push_back(q > 0 ? pressure_pa / stiffness.back() : 0);
  }
  ContactReport solved;
  Contact contact(grid, stiffness);
  const double seconds = seconds_of(
      [&] { solved = contact.solve(height, pressure_pa, pressure, gap, {.tolerance = accuracy}); });
  benchmark::ClassicReport classic;
  const double classic_seconds = seconds_of([&] {
    classic = benchmark::solve_classic(grid, height, compliance, accuracy, most_classic_pairs, pressure);
  });
  std::printf("\nContact at rest on a half-space, N = 512, %.0f %% in contact, to %g\n",
              100 * solved.contact_share, accuracy);
  std::printf("  %-32s %6d pairs  %.2f s\n", "contact", solved.transform_pairs, seconds);
  std::printf("  %-32s %6d pairs  %.2f s\n", "classic projected CG", classic.transform_pairs,
              classic_seconds);
  figures.add("contact.classic_pairs", classic.transform_pairs);
  figures.gate("contact.pairs", solved.transform_pairs, 100);
}

void run_levelling() {
  std::printf("\nLevelling by 5 um, N = 512, amplitudes to 1e-3 um\n");
  battery::Case c = typical(512, 0);
  for (double& h : c.height_m) h *= 1e6;
  for (double& s : c.stiffness) s *= 1e-6;
  const double pair = pair_seconds(c.grid, 20);
  for (const std::vector<double>& at_um : {std::vector<double>{5}, {.5, 1, 2, 3, 5}}) {
    Erosion run;
    const double seconds = seconds_of([&] { run = erode(c.grid, c.height_m, c.stiffness, at_um); });
    std::printf("  %zu reports: %d increments, %d pairs, %.1f s, ratio %.2f, error %.1e um\n", at_um.size(),
                run.increments, run.transform_pairs, seconds, seconds / (run.transform_pairs * pair),
                run.amplitude_error);
    figures.add("level_5_um.pairs_" + std::to_string(at_um.size()) + "_reports", run.transform_pairs);
  }
}

// Whole answers, in transform pairs of the job's own patch: processor time of all threads over that of a
// pair.
void run_plans() {
  const Job job = load_job(LIBTEXTURE_SOURCE_DIR "/examples/jobs/rear_door.toml");
  const HeightField surface = surface_of(job);
  const TestSpot spot{.passes = 6,
                      .before_um = {262, 260, 259, 263, 261, 260},
                      .after_um = {256, 255, 253, 257, 256, 254},
                      .gloss_gone_passes = 5};
  std::printf("\nWhole answers for the rear door (512 x 512), in transform pairs of that size\n");
  const auto measure = [&](const char* name, int wished, const auto& work) {
    const double before = pair_seconds(surface.grid(), 50);
    const double seconds = seconds_of(work);
    const double pair = (before + pair_seconds(surface.grid(), 50)) / 2;
    std::printf("  %-32s %7.0f pairs (%d are wished for)  %.1f s\n", name, seconds / pair, wished, seconds);
    figures.add(std::string(name) + ".pairs", seconds / pair);
  };
  measure("predict", 2500, [&] { predict(job, surface, ""); });
  measure("compare", 6000, [&] { compare(job, surface); });
  measure("recommend", 8000, [&] { recommend(job, surface, tools_of(job)); });
  measure("calibrate", 6000, [&] {
    const Calibration calibration = calibrate(job, spot, curves_of(job, spot, surface));
    predict(job, surface, "");
    predict(calibration.job, surface, "");
  });
}

}  // namespace

int main(int count, char** words) {
  run_transforms();
  run_battery();
  run_typical_increments();
  run_times();
  run_allocations();
  run_reflection();
  run_row();
  run_contact();
  run_levelling();
  run_plans();
  if (count > 1) figures.write(words[1]);
  std::printf("\n%s\n", figures.missed_gates() == 0 ? "All gates met." : "A gate was missed.");
  return figures.missed_gates() == 0 ? 0 : 1;
}
