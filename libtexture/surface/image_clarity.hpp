#pragma once
// Image clarity: how well a mirrored comb, or a letter, keeps its shape.

#include <array>
#include <optional>
#include <vector>

#include "libtexture/surface/slope.hpp"
#include "libtexture/surface/specular_share.hpp"
#include "libtexture/surface/waves.hpp"

namespace libtexture {

/// Widths of the standard's combs [mm].
inline constexpr std::array<double, 5> standard_combs_mm{0.125, 0.25, 0.5, 1, 2};

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
    return FieldTable{optional("comb_mm", &ClarityOptions::comb_mm),
                      optional("distance_mm", &ClarityOptions::distance_mm),
                      optional("angle_deg", &ClarityOptions::angle_deg),
                      optional("slit_mm", &ClarityOptions::slit_mm),
                      optional("direction", &ClarityOptions::direction),
                      optional("grooves", &ClarityOptions::grooves),
                      optional("lens_half_angle_deg", &ClarityOptions::lens_half_angle_deg)};
  }
};

/// What scratches leave of what is mirrored in a surface, and what they scatter, area mean over its parts.
struct MirroredLight {
  /// share of the light that stays in the mirror direction, 0 to 1
  double specular = 1;
  /// share that is scattered into the lens of a clarity meter, 0 to 1
  double veil = 0;

  /// share of the texture's image clarity that is left, docs/physics.md (52)
  double clarity_share() const { return specular / (specular + veil); }
  /// contrast of a lamp, or a letter, that is left: lamp_visibility()
  double contrast() const { return lamp_visibility(specular); }
};

/// The light that parts of a surface mirror; the lens is that of ClarityOptions.
MirroredLight mirrored_light(const std::vector<DepthLaw>& laws,
                             double angle_deg = ClarityOptions{}.angle_deg);

/// Image clarity [%, 0 to 100]: each pixel shifts the slit's image by 2 distance_mm slope; M and m are the
/// most and least light behind the comb while it moves across: 100 (M - m)/(M + m) x share/(share + scatter
/// into the lens). Not monotone in amplitude once waves shift the image by more than half a line: a test, not
/// a measure. docs/physics.md (51), (52).
double image_clarity_percent(const HeightField& field, const ClarityOptions& options = {});
// Of a surface whose waves are at hand.
double image_clarity_percent(const Waves& waves, const ClarityOptions& options = {});

/// The same for each of standard_combs_mm [%]; options.comb_mm is not used.
std::vector<double> image_clarity_by_comb_percent(const HeightField& field,
                                                  const ClarityOptions& options = {});
// Of a surface whose waves are at hand.
std::vector<double> image_clarity_by_comb_percent(const Waves& waves, const ClarityOptions& options = {});

/// The contrast (M - m)/(M + m), 0 to 1, of a comb for given shifts of the image [mm], any shape, at least
/// one.
double comb_contrast(const Array2d& shift_mm, double comb_mm, double slit_mm = 0);

/// The closed form of comb_contrast for Gaussian shifts of a standard deviation >= 0 [mm] and no slit,
/// docs/physics.md (52a): what a field of random waves comes to.
double gaussian_comb_contrast(double shift_sd_mm, double comb_mm);

/// Rms wander [arcmin] of a distant mirrored point as the eye moves over the surface: twice the slope.
/// footprint_mm as in slope(): waves shorter than what the pupil sees blur the image and do not move it.
double image_wander_arcmin(const HeightField& field, Direction direction, double footprint_mm = 0);
// Of a surface whose waves are at hand.
double image_wander_arcmin(const Waves& waves, Direction direction, const SpotMean& spot);

/// Height [mm] of the smallest letter that normal sight reads at a distance [m], > 0: 5 arcmin, with strokes
/// of 1 arcmin (ISO 8596).
double limit_of_sight_mm(double distance_m);

/// Contrast below which no letter is read, of whatever height: that of a lamp which can just be made out;
/// estimate.
inline constexpr double least_read_contrast = 0.05;

/// Height [mm] of the smallest mirrored letter that can be read at a distance [m, whole path], or none where
/// its contrast is below 0.05 (least_read_contrast). contrast, 0 to 1: what the veil of scattered light
/// leaves, as lamp_visibility() has it. The letter is five strokes high, and its stroke is what normal sight
/// resolves at that contrast, contrast^-0.4 arcmin, or the wander [arcmin, rms] where that is more.
/// docs/physics.md (53).
std::optional<double> smallest_letter_mm(double wander_arcmin, double distance_m, double contrast = 1);

}  // namespace libtexture
