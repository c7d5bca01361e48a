#include <numbers>

#include "catch.hpp"
#include "door.hpp"
#include "libtexture/io/catalogue.hpp"
#include "libtexture/plan/worked_panel.hpp"

using namespace libtexture;
using Catch::Approx;

TEST_CASE("a feather takes the work of its dose, the volume of a truncated cone over its height") {
  CHECK(dose_area_m2(200, 0) == Approx(std::numbers::pi * 0.01));
  CHECK(dose_area_m2(200, 75) == Approx(std::numbers::pi / 3 * (0.01 + 0.1 * 0.175 + 0.175 * 0.175)));
  // The same by adding up rings of a dose that falls to nothing.
  const int rings = 20000;
  double sum = std::numbers::pi * 0.01;
  for (int ring = 0; ring < rings; ++ring) {
    const double share = (ring + 0.5) / rings, radius = 0.1 + 0.075 * share;
    sum += (1 - share) * 2 * std::numbers::pi * radius * 0.075 / rings;
  }
  CHECK(dose_area_m2(200, 75) == Approx(sum).epsilon(1e-8));
  // A mean half dose on the ring is an upper bound: more of it lies outside.
  const double ring = std::numbers::pi * (0.175 * 0.175 - 0.01);
  CHECK(dose_area_m2(200, 75) < std::numbers::pi * 0.01 + ring / 2);
}

TEST_CASE("a patch is worked and its feather is the disc's radius; no more than the panel, and no edges") {
  const Motion disc = shipped_catalogue().motions.at("150 mm light");
  Panel panel = door::job().panel.front();
  panel.edge_length_m = 3;
  CHECK(worked_panel(panel, std::nullopt, disc) == panel);
  CHECK(worked_panel(panel, Defect{.depth_um = 3}, disc) == panel);
  const Panel worked = worked_panel(panel, Defect{.depth_um = 3, .patch_mm = 200}, disc);
  CHECK(worked.area_m2 == dose_area_m2(200, 75));
  CHECK(!worked.edge_length_m);
  CHECK(worked_panel(panel, Defect{.depth_um = 3, .patch_mm = 1000, .feather_mm = 500}, disc).area_m2 ==
        panel.area_m2);
}

TEST_CASE("a patch with a place has the film that is expected there") {
  Job job = door::job();
  job.panel.front().readings = {{.x_mm = 0, .y_mm = 0, .total_um = 200},
                                {.x_mm = 900, .y_mm = 0, .total_um = 260}};
  const Panel& panel = job.panel.front();
  const Film thinnest = film_worked(panel, job.coating, Defect{.depth_um = 3, .patch_mm = 100});
  const Film there =
      film_worked(panel, job.coating, Defect{.depth_um = 3, .patch_mm = 100, .x_mm = 900, .y_mm = 0});
  CHECK(there.clear_um > thinnest.clear_um);
  // All over, the thinnest place decides, wherever the defect is.
  CHECK(film_worked(panel, job.coating, Defect{.depth_um = 3, .x_mm = 900, .y_mm = 0}).clear_um ==
        thinnest.clear_um);
}
