#pragma once
// ToolSpread: how uncertain the wear rate and the grooves of a step's abrasive are in this hand, on this
// clear.

#include "libtexture/plan/kinship.hpp"
#include "libtexture/plan/uncertainty.hpp"
#include "libtexture/process/step.hpp"

namespace libtexture {

/// Standard deviation of the logarithm of a log-normal number with a coefficient of variation.
double log_sd_of_cv(double cv);

/// Of ln(wear rate) as this hand gets it from this clear, which is what a spot measures: the abrasive's own
/// spread, of which its family shares a part, and the size exponent; where wear_rate_of is any_hand, the
/// person's force and the clear's hardness too, which all abrasives share.
KinSpread wear_spread(const Step& step, const Uncertainty& uncertainty);

/// What the wear rates of two abrasives have in common besides: the exponent of the law of size, as a
/// covariance of their logarithms.
double size_covariance(const Abrasive& one, const Abrasive& other, const Uncertainty& uncertainty);

/// Of ln(depth of the deepest regular grooves) as this hand gets it on this clear: mean depth and cap, of
/// which all abrasives share a part; where groove_depth_of is any_hand, what force and hardness do to it too.
KinSpread groove_spread(const Step& step, const Uncertainty& uncertainty);

/// Of ln(mean groove depth) alone: the abrasive's figure where it states one, else the uncertainty's.
KinSpread groove_depth_spread(const Abrasive& abrasive, const Uncertainty& uncertainty);

}  // namespace libtexture
