#pragma once
// Gloss: how much light the surface mirrors, against a standard of polished glass (ISO 2813).

namespace libtexture {

/// Light of the middle of the visible range, used wherever one wavelength stands for white light [nm].
inline constexpr double light_wavelength_nm = 550;

/// Share of unpolarised light that a smooth surface of an index > 1 to 4 mirrors at an angle from its normal,
/// 0 to < 90 degrees (Fresnel).
double fresnel(double angle_deg, double refractive_index);

/// The same from the cosine of the angle, 0 to 1; for inner loops: nothing is checked.
double fresnel_of_cosine(double cosine, double refractive_index);

/// Gloss [GU] of a surface that mirrors `specular_share` (0 to 1) of what a smooth one would: 100 x its flux
/// over that of glass of index 1.567 (ISO 2813), docs/physics.md (46). Scratches throw light outside the
/// receptor: give their specular_share. Of the light that they scatter none is counted, though a meter's
/// receptor takes some in: a matt clear, as after a foam-backed disc, reads a few GU more at 60 degrees.
double gloss_of_share_gu(double angle_deg, double refractive_index, double specular_share);

/// Gloss [GU] of a surface with an even roughness, Gaussian in height [nm rms], much finer than the receptor
/// sees: specular share exp(-(4 pi roughness cos(angle)/light_wavelength)^2), docs/physics.md (47). Good
/// while gloss_knows_roughness(); Python warns beyond (UserWarning). Never for texture that bends the image,
/// nor for a few deep scratches: those have their own measures.
double gloss_gu(double angle_deg, double refractive_index, double roughness_nm = 0);

/// Whether the roughness is small enough for gloss_gu: rms phase 4 pi roughness cos(angle)/light_wavelength
/// under 2. Beyond it the mirrored share (below 2 %) depends on the tails of the heights, and no roughness
/// figure knows them.
bool gloss_knows_roughness(double angle_deg, double roughness_nm);

}  // namespace libtexture
