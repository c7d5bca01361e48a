#pragma once
// SeenTarget: whether what a target asks of a person's view is missed in a world: image clarity and letters.

#include <vector>

#include "libtexture/plan/job.hpp"
#include "libtexture/plan/start_surfaces.hpp"
#include "libtexture/plan/worlds.hpp"
#include "libtexture/surface/image_clarity.hpp"

namespace libtexture {

/// Whether a target asks for image clarity or letters.
bool asks_sight(const Target& target);

/// What is seen of the surfaces that worlds end with, read in between by their rms height.
class SeenTarget {
 public:
  /// light: what the scratches leave.
  SeenTarget(const Job& job, const Worlds& worlds, const StartSurfaces& ends, const MirroredLight& light);

  /// Whether a world that ends with an rms height [um], over its texture scale, misses it.
  bool is_missed(double rms_um, double texture_scale) const;

 private:
  Target target_;
  double contrast_;
  std::vector<double> rms_um_;
  std::vector<double> scales_;                        // texture scales at which clarity is told
  std::vector<std::vector<double>> clarity_percent_;  // by scale and surface
  std::vector<double> smear_arcmin_;                  // by surface
};

}  // namespace libtexture
