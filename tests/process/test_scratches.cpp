#include <boost/math/constants/constants.hpp>
#include <boost/math/distributions/gamma.hpp>
#include <boost/math/quadrature/exp_sinh.hpp>
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/process/scratches.hpp"
#include "libtexture/surface/specular_share.hpp"
#include "machine.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

constexpr double degree = boost::math::constants::degree<double>();

Array2d uniform(double removal_um) {
  return Array2d::Constant(1, 1, removal_um);
}

Array2d two_pixels(double first_um, double second_um) {
  Array2d map(1, 2);
  map << first_um, second_um;
  return map;
}

constexpr int level_step = 0, refine_step = 1, polish_step = 2;  // places in the sequence

GrooveFigures grooves(int step, double depth_um) {
  GrooveFigures figures;
  figures.step = step;
  figures.depth_um = depth_um;
  figures.groove_length_mm = 5;
  return figures;
}

Scratches after(const GrooveFigures& figures, double removal_um) {
  Scratches scratches;
  scratch(scratches, figures, uniform(removal_um));
  return scratches;
}

// Groove under a cone of the given half-angle: F = (pi/2) a^2 H, depth = a cot(alpha) (Rabinowicz, Friction
// and Wear of Materials, from memory), the force of each grain being the pressure on its square of
// spacing_in_grains d.
double cone_groove_um(double half_angle_deg, double spacing_in_grains, double pressure_kpa, double grain_um) {
  const double spacing_m = spacing_in_grains * grain_um * 1e-6;
  const double force_n = pressure_kpa * 1e3 * spacing_m * spacing_m;
  const double pi = boost::math::constants::pi<double>();
  return 1e6 / std::tan(half_angle_deg * degree) * std::sqrt(2 * force_n / (pi * 200e6));
}

Abrasive film_disc(double grain_um) {
  Abrasive abrasive;
  abrasive.name = "film disc";
  abrasive.grit = Grit::of_median_um(grain_um);
  abrasive.wear_rate_mm3_per_n_m = 0.1;
  abrasive.worn_wear_rate_mm3_per_n_m = 0.03;
  abrasive.loading_um = 150;
  return abrasive;
}

}  // namespace

TEST_CASE("the groove depth of film discs is that of cones on their own squares of carrier") {
  // Worked grooves (closed form of the cone groove): 75 degrees, spacing 28 d, 1.415 kPa, 200 MPa. Grains
  // fixed to the carrier: m = 1/2. The default is 0.164 um at 1.4 kPa: tolerance 1 %.
  struct Row {
    double grain_um, depth_um;
  };
  for (const Row& row : {Row{12.6, .201}, Row{10.3, .164}, Row{8.4, .134}}) {
    CHECK(cone_groove_um(75, 28, 1.415, row.grain_um) == Approx(row.depth_um).margin(5.1e-4));
    Abrasive abrasive = film_disc(row.grain_um);
    abrasive.groove_pressure_exponent = 0.5;
    CHECK(groove_depth_um(abrasive, Wetness::dry, 1.415, 1, 200) == Approx(row.depth_um).epsilon(0.01));
  }
}

TEST_CASE("fixed grains follow the cone groove over pressure, hardness and contact share") {
  // Sharper cones, denser: 60 degrees, spacing 10 d, 10 kPa (closed form, three decimals).
  struct Row {
    double grain_um, depth_um;
  };
  for (const Row& row : {Row{12.6, .410}, Row{10.3, .336}, Row{8.4, .274}}) {
    Abrasive abrasive = film_disc(row.grain_um);
    abrasive.groove_pressure_exponent = 0.5;
    abrasive.groove_depth_um = cone_groove_um(60, 10, 1.4, row.grain_um);
    CHECK(groove_depth_um(abrasive, Wetness::dry, 10, 1, 200) == Approx(row.depth_um).margin(5.1e-4));
    CHECK(groove_depth_um(abrasive, Wetness::dry, 2, 0.2, 200) == Approx(row.depth_um).margin(5.1e-4));
    CHECK(groove_depth_um(abrasive, Wetness::dry, 10, 1, 800) == Approx(row.depth_um / 2).margin(5.1e-4));
  }
}

