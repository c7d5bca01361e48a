#include "libtexture/plan/defect.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/bump_curve.hpp"

namespace libtexture {

namespace {

constexpr double unseen_depth_um = 0.1;  // a wide groove never quite goes; as ScratchLimits has it, estimate
constexpr double farthest = 1e-12;       // share at either end beyond which nothing is drawn

void require_positive_if(const std::optional<double>& value, std::string_view field) {
  if (value) require_positive(*value, "Defect", field);
}

}  // namespace

void Defect::validate() const {
  require(depth_um.has_value() != height_um.has_value(), "Defect", "depth_um or height_um",
          "must be given, one of them and not the other", depth_um ? "both" : "none");
  require_positive_if(depth_um, "depth_um");
  require_positive_if(height_um, "height_um");
  if (sd_um) require_not_negative(*sd_um, "Defect", "sd_um");
  require_positive_if(width_mm, "width_mm");
  require(!height_um || width_mm, "Defect", "width_mm",
          "must be given with height_um: a backing gives way to a wide mark", "none");
  require_positive_if(length_mm, "length_mm");
  if (length_mm && width_mm)
    require(*length_mm >= *width_mm, "Defect", "length_mm",
            "must be at least width_mm, " + to_text(*width_mm) + " mm", *length_mm);
  require_positive_if(patch_mm, "patch_mm");
  require_positive_if(feather_mm, "feather_mm");
  require(patch_mm || !feather_mm, "Defect", "feather_mm", "must come with patch_mm, which it goes about",
          feather_mm ? to_text(*feather_mm) + " mm alone" : "");
  require(x_mm.has_value() == y_mm.has_value(), "Defect", "x_mm and y_mm", "must be given both or neither",
          x_mm ? "x_mm alone" : "y_mm alone");
  require_positive(level_within_um, "Defect", "level_within_um");
  if (height_um)
    require(level_within_um < *height_um, "Defect", "level_within_um",
            "must be less than height_um, " + to_text(*height_um) + " um", level_within_um);
}

bool is_above(const Defect& defect) {
  return defect.height_um.has_value();
}

double size_um(const Defect& defect) {
  return is_above(defect) ? *defect.height_um : defect.depth_um.value();
}

double size_sd_um(const Defect& defect) {
  return defect.sd_um.value_or(defect_sd_share * size_um(defect));
}

double may_stay_um(const Defect& defect) {
  if (is_above(defect)) return defect.level_within_um;
  return is_followed(defect) ? unseen_depth_um : 0;
}

double size_at(const Defect& defect, double share) {
  require_within(share, 0, 1, "Defect", "share");
  const double mean = size_um(defect), sd = size_sd_um(defect);
  if (sd == 0) return mean;
  const boost::math::normal normal(mean, sd);
  // Of the upper tail, as a mark that is well known has next to nothing below 0.
  const double above = boost::math::cdf(boost::math::complement(normal, 0.0)) * (1 - share);
  const double size =
      boost::math::quantile(boost::math::complement(normal, std::clamp(above, farthest, 1 - farthest)));
  return std::max(size, 0.0);
}

}  // namespace libtexture
