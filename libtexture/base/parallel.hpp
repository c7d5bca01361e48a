#pragma once
// Parallel loops over independent work. Each task writes its own place only, so the bytes do not depend on
// the threads.

#include <cstddef>
#include <functional>

namespace libtexture {

/// Calls task(i) once for each i in [0, count) on up to `threads` threads (0 = all the machine has).
/// The first exception by index is thrown again here after all running tasks have ended.
void parallel_for(int count, int threads, const std::function<void(int)>& task);

/// Calls work(i) once for each i in [0, count) on all threads, 64 in a row a task: for many small pieces.
void parallel_for_small(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace libtexture
