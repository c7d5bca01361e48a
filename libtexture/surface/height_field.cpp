#include "libtexture/surface/height_field.hpp"

#include <cmath>
#include <string>
#include <utility>

#include "libtexture/base/error.hpp"

namespace libtexture {

HeightField::HeightField(Array2d height_um, double pixel_mm)
    : height_um_(std::move(height_um)),
      grid_{static_cast<int>(height_um_.rows()), static_cast<int>(height_um_.cols()), pixel_mm} {
  grid_.validate();
  if (height_um_.isFinite().all()) return;
  Eigen::Index row = 0, col = 0;
  (!height_um_.isFinite()).cast<int>().maxCoeff(&row, &col);
  const std::string place = "height_um[" + std::to_string(row) + ", " + std::to_string(col) + "]";
  require(false, "HeightField", place, "must be finite", height_um_(row, col));
}

double HeightField::mean_um() const {
  return height_um_.mean();
}

double HeightField::rms_um() const {
  return std::sqrt((height_um_ - mean_um()).square().mean());
}

double HeightField::peak_to_valley_um() const {
  return height_um_.maxCoeff() - height_um_.minCoeff();
}

double HeightField::valley_depth_um() const {
  return mean_um() - height_um_.minCoeff();
}

bool HeightField::operator==(const HeightField& other) const {
  return grid_ == other.grid_ && (height_um_ == other.height_um_).all();
}

}  // namespace libtexture
