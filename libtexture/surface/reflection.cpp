#include "libtexture/surface/reflection.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "libtexture/base/error.hpp"
#include "libtexture/base/parallel.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/surface/gloss.hpp"
#include "libtexture/surface/waves.hpp"

namespace libtexture {

void ReflectionView::validate() const {
  require_within(angle_deg, 0, 80, "ReflectionView", "angle_deg");
  require_positive(viewer_m, "ReflectionView", "viewer_m");
  require_positive(scene_m, "ReflectionView", "scene_m");
  require_not_negative(pupil_mm, "ReflectionView", "pupil_mm");
  require_positive(width_mm, "ReflectionView", "width_mm");
  require_within(rows, 1, 8192, "ReflectionView", "rows");
  require_within(cols, 1, 8192, "ReflectionView", "cols");
  require_within(refractive_index, 1.01, 4, "ReflectionView", "refractive_index");
  require_within(body_luminance, 0, 1, "ReflectionView", "body_luminance");
  const double half_height = width_mm * rows / cols / 2;
  const double topmost_deg = angle_deg + std::atan(half_height / (viewer_m * 1e3)) * 180 / std::numbers::pi;
  require(topmost_deg < 85, "ReflectionView", "width_mm",
          "must keep the picture's top below 85 degrees from the surface's normal", width_mm);
}

namespace {

using Vector = Eigen::Vector3d;

/// Repeats a patch over the plane and reads it between pixels by straight lines: slope along x, along y,
/// share.
class TiledPatch {
 public:
  TiledPatch(const HeightField& field, const Array2d& share) : grid_(field.grid()), cells_(grid_.size()) {
    const Waves waves(field);
    const Array2d x = waves.slope(Direction::rows), y = waves.slope(Direction::columns);
    const bool is_uniform = share.size() == 1;
    for (int i = 0; i < grid_.rows; ++i)
      for (int j = 0; j < grid_.cols; ++j)
        cells_[static_cast<std::size_t>(j * grid_.rows + i)] =
            Eigen::Array4d(x(i, j), y(i, j), is_uniform ? share(0, 0) : share(i, j), 0).cast<float>();
  }

  Eigen::Array4f at(double x_mm, double y_mm) const {
    const Place x = place(x_mm / grid_.pixel_mm, grid_.cols), y = place(y_mm / grid_.pixel_mm, grid_.rows);
    const Eigen::Array4f* low = &cells_[static_cast<std::size_t>(x.low * grid_.rows)];
    const Eigen::Array4f* high = &cells_[static_cast<std::size_t>(x.high * grid_.rows)];
    return (1 - x.past) * ((1 - y.past) * low[y.low] + y.past * low[y.high]) +
           x.past * ((1 - y.past) * high[y.low] + y.past * high[y.high]);
  }

 private:
  struct Place {
    int low, high;
    float past;
  };
  static Place place(double pixels, int count) {
    const double shifted = pixels - 0.5;  // pixel centres lie half a pixel in
    const double within = shifted - count * (static_cast<int>(shifted / count) - (shifted < 0 ? 1 : 0));
    const int low = std::min(static_cast<int>(within), count - 1);
    return {low, low + 1 == count ? 0 : low + 1, static_cast<float>(within - low)};
  }

