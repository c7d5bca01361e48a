#include <algorithm>
#include <array>
#include <cmath>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/numerics/plate_on_springs.hpp"
#include "round_plate.hpp"

using namespace libtexture;

namespace {

// The dish of a plate of stiffness 1 on springs of stiffness 1 by finite volumes: 40 rings within the load,
// and ten lengths of the plate beyond it.
PlateDish dish_in_rings(double radius) {
  const int within = 40;
  const round_plate::Rings rings{within + static_cast<int>(10 / radius * within), radius / within};
  const auto solver = round_plate::stiffness(rings, 1, 1).partialPivLu();
  const auto deeper = [&](auto&& load) {
    Eigen::VectorXd pressure = Eigen::VectorXd::Zero(rings.count);
    for (int i = 0; i < within; ++i) {
      const double s = rings.radius(i) * rings.radius(i) / (radius * radius);
      pressure[i] = load(s);
    }
    const Eigen::VectorXd deflection = solver.solve(pressure);
    const auto at = [&](double r) {  // a parabola in r^2 through the middle, straight lines elsewhere
      const double place = r / rings.width - 0.5;
      const int below = static_cast<int>(std::max(0.0, place));
      return deflection[below] + (place - below) * (deflection[below + 1] - deflection[below]);
    };
    const double middle = deflection[0] + (deflection[0] - deflection[1]) / 8;
    const double rim = at(radius), half_way = at(radius * std::sqrt(0.5));
    return std::array{middle - rim, half_way - rim};
  };
  const auto even = deeper([](double s) { return 1 - s; }),
             ring = deeper([](double s) { return s * (1 - s); });
  return {even[0], ring[0], even[1], ring[1]};
}

}  // namespace

TEST_CASE("a plate on springs dishes under a round load as in an independent solution by rings") {
  // Finite volumes of second order, 40 rings within the load: a thousandth of the dish (halving the rings
  // quarters the difference).
  for (const double radius : {0.5, 1.0, 2.5, 6.0}) {
    const PlateDish closed = plate_dish(radius), rings = dish_in_rings(radius);
    INFO(radius);
    const double tolerance = 2e-3 * closed.middle_by_even;
    CHECK(std::abs(closed.middle_by_even - rings.middle_by_even) < tolerance);
    CHECK(std::abs(closed.middle_by_ring - rings.middle_by_ring) < tolerance);
    CHECK(std::abs(closed.half_way_by_even - rings.half_way_by_even) < tolerance);
    CHECK(std::abs(closed.half_way_by_ring - rings.half_way_by_ring) < tolerance);
  }
}

TEST_CASE("under a load much wider than its length the plate is springs alone, but for the rim") {
  // Closed form: deflection = load/k. The kink of the load at the rim is rounded off over a length, which
  // leaves 1/sqrt(2) of a length of the slope there, 2/radius: 2/sqrt(8)/radius of the middle for 1 - s.
  const PlateDish wide = plate_dish(30);
  CHECK(std::abs(wide.middle_by_even - (1 - 1 / std::sqrt(2.0) / 30)) < 2e-3);
  CHECK(std::abs(wide.half_way_by_even - (0.5 - 1 / std::sqrt(2.0) / 30)) < 2e-3);
  CHECK(std::abs(wide.half_way_by_ring - (0.25 + -1 / std::sqrt(2.0) / 30)) < 2e-3);
}

TEST_CASE("under a load much narrower than its length the plate bends, and its springs do not matter") {
  // Closed form, plate without springs (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells; from
  // memory): a load P within a small radius a dishes by P a^2/(8 pi) ln(1/a) and a constant times a^4.
  // Between two radii a factor of two apart the constant drops out. P = pi a^2/2 for 1 - s, pi a^2/6 for s (1
  // - s).
  const auto over_fourth = [](double part, double a) { return part / std::pow(a, 4); };
  for (const double a : {0.02, 0.1}) {
    const PlateDish wide = plate_dish(2 * a), narrow = plate_dish(a);
    const double fold = std::log(2.0);
    CHECK(over_fourth(narrow.middle_by_even, a) - over_fourth(wide.middle_by_even, 2 * a) ==
          Catch::Approx(fold / 16).epsilon(0.01));
    CHECK(over_fourth(narrow.middle_by_ring, a) - over_fourth(wide.middle_by_ring, 2 * a) ==
          Catch::Approx(fold / 48).epsilon(0.01));
  }
}

TEST_CASE("the dish grows with the load's radius without a jump where its table ends") {
  double last = 0;
  for (double radius = 0.05; radius < 60; radius *= 1.01) {
    const double now = plate_dish(radius).middle_by_even;
    CHECK(now >= last);
    CHECK((last == 0 || now < last * 1.05));  // the fourth power of 1.01, and a little
    last = now > 0 ? now : last;
  }
  CHECK_THROWS_AS(plate_dish(0), InvalidInput);
}
