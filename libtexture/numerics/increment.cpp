#include "libtexture/numerics/increment.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/numerics/lanes.hpp"

namespace libtexture {
namespace {

constexpr double least_theta = 1e-3;  // a preconditioner of almost no contact would be as stiff as S alone
constexpr double theta_change =
    1.3;  // restart when the contact share has moved by more; .3 to 2 times the share is as good
constexpr double slope_left = 0.01;  // a line search is done when a hundredth of the slope is left
constexpr double shift_left = 1e-3;  // of the load, when a face is resumed: it is a start only
constexpr int most_shifts = 100;     // seen: 3 to 8
constexpr int most_line_steps = 30;
constexpr double extreme_over_rms =
    5;  // greatest over rms misplacement, for the certificate; seen 2 to 5 (tests/battery.hpp)

}  // namespace

// What a pass along the direction d finds at the present place.
struct Increment::Along {
  double slope = 0;            // <d, r>
  double elastic = 0;          // <d, S d>
  double contact = 0;          // <d, d> over the contact, over removal
  double residual_square = 0;  // <r, r>
  double residual_z = 0;       // <r, z> with z of the place before
  double share = 0;            // contact share
};

Increment::Increment(const Grid& grid, const AlignedVector<double>& stiffness)
    : fft_(grid), stiffness_(stiffness), inverse_m_(fft_.half_size()), half_(fft_.half_size()), grid_(grid) {
  require(stiffness.size() == fft_.half_size(), "Increment", "stiffness",
          "must have rows x (cols/2 + 1) values", static_cast<double>(stiffness.size()));
  stiffness_[0] = 0;
  for (std::size_t k = 1; k < stiffness_.size(); ++k)
    require_positive(stiffness_[k], "Increment", "stiffness");
  for (auto* array : {&gap_, &face_pressure_, &residual_, &z_, &direction_, &m_direction_, &face_})
    array->resize(fft_.real_size());
}

// The answer if the contact is full: u = (S + 1/removal)^-1 (h/removal - 1). Then S u + 1 = gap/removal
// without a transform.
void Increment::start(const AlignedVector<double>& height) {
  set_preconditioner(1);
  over_packs(height.size(),
             [&]<int W>(std::size_t i) { pack<W>(&residual_[i]) = pack<W>(&height[i]) / removal_ - 1.0; });
  fft_.forward(residual_, half_);
  precondition();
  over_packs(height.size(), [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> gap = pack<W>(&height[i]) - pack<W>(&z_[i]);
    const Eigen::Array<double, W, 1> r = gap.min(0.0) / removal_;
    pack<W>(&gap_[i]) = gap;
    pack<W>(&face_pressure_[i]) = gap / removal_;
    pack<W>(&residual_[i]) = r;
  });
}

// The face of the solve before, lowered until it carries the load on this surface: Newton, from the side on
// which all of the surface would be in contact, so that it nears the root from there.
void Increment::resume(const AlignedVector<double>& height) {
  set_preconditioner(last_share_);
  LaneSum mean;
  over_packs(height.size(), [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> gap = pack<W>(&height[i]) - pack<W>(&face_[i]);
    pack<W>(&gap_[i]) = gap;
    mean.add(gap);
  });
  const double n = static_cast<double>(height.size());
  double shift = removal_ - mean.total() / n, excess = HUGE_VAL;
  for (int k = 0; k < most_shifts && excess > shift_left * removal_ * n; ++k) {
    LaneSum sum, count;
    over_packs(height.size(), [&]<int W>(std::size_t i) {
      const Eigen::Array<double, W, 1> gap = pack<W>(&gap_[i]) + shift;
      sum.add(gap.max(0.0));
      count.add((gap > 0.0).select(Eigen::Array<double, W, 1>::Ones(), 0.0));
    });
    excess = sum.total() - removal_ * n;
    shift -= excess / count.total();
  }
  for (double& gap : gap_) gap += shift;
}

void Increment::set_preconditioner(double theta) {
  theta_over_removal_ = std::max(theta, least_theta) / removal_;
  const double scale = 1.0 / grid_.size();
  for (std::size_t k = 0; k < stiffness_.size(); ++k)
    inverse_m_[k] = scale / (stiffness_[k] + theta_over_removal_);
}

// Greatest error of the face's place that the residual leaves: S^-1 r, whose long waves weigh most on a soft
// backing.
double Increment::misplacement() const {
  LaneSum squares;
  over_packs(half_.size() - 1, [&]<int W>(std::size_t k) {
    Eigen::Array<double, W, 1> power;
    for (int l = 0; l < W; ++l) power[l] = std::norm(half_[k + 1 + l]);
    squares.add(power / pack<W>(&stiffness_[k + 1]).square());
  });
  return extreme_over_rms * std::sqrt(2 * squares.total()) / grid_.size();
}

// z = M^-1 r, from the spectrum of r; returns <r, z>, summed over the spectrum (Parseval).
double Increment::precondition() {
  const int half_cols = grid_.half_cols();
  LaneSum all;
  double* values = reinterpret_cast<double*>(half_.data());
  over_packs(half_.size(), [&]<int W>(std::size_t k) {
    Eigen::Array<double, W, 1> power;
    for (int l = 0; l < W; ++l) {
      double* value = values + 2 * (k + l);
      const double m = inverse_m_[k + l];
      power[l] = (value[0] * value[0] + value[1] * value[1]) * m;
      value[0] *= m;
      value[1] *= m;
    }
    all.add(power);
  });
  // Every mode stands for itself and its mirror image, but for the first column and, where cols is even, the
  // last.
  double once = 0;
  for (int i = 0; i < grid_.rows; ++i) {
    const std::size_t first = static_cast<std::size_t>(i) * half_cols, last = first + half_cols - 1;
    once += std::norm(half_[first]) / inverse_m_[first];
    if (grid_.cols % 2 == 0) once += std::norm(half_[last]) / inverse_m_[last];
  }
  fft_.inverse_unscaled(half_, z_);
  return 2 * all.total() - once;
}

// The new direction d = -z + beta d, M d likewise, and what it meets here.
Increment::Along Increment::turn(double beta) {
  LaneSum slope, m_square, square, contact;
  over_packs(gap_.size(), [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> r = pack<W>(&residual_[i]);
    const Eigen::Array<double, W, 1> d = beta * pack<W>(&direction_[i]) - pack<W>(&z_[i]);
    const Eigen::Array<double, W, 1> md = beta * pack<W>(&m_direction_[i]) - r;
    const Eigen::Array<double, W, 1> dd = d * d;
    pack<W>(&direction_[i]) = d;
    pack<W>(&m_direction_[i]) = md;
    slope.add(d * r);
    m_square.add(d * md);
    square.add(dd);
    contact.add((pack<W>(&gap_[i]) > 0.0).select(dd, 0.0));
  });
  return {.slope = slope.total(),
          .elastic = m_square.total() - theta_over_removal_ * square.total(),
          .contact = contact.total() / removal_};
}

// Moves u by step x d, and the gap, S u and r with it; says what the direction meets at the new place.
Increment::Along Increment::advance(double step) {
  LaneSum slope, contact, squares, dot_z, touching;
  over_packs(gap_.size(), [&]<int W>(std::size_t i) {
    using Pack = Eigen::Array<double, W, 1>;
    const Pack d = pack<W>(&direction_[i]);
    const Pack gap = pack<W>(&gap_[i]) - step * d;
    const Pack face =
        pack<W>(&face_pressure_[i]) + step * (pack<W>(&m_direction_[i]) - theta_over_removal_ * d);
    const Pack r = face - gap.max(0.0) / removal_;
    pack<W>(&gap_[i]) = gap;
    pack<W>(&face_pressure_[i]) = face;
    pack<W>(&residual_[i]) = r;
    slope.add(d * r);
    contact.add((gap > 0.0).select(d * d, 0.0));
    squares.add(r * r);
    dot_z.add(r * pack<W>(&z_[i]));
    touching.add((gap > 0.0).select(Pack::Ones(), 0.0));
  });
  const double n = static_cast<double>(gap_.size());
  return {.slope = slope.total(),
          .contact = contact.total() / removal_,
          .residual_square = squares.total(),
          .residual_z = dot_z.total(),
          .share = touching.total() / n};
}

// Bracketed Newton on the slope, which is monotone and piecewise linear in the step: each try is a pass of
// advance(), so that the last one has already moved the fields.
Increment::Along Increment::search_line(const Along& start) {
  double low = 0, high = HUGE_VAL, step = -start.slope / (start.elastic + start.contact);
  double place = 0;
  Along here;
  for (int k = 0; k < most_line_steps; ++k) {
    here = advance(step - place);
    place = step;
    if (std::abs(here.slope) <= slope_left * std::abs(start.slope)) break;
    (here.slope < 0 ? low : high) = place;
    step = place - here.slope / (start.elastic + here.contact);
    if (step <= low || step >= high) step = std::isinf(high) ? 2 * place : 0.5 * (low + high);
  }
  return here;
}

void Increment::write_pressure(AlignedVector<double>& pressure) const {
  LaneSum sum;
  over_packs(gap_.size(), [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> p = pack<W>(&gap_[i]).max(0.0);
    pack<W>(&pressure[i]) = p;
    sum.add(p);
  });
  const double scale = static_cast<double>(gap_.size()) / sum.total();
  for (double& p : pressure) p *= scale;
}

IncrementReport Increment::solve(const AlignedVector<double>& height, double removal,
                                 AlignedVector<double>& pressure, const IncrementOptions& options,
                                 const Progress& progress) {
  require_positive(removal, "Increment", "removal");
  removal_ = removal;
  const double n = static_cast<double>(height.size());
  pressure.resize(height.size());
  const double height_rms = rms_about_mean(height.data(), height.size());
  const bool resumes = options.is_continued && last_share_ < 1;  // else full contact is the better guess
  resumes ? resume(height) : start(height);
  last_share_ = 1;
  std::fill(direction_.begin(), direction_.end(), 0.0);
  std::fill(m_direction_.begin(), m_direction_.end(), 0.0);
  Along here = advance(0);
  double residual_z = 0;  // <r, z> of the place before; 0 = start afresh
  IncrementReport report_{.transform_pairs = resumes ? 0 : 1};
  for (;;) {
    report_.residual = std::sqrt(here.residual_square / n);
    report_.contact_share = here.share;
    if (report_.residual == 0) break;  // full contact: the start was the answer
    if (report_.transform_pairs >= options.most_pairs)
      throw NotConverged("Increment", report_.transform_pairs, report_.residual, options.residual_tolerance);
    report(progress, 0);

    fft_.forward(residual_, half_);
    ++report_.transform_pairs;
    if (report_.residual <= options.residual_tolerance) {
      report_.gap = misplacement() / height_rms;
      if (report_.gap <= options.gap_tolerance) break;
    }
    const double theta = std::max(here.share, least_theta);
    const double change = theta / (theta_over_removal_ * removal_);
    if (change > theta_change || change < 1 / theta_change) {
      set_preconditioner(theta);
      residual_z = 0;
    }
    const double new_residual_z = precondition();
    const double beta = residual_z > 0 ? std::max(0.0, (new_residual_z - here.residual_z) / residual_z) : 0;
    residual_z = new_residual_z;
    Along start_ = turn(beta);
    if (start_.slope >= 0) start_ = turn(0);
    here = search_line(start_);
  }
  over_packs(gap_.size(), [&]<int W>(std::size_t i) {
    const Eigen::Array<double, W, 1> gap = pack<W>(&gap_[i]);
    pack<W>(&face_[i]) = pack<W>(&height[i]) - gap;
    report_.clearance = std::max(report_.clearance, -gap.minCoeff());
  });
  last_share_ = here.share;
  write_pressure(pressure);
  return report_;
}

}  // namespace libtexture
