#include "libtexture/plan/film_map.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <boost/math/distributions/beta.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>
#include <optional>

#include "libtexture/base/error.hpp"
#include "libtexture/base/random.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

namespace {

// A reading is never exact: keeps two readings at one place solvable for a gauge of stated uncertainty 0.
constexpr double least_noise_um = 0.01;

// Between readings without a place: no other place of the map comes near.
constexpr double apart_mm = 1e7;

constexpr double clear_uncertainty_share = 0.15;  // of a stated clear_um; estimate

double correlation(const FilmMap& map, const Place& a, const Place& b) {
  return std::exp(-std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) / map.length_mm);
}

/// Readings of a panel that teach of the clear [um]: those with a place first, as places_of() has them.
std::vector<double> totals_of(const Panel& panel) {
  std::vector<double> totals_um;
  for (const bool has_place : {true, false})
    for (const Reading& reading : panel.readings)
      if (reading.x_mm.has_value() == has_place && teaches(reading)) totals_um.push_back(total_um(reading));
  return totals_um;
}

/// Correlation of readings.
Eigen::MatrixXd correlations(const FilmMap& map) {
  const auto n = static_cast<Eigen::Index>(map.places.size());
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Identity(n, n);
  for (std::size_t i = 0; i < map.places.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const auto row = static_cast<Eigen::Index>(i), col = static_cast<Eigen::Index>(j);
      matrix(row, col) = matrix(col, row) = correlation(map, map.places[i], map.places[j]);
    }
  return matrix;
}

/// Variance of places: the guess, weighed against the readings' own variance, of which E[s^2] = variance (1 -
/// mean correlation) + noise. Readings close together say little of it, and weigh little.
double variance_of_places(const Eigen::VectorXd& readings, const Eigen::MatrixXd& correlation,
                          double noise_um, const FilmVariation& variation) {
  const double guess = variation.sd_percent / 100 * readings.mean();
  const double n = static_cast<double>(readings.size());
  if (n < 2) return guess * guess;
  const double sample = (readings.array() - readings.mean()).square().sum() / (n - 1);
  const double mean_correlation = (correlation.sum() - n) / (n * (n - 1));
  const double seen = std::max(0.0, sample - noise_um * noise_um);
  return (variation.sd_weight * guess * guess + (n - 1) * seen) /
         (variation.sd_weight + (n - 1) * (1 - mean_correlation));
}

ClearShare share_of(const Paint& paint, double mean_um) {
  if (!paint.clear_um) return clear_share_prior(paint.kind);
  const double clear = *paint.clear_um;
  require(clear < mean_um, "Paint", "clear_um",
          "must be less than the mean of the panel's readings, " + to_text(mean_um) + " um", clear);
  const double sd = paint.clear_uncertainty_um.value_or(clear_uncertainty_share * clear);
  const double share = clear / mean_um;
  // A beta distribution is no wider than this; .99 keeps it from falling apart into 0 and 1.
  return {share, std::min(sd / mean_um, .99 * std::sqrt(share * (1 - share)))};
}

boost::math::beta_distribution<> distribution_of(const ClearShare& share) {
  using Beta = boost::math::beta_distribution<>;
  const double variance = share.sd * share.sd;
  return Beta(Beta::find_alpha(share.mean, variance), Beta::find_beta(share.mean, variance));
}

/// Standard deviation of a product of two independent numbers of means a, b.
double product_sd(double a, double a_sd, double b, double b_sd) {
  return std::sqrt(a * a * b_sd * b_sd + b * b * a_sd * a_sd + a_sd * a_sd * b_sd * b_sd);
}

Film film_of(const FilmMap& map, double total_um, double sd_um) {
  Film film;
  film.total_um = total_um;
  film.total_sd_um = std::hypot(sd_um, map.gain_sd * total_um);
  film.clear_um = map.share.mean * total_um;
  film.clear_sd_um =
      product_sd(map.share.mean, map.share.sd, total_um, std::hypot(sd_um, map.clear_gain_sd * total_um));
  return film;
}

/// Covariance of places with the readings' places [um2].
Eigen::MatrixXd to_readings(const FilmMap& map, const std::vector<Place>& places) {
  Eigen::MatrixXd cross(places.size(), map.places.size());
  for (Eigen::Index i = 0; i < cross.rows(); ++i)
    for (Eigen::Index j = 0; j < cross.cols(); ++j)
      cross(i, j) =
          map.variation_um * map.variation_um *
          correlation(map, places[static_cast<std::size_t>(i)], map.places[static_cast<std::size_t>(j)]);
  return cross;
}

