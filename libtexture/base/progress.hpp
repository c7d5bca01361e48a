#pragma once
// Progress: how long work tells how far it is, and how it is stopped.

#include <cstddef>
#include <functional>

namespace libtexture {

/// Called with the share done at least once per solver iteration, and once in a block of smaller pieces of
/// work. The share rises from 0, never falls, and is 1 in the last call. It may throw to stop the work:
/// nothing is left half done. Empty = no reports.
using Progress = std::function<void(double share_done)>;

inline void report(const Progress& progress, double share_done) {
  if (progress) progress(share_done);
}

/// Progress of a part of the work, which goes from one share of the whole to another; `whole` must outlive
/// it.
Progress part_of(const Progress& whole, double from, double to);

/// Progress of one of `count` equal parts that are worked one after the other; `whole` must outlive it.
Progress nth_part(const Progress& whole, std::size_t index, std::size_t count);

}  // namespace libtexture
