#include "libtexture/surface/form.hpp"

#include <cmath>
#include <utility>

namespace libtexture {

namespace {

// Places of points along one side, -1 to 1, their mean 0.
Eigen::ArrayXd side(Eigen::Index count) {
  if (count == 1) return Eigen::ArrayXd::Zero(1);
  return Eigen::ArrayXd::LinSpaced(count, -1, 1);
}

double span(const Array2d& map) {
  return map.maxCoeff() - map.minCoeff();
}

// Takes a term out of the heights, and adds it to what was taken. The terms are at right angles on a full
// rectangle of points about its middle, so that each can be fitted alone.
void take_out(const Array2d& term, Array2d& heights, Array2d& taken) {
  const double square = term.square().sum();
  if (square <= 0) return;
  const Array2d part = (term * heights).sum() / square * term;
  heights -= part;
  taken += part;
}

// x down the rows, y along them, as an outer product.
Array2d product(const Eigen::ArrayXd& of_rows, const Eigen::ArrayXd& of_cols) {
  return (of_rows.matrix() * of_cols.matrix().transpose()).array();
}

double rms_of(const Array2d& differences) {
  return differences.size() > 0 ? std::sqrt(differences.square().mean()) : 0;
}

EdgeJump jump_between_columns(const Array2d& heights) {
  const Eigen::Index last = heights.cols() - 1;
  return {rms_of(heights.col(last) - heights.col(0)),
          rms_of(heights.rightCols(last) - heights.leftCols(last))};
}

}  // namespace

FormRemoved without_form(const HeightField& map) {
  const Eigen::Index rows = map.height_um().rows(), cols = map.height_um().cols();
  const Eigen::ArrayXd y = side(rows), x = side(cols);
  const Eigen::ArrayXd one_y = Eigen::ArrayXd::Ones(rows), one_x = Eigen::ArrayXd::Ones(cols);
  Array2d heights = map.height_um();
  Array2d plane = Array2d::Zero(rows, cols), form = plane;
  take_out(product(one_y, x), heights, plane);
  take_out(product(y, one_x), heights, plane);
  take_out(product(one_y, x.square() - x.square().mean()), heights, form);
  take_out(product(y.square() - y.square().mean(), one_x), heights, form);
  take_out(product(y, x), heights, form);
  return {HeightField(std::move(heights), map.pixel_mm()), span(plane), span(form), map.rms_um()};
}

EdgeJump edge_jump(const HeightField& map) {
  const EdgeJump along = jump_between_columns(map.height_um());
  if (map.height_um().rows() < 2) return along;
  const EdgeJump down = jump_between_columns(map.height_um().transpose());
  return down.times() > along.times() ? down : along;
}

std::vector<Statement> statements_of(const FormRemoved& removed) {
  return {{.kind = StatementKind::form_removed,
           .figures = {{"tilt_um", removed.tilt_um},
                       {"form_um", removed.form_um},
                       {"rms_um", removed.surface.rms_um()},
                       {"rms_before_um", removed.rms_before_um}}}};
}

std::vector<Statement> statements_of(const EdgeJump& jump) {
  if (jump.times() <= unfitting_edges) return {};
  return {{.kind = StatementKind::map_not_periodic,
           .figures = {{"edge_um", jump.edge_um}, {"times", jump.times()}}}};
}

}  // namespace libtexture
