#include "libtexture/process/step.hpp"

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"

namespace libtexture {

void Stop::validate() const {
  if (touched_share)
    require(*touched_share > 0 && *touched_share <= 1, "Stop", "touched_share", "must be > 0 and <= 1",
            *touched_share);
  if (rms_um) require_positive(*rms_um, "Stop", "rms_um");
  if (band_mm) {
    const auto [shortest, longest] = *band_mm;
    require(shortest > 0 && shortest < longest, "Stop", "band_mm",
            "must be two wavelengths > 0, the shorter first",
            to_text(shortest) + " to " + to_text(longest) + " mm");
    require(rms_um.has_value(), "Stop", "band_mm", "must come with rms_um, which it is the band of",
            to_text(shortest) + " to " + to_text(longest) + " mm alone");
  }
  if (rms_share)
    require(*rms_share > 0 && *rms_share <= 1, "Stop", "rms_share", "must be > 0 and <= 1", *rms_share);
  if (removed_um) {
    require_positive(*removed_um, "Stop", "removed_um");
    require_within(*removed_um, 0, 1000, "Stop", "removed_um");
  }
  if (clear_owed_um) require_not_negative(*clear_owed_um, "Stop", "clear_owed_um");
  if (defect_um) {
    require_positive(*defect_um, "Stop", "defect_um");
    require_within(*defect_um, 0, 1000, "Stop", "defect_um");
  }
}

void Step::validate() const {
  abrasive.validate();
  backing.validate();
  motion.validate();
  if (!name.empty()) require_name(name, "Step", "name");
  wetness_effect(abrasive, wetness);  // refuses an abrasive that is not made for it
  require_within(passes, 1, 1000, "Step", "passes");
  require_within(look_every_passes, 1, 1000, "Step", "look_every_passes");
  // A disc that is changed while it is all but fresh is never used up.
  require_within(change_disc_below_share, 0, 0.95, "Step", "change_disc_below_share");
  stop.validate();
}

}  // namespace libtexture
