#include "libtexture/plan/uncertainty.hpp"

#include "libtexture/base/error.hpp"

namespace libtexture {

void Uncertainty::validate() const {
  require_within(samples, 100, 1000000, "Uncertainty", "samples");
  require_within(force_within_cv, 0, 1, "Uncertainty", "force_within_cv");
  require_within(hardness_log_sd, 0, 1, "Uncertainty", "hardness_log_sd");
  require_within(size_exponent_sd, 0, 1, "Uncertainty", "size_exponent_sd");
  require_within(groove_depth_log_sd, 0, 1, "Uncertainty", "groove_depth_log_sd");
  require_within(groove_cap_log_sd, 0, 1, "Uncertainty", "groove_cap_log_sd");
  require_within(loading_log_sd, 0, 1, "Uncertainty", "loading_log_sd");
  require_within(clear_share, 0, 1, "Uncertainty", "clear_share");
}

}  // namespace libtexture