  Grid grid_;
  std::vector<Eigen::Array4f>
      cells_;  // column by column: the eye sees a column of the surface as a row of the picture
};

/// Luminance of the scene at a place counted from its middle, to the right and up; beyond its edges that of
/// the edge.
double luminance_at(const Scene& scene, double right_mm, double up_mm) {
  const Array2d& picture = scene.luminance;
  const double per_mm = static_cast<double>(picture.cols()) / scene.width_mm;
  const auto last_col = static_cast<double>(picture.cols() - 1),
             last_row = static_cast<double>(picture.rows() - 1);
  const double col = std::clamp(last_col / 2 + right_mm * per_mm, 0.0, last_col);
  const double row = std::clamp(last_row / 2 - up_mm * per_mm, 0.0, last_row);
  const auto j = static_cast<Eigen::Index>(col), i = static_cast<Eigen::Index>(row);
  const auto j1 = std::min(j + 1, picture.cols() - 1), i1 = std::min(i + 1, picture.rows() - 1);
  const double right = col - static_cast<double>(j), down = row - static_cast<double>(i);
  return (1 - down) * ((1 - right) * picture(i, j) + right * picture(i, j1)) +
         down * ((1 - right) * picture(i1, j) + right * picture(i1, j1));
}

/// One ray of a pixel: where in the pupil (in radii) and where in the pixel (in pixels) it goes through.
struct Ray {
  double pupil_right, pupil_up, pixel_right, pixel_up;
};

/// Sixteen rays over the pupil and the pixel. Pupil: two rings of eight at the radii of Gauss's two-point
/// rule in r^2 (equal weights; exact for slopes up to the seventh power of the place). Pixel: 4 x 4, in
/// another order.
std::array<Ray, 16> rays_of_pixel() {
  std::array<Ray, 16> rays{};
  for (int k = 0; k < 16; ++k) {
    const int ring = k % 2;
    const double radius = std::sqrt(0.5 + (ring == 0 ? -0.5 : 0.5) / std::numbers::sqrt3);
    const double angle = std::numbers::pi / 8 * k;  // the rings are turned by half a step
    const int cell = (7 * k) % 16;
    rays[static_cast<std::size_t>(k)] = {radius * std::cos(angle), radius * std::sin(angle),
                                         (cell % 4 - 1.5) / 4, (cell / 4 - 1.5) / 4};
  }
  return rays;
}

/// Eye, surface and scene in space [mm]: the surface is z = 0, its middle the origin.
struct Geometry {
  explicit Geometry(const ReflectionView& view)
      : sine(std::sin(view.angle_deg * std::numbers::pi / 180)),
        cosine(std::cos(view.angle_deg * std::numbers::pi / 180)),
        viewer_mm(view.viewer_m * 1e3),
        scene_mm(view.scene_m * 1e3) {}

  double sine, cosine, viewer_mm, scene_mm;
  Vector eye{-sine * viewer_mm, 0, cosine* viewer_mm};
  Vector right{0, -1, 0};      ///< of the picture
  Vector up{cosine, 0, sine};  ///< of the picture
  Vector mirrored_up{cosine, 0, -sine};
  Vector mirrored_axis{sine, 0, cosine};
};

/// Mean luminance of a pixel's rays, before Fresnel: share L_scene + (1 - share) L_mean.
class Mirror {
 public:
  Mirror(const TiledPatch& patch, const Scene& scene, const ReflectionView& view)
      : patch_(patch),
        scene_(scene),
        mean_(scene.luminance.mean()),
        geometry_(view),
        radius_mm_(view.pupil_mm / 2),
        pixel_mm_(view.width_mm / view.cols) {}

  /// From the eye to a point of the picture's plane, through the surface's middle and across the line of
  /// sight.
  Vector sight(double right_mm, double up_mm) const {
    return right_mm * geometry_.right + up_mm * geometry_.up - geometry_.eye;
  }

