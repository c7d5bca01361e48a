#pragma once
// Progress: how long work tells how far it is, and how it is stopped.

#include <cstddef>
#include <exception>
#include <functional>
#include <mutex>
#include <vector>

namespace libtexture {

/// Called with the share done (0..1) at least once per solver iteration. It may throw to stop the work:
/// nothing is left half done. Empty = no reports.
using Progress = std::function<void(double share_done)>;

inline void report(const Progress& progress, double share_done) {
  if (progress) progress(share_done);
}

/// Progress of a part of the work, which goes from one share of the whole to another; `whole` must outlive
/// it.
Progress part_of(const Progress& whole, double from, double to);

/// Progress of equal parts that run on several threads. What is told on is their mean, from one thread at a
/// time, and never falls. Once a report has thrown to stop the work, every part's next report throws the
/// same.
class JoinedProgress {
 public:
  /// `whole` must outlive this, and this its parts.
  JoinedProgress(const Progress& whole, std::size_t parts);

  Progress part(std::size_t index);

 private:
  void report_part(std::size_t index, double share_done);

  const Progress& whole_;
  std::mutex mutex_;
  std::vector<double> done_;
  std::exception_ptr stopped_;
};

}  // namespace libtexture