TEST_CASE("shared load makes the depth depend little on pressure") {
  const Abrasive abrasive = film_disc(12.6);
  const double ratio = groove_depth_um(abrasive, Wetness::dry, 2.8, 1, 200) /
                       groove_depth_um(abrasive, Wetness::dry, 1.4, 1, 200);
  CHECK(ratio == Approx(std::pow(2, 0.25)).epsilon(1e-12));
}

TEST_CASE("a groove is as long as the orbit, or as the disc where there is none") {
  Motion motion = machine::orbital_150_mm();
  CHECK(groove_length_mm(motion) == 5);
  motion.orbit_mm = 0;
  CHECK(groove_length_mm(motion) == 150);
}

TEST_CASE("the figures of a step's grooves are the abrasive's") {
  Abrasive abrasive = film_disc(12.6);
  abrasive.groove_coverage = 4;
  abrasive.groove_depth_cap = 6;
  abrasive.groove_half_angle_deg = 70;
  abrasive.stray_marks_per_dm2_um = 0.1;
  CHECK(groove_figures(1, abrasive, machine::orbital_150_mm(), 0.2) ==
        GrooveFigures{1, 0.2, 4, 6, 70, 5, 0.1});
}

TEST_CASE("a population grows as its own removal replaces old grooves by new ones") {
  // dK/dR = (K_inf - K)/delta, here by 20 000 explicit midpoint steps: second order, error about 1e-8.
  const GrooveFigures figures = grooves(level_step, 0.2);
  const double removal_um = 0.37;
  const int steps = 20000;
  const double increment = removal_um / steps / figures.depth_um;
  double coverage = 0;
  for (int i = 0; i < steps; ++i) {
    const double middle = coverage + increment / 2 * (figures.coverage - coverage);
    coverage += increment * (figures.coverage - middle);
  }
  CHECK(coverage_map(after(figures, removal_um), 0)(0, 0) == Approx(coverage).epsilon(1e-7));
}

TEST_CASE("a finished population is at its fixed point") {
  const GrooveFigures figures = grooves(level_step, 0.2);
  Scratches scratches = after(figures, 8);
  CHECK(coverage_map(scratches, 0)(0, 0) == Approx(figures.coverage).epsilon(1e-12));
  scratch(scratches, figures, uniform(3));
  CHECK(coverage_map(scratches, 0)(0, 0) == Approx(figures.coverage).epsilon(1e-12));
}

TEST_CASE("later removal leaves exp(-R/delta) of a population") {
  // Closed form, docs/physics.md (31).
  Scratches scratches = after(grooves(level_step, 0.2), 8);
  scratch(scratches, grooves(refine_step, 0.085), uniform(0.5));
  CHECK(coverage_map(scratches, 0)(0, 0) == Approx(5 * std::exp(-2.5)).epsilon(1e-12));
  CHECK(surviving_share(0.5, 0.2) == Approx(std::exp(-2.5)).epsilon(1e-14));
}

TEST_CASE("the split into passes changes nothing, pixel by pixel") {
  Scratches once;
  Scratches in_passes;
  for (const int step : {level_step, refine_step}) {
    const GrooveFigures figures = grooves(step, step == level_step ? 0.2 : 0.085);
    scratch(once, figures, two_pixels(0.9, 0.25));
    scratch(in_passes, figures, two_pixels(0.9, 0));
    scratch(in_passes, figures, two_pixels(0, 0.25));
  }
  REQUIRE(in_passes.populations.size() == 2);
  for (const int index : {0, 1})
    CHECK((coverage_map(in_passes, index) - coverage_map(once, index)).abs().maxCoeff() < 1e-14);
  CHECK(clear_owed_um(in_passes) == clear_owed_um(once));
}