  double luminance(double right_mm, double up_mm) const {
    const Geometry& g = geometry_;
    const Vector sight = this->sight(right_mm, up_mm);
    const double to_surface = -g.eye.z() / sight.z();  // lengths along the ray, in units of sight
    const double to_scene = (g.viewer_mm + g.scene_mm) / g.viewer_mm;
    const Vector hit = g.eye + to_surface * sight;
    const Eigen::Matrix2d shift = image_shift(sight, to_scene - to_surface);
    // A step up the picture moves the hit along the surface by this much.
    const double step_x = g.up.x() - g.up.z() * sight.x() / sight.z(),
                 step_y = -g.up.z() * sight.y() / sight.z();
    // The pupil is focused on the mirrored scene: its rays aim at one point and spread over the surface
    // before it.
    const double spread_mm = radius_mm_ * (1 - to_surface / to_scene);

    double sum = 0;
    for (const Ray& ray : rays_) {
      const double ray_right = ray.pixel_right * pixel_mm_, ray_up = ray.pixel_up * pixel_mm_;
      const double to_right = to_surface * ray_right + spread_mm * ray.pupil_right;
      const double to_up = to_surface * ray_up + spread_mm * ray.pupil_up;
      const Eigen::Array4f local = patch_.at(hit.x() + step_x * to_up, hit.y() - to_right + step_y * to_up);
      const double seen_right =
          to_scene * (right_mm + ray_right) + shift(0, 0) * local[0] + shift(0, 1) * local[1];
      const double seen_up = to_scene * (up_mm + ray_up) + shift(1, 0) * local[0] + shift(1, 1) * local[1];
      sum += mean_ + local[2] * (luminance_at(scene_, seen_right, seen_up) - mean_);
    }
    return sum / static_cast<double>(rays_.size());
  }

 private:
  /// How far [mm] a unit slope along x (first column) and y (second) moves the image to the right and up.
  /// r = v - 2 (v.n) n with n = (-h_x, -h_y, 1) to first order, cut with the scene's plane: exact to slope^2,
  /// far below a pixel for paint (slopes below .01).
  Eigen::Matrix2d image_shift(const Vector& sight, double beyond) const {
    const Geometry& g = geometry_;
    const Vector mirrored(sight.x(), sight.y(), -sight.z());
    Eigen::Matrix2d shift;
    for (int k = 0; k < 2; ++k) {
      Vector turned(0, 0, 2 * sight[k]);
      turned[k] = 2 * sight.z();
      const Vector moved =
          beyond * (turned - mirrored * (turned.dot(g.mirrored_axis) / mirrored.dot(g.mirrored_axis)));
      shift.col(k) << moved.dot(g.right), moved.dot(g.mirrored_up);
    }
    return shift;
  }

  const TiledPatch& patch_;
  const Scene& scene_;
  double mean_;
  Geometry geometry_;
  double radius_mm_;
  double pixel_mm_;
  std::array<Ray, 16> rays_ = rays_of_pixel();
};

void require_share(const Array2d& share, const Grid& grid) {
  const bool fits = share.size() == 1 || (share.rows() == grid.rows && share.cols() == grid.cols);
  const std::string shape = std::to_string(share.rows()).append(" x ").append(std::to_string(share.cols()));
  require(fits, "render_reflection", "specular_share", "must be (1, 1) or of the surface's shape", shape);
  const bool is_share = (share >= 0).all() && (share <= 1).all();
  require(is_share, "render_reflection", "specular_share", "must be between 0 and 1", "another value");
}

}  // namespace

Array2d render_reflection(const HeightField& field, const Array2d& specular_share, const ReflectionView& view,
                          const Scene& scene, const Progress& progress) {
  view.validate();
  scene.validate();
  require_share(specular_share, field.grid());
  const TiledPatch patch(field, specular_share);
  const Mirror mirror(patch, scene, view);
  const double pixel_mm = view.width_mm / view.cols;
  const double exposure = 1 / (fresnel(view.angle_deg, view.refractive_index) + view.body_luminance);
  Array2d picture(view.rows, view.cols);
  parallel_for(view.rows, progress, [&](int i, const Progress& part) {
    const double up_mm = (0.5 * (view.rows - 1) - i) * pixel_mm;
    for (int j = 0; j < view.cols; ++j) {
      const double right_mm = (j - 0.5 * (view.cols - 1)) * pixel_mm;
      const Vector sight = mirror.sight(right_mm, up_mm);
      const double strength = fresnel_of_cosine(-sight.z() / sight.norm(), view.refractive_index);
      const double luminance = strength * mirror.luminance(right_mm, up_mm) + view.body_luminance;
      picture(i, j) = std::min(1.0, exposure * luminance);
    }
    report(part, 1);
  });
  return picture;
}

}  // namespace libtexture
