#pragma once
// Kinship: figures that have a part in common, and what a measurement of one says of its kin.

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// How uncertain the logarithm of a figure is: log = common_sd x a number of all its kin + own_sd x its own,
/// both standard normal.
struct KinSpread {
  double common_sd = 0;  ///< of the part that its kin share
  double own_sd = 0;     ///< of its own part

  double log_sd() const;  ///< of both together
  double share() const;   ///< of the variance that is common; 0 where nothing is uncertain
};

/// A spread of which a share of the variance, 0 to 1, is common.
KinSpread kin_spread(double log_sd, double share);

/// What was learned of one of the kin.
struct Lesson {
  KinSpread before = {};  ///< how uncertain its logarithm was
  double shift = 0;       ///< by how much the mean of its logarithm has moved
  double log_sd = 0;      ///< how uncertain it is now, at most as before
};

/// What a figure is believed to be after a lesson, relative to before.
struct Taught {
  double shift = 0;       ///< of the mean of its logarithm
  KinSpread spread = {};  ///< of its logarithm
};

/// The figure that the lesson is of.
Taught taught_itself(const Lesson& lesson);

/// Another of its kin, by the rule of two correlated normal numbers (docs/physics.md (66d)). What the two
/// have in common besides, as a covariance, is counted within their own parts.
Taught taught_kin(const Lesson& lesson, const KinSpread& kin, double covariance_besides = 0);

}  // namespace libtexture
