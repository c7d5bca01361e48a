#include "libtexture/plan/variance_shares.hpp"

#include <algorithm>
#include <numeric>

#include "libtexture/base/error.hpp"
#include "libtexture/plan/film_map.hpp"
#include "libtexture/plan/panel_cells.hpp"

namespace libtexture {

namespace {

constexpr int draws = 1000;  // know a variance to 4.5 %; parts come from the same draws

double variance_of(const std::vector<double>& values) {
  const auto n = static_cast<double>(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
  return std::accumulate(values.begin(), values.end(), 0.0,
                         [&](double sum, double value) { return sum + (value - mean) * (value - mean); }) /
         n;
}

// Of the thinnest cell.
double thinnest_variance(const FilmMap& map, const std::vector<Place>& places, std::uint64_t seed) {
  const Array2d clear_um = draw_clear_um(map, places, draws, seed);
  std::vector<double> thinnest;
  for (Eigen::Index row = 0; row < clear_um.rows(); ++row) thinnest.push_back(clear_um.row(row).minCoeff());
  return variance_of(thinnest);
}

}  // namespace

FilmVariance film_variance(const Panel& panel, const Paint& paint, std::uint64_t seed) {
  const std::vector<Place> places = cells_of(panel).places;
  Paint exact_paint = paint;
  exact_paint.gauge = {.uncertainty_um = 0, .gain_percent = 0};
  FilmMap map = film_map(panel, paint), exact = film_map(panel, exact_paint);
  const double all_um2 = thinnest_variance(map, places, seed);
  map.share.sd = exact.share.sd = 0;
  const double share_known_um2 = std::min(all_um2, thinnest_variance(map, places, seed));
  const double gauge_exact_um2 = std::min(share_known_um2, thinnest_variance(exact, places, seed));
  return {all_um2 - share_known_um2, gauge_exact_um2, share_known_um2 - gauge_exact_um2};
}

VarianceShares variance_shares(const FilmVariance& film, const std::vector<double>& taken_um) {
  require(!taken_um.empty(), "VarianceShares", "taken_um", "must hold at least one value", "none");
  const double removal_um2 = variance_of(taken_um);
  const double all_um2 = film.clear_share_um2 + film.map_um2 + film.gauge_um2 + removal_um2;
  if (!(all_um2 > 0)) return {};
  return {film.clear_share_um2 / all_um2, film.map_um2 / all_um2, film.gauge_um2 / all_um2,
          removal_um2 / all_um2};
}

}  // namespace libtexture