TEST_CASE("a valley that later passes do not reach keeps its old grooves and gets no new ones") {
  Scratches scratches;
  scratch(scratches, grooves(level_step, 0.2), two_pixels(2, 2));
  const double old = coverage_map(scratches, 0)(0, 1);
  scratch(scratches, grooves(refine_step, 0.1), two_pixels(1, 0));
  scratch(scratches, grooves(polish_step, 0.05), two_pixels(1, 0));
  CHECK(coverage_map(scratches, 0)(0, 1) == old);
  CHECK(coverage_map(scratches, 1)(0, 1) == 0);
  CHECK(coverage_map(scratches, 2)(0, 1) == 0);
}

TEST_CASE("area means follow the removal of each pixel over passes, not products of means") {
  // Closed form, docs/physics.md (32), pixel by pixel.
  Scratches scratches;
  scratch(scratches, grooves(level_step, 0.2), two_pixels(4, 4));
  scratch(scratches, grooves(refine_step, 0.1), two_pixels(0.5, 0.1));
  scratch(scratches, grooves(polish_step, 0.05), two_pixels(0.4, 0.1));
  const double full = -5 * std::expm1(-20);
  CHECK(coverage_map(scratches, 0).mean() ==
        Approx(full * (std::exp(-4.5) + std::exp(-1.)) / 2).epsilon(1e-12));
  const double product_of_means =
      full * (std::exp(-2.5) + std::exp(-0.5)) / 2 * (std::exp(-2.) + std::exp(-0.5)) / 2;
  CHECK(coverage_map(scratches, 0).mean() > 1.3 * product_of_means);
}

TEST_CASE("parts of like pixels keep the area mean of each coverage") {
  Scratches scratches;
  const Array2d height = Array2d::Random(64, 64) + 1;  // -1..1 + 1
  scratch(scratches, grooves(level_step, 0.2), 0.5 * height);
  scratch(scratches, grooves(refine_step, 0.085), (0.3 * height - 0.2).max(0));
  const std::vector<DepthLaw> parts = depth_laws(scratches);
  double mean = 0;
  for (const DepthLaw& part : parts)
    for (const GroovePopulation& population : part.grooves)
      mean += population.depth_um == 0.2 ? part.area_share * population.coverage : 0;
  CHECK(mean == Approx(coverage_map(scratches, 0).mean()).epsilon(1e-12));
  CHECK(parts.size() < 200);
  const Array2d first = coverage_map(scratches, 0);
  const Array2d second = coverage_map(scratches, 1);
  for (const double z : {0.0, 0.1, 0.4}) {
    const double pixel_by_pixel =
        1 - (-first * std::exp(-z / 0.2) - second * std::exp(-z / 0.085)).exp().mean();
    CHECK(deeper_share(parts, z) == Approx(pixel_by_pixel).margin(0.002));  // twice what the header expects
  }
}

TEST_CASE("the map of mirrored light is shiny where nothing was cut, and its mean is that of the parts") {
  Scratches scratches;
  const Array2d height = Array2d::Random(64, 64);
  scratch(scratches, grooves(level_step, 0.2), (2 * height).max(0));
  scratch(scratches, grooves(refine_step, 0.085), (height - 0.3).max(0));
  const Array2d map = specular_share_map(scratches, 45);
  CHECK(((height <= 0) && (map < 1)).count() == 0);
  double mean = 0;
  for (const DepthLaw& part : depth_laws(scratches))
    mean += part.area_share * specular_share(part.grooves, 45);
  CHECK(map.mean() == Approx(mean).epsilon(1e-12));
  // Pixel by pixel, without grouping. Coverages of a part differ by up to 5/32, and the light, |A|^2 with A
  // about exp(-K), by 1 - exp(-10/32); few pixels are as lightly marked as that.
  const Array2d first = coverage_map(scratches, 0), second = coverage_map(scratches, 1);
  double gap = 0;
  int count = 0;
  for (Eigen::Index pixel = 0; pixel < map.size(); pixel += 37, ++count) {
    const double alone = specular_share({{0.2, first.data()[pixel]}, {0.085, second.data()[pixel]}}, 45);
    CHECK(map.data()[pixel] == Approx(alone).margin(0.27));
    gap += std::abs(map.data()[pixel] - alone);
  }
  CHECK(gap / count < 0.01);
  CHECK(specular_share_map({}, 45)(0, 0) == 1);
}

