#pragma once
// The machine of most tests: a disc of 150 mm on an orbit of 5 mm, 10 000 rpm, 25 N, lanes of half a disc at
// 100 mm/s.

#include "libtexture/tool/motion.hpp"

namespace machine {

inline libtexture::Motion orbital_150_mm() {
  libtexture::Motion motion;
  motion.disc_diameter_mm = 150;
  motion.orbit_mm = 5;
  motion.speed_rpm = 10000;
  motion.force_n = 25;
  motion.feed_mm_per_s = 100;
  motion.step_over_mm = 75;
  return motion;
}

}  // namespace machine
