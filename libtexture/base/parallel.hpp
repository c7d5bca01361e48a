#pragma once
// Parallel loops over independent work. Each task writes its own place only, so the bytes do not depend on
// the threads.

#include <atomic>
#include <cstddef>
#include <functional>

#include "libtexture/base/progress.hpp"

namespace libtexture {

/// While it lives, parallel work that this thread starts, and what that starts in turn, uses at most
/// `threads` threads in all, this one among them (0 = all the machine has). Of two limits, one inside the
/// other, the lower holds. InvalidInput where threads < 0.
class ThreadLimit {
 public:
  explicit ThreadLimit(int threads);
  ~ThreadLimit();
  ThreadLimit(const ThreadLimit&) = delete;
  ThreadLimit& operator=(const ThreadLimit&) = delete;

 private:
  std::atomic<int> idle_;  // threads that parallel work may still start
  std::atomic<int>* before_;
};

/// Calls task(i) once for each i in [0, count), on this thread and on as many more as are idle under the
/// limit. Work inside work takes what is idle then, and gives it back: a long task beside many short ones
/// leaves no thread waiting. The first exception by index is thrown again here after all running tasks have
/// ended.
void parallel_for(int count, const std::function<void(int)>& task);

/// The same with tasks that tell how far they are, each as if it were the whole. What is told on is their
/// mean, which never falls, one report for each of theirs. It comes from the calling thread, which does
/// nothing else: there Ctrl-C is seen, whichever thread reports. Once a report has thrown to stop the work,
/// every task's next report throws the same.
void parallel_for(int count, const Progress& progress, const std::function<void(int, const Progress&)>& task);

/// Calls work(i) once for each i in [0, count) in parallel, 64 in a row a task: for many small pieces.
/// progress is called once a task.
void parallel_for_small(std::size_t count, const std::function<void(std::size_t)>& work,
                        const Progress& progress = {});

}  // namespace libtexture
