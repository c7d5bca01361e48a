#pragma once
// Image clarity: how well a mirrored comb, or a letter, keeps its shape.

#include <vector>

#include "libtexture/surface/slope.hpp"
#include "libtexture/surface/specular_share.hpp"

namespace libtexture {

/// The set-up of a comb measurement (JIS K 7374, ISO 17221, ASTM D5767 method B: collimated light, slit and
/// comb lines perpendicular to the plane of incidence). ASTM says that its methods do not agree with each
/// other: name this one.
struct ClarityOptions {
  double comb_mm = 0.5;                   ///< width of a line, half the comb's period: .125, .25, .5, 1, 2
  double distance_mm = 150;               ///< focal length of the lens that makes the image [mm], > 0
  double angle_deg = 45;                  ///< from the normal; matters where there are grooves
  double slit_mm = 0.03;                  ///< width of the slit's image [mm], >= 0
  Direction direction = Direction::rows;  ///< the plane of incidence holds this direction
  std::vector<GroovePopulation> grooves = {};  ///< scratches too fine for the grid; none = smooth clear
  double lens_half_angle_deg = 3;              ///< scattered light within it veils the image; estimate

  void validate() const;
  static constexpr auto fields() {
    return std::tuple{optional("comb_mm", &ClarityOptions::comb_mm),
                      optional("distance_mm", &ClarityOptions::distance_mm),
                      optional("angle_deg", &ClarityOptions::angle_deg),
                      optional("slit_mm", &ClarityOptions::slit_mm),
                      optional("direction", &ClarityOptions::direction),
                      optional("grooves", &ClarityOptions::grooves),
                      optional("lens_half_angle_deg", &ClarityOptions::lens_half_angle_deg)};
  }
};

/// Image clarity [%, 0 to 100]: each pixel shifts the slit's image by 2 distance_mm slope; M and m are the
/// most and least light behind the comb while it moves across: 100 (M - m)/(M + m) x share/(share + scatter
/// into the lens). Not monotone in amplitude once waves shift the image by more than half a line: a test, not
/// a measure.
double image_clarity_percent(const HeightField& field, const ClarityOptions& options = {});

/// The contrast (M - m)/(M + m), 0 to 1, of a comb for given shifts of the image [mm], any shape, at least
/// one.
double comb_contrast(const Array2d& shift_mm, double comb_mm, double slit_mm = 0);

/// Rms wander [arcmin] of a distant mirrored point as the eye moves over the surface: twice the slope.
/// footprint_mm as in slope(): waves shorter than what the pupil sees blur the image and do not move it.
double image_wander_arcmin(const HeightField& field, Direction direction, double footprint_mm = 0);

/// Height [mm] of the smallest mirrored letter that can be read at a distance [m, whole path]: 5 arcmin, with
/// strokes of 1 arcmin (ISO 8596, normal sight), or five times the wander where that is more than a stroke
/// (our rule, estimate).
double smallest_letter_mm(double wander_arcmin, double distance_m);

}  // namespace libtexture
