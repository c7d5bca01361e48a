#include "libtexture/base/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <exception>
#include <mutex>
#include <numeric>
#include <thread>
#include <vector>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

// Hands the reports of the tasks to the thread that waits for them.
class Handover {
 public:
  Handover(const Progress& progress, std::size_t tasks) : progress_(progress), done_(tasks, 0.0) {}

  // From a task; returns once it is told on.
  void report_task(std::size_t task, double share_done) {
    const std::lock_guard turn(turn_);
    std::unique_lock lock(mutex_);
    if (stopped_) std::rethrow_exception(stopped_);
    done_[task] = std::max(done_[task], share_done);
    is_asked_ = true;
    changed_.notify_all();
    changed_.wait(lock, [&] { return !is_asked_; });
    if (stopped_) std::rethrow_exception(stopped_);
  }

  void end() {
    const std::lock_guard lock(mutex_);
    is_ended_ = true;
    changed_.notify_all();
  }

  // Tells on what is reported, until the end.
  void tell() {
    std::unique_lock lock(mutex_);
    for (;;) {
      changed_.wait(lock, [&] { return is_asked_ || is_ended_; });
      if (!is_asked_) return;
      try {
        progress_(std::accumulate(done_.begin(), done_.end(), 0.0) / static_cast<double>(done_.size()));
      } catch (...) {
        stopped_ = std::current_exception();
      }
      is_asked_ = false;
      changed_.notify_all();
    }
  }

 private:
  const Progress& progress_;
  std::mutex turn_;  // of the tasks: one report at a time
  std::mutex mutex_;
  std::condition_variable changed_;
  std::vector<double> done_;
  bool is_asked_ = false, is_ended_ = false;
  std::exception_ptr stopped_;
};

thread_local int thread_limit = 0;  // of work that this thread starts; 0 = none

}  // namespace

ThreadLimit::ThreadLimit(int threads) : before_(thread_limit) {
  require(threads >= 0, "parallel work", "threads", "must be >= 0 (0 = all the machine has)", threads);
  if (threads > 0) thread_limit = before_ > 0 ? std::min(before_, threads) : threads;
}

ThreadLimit::~ThreadLimit() {
  thread_limit = before_;
}

int threads_allowed() {
  if (thread_limit > 0) return thread_limit;
  return std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

void parallel_for(int count, const std::function<void(int)>& task) {
  if (count <= 0) return;
  const int threads = std::min(count, threads_allowed());
  const int share = threads_allowed() / threads;
  std::vector<std::exception_ptr> errors(count);
  std::atomic<int> next{0};
  std::atomic<bool> failed{false};
  const auto work = [&] {
    const ThreadLimit limit(share);
    for (int i = next++; i < count && !failed; i = next++) {
      try {
        task(i);
      } catch (...) {
        errors[i] = std::current_exception();
        failed = true;
      }
    }
  };
  {
    std::vector<std::jthread> helpers;
    for (int t = 1; t < threads; ++t) helpers.emplace_back(work);
    work();
  }
  for (const auto& error : errors)
    if (error) std::rethrow_exception(error);
}

void parallel_for(int count, const Progress& progress,
                  const std::function<void(int, const Progress&)>& task) {
  if (!progress) return parallel_for(count, [&](int i) { task(i, {}); });
  Handover handover(progress, static_cast<std::size_t>(std::max(0, count)));
  std::exception_ptr failed;
  {
    const std::jthread working([&, threads = threads_allowed()] {
      const ThreadLimit limit(threads);
      try {
        parallel_for(count, [&](int i) {
          task(i, [&handover, i](double share_done) {
            handover.report_task(static_cast<std::size_t>(i), share_done);
          });
        });
      } catch (...) {
        failed = std::current_exception();
      }
      handover.end();
    });
    handover.tell();
  }
  if (failed) std::rethrow_exception(failed);
}

void parallel_for_small(std::size_t count, const std::function<void(std::size_t)>& work,
                        const Progress& progress) {
  constexpr std::size_t in_a_row = 64;
  const std::size_t tasks = (count + in_a_row - 1) / in_a_row;
  parallel_for(static_cast<int>(tasks), progress, [&](int task, const Progress& part) {
    const std::size_t first = static_cast<std::size_t>(task) * in_a_row;
    for (std::size_t i = first; i < std::min(count, first + in_a_row); ++i) work(i);
    report(part, 1);
  });
}

}  // namespace libtexture
