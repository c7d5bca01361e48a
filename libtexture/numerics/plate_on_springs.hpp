#pragma once
// Plate on springs: how a wide plate that rests on springs dishes under a round load.

namespace libtexture {

/// How much deeper than at the rim of the load a plate lies at two places under it, in units of a pressure
/// over the stiffness of the springs. The load falls from the middle to nothing at the rim; with s the square
/// of the distance over the load's radius it is the sum of two parts.
struct PlateDish {
  double middle_by_even;    ///< s = 0, under the part 1 - s
  double middle_by_ring;    ///< s = 0, under the part s (1 - s)
  double half_way_by_even;  ///< s = 1/2, under the part 1 - s
  double half_way_by_ring;  ///< s = 1/2, under the part s (1 - s)
};

/// The dish by the load's radius over the plate's length (D/k)^(1/4), > 0, with D the bending stiffness of
/// the plate and k the stiffness of the springs: Kirchhoff's plate, without end (docs/physics.md, equation
/// 11c). The closed form, read from a table (within 1e-6) between 0.2 and 30 lengths; below, where bending
/// alone resists, within 0.1 %; above, as at 30.
PlateDish plate_dish(double radius_in_lengths);

}  // namespace libtexture
