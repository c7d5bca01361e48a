// What a person sees mirrored in a panel while it is worked: common practice, no source. Every picture is
// made of what simulate() left behind with the catalogue's own tools: the surface, and the scratches at each
// pixel.
#include <algorithm>
#include <cmath>

#include "catch.hpp"
#include "libtexture/process/sequence.hpp"
#include "libtexture/surface/image_clarity.hpp"
#include "libtexture/surface/reflection.hpp"
#include "libtexture/surface/texture.hpp"
#include "steps.hpp"

using namespace libtexture;
using steps::step_of;

namespace {

const Coating coating{{{.name = "clear", .thickness_um = 60}}};
const Grid grid{128, 128, 0.4};
const ReflectionView view{.rows = 256, .cols = 256};  // at 45 degrees; 5.9 mm of the scene a pixel
constexpr double scene_pixel_mm = 3 * 500.0 / 256;    // the scene looks three times smaller (3 m to 1 m)

const History& worked() {
  static const History history = [] {
    std::vector<Step> steps{step_of("P1200 film", "film on firm interface", "150 mm light", 16),
                            step_of("P3000 foam-backed", "foam-backed disc on pad", "150 mm light", 12),
                            step_of("compound", "compound on fibre", "150 mm compound", 10),
                            step_of("finishing polish", "polish on foam", "150 mm finishing", 3)};
    steps[0].stop.touched_share = 0.995;
    steps[1].stop.clear_owed_um = 0.1;
    steps[2].stop.clear_owed_um = 0.05;
    const HeightField surface =
        synthesize({{.wavelength_mm = 2.5, .rms_um = 0.7}, {.wavelength_mm = 6, .rms_um = 0.5}}, grid, 5);
    return simulate(surface, coating, steps);
  }();
  return history;
}

Array2d seen_before() {
  return render_reflection(worked().before, Array2d::Constant(1, 1, 1.0), view);
}

Array2d seen_after(std::size_t step) {
  return render_reflection(worked().surfaces[step],
                           specular_share_map(worked().scratches[step], view.angle_deg), view);
}

Array2d ideal() {
  return render_reflection(HeightField(Array2d::Zero(8, 8), 1), Array2d::Constant(1, 1, 1.0), view);
}

/// The picture about a place of the scene, right of its middle and above it.
Array2d around(const Array2d& picture, double right_mm, double up_mm, int pixels) {
  const auto row = static_cast<Eigen::Index>(std::lround(127.5 - up_mm / scene_pixel_mm));
  const auto col = static_cast<Eigen::Index>(std::lround(127.5 + right_mm / scene_pixel_mm));
  return picture.block(row - pixels / 2, col - pixels / 2, pixels, pixels);
}

/// Contrast of the middle lamp against the wall beside it.
double lamp_contrast(const Array2d& picture) {
  const double lamp = around(picture, 0, shelf::lamp_up_mm, 9).mean();
  const double wall = around(picture, shelf::lamp_spacing_mm / 2, shelf::lamp_up_mm, 9).mean();
  return (lamp - wall) / (lamp + wall);
}

/// Rms distance of the plumb line from a straight one [mm of the scene].
double line_wobble_mm(const Array2d& picture) {
  const int from = static_cast<int>(127.5 + (shelf::line_right_mm - 60) / scene_pixel_mm);
  std::vector<double> middles;
  for (int row = static_cast<int>(127.5 - 200 / scene_pixel_mm); row < 127.5 + 450 / scene_pixel_mm; ++row) {
    double weight = 0, moment = 0;
    for (int col = from; col < from + 20; ++col) {
      const double light = std::max(0.0, picture(row, col) - picture(row, from));
      weight += light;
      moment += light * col;
    }
    middles.push_back(moment / weight);
  }
  const Eigen::Map<const Eigen::ArrayXd> all(middles.data(), static_cast<Eigen::Index>(middles.size()));
  return std::sqrt((all - all.mean()).square().mean()) * scene_pixel_mm;
}

}  // namespace

TEST_CASE(
    "at 45 degrees a lamp is lost by the coarse step, outlined by foam-backed refinement, sharp after "
    "polish") {
  // A lamp can be made out from a contrast of about .05 (estimate, as lamp_visibility takes it).
  const double perfect = lamp_contrast(ideal());
  CHECK(lamp_contrast(seen_before()) > 0.5 * perfect);
  CHECK(std::abs(lamp_contrast(seen_after(0))) < 0.05);
  const double refined = lamp_contrast(seen_after(1));
  CHECK(refined > 0.05);
  CHECK(refined < 0.6 * perfect);
  CHECK(lamp_contrast(seen_after(3)) > 0.9 * perfect);
  // The rows say the same.
  CHECK(worked().steps[0].lamp_visibility < 0.05);
  CHECK(worked().steps[1].lamp_visibility > 0.05);
  CHECK(worked().steps[3].lamp_visibility > 0.9);
}

TEST_CASE(
    "no letter is read in the panel after the coarse step, larger ones after refinement, the finest at "
    "last") {
  const double limit_mm = limit_of_sight_mm(3);
  CHECK(*worked().start.smallest_letter_mm > 1.5 * limit_mm);
  CHECK_FALSE(worked().steps[0].smallest_letter_mm.has_value());
  CHECK(*worked().steps[1].smallest_letter_mm > 1.2 * limit_mm);
  CHECK(*worked().steps[3].smallest_letter_mm < 1.1 * limit_mm);
}

TEST_CASE("a straight line that wandered before is straight where the texture went") {
  const double before = line_wobble_mm(seen_before()), after = line_wobble_mm(seen_after(3));
  INFO("before " << before << ", after " << after);
  CHECK(after < 0.25 * before);
  // What the rows say, in the same words: an eye resolves 1 arcmin (ISO 8596), here .87 mm at 3 m.
  CHECK(worked().start.image_wander_arcmin > 1);
  CHECK(*worked().steps[3].smallest_letter_mm < *worked().start.smallest_letter_mm);
}

TEST_CASE("valleys that the coarse step did not touch show as shiny spots in a matt field") {
  Step coarse = step_of("P1200 film", "film on firm interface", "150 mm light", 4);
  coarse.stop.touched_share = 0.8;
  const History history = simulate(worked().before, coating, {coarse});
  REQUIRE(history.steps[0].touched_share < 0.97);
  const Array2d share = specular_share_map(history.scratches[0], view.angle_deg);
  const Array2d removed = history.before.height_um() - history.surfaces[0].height_um();
  CHECK(((removed <= 0) && (share < 0.99)).count() == 0);  // nothing touched, nothing lost
  CHECK(((removed > 2) && (share > 0.05)).count() == 0);
  // Within the lamp, well inside its rim: spots more than twice as bright as the field, which a pooled share
  // hides.
  const Array2d over_lamp =
      around(render_reflection(history.surfaces[0], share, view), 0, shelf::lamp_up_mm, 11);
  const Array2d evened =
      around(render_reflection(history.surfaces[0], Array2d::Constant(1, 1, share.mean()), view), 0,
             shelf::lamp_up_mm, 11);
  CHECK(over_lamp.maxCoeff() > 2 * over_lamp.minCoeff());
  CHECK(evened.maxCoeff() < 1.3 * evened.minCoeff());
}
