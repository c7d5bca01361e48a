#include "libtexture/numerics/contact.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/numerics/lanes.hpp"

namespace libtexture {
namespace {

using Values = AlignedVector<double>;
template <int W>
using Pack = Eigen::Array<double, W, 1>;

constexpr double rounding =
    1e-14;  // of heights and of the face's bending under the mean pressure, after a transform
constexpr double load_error = 1e-15;  // of the mean pressure, left by the projection
constexpr int most_projections =
    100;  // Newton on a convex piecewise linear load ends by itself; seen: 3 to 8

double dot(const Values& a, const Values& b) {
  LaneSum sum;
  over_packs(a.size(), [&]<int W>(std::size_t i) { sum.add(pack<W>(&a[i]) * pack<W>(&b[i])); });
  return sum.total();
}

// Under pressure, or where the face would cut in (the residual is 0 elsewhere): the places that the iteration
// moves.
template <int W>
auto moves(const double* pressure, const double* residual) {
  return pack<W>(pressure) > 0.0 || pack<W>(residual) < 0.0;
}

// Takes the mean over the moving places out of `values`, and sets them to 0 elsewhere.
void centre(Values& values, const Values& pressure, const Values& residual) {
  LaneSum sum, count;
  over_packs(values.size(), [&]<int W>(std::size_t i) {
    const auto moving = moves<W>(&pressure[i], &residual[i]);
    sum.add(moving.select(pack<W>(&values[i]), 0.0));
    count.add(moving.select(Pack<W>::Ones(), 0.0));
  });
  const double mean = sum.total() / count.total();
  over_packs(values.size(), [&]<int W>(std::size_t i) {
    pack<W>(&values[i]) = moves<W>(&pressure[i], &residual[i]).select(pack<W>(&values[i]) - mean, 0.0).eval();
  });
}

// The nearest p >= 0 of the given sum: max(0, p - shift). The sum to start with is the given one, so that the
// shift is
// >= 0 and places without pressure stay exactly so: were they to move, all the surface would be in contact.
void project(Values& pressure, double wanted_sum) {
  double shift = 0;
  for (int k = 0; k < most_projections; ++k) {
    LaneSum sum, count;
    over_packs(pressure.size(), [&]<int W>(std::size_t i) {
      const Pack<W> p = pack<W>(&pressure[i]) - shift;
      sum.add(p.max(0.0));
      count.add((p > 0.0).select(Pack<W>::Ones(), 0.0));
    });
    const double excess = sum.total() - wanted_sum;
    if (excess <= load_error * wanted_sum) break;
    shift += excess / count.total();
  }
  over_packs(pressure.size(), [&]<int W>(std::size_t i) {
    pack<W>(&pressure[i]) = (pack<W>(&pressure[i]) - shift).max(0.0).eval();
  });
}

}  // namespace

// What the pressure and the gap (up to a constant) say of a place.
struct Contact::Place {
  double level = 0;        // mean of the gap over the contact
  double duality_gap = 0;  // sum p (gap - least gap) / sum p
  double contact_share = 0;