TEST_CASE("an interface pad lets stray grains sink in: half the deep marks of a hard pad") {
  // Stiffness of the layers in series: 10 mm of .2 MPa under hook-and-loop, and 8 mm of 3 MPa (estimates).
  const Layer hook{.modulus_mpa = 0.5, .thickness_mm = 1.5, .poisson = 0};
  Backing pad, hard;
  pad.layers = {hook, {.modulus_mpa = 0.2, .thickness_mm = 10, .poisson = 0.1}};
  hard.layers = {hook, {.modulus_mpa = 3, .thickness_mm = 8, .poisson = 0.3}};
  CHECK(stray_marks_factor(pad) == 1);
  CHECK(stray_marks_factor(hard) == 2);
  CHECK(stray_marks_factor(Backing::rigid()) == 2);
}

TEST_CASE("an unmarked patch owes nothing") {
  const Scratches none;
  CHECK(unmarked_share(depth_laws(none)) == 1);
  CHECK(clear_owed_um(none) == 0);
  CHECK(deepest_groove_um(none) == 0);
  CHECK(stray_marks(none, 0, 1) == 0);
}

TEST_CASE("uneven dwell lets more of a population survive") {
  // Mean of exp(-f R/delta) over gamma-distributed f of mean 1, by quadrature of the density of Boost.Math.
  const double cv = 0.2;
  const boost::math::gamma_distribution<> dwell(1 / (cv * cv), cv * cv);
  const auto integrand = [&](double f) { return boost::math::pdf(dwell, f) * std::exp(-f * 1.3 / 0.2); };
  const double mean = boost::math::quadrature::exp_sinh<double>().integrate(integrand);
  CHECK(surviving_share(1.3, 0.2, cv) == Approx(mean).epsilon(1e-8));
  CHECK(surviving_share(1.3, 0.2, cv) > 1.5 * surviving_share(1.3, 0.2));
  CHECK(surviving_share(1.3, 0.2, 1e-5) == Approx(surviving_share(1.3, 0.2)).epsilon(1e-8));
}

TEST_CASE("the clear that the next step owes for the usual abrasives") {
  // Estimates of this project from delta, to two digits (half of the last one is the tolerance): P1000 and
  // P2000 film on an interface pad, P2000 hard, foam-backed P3000, compound, finishing polish. Orbit 5 mm, 7
  // mean depths deep.
  struct Row {
    double depth_um, owed_um, margin_um;
  };
  for (const Row& row : {Row{.29, 1.9, .05}, Row{.164, 1.05, .005}, Row{.19, 1.2, .05}, Row{.085, .5, .05},
                         Row{.0125, 0, 1e-9}, Row{.0035, 0, 1e-9}}) {
    const Scratches scratches = after(grooves(level_step, row.depth_um), 40 * row.depth_um);
    CHECK(clear_owed_um(scratches) == Approx(row.owed_um).margin(row.margin_um));
    const double by_cap = std::max(0.0, 7 * row.depth_um - 0.1);  // the cap rules: closed form
    CHECK(clear_owed_um(scratches) == Approx(by_cap).margin(1e-8));
  }
}

TEST_CASE("where grooves are few their number rules the clear owed, not the cap") {
  // N = K/(2 delta tan(alpha) L); clear owed = delta ln(N/N_v) - z_v (closed form).
  GrooveFigures figures = grooves(level_step, 0.2);
  figures.coverage = 0.01;
  figures.depth_cap = 50;
  const Scratches scratches = after(figures, 8);
  const double per_mm2 = 0.01 / (2 * 0.2e-3 * std::tan(75 * degree) * 5);
  CHECK(grooves_per_cm2(scratches, 0) == Approx(100 * per_mm2).epsilon(1e-12));
  CHECK(clear_owed_um(scratches) == Approx(0.2 * std::log(100 * per_mm2) - 0.1).margin(1e-8));
  CHECK(clear_owed_um(scratches, Marks::all, {0.3, 2}) ==
        Approx(0.2 * std::log(50 * per_mm2) - 0.3).margin(1e-8));
  CHECK(deepest_groove_um(scratches) == Approx(0.2 * std::log(1e4 * per_mm2)).margin(1e-8));
}

