#include "libtexture/plan/step_curves.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/process/levelling_curve.hpp"
#include "libtexture/surface/waves.hpp"

namespace libtexture {

namespace {

constexpr double even_until_valleys = 1.5;  // removals are even until the deepest valley is well past,
constexpr int per_valley = 8;               // so many to its depth,
constexpr int least_removals = 4;           // more where the step does not go as far,
constexpr double growth = 1.4;              // and grow by this beyond, where all curves are flat
constexpr double least_valley_um = 0.02;    // what is flatter needs no finer ones
constexpr std::size_t removals_a_run = 6;   // plans go on by so many, so that they have more in common
constexpr std::size_t most_pixels = 4096;   // of a removal map that are sorted for its quantiles

// A surface under full contact with less than this of its start's rms height left is flat: its curves go on
// as they are there. Less than a tenth of the accuracy of plans (levelling_curve.hpp).
constexpr double flat_share = 1e-3;
constexpr double least_ratio = 1e-4;  // of amplitudes, that is told apart from none

constexpr double as_good_as_least = 1.01;  // rms over the least that is reached: no more clear for less

enum Figure { contact, touched, valley, first_quantile, first_band = first_quantile + removal_levels };

// Whole runs of removals that reach as far as the plan asks. The spacing goes by halves, so that plans that
// do not go equally far have their first removals in common; level() takes none below its least removal.
std::vector<double> removals_for(const CurvePlan& plan) {
  const double valley_um = std::max(least_valley_um, plan.starts.back().valley_depth_um());
  const double least_um = least_removal_um / plan.stiffness_factors.front();
  double step = std::max(valley_um / per_valley, least_um);
  while (step * least_removals > plan.most_removal_um && step / 2 >= least_um) step /= 2;
  std::vector<double> at{0};
  while (at.back() < plan.most_removal_um || (at.size() - 1) % removals_a_run != 0) {
    if (at.back() >= even_until_valleys * valley_um) step *= growth;
    at.push_back(at.back() + step);
  }
  return at;
}

HeightField scaled(const HeightField& field, double factor) {
  return HeightField(field.height_um() * factor, field.pixel_mm());
}

using Place = std::vector<double>::iterator;

// Puts values where sorting would: those of the places [first, last), which rise.
void sort_at(Place from, Place to, const Place* first, const Place* last) {
  if (first == last) return;
  const Place* middle = first + (last - first) / 2;
  std::nth_element(from, *middle, to);
  sort_at(from, *middle, first, middle);
  sort_at(*middle + 1, to, middle + 1, last);
}

/// Quantiles (l + 1/2)/levels of the map, of its pixels at even distances.
Eigen::ArrayXd quantiles_of(const Array2d& map) {
  const std::size_t stride = std::max<std::size_t>(1, static_cast<std::size_t>(map.size()) / most_pixels);
  std::vector<double> values;
  // An odd stride visits all columns.
  for (std::size_t i = 0; i < static_cast<std::size_t>(map.size()); i += stride | 1)
    values.push_back(map.data()[i]);
  const auto place_of = [&](int level) {
    return values.begin() +
           static_cast<std::ptrdiff_t>((level + .5) / removal_levels * static_cast<double>(values.size()));
  };
  std::vector<Place> places;  // fewer than the levels where the map has fewer pixels
  for (int level = 0; level < removal_levels; ++level)
    if (places.empty() || place_of(level) > places.back()) places.push_back(place_of(level));
  sort_at(values.begin(), values.end(), places.data(), places.data() + places.size());
  Eigen::ArrayXd quantiles(removal_levels);
  for (int level = 0; level < removal_levels; ++level) quantiles[level] = *place_of(level);
  return quantiles;
}

/// Ratio of lengths; 1 where there was nothing.
double ratio(double now, double before) {
  return before > 0 ? now / before : 1;
}

/// Logarithm of a ratio of amplitudes, which curves are read by: in full contact it falls in proportion to
/// the removal and to the stiffness. 0 where there was nothing.
double log_ratio(double now, double before) {
  return std::log(std::max(least_ratio, ratio(now, before)));
}

// Who reads a node: a plan, and the removals that it has.
struct Reader {
  std::size_t plan, node;
  const std::vector<double>* at;
};

// A levelling run, for all that read it.
struct Node {
  const HeightField* start;
  double factor;
  std::vector<Reader> readers;
};

bool begin_alike(const std::vector<double>& a, const std::vector<double>& b) {
  return std::equal(a.begin(), a.begin() + static_cast<std::ptrdiff_t>(std::min(a.size(), b.size())),
                    b.begin());
}

// Grains give as they are: a node's heights are scaled for the stiffness and the force of worlds, far more
// than for their texture, so that the grains' are scaled along.
double grain_of(const CurvePlan& plan) {
  return grain_height_um(plan.step, plan.contact.pressure_kpa);
}

bool shares(const Node& node, const CurvePlan& first, const CurvePlan& plan, const HeightField& start,
            double factor, const std::vector<double>& at) {
  const DiscContact &a = first.contact, &b = plan.contact;
  return node.factor == factor && a.pressure_kpa == b.pressure_kpa && a.footprint_mm == b.footprint_mm &&
         a.backing == b.backing && grain_of(first) == grain_of(plan) &&
         first.is_touch_asked == plan.is_touch_asked &&
         std::all_of(node.readers.begin(), node.readers.end(),
                     [&](const Reader& reader) { return begin_alike(*reader.at, at); }) &&
         *node.start == start;
}

std::vector<Node> nodes_of(const std::vector<CurvePlan>& plans, const std::vector<std::vector<double>>& at) {
  std::vector<Node> nodes;
  for (std::size_t p = 0; p < plans.size(); ++p) {
    const CurvePlan& plan = plans[p];
    for (std::size_t n = 0; n < plan.starts.size() * plan.stiffness_factors.size(); ++n) {
      const HeightField& start = plan.starts[n / plan.stiffness_factors.size()];
      const double factor = plan.stiffness_factors[n % plan.stiffness_factors.size()];
      auto node = std::find_if(nodes.begin(), nodes.end(), [&](const Node& one) {
        return shares(one, plans[one.readers.front().plan], plan, start, factor, at[p]);
      });
      if (node == nodes.end()) node = nodes.insert(node, {&start, factor, {}});
      node->readers.push_back({p, n, &at[p]});
    }
  }
  return nodes;
}

// S/p of a plan's contact without its grains [1/um]; empty where it is rigid.
AlignedVector<double> bare_stiffness_of(const CurvePlan& plan) {
  if (plan.contact.backing.support == Support::rigid) return {};
  return relative_stiffness_per_um(plan.starts.front().grid(), plan.contact.backing,
                                   plan.contact.pressure_kpa, plan.contact.footprint_mm);
}

LevellingCurve curve_of(const CurvePlan& plan, const AlignedVector<double>& bare_stiffness_per_um,
                        const HeightField& start, double factor, const Progress& progress) {
  // S/p times a factor is the same as heights times it.
  const HeightField field = scaled(start, factor);
  const double tolerance_um = factor * rms_tolerance_um(start);
  if (bare_stiffness_per_um.empty())
    return LevellingCurve(field, plan.contact.backing, plan.contact.pressure_kpa,
                          {.rms_tolerance_um = tolerance_um}, progress);
  return LevellingCurve(field, with_grains(bare_stiffness_per_um, factor * grain_of(plan)), tolerance_um,
                        plan.is_touch_asked, progress);
}

// A surface on the way, with what all readers see of it alike.
struct Report {
  double removal_um, contact_share, valley_ratio;
  const HeightField& surface;
  Array2d removed_um;
  Eigen::ArrayXd quantiles_um;
};

// One reader's figures of a node, in units of its start.
class Reading {
 public:
  Reading(const CurvePlan& plan, const Reader& reader, const HeightField& first, double factor)
      : plan_(plan), factor_(factor), bands_um_(band_rms_of(first, plan.bands_mm)) {
    figures_.resize(first_band + bands_um_.size(), static_cast<Eigen::Index>(reader.at->size()));
  }