  Place(const Values& pressure, const Values& gap) {
    LaneSum load, work, sum, count;
    double least = HUGE_VAL;
    over_packs(gap.size(), [&]<int W>(std::size_t i) {
      const auto p = pack<W>(&pressure[i]);
      const auto v = pack<W>(&gap[i]);
      load.add(p);
      work.add(p * v);
      sum.add((p > 0.0).select(v, 0.0));
      count.add((p > 0.0).select(Pack<W>::Ones(), 0.0));
      least = std::min(least, v.minCoeff());
    });
    level = sum.total() / count.total();
    duality_gap = work.total() / load.total() - least;
    contact_share = count.total() / static_cast<double>(gap.size());
  }
};

Contact::Contact(const Grid& grid, const Values& stiffness)
    : grid_(grid),
      fft_(grid),
      stiffness_(stiffness),
      compliance_(fft_.half_size()),
      preconditioner_(fft_.half_size()),
      half_(fft_.half_size()) {
  require(stiffness.size() == fft_.half_size(), "Contact", "stiffness",
          "must have rows x (cols/2 + 1) values", static_cast<double>(stiffness.size()));
  stiffness_[0] = 0;
  for (std::size_t k = 1; k < stiffness_.size(); ++k) require_positive(stiffness_[k], "Contact", "stiffness");
  // At most as steep as a half-space through the longest wave: a map cut off at the rim of the contact has
  // too much of the short waves for the q^4 of a plate (measured: it then stalls).
  const std::vector<double> q = wave_numbers_per_m(grid);
  for (std::size_t k = 1; k < q.size(); ++k) {
    compliance_[k] = 1 / (stiffness_[k] * grid.size());
    preconditioner_[k] = std::min(stiffness_[k], stiffness_[1] * q[k] / q[1]) / grid.size();
  }
  for (Values* array : {&residual_, &residual_old_, &z_, &direction_}) array->resize(fft_.real_size());
}

// The answer if the contact is full, without its tension: max(0, mean + S h), scaled to the mean.
void Contact::start(const Values& height, double mean_pressure, Values& pressure) {
  fft_.filter(height, stiffness_, pressure);
  transforms_ = 2;
  LaneSum load;
  over_packs(pressure.size(), [&]<int W>(std::size_t i) {
    const Pack<W> p = (pack<W>(&pressure[i]) + mean_pressure).max(0.0);
    pack<W>(&pressure[i]) = p;
    load.add(p);
  });
  const double scale = mean_pressure * grid_.size() / load.total();
  for (double& p : pressure) p *= scale;
}

// gap = p/S - h, up to a constant.
void Contact::press_face(const Values& height, const Values& pressure, Values& gap) {
  fft_.forward(pressure, half_);
  for (std::size_t k = 0; k < half_.size(); ++k) half_[k] *= compliance_[k];
  fft_.inverse_unscaled(half_, gap);
  transforms_ += 2;
  over_packs(gap.size(), [&]<int W>(std::size_t i) { pack<W>(&gap[i]) -= pack<W>(&height[i]); });
}

void Contact::mask_residual(const Values& pressure, const Values& gap, double level) {
  std::swap(residual_, residual_old_);
  over_packs(gap.size(), [&]<int W>(std::size_t i) {
    const Pack<W> r = pack<W>(&gap[i]) - level;
    pack<W>(&residual_[i]) = (pack<W>(&pressure[i]) > 0.0).select(r, r.min(0.0));
  });
}

void Contact::precondition(const Values& pressure) {
  fft_.forward(residual_, half_);
  for (std::size_t k = 0; k < half_.size(); ++k) half_[k] *= preconditioner_[k];
  fft_.inverse_unscaled(half_, z_);
  transforms_ += 2;
  centre(z_, pressure, residual_);
}

// d = beta d - z, and <d, r>.
double Contact::turn(const Values& pressure, double beta) {
  over_packs(z_.size(), [&]<int W>(std::size_t i) {
    pack<W>(&direction_[i]) = (beta * pack<W>(&direction_[i]) - pack<W>(&z_[i])).eval();
  });
  centre(direction_, pressure, residual_);
  return dot(direction_, residual_);
}

// <d, d/S>, summed over the spectrum (Parseval): a transform, not a pair.
double Contact::compliance_along() {
  fft_.forward(direction_, half_);
  ++transforms_;
  const int half_cols = grid_.half_cols();
  double sum = 0;
  for (int i = 0; i < grid_.rows; ++i) {
    double row = 0;
    for (int j = 0; j < half_cols; ++j) {
      const std::size_t k = static_cast<std::size_t>(i) * half_cols + j;
      row += modes_of_column(grid_, j) * std::norm(half_[k]) * compliance_[k];
    }
    sum += row;
  }
  return sum;
}

ContactReport Contact::solve(const Values& height, double mean_pressure, Values& pressure, Values& gap,
                             const ContactOptions& options, const Progress& progress) {
  require_positive(mean_pressure, "Contact", "mean_pressure");
  require_positive(options.tolerance, "Contact", "tolerance");
  require(height.size() == fft_.real_size(), "Contact", "height", "must have rows x cols values",
          static_cast<double>(height.size()));
  const double wanted_sum = mean_pressure * grid_.size();
  // A flat surface has no rms height to measure by: what rounding leaves is as good as 0.
  const Eigen::Map<const Eigen::ArrayXd> heights(height.data(), static_cast<Eigen::Index>(height.size()));
  const double softest = *std::max_element(compliance_.begin(), compliance_.end()) * grid_.size();
  const double allowed = options.tolerance * rms_about_mean(height.data(), height.size()) +
                         rounding * (heights.abs().maxCoeff() + softest * mean_pressure);
  pressure.resize(height.size());
  gap.resize(height.size());
  std::fill(residual_.begin(), residual_.end(), 0.0);
  std::fill(direction_.begin(), direction_.end(), 0.0);
  start(height, mean_pressure, pressure);
  press_face(height, pressure, gap);
  double residual_z = 0;  // <r, z> of the place before; 0 = start afresh
  ContactReport report_;
  for (;; ++report_.iterations) {
    const Place here(pressure, gap);
    report_.residual = std::max(0.0, here.duality_gap) / allowed * options.tolerance;
    report_.contact_share = here.contact_share;
    report_.transform_pairs = (transforms_ + 1) / 2;
    if (here.duality_gap <= allowed) {
      LaneSum sum;
      over_packs(gap.size(), [&]<int W>(std::size_t i) {
        const Pack<W> free = (pack<W>(&gap[i]) - here.level).max(0.0);
        pack<W>(&gap[i]) = (pack<W>(&pressure[i]) > 0.0).select(0.0, free);
        sum.add(pack<W>(&gap[i]));
      });
      report_.mean_gap = sum.total() / grid_.size();
      return report_;
    }
    if (report_.transform_pairs >= options.most_pairs)
      throw NotConverged("Contact", report_.transform_pairs, report_.residual, options.tolerance);
    report(progress, 0);

    mask_residual(pressure, gap, here.level);
    precondition(pressure);
    const double new_residual_z = dot(residual_, z_);
    const double beta =
        residual_z > 0 ? std::max(0.0, (new_residual_z - dot(residual_old_, z_)) / residual_z) : 0;
    residual_z = new_residual_z;
    double slope = turn(pressure, beta);
    if (slope >= 0) slope = turn(pressure, 0);
    const double step = -slope / compliance_along();
    over_packs(pressure.size(),
               [&]<int W>(std::size_t i) { pack<W>(&pressure[i]) += step * pack<W>(&direction_[i]); });
    project(pressure, wanted_sum);
    press_face(height, pressure, gap);
  }
}

}  // namespace libtexture