TEST_CASE("removing the clear owed leaves just what the limits allow") {
  Scratches scratches;
  scratch(scratches, grooves(level_step, 0.2), two_pixels(2, 0.1));
  scratch(scratches, grooves(refine_step, 0.12), two_pixels(0.4, 0.2));
  const double owed_um = clear_owed_um(scratches);
  GrooveFigures smooth = grooves(level_step, 1e-6);  // cuts without grooves that count
  scratch(scratches, smooth, two_pixels(owed_um + 1e-6, owed_um + 1e-6));
  CHECK(grooves_per_cm2(scratches, 0.1) <= 1);
  CHECK(clear_owed_um(scratches) == 0);
  scratches.populations.back().removal_um -= 1e-3;
  CHECK(grooves_per_cm2(scratches, 0.1) > 1);
}

TEST_CASE("a refinement's own grooves count after it") {
  // Closed form: the cap rules, 7 x 0.2 - 0.1 = 1.3 um less what was removed, docs/physics.md (37).
  Scratches scratches = after(grooves(level_step, 0.2), 5);
  CHECK(clear_owed_um(scratches, Marks::earlier) == 0);
  scratch(scratches, grooves(refine_step, 0.085), uniform(0.6));
  CHECK(clear_owed_um(scratches, Marks::earlier) == Approx(1.3 - 0.6).margin(1e-8));
  CHECK(clear_owed_um(scratches) == Approx(1.3 - 0.6).margin(1e-8));
  scratch(scratches, grooves(refine_step, 0.085), uniform(0.8));
  CHECK(clear_owed_um(scratches, Marks::earlier) == 0);
  CHECK(clear_owed_um(scratches) == Approx(7 * 0.085 - 0.1).margin(1e-8));
  const std::vector<double> each = clear_owed_by_population_um(scratches);
  CHECK(each[0] == 0);
  CHECK(each[1] == Approx(7 * 0.085 - 0.1).margin(1e-8));
}

TEST_CASE("the same grooves cut by a later step are those of another step") {
  // The rule itself: a step is known by its place. One abrasive twice leaves debt to the second step.
  Scratches scratches = after(grooves(level_step, 0.2), 5);
  scratch(scratches, grooves(refine_step, 0.2), uniform(0.1));
  CHECK(scratches.populations.size() == 2);
  CHECK(clear_owed_um(scratches, Marks::earlier) == Approx(1.3 - 0.1).margin(1e-8));
}

TEST_CASE("a step whose grooves change from pass to pass stays one step") {
  // Closed forms, docs/physics.md (30), (31) and (37): 7 x 0.2 - 0.1 = 1.3 um less 0.3.
  Scratches scratches = after(grooves(level_step, 0.2), 5);
  scratch(scratches, grooves(refine_step, 0.12), uniform(0.1));
  scratch(scratches, grooves(refine_step, 0.10), uniform(0.2));
  REQUIRE(scratches.populations.size() == 3);
  const double first_pass = -5 * std::expm1(-0.1 / 0.12);  // then worn by the second pass
  CHECK(coverage_map(scratches, 1)(0, 0) == Approx(first_pass * std::exp(-0.2 / 0.12)).epsilon(1e-12));
  CHECK(clear_owed_um(scratches, Marks::earlier) == Approx(1.3 - 0.3).margin(1e-8));
}