  void read(std::size_t k, const Report& report) {
    if (static_cast<Eigen::Index>(k) >= figures_.cols()) return;
    const double depth_um =
        groove_depth_um(plan_.step, plan_.contact.pressure_kpa, report.contact_share, plan_.hardness_mpa);
    const Eigen::ArrayXd left_um = band_rms_of(report.surface, plan_.bands_mm);
    auto figures = figures_.col(static_cast<Eigen::Index>(k));
    figures[contact] = report.contact_share;
    figures[touched] = (report.removed_um > factor_ * touched_in_depths * depth_um).cast<double>().mean();
    figures[valley] = report.valley_ratio;
    figures.segment(first_quantile, removal_levels) = report.quantiles_um / factor_ - report.removal_um;
    for (Eigen::Index band = 0; band < bands_um_.size(); ++band)
      figures[first_band + band] = log_ratio(left_um[band], bands_um_[band]);
  }

  // All removals from the k-th on are as the one before.
  void end(std::size_t k) {
    const auto from = std::min(static_cast<Eigen::Index>(k), figures_.cols());
    figures_.rightCols(figures_.cols() - from).colwise() = Eigen::ArrayXd(figures_.col(from - 1));
  }

  Eigen::ArrayXXd take() {
    figures_.col(0) = 0;
    figures_(contact, 0) = figures_(contact, 1);
    figures_(valley, 0) = 1;
    return std::move(figures_);
  }

