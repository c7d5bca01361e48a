#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>
#include <numbers>
#include <utility>
#include <vector>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/surface/viewer.hpp"
#include "libtexture/surface/waves.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

constexpr double pi = std::numbers::pi;
constexpr double rounding = 1e-12;  // of sums over some thousand modes, each good to 1e-16

// A rough surface that holds every wave of its grid. Even and odd sides, a profile, sides that differ.
std::vector<HeightField> rough_surfaces() {
  std::vector<HeightField> surfaces;
  for (const auto& [rows, cols] : {std::pair{32, 64}, {24, 33}, {15, 20}, {1, 64}}) {
    Array2d heights(rows, cols);
    for (Eigen::Index i = 0; i < heights.size(); ++i)
      heights.data()[i] = 3 + uniform_at({4, static_cast<std::uint64_t>(i)});
    surfaces.emplace_back(heights, 0.1);
  }
  return surfaces;
}

/// The whole spectrum by its definition, without a fast transform: sum h exp(-i q x), (rows, cols).
Eigen::ArrayXXcd spectrum_by_definition(const HeightField& field) {
  const auto phases = [](Eigen::Index count) {
    Eigen::MatrixXcd all(count, count);
    for (Eigen::Index mode = 0; mode < count; ++mode)
      for (Eigen::Index place = 0; place < count; ++place)
        all(mode, place) =
            std::polar(1.0, -2 * pi * static_cast<double>(mode * place % count) / static_cast<double>(count));
    return all;
  };
  const Eigen::MatrixXcd heights = field.height_um().matrix().cast<std::complex<double>>();
  return (phases(heights.rows()) * heights * phases(heights.cols()).transpose()).array();
}

/// Sum of |H|^2 weight(cycles per mm along x, along y, whether at the Nyquist frequency along x, along y)
/// over all modes but the mean, over the pixels squared (Parseval).
template <class Weight>
double power(const HeightField& field, const Weight& weight) {
  const Eigen::ArrayXXcd spectrum = spectrum_by_definition(field);
  const Grid& grid = field.grid();
  double sum = 0;
  for (int i = 0; i < grid.rows; ++i)
    for (int j = 0; j < grid.cols; ++j)
      if (i != 0 || j != 0)
        sum += std::norm(spectrum(i, j)) * weight(signed_mode(j, grid.cols) / grid.width_mm(),
                                                  signed_mode(i, grid.rows) / grid.height_mm(),
                                                  2 * j == grid.cols, 2 * i == grid.rows);
  return sum / (static_cast<double>(grid.size()) * grid.size());
}

}  // namespace

TEST_CASE("bands hold the waves between their edges, each counted where its own wavelength lies") {
  const std::vector<double> edges{0.15, 0.3, 0.5, 1, 2, std::numeric_limits<double>::infinity()};
  for (const HeightField& field : rough_surfaces()) {
    const std::vector<double> rms = Waves(field).band_rms_um(edges);
    for (std::size_t band = 0; band + 1 < edges.size(); ++band) {
      const double expected = power(field, [&](double x, double y, bool, bool) {
        const double wavelength_mm = 1 / std::hypot(x, y);
        return edges[band] <= wavelength_mm && wavelength_mm < edges[band + 1] ? 1.0 : 0.0;
      });
      CHECK(rms[band] == Approx(std::sqrt(expected)).epsilon(rounding).margin(1e-15));
    }
  }
}

TEST_CASE("the rms slope by Parseval's theorem is that of the slope at every pixel") {
  for (const HeightField& field : rough_surfaces()) {
    const Waves waves(field);
    for (const double diameter_mm : {0.0, 0.35})
      for (const Direction direction : {Direction::rows, Direction::columns}) {
        const SpotMean spot(field.grid(), diameter_mm);
        const double by_pixels = std::sqrt(waves.slope(direction, spot).square().mean());
        CHECK(waves.rms_slope(direction, spot) == Approx(by_pixels).epsilon(rounding).margin(1e-18));
        // By the derivative of each wave; at the Nyquist frequency a real wave has no slope at the pixels.
        const double expected = power(field, [&](double x, double y, bool is_last_x, bool is_last_y) {
          const double along_x = is_last_x ? 0 : x, along_y = is_last_y ? 0 : y;
          const double q = 2 * pi * 1e-3 * (direction == Direction::rows ? along_x : along_y);
          const double turns = pi * std::hypot(along_x, along_y) * diameter_mm;
          const double kept = turns == 0 ? 1 : 2 * std::cyl_bessel_j(1, turns) / turns;  // libstdc++'s
          return q * q * kept * kept;
        });
        CHECK(waves.rms_slope(direction, spot) ==
              Approx(std::sqrt(expected)).epsilon(rounding).margin(1e-18));
      }
  }
}

TEST_CASE("one spot of a grid serves all its surfaces, and a point keeps every wave") {
  const std::vector<HeightField> surfaces = rough_surfaces();
  const Viewer viewer;
  const SpotMean spot = pupil_spot(viewer, surfaces[0].grid());
  for (const double scale : {0.1, 1.0, 7.0}) {
    const HeightField field(scale * surfaces[0].height_um(), surfaces[0].pixel_mm());
    CHECK(seen_wander_arcmin(Waves(field), viewer, spot) == seen_wander_arcmin(field, viewer));
  }
  CHECK(SpotMean(surfaces[0].grid(), 0).kept(17) == 1);
  CHECK(SpotMean().kept(0) == 1);
  CHECK_THROWS_WITH(SpotMean(surfaces[0].grid(), -1), "SpotMean: diameter_mm must be >= 0 (got -1 mm)");
}
