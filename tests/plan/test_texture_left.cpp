// Texture against clear over worlds whose curves are known.
#include <cmath>

#include "catch.hpp"
#include "libtexture/plan/texture_left.hpp"

using namespace libtexture;

TEST_CASE("waves of evenly spread heights that decay alike keep evenly spread heights") {
  // docs/physics.md (19): A(R) = A(0) exp(-R/Re), so each quantile of A(R) is that of A(0) times the decay.
  std::vector<TexturePath> paths;
  for (int world = 0; world <= 100; ++world) {
    TexturePath path;
    for (int point = 0; point <= 5; ++point) {
      path.removed_um.push_back(.8 * point);
      path.rms_um.push_back((1 + world / 100.0) * std::exp(-.8 * point));
    }
    paths.push_back(path);
  }
  const std::vector<TextureLeft> left = texture_left(paths);
  REQUIRE(left.front().removed_um == 0);
  REQUIRE(left.back().removed_um == Catch::Approx(4));
  for (const TextureLeft& point : left) {
    // Exact, but for rounding.
    CHECK(point.rms_um.p05 == Catch::Approx(1.05 * std::exp(-point.removed_um)).epsilon(1e-12));
    CHECK(point.rms_um.p50 == Catch::Approx(1.50 * std::exp(-point.removed_um)).epsilon(1e-12));
    CHECK(point.rms_um.p95 == Catch::Approx(1.95 * std::exp(-point.removed_um)).epsilon(1e-12));
  }
}

TEST_CASE("a world that ended keeps its texture while others go on") {
  // Made by hand: 19 worlds that end at 0.2 um and one at 0.5; ranks are arithmetic.
  std::vector<TexturePath> paths(19, {{0, 2}, {1, .2}});
  paths.push_back({{0, 1}, {1, .5}});
  const std::vector<TextureLeft> left = texture_left(paths);
  CHECK(left.back().removed_um == 2);
  CHECK(left.back().rms_um.p50 == Catch::Approx(.2));
  // 20 draws: rank .95 x 19 = 18.05, .05 of the way from the 19th (.2) to the last (.5).
  CHECK(left.back().rms_um.p95 == Catch::Approx(.2 + .05 * .3));
}

TEST_CASE("where nothing is removed the texture is that of the start") {
  const std::vector<TextureLeft> left = texture_left({{{0}, {.7}}});
  REQUIRE(left.size() == 1);
  CHECK(left.front() == TextureLeft{0, {.7, .7, .7}});
}
