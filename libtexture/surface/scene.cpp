#include "libtexture/surface/scene.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "libtexture/base/error.hpp"
#include "libtexture/surface/block_letters.hpp"

namespace libtexture {

void Scene::validate() const {
  require(luminance.size() > 0, "Scene", "luminance", "must hold at least one pixel", "none");
  const bool is_within = (luminance >= 0).all() && (luminance <= 1).all();
  require(is_within, "Scene", "luminance", "must be between 0 and 1", "another value");
  require_positive(width_mm, "Scene", "width_mm");
}

namespace {

constexpr int pixels = 1024;
constexpr double pixel_mm = shelf::width_mm / pixels;

/// A rectangle, counted from the middle of the scene, to the right and up [mm].
struct Box {
  double left, right, bottom, top;
  double distance_mm(double x, double y) const {
    return std::max(std::max(left - x, x - right), std::max(bottom - y, y - top));
  }
};

Box around(double x, double y, double half) {
  return {x - half, x + half, y - half, y + half};
}

/// Paints where distance_mm(right, up), the signed distance from the edge of a shape within the box, is
/// negative; the edge is blended over one pixel.
template <class Distance>
void paint(Array2d& picture, const Box& box, double luminance, const Distance& distance_mm) {
  const auto index = [](double from_corner_mm) {
    return std::clamp(static_cast<int>(std::floor(from_corner_mm / pixel_mm)), 0, pixels - 1);
  };
  const double half = shelf::width_mm / 2;
  for (int i = index(half - box.top - pixel_mm); i <= index(half - box.bottom + pixel_mm); ++i)
    for (int j = index(box.left + half - pixel_mm); j <= index(box.right + half + pixel_mm); ++j) {
      const double distance = distance_mm((j + 0.5) * pixel_mm - half, half - (i + 0.5) * pixel_mm);
      const double inside = std::clamp(0.5 - distance / pixel_mm, 0.0, 1.0);
      picture(i, j) += inside * (luminance - picture(i, j));
    }
}

void paint_box(Array2d& picture, const Box& box, double luminance) {
  paint(picture, box, luminance, [&](double x, double y) { return box.distance_mm(x, y); });
}

void paint_disc(Array2d& picture, double right, double up, double diameter, double luminance) {
  paint(picture, around(right, up, diameter / 2), luminance,
        [=](double x, double y) { return std::hypot(x - right, y - up) - diameter / 2; });
}

/// A straight line with round ends.
void paint_stroke(Array2d& picture, const LetterStroke& stroke, double width, double luminance) {
  const double x0 = stroke.from_right_mm, y0 = stroke.from_up_mm;
  const double along_x = stroke.to_right_mm - x0, along_y = stroke.to_up_mm - y0;
  const Box box{std::min(x0, stroke.to_right_mm) - width / 2, std::max(x0, stroke.to_right_mm) + width / 2,
                std::min(y0, stroke.to_up_mm) - width / 2, std::max(y0, stroke.to_up_mm) + width / 2};
  paint(picture, box, luminance, [=](double x, double y) {
    const double share = ((x - x0) * along_x + (y - y0) * along_y) / (along_x * along_x + along_y * along_y);
    const double nearest = std::clamp(share, 0.0, 1.0);
    return std::hypot(x - x0 - nearest * along_x, y - y0 - nearest * along_y) - width / 2;
  });
}

void paint_row(Array2d& picture, const shelf::SignRow& row) {
  for (LetterStroke stroke : block_letters(row.words, row.height_mm)) {
    stroke.from_right_mm += shelf::sign_right_mm, stroke.to_right_mm += shelf::sign_right_mm;
    stroke.from_up_mm += row.up_mm, stroke.to_up_mm += row.up_mm;
    paint_stroke(picture, stroke, row.height_mm / strokes_a_height, shelf::sign_luminance);
  }
}

}  // namespace

Scene shelf_scene() {
  using namespace shelf;
  Array2d picture = Array2d::Constant(pixels, pixels, wall_luminance);

  const double shelf_top = lamp_up_mm - lamp_diameter_mm / 2;
  paint_box(picture, {-650, 650, shelf_top - 20, shelf_top}, 0.25);
  for (int k = -2; k <= 2; ++k) paint_disc(picture, k * lamp_spacing_mm, lamp_up_mm, lamp_diameter_mm, 1);

  const double half_line = line_width_mm / 2;
  paint_box(picture, {line_right_mm - half_line, line_right_mm + half_line, line_bottom_mm, line_top_mm},
            0.8);
  paint_disc(picture, line_right_mm, line_bottom_mm, 50, 0.8);

  paint_box(picture, {-440, 680, -590, -85}, board_luminance);
  for (const SignRow& row : sign_rows) paint_row(picture, row);
  return {std::move(picture), width_mm};
}

}  // namespace libtexture