/// Share of the mean that is not fixed by the readings at each place.
Eigen::VectorXd mean_left(const FilmMap& map, const Eigen::MatrixXd& cross) {
  return Eigen::VectorXd::Ones(cross.rows()) - cross * map.mean_weights;
}

}  // namespace

ClearShare clear_share_prior(PaintKind kind) {
  switch (kind) {
    case PaintKind::factory:
      return {0.40, 0.06};  // 2.0 of 5.0 mil; the spread is an estimate
    case PaintKind::repaint:
      return {0.30, 0.10};  // about 60 um on 200 um, new paint over old: estimate
    case PaintKind::unknown:
      break;
  }
  return {0.34, 0.12};  // either of them: estimate
}

void FilmVariation::validate() const {
  require_positive(length_mm, "FilmVariation", "length_mm");
  require_positive(sd_percent, "FilmVariation", "sd_percent");
  require(sd_percent <= 100, "FilmVariation", "sd_percent", "must be at most 100", sd_percent);
  require_positive(sd_weight, "FilmVariation", "sd_weight");
}

std::vector<Place> places_of(const Panel& panel) {
  std::vector<Place> places;
  for (const Reading& reading : panel.readings)
    if (reading.x_mm && teaches(reading)) places.push_back({*reading.x_mm, *reading.y_mm});
  const auto readings =
      static_cast<std::size_t>(std::count_if(panel.readings.begin(), panel.readings.end(), teaches));
  for (std::size_t i = places.size(); i < readings; ++i)
    places.push_back({static_cast<double>(i + 1) * apart_mm, 0});
  return places;
}

FilmMap film_map(const Panel& panel, const Paint& paint, const FilmVariation& variation) {
  panel.validate();
  paint.validate();
  variation.validate();
  FilmMap map;
  const std::vector<double> totals_um = totals_of(panel);
  map.places = places_of(panel);
  map.placed = static_cast<std::size_t>(
      std::count_if(panel.readings.begin(), panel.readings.end(),
                    [](const Reading& reading) { return reading.x_mm && teaches(reading); }));
  map.length_mm = variation.length_mm;
  const auto n = static_cast<Eigen::Index>(totals_um.size());
  const Eigen::VectorXd readings = Eigen::Map<const Eigen::VectorXd>(totals_um.data(), n);
  const double noise = std::max(paint.gauge.uncertainty_um, least_noise_um);
  const Eigen::MatrixXd correlation = correlations(map);
  const double variance = variance_of_places(readings, correlation, noise, variation);
  map.variation_um = std::sqrt(variance);

  const Eigen::MatrixXd covariance = variance * correlation + noise * noise * Eigen::MatrixXd::Identity(n, n);
  map.precision = covariance.llt().solve(Eigen::MatrixXd::Identity(n, n));
  const double information = map.precision.sum();
  map.mean_um = (map.precision * readings).sum() / information;
  map.mean_sd_um = std::sqrt(1 / information);
  map.weights = map.precision * (readings.array() - map.mean_um).matrix();
  map.mean_weights = map.precision.rowwise().sum();

  map.share = share_of(paint, map.mean_um);
  map.gain_sd = paint.gauge.gain_percent / 100;
  map.clear_gain_sd = paint.clear_um ? 0 : map.gain_sd;
  return map;
}

Film film_at(const FilmMap& map, const Place& place) {
  const Eigen::MatrixXd cross = to_readings(map, {place});
  const double total = map.mean_um + (cross * map.weights).value();
  const double known = (cross * map.precision * cross.transpose()).value();
  const double left = mean_left(map, cross)[0] * map.mean_sd_um;
  const double variance = std::max(0.0, map.variation_um * map.variation_um - known) + left * left;
  return film_of(map, total, std::sqrt(variance));
}

Film film_anywhere(const FilmMap& map) {
  return film_of(map, map.mean_um, std::hypot(map.variation_um, map.mean_sd_um));
}

Film film_at_thinnest(const FilmMap& map, const Panel& panel) {
  const std::vector<double> totals_um = totals_of(panel);
  const auto least = std::min_element(totals_um.begin(), totals_um.end());
  Film film = film_at(map, map.places.at(static_cast<std::size_t>(least - totals_um.begin())));
  film.clear_um = std::min(film.clear_um, *least);
  return film;
}