TEST_CASE("a summary says what each question about the scratches is answered alone") {
  Scratches scratches;
  GrooveFigures coarse = grooves(level_step, 0.2);
  coarse.stray_marks_per_dm2_um = 0.3;
  scratch(scratches, coarse, two_pixels(2, 0.5));
  scratch(scratches, grooves(refine_step, 0.08), two_pixels(0.4, 0.6));
  const ScratchLimits limits{.visible_depth_um = 0.15, .marks_per_cm2 = 5};
  const ScratchSummary summary = summary_of(scratches, limits);
  CHECK(depth_rms_nm(summary.laws) == depth_rms_nm(depth_laws(scratches)));
  CHECK(summary.deepest_um == deepest_groove_um(scratches));
  CHECK(summary.marks_per_cm2 == grooves_per_cm2(scratches, 0.15));
  CHECK(summary.stray_marks_per_dm2 == stray_marks(scratches, 0.15, 1));
  CHECK(summary.clear_owed_um == clear_owed_um(scratches, Marks::all, limits));
  CHECK(summary.earlier_clear_owed_um == clear_owed_um(scratches, Marks::earlier, limits));
  const ScratchSummary of_one_step = summary_of(after(coarse, 2), limits);
  CHECK(of_one_step.clear_owed_um > 0);
  CHECK(of_one_step.earlier_clear_owed_um == 0);
  CHECK(summary_of({}, limits).clear_owed_um == 0);
}

TEST_CASE("stray marks are as many as the clear that was cut, and few of them are deep") {
  // Closed form, docs/physics.md (38).
  GrooveFigures figures = grooves(level_step, 0.2);
  figures.stray_marks_per_dm2_um = 0.05;
  Scratches scratches = after(figures, 1);
  CHECK(stray_marks(scratches, 0.1, 20) ==
        Approx(0.05 * 1 * 20).epsilon(1e-12));  // all reach below the cap of 1.4 um
  CHECK(stray_mark_probability(scratches, 0.1, 20) == Approx(1 - std::exp(-1.)).epsilon(1e-12));
  // Beyond the cap Exp(3 delta): made at removal t of 1 um, a mark has lost 1 - t since. Sum over 10^4
  // midpoints.
  double sum = 0;
  for (int i = 0; i < 10000; ++i) {
    const double worn_um = (i + 0.5) / 10000;
    sum += std::exp(-std::max(0.0, 0.9 + worn_um - 1.4) / 0.6) / 10000;
  }
  CHECK(stray_marks(scratches, 0.9, 20) == Approx(sum).epsilon(1e-7));
  // Once worn past the cap they decay as exp(-R/(3 delta)).
  scratch(scratches, grooves(refine_step, 0.085), uniform(1.4));
  const double before = stray_marks(scratches, 0.1, 20);
  scratch(scratches, grooves(refine_step, 0.085), uniform(0.6));
  CHECK(stray_marks(scratches, 0.1, 20) == Approx(before * std::exp(-1.)).epsilon(1e-12));
}

TEST_CASE("bad scratch input is refused by name") {
  Scratches scratches = after(grooves(level_step, 0.2), 1);
  CHECK_THROWS_WITH(scratch(scratches, grooves(refine_step, 0.1), two_pixels(1, 1)),
                    "scratch: removal_um must have the shape of the earlier maps (got 1 x 2)");
  CHECK_THROWS_WITH(scratch(scratches, grooves(refine_step, 0.1), uniform(-1)),
                    "scratch: removal_um must be >= 0 (got -1 um)");
  CHECK_THROWS_WITH(scratch(scratches, grooves(refine_step, 0), uniform(1)),
                    "GrooveFigures: depth_um must be > 0 (got 0 um)");
  CHECK_THROWS_WITH(groove_depth_um(film_disc(12.6), Wetness::dry, 1.4, 1.2, 200),
                    "groove_depth_um: contact_share must be > 0 and <= 1 (got 1.2)");
  CHECK_THROWS_AS(coverage_map(scratches, 1), InvalidInput);
  CHECK_THROWS_AS(clear_owed_um(scratches, Marks::all, {0.1, 0}), InvalidInput);
}
