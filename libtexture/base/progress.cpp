#include "libtexture/base/progress.hpp"

#include <algorithm>
#include <numeric>

namespace libtexture {

Progress part_of(const Progress& whole, double from, double to) {
  if (!whole) return {};
  return [&whole, from, to](double done) { whole(from + (to - from) * done); };
}

JoinedProgress::JoinedProgress(const Progress& whole, std::size_t parts) : whole_(whole), done_(parts, 0.0) {}

Progress JoinedProgress::part(std::size_t index) {
  if (!whole_) return {};
  return [this, index](double share_done) { report_part(index, share_done); };
}

void JoinedProgress::report_part(std::size_t index, double share_done) {
  const std::lock_guard lock(mutex_);
  if (stopped_) std::rethrow_exception(stopped_);
  done_[index] = std::max(done_[index], share_done);
  try {
    whole_(std::accumulate(done_.begin(), done_.end(), 0.0) / static_cast<double>(done_.size()));
  } catch (...) {
    stopped_ = std::current_exception();
    throw;
  }
}

}  // namespace libtexture