 private:
  const CurvePlan& plan_;
  const double factor_;
  const Eigen::ArrayXd bands_um_;
  Eigen::ArrayXXd figures_;
};

// What each reader has of a node: (figures, its removals).
std::vector<Eigen::ArrayXXd> run_node(const std::vector<CurvePlan>& plans,
                                      const std::vector<AlignedVector<double>>& bare_stiffness_per_um,
                                      const Node& node, const Progress& progress) {
  const auto goes_further = [](const Reader& a, const Reader& b) { return a.at->size() < b.at->size(); };
  const std::vector<double>& at =
      *std::max_element(node.readers.begin(), node.readers.end(), goes_further)->at;
  const HeightField first = scaled(*node.start, node.factor);
  const double valley_um = first.valley_depth_um();
  std::vector<Reading> readings;
  for (const Reader& reader : node.readers)
    readings.emplace_back(plans[reader.plan], reader, first, node.factor);
  double share_done = 0;
  const std::size_t plan = node.readers.front().plan;
  LevellingCurve curve = curve_of(plans[plan], bare_stiffness_per_um[plan], *node.start, node.factor,
                                  [&](double) { report(progress, share_done); });
  for (std::size_t k = 1; k < at.size(); ++k) {
    const auto [surface, contact_share] = curve.at(node.factor * at[k]);
    const Array2d removed = first.height_um() - surface.height_um();
    const Report here{at[k],   contact_share, ratio(surface.valley_depth_um(), valley_um),
                      surface, removed,       quantiles_of(removed)};
    for (Reading& reading : readings) reading.read(k, here);
    share_done = static_cast<double>(k) / static_cast<double>(at.size() - 1);
    report(progress, share_done);
    if (contact_share == 1 && surface.rms_um() <= flat_share * first.rms_um()) {
      for (Reading& reading : readings) reading.end(k + 1);
      break;
    }
  }
  report(progress, 1);
  std::vector<Eigen::ArrayXXd> read;
  for (Reading& reading : readings) read.push_back(reading.take());
  return read;
}

/// Slopes of monotone cubics through each figure: the weighted harmonic mean of the neighbouring chords'
/// (docs/physics.md, risk), one-sided at the ends.
Eigen::ArrayXXd slopes_of(const Eigen::ArrayXXd& values, const std::vector<double>& at) {
  const auto n = values.cols();
  const Eigen::Map<const Eigen::ArrayXd> x(at.data(), n);
  const Eigen::ArrayXd width = x.tail(n - 1) - x.head(n - 1);
  const Eigen::ArrayXXd chord =
      (values.rightCols(n - 1) - values.leftCols(n - 1)).rowwise() / width.transpose();
  Eigen::ArrayXXd slopes(values.rows(), n);
  slopes.col(0) = chord.col(0);
  slopes.col(n - 1) = chord.col(n - 2);
  for (Eigen::Index k = 1; k < n - 1; ++k) {
    const double before = 2 * width[k] + width[k - 1], after = width[k] + 2 * width[k - 1];
    for (Eigen::Index figure = 0; figure < values.rows(); ++figure) {
      const double a = chord(figure, k - 1), b = chord(figure, k);
      slopes(figure, k) = a * b > 0 ? (before + after) / (before / a + after / b) : 0;
    }
  }
  return slopes;
}

struct Weight {
  std::size_t node;
  double weight;
};

/// Weights of a polynomial through the (at most four) nodes about a place, x = 0, 1, 2 ...
std::vector<Weight> polynomial_weights(std::size_t nodes, double x) {
  const std::size_t count = std::min<std::size_t>(nodes, 4);
  const double at = std::clamp(x, 0.0, static_cast<double>(nodes - 1));
  const double wish = std::floor(at) - 1;
  const auto first = static_cast<std::size_t>(std::clamp(wish, 0.0, static_cast<double>(nodes - count)));
  std::vector<Weight> weights;
  for (std::size_t i = first; i < first + count; ++i) {
    double weight = 1;
    for (std::size_t j = first; j < first + count; ++j)
      if (j != i) weight *= (at - static_cast<double>(j)) / (static_cast<double>(i) - static_cast<double>(j));
    weights.push_back({i, weight});
  }
  return weights;
}

std::vector<Weight> linear_weights(const std::vector<double>& nodes, double x) {
  const auto above = std::upper_bound(nodes.begin(), nodes.end(), x) - nodes.begin();
  if (above == 0) return {{0, 1}};
  const auto high = static_cast<std::size_t>(above), low = high - 1;
  if (high == nodes.size()) return {{low, 1}};
  const double part = (x - nodes[low]) / (nodes[high] - nodes[low]);
  return {{low, 1 - part}, {high, part}};
}

}  // namespace

Eigen::ArrayXd band_rms_of(const HeightField& surface, const std::vector<std::array<double, 2>>& bands_mm) {
  Eigen::ArrayXd rms(static_cast<Eigen::Index>(bands_mm.size()));
  if (bands_mm.empty()) return rms;
  rms[0] = surface.rms_um();
  if (bands_mm.size() == 1) return rms;
  const Waves waves(surface);
  for (std::size_t band = 1; band < bands_mm.size(); ++band)
    rms[static_cast<Eigen::Index>(band)] =
        waves.band_rms_um({bands_mm[band].begin(), bands_mm[band].end()}).front();
  return rms;
}

SolvedCurves solve_curves(const std::vector<CurvePlan>& plans, const Progress& progress) {
  SolvedCurves solved;
  std::vector<std::vector<double>> at;
  for (const CurvePlan& plan : plans) {
    require_positive(plan.most_removal_um, "StepCurves", "most_removal_um");
    require(!plan.starts.empty() && !plan.stiffness_factors.empty(), "StepCurves",
            "starts, stiffness_factors", "must hold at least one each", "none");
    at.push_back(removals_for(plan));
    StepCurves curves;
    for (const HeightField& start : plan.starts) curves.starts_um_.push_back(start.rms_um());
    curves.factors_ = plan.stiffness_factors;
    curves.at_um_ = at.back();
    curves.values_.resize(plan.starts.size() * plan.stiffness_factors.size());
    curves.slopes_.resize(curves.values_.size());
    solved.curves.push_back(std::move(curves));
  }
  const std::vector<Node> nodes = nodes_of(plans, at);
  std::vector<AlignedVector<double>> bare_stiffness_per_um;
  for (const CurvePlan& plan : plans) bare_stiffness_per_um.push_back(bare_stiffness_of(plan));
  solved.solves = static_cast<int>(nodes.size());
  parallel_for(solved.solves, progress, [&](int n, const Progress& part) {
    const Node& node = nodes[static_cast<std::size_t>(n)];
    std::vector<Eigen::ArrayXXd> read = run_node(plans, bare_stiffness_per_um, node, part);
    for (std::size_t r = 0; r < read.size(); ++r) {
      const Reader& reader = node.readers[r];
      StepCurves& curves = solved.curves[reader.plan];
      curves.slopes_[reader.node] = slopes_of(read[r], curves.at_um_);
      curves.values_[reader.node] = std::move(read[r]);
    }
  });
  return solved;
}

StepPoint StepCurves::at(double start_rms_um, double stiffness_factor, double removal_um) const {
  const double removal = std::clamp(removal_um, 0.0, at_um_.back());
  const auto above = std::upper_bound(at_um_.begin() + 1, at_um_.end() - 1, removal) - at_um_.begin();
  const double low = at_um_[static_cast<std::size_t>(above - 1)];
  const double width = at_um_[static_cast<std::size_t>(above)] - low, t = (removal - low) / width;
  const double from = (1 + 2 * t) * (1 - t) * (1 - t), to = t * t * (3 - 2 * t);  // cubic Hermite
  const double from_slope = t * (1 - t) * (1 - t) * width, to_slope = t * t * (t - 1) * width;

  const double spacing = factors_.size() > 1 ? std::log(factors_.back() / factors_.front()) /
                                                   static_cast<double>(factors_.size() - 1)
                                             : 1;
  const auto by_start = linear_weights(starts_um_, start_rms_um);
  const auto by_factor =
      polynomial_weights(factors_.size(), std::log(stiffness_factor / factors_.front()) / spacing);
  Eigen::ArrayXd figures = Eigen::ArrayXd::Zero(values_.front().rows());
  for (const Weight& start : by_start)
    for (const Weight& factor : by_factor) {
      const std::size_t node = start.node * factors_.size() + factor.node;
      const double weight = start.weight * factor.weight;
      figures += weight * (from * values_[node].col(above - 1) + to * values_[node].col(above) +
                           from_slope * slopes_[node].col(above - 1) + to_slope * slopes_[node].col(above));
    }
  StepPoint point;
  point.contact_share = std::clamp(figures[contact], 0.0, 1.0);
  point.touched_share = std::clamp(figures[touched], 0.0, 1.0);
  point.valley_ratio = std::max(0.0, figures[valley]);
  point.band_ratio = figures.tail(figures.size() - first_band).exp();
  point.removal_quantile_um =
      (figures.segment(first_quantile, removal_levels) + std::max(0.0, removal_um)).max(0.0);
  return point;
}

double StepCurves::removal_to_um(double start_rms_um, double rms_um) const {
  const double factor = factors_[factors_.size() / 2];
  const auto left_um = [&](double removal_um) {
    return start_rms_um * at(start_rms_um, factor, removal_um).band_ratio[0];
  };
  const double wish_um = std::max(rms_um, as_good_as_least * left_um(at_um_.back()));
  double low = 0, high = at_um_.back();
  for (int halving = 0; halving < 40; ++halving) {
    const double middle = (low + high) / 2;
    (left_um(middle) > wish_um ? low : high) = middle;
  }
  return high;
}

std::vector<HeightField> surfaces_after(const CurvePlan& plan, const HeightField& start,
                                        const std::vector<double>& removals_um, const Progress& progress) {
  const double factor = plan.stiffness_factors[plan.stiffness_factors.size() / 2];
  double share_done = 0;
  LevellingCurve curve =
      curve_of(plan, bare_stiffness_of(plan), start, factor, [&](double) { report(progress, share_done); });
  // By the removals of the nodes as well: the same increments, and full contact is seen as early.
  std::vector<HeightField> surfaces;
  std::vector<double> at_um = removals_for(plan);
  std::size_t next = 1;
  for (const double removal_um : removals_um) {
    if (factor * removal_um < least_removal_um) {
      surfaces.push_back(start);
      continue;
    }
    for (; next < at_um.size() && at_um[next] < removal_um; ++next) {
      curve.at(factor * at_um[next]);
      share_done = std::max(share_done, std::min(1.0, at_um[next] / removals_um.back()));
      report(progress, share_done);
    }
    surfaces.push_back(scaled(curve.at(factor * removal_um).surface, 1 / factor));
    report(progress, share_done = std::min(1.0, removal_um / removals_um.back()));
  }
  report(progress, 1);
  return surfaces;
}

}  // namespace libtexture
