#pragma once
// Progress: how long work tells how far it is, and how it is stopped.

#include <functional>

namespace libtexture {

/// Called with the share done (0..1) at least once per solver iteration. It may throw to stop the work:
/// nothing is left half done. Empty = no reports.
using Progress = std::function<void(double share_done)>;

inline void report(const Progress& progress, double share_done) {
  if (progress) progress(share_done);
}

}  // namespace libtexture
