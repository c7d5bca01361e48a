#include "libtexture/plan/uncertainty.hpp"

#include "libtexture/base/error.hpp"

namespace libtexture {

void Uncertainty::validate() const {
  require_within(samples, 100, 1000000, "Uncertainty", "samples");
  require_within(force_within_cv, 0, 1, "Uncertainty", "force_within_cv");
  require_within(hardness_log_sd, 0, 1, "Uncertainty", "hardness_log_sd");
  require_within(size_exponent_sd, 0, 1, "Uncertainty", "size_exponent_sd");
}

}  // namespace libtexture