Array2d draw_clear_um(const FilmMap& map, const std::vector<Place>& places, int draws, std::uint64_t seed) {
  require(draws >= 1, "FilmMap", "draws", "must be >= 1", draws);
  require(!places.empty(), "FilmMap", "places", "must hold at least one place", "none");
  const auto n = static_cast<Eigen::Index>(places.size());
  const Eigen::MatrixXd cross = to_readings(map, places);
  const Eigen::VectorXd total = (cross * map.weights).array() + map.mean_um;
  const Eigen::VectorXd left = mean_left(map, cross) * map.mean_sd_um;
  Eigen::MatrixXd covariance = left * left.transpose() - cross * map.precision * cross.transpose();
  for (Eigen::Index i = 0; i < n; ++i)
    for (Eigen::Index j = 0; j < n; ++j)
      covariance(i, j) +=
          map.variation_um * map.variation_um *
          correlation(map, places[static_cast<std::size_t>(i)], places[static_cast<std::size_t>(j)]);
  covariance.diagonal().array() += least_noise_um * least_noise_um;  // places may repeat
  const Eigen::MatrixXd root = covariance.llt().matrixL();

  std::optional<boost::math::beta_distribution<>> share;  // none: it is known
  if (map.share.sd > 0) share = distribution_of(map.share);
  Array2d clear(draws, n);
  Eigen::VectorXd normal(n);
  for (int draw = 0; draw < draws; ++draw) {
    // Its own generator for each row: a row does not depend on how many there are.
    const std::uint64_t key = hash_key({seed, static_cast<std::uint64_t>(draw)});
    boost::random::mt19937_64 generator(key);
    boost::random::normal_distribution<> standard;
    for (double& value : normal) value = standard(generator);
    const double scale = 1 + map.clear_gain_sd * standard(generator);
    const double p = std::clamp(uniform_at({key}), 1e-12, 1 - 1e-12);
    const double factor = (share ? boost::math::quantile(*share, p) : map.share.mean) * scale;
    clear.row(draw) = (factor * (total + root * normal)).array().max(0).transpose();
  }
  return clear;
}

FilmPicture film_picture(const FilmMap& map, int pixels) {
  require_within(pixels, 2, 1000, "FilmPicture", "pixels");
  require(map.placed > 0, "FilmPicture", "readings", "must have places, x_mm and y_mm", "none");
  const auto first = map.places.begin(), last = first + static_cast<std::ptrdiff_t>(map.placed);
  const auto by_x = [](const Place& a, const Place& b) { return a.x_mm < b.x_mm; };
  const auto by_y = [](const Place& a, const Place& b) { return a.y_mm < b.y_mm; };
  const auto [left, right] = std::minmax_element(first, last, by_x);
  const auto [bottom, top] = std::minmax_element(first, last, by_y);
  const double width = right->x_mm - left->x_mm, height = top->y_mm - bottom->y_mm;
  require(width > 0 && height > 0, "FilmPicture", "readings", "must span an area",
          to_text(width) + " mm x " + to_text(height) + " mm");
  FilmPicture picture;
  picture.pixel_mm = std::max(width, height) / pixels;
  const int cols = std::max(1, static_cast<int>(std::lround(width / picture.pixel_mm)));
  const int rows = std::max(1, static_cast<int>(std::lround(height / picture.pixel_mm)));
  picture.corner = {left->x_mm + picture.pixel_mm / 2, bottom->y_mm + picture.pixel_mm / 2};
  for (Array2d* array : {&picture.total_um, &picture.total_sd_um, &picture.clear_um, &picture.clear_sd_um})
    array->resize(rows, cols);
  for (int row = 0; row < rows; ++row)
    for (int col = 0; col < cols; ++col) {
      const Film film = film_at(
          map, {picture.corner.x_mm + col * picture.pixel_mm, picture.corner.y_mm + row * picture.pixel_mm});
      picture.total_um(row, col) = film.total_um;
      picture.total_sd_um(row, col) = film.total_sd_um;
      picture.clear_um(row, col) = film.clear_um;
      picture.clear_sd_um(row, col) = film.clear_sd_um;
    }
  return picture;
}

}  // namespace libtexture
