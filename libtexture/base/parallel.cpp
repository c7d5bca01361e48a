#include "libtexture/base/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <exception>
#include <mutex>
#include <numeric>
#include <optional>
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

int threads_of_machine() {
  return std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

// Threads that work of this thread may still start; none = nobody has set a limit yet.
thread_local std::atomic<int>* idle_threads = nullptr;

// Takes up to `most` idle threads.
int take(std::atomic<int>& idle, int most) {
  int seen = idle, taken = 0;
  do {
    taken = std::clamp(seen, 0, most);
  } while (!idle.compare_exchange_weak(seen, seen - taken));
  return taken;
}

}  // namespace

ThreadLimit::ThreadLimit(int threads) : idle_(0), before_(idle_threads) {
  require(threads >= 0, "parallel work", "threads", "must be >= 0 (0 = all the machine has)", threads);
  const int wished = (threads > 0 ? threads : threads_of_machine()) - 1;
  idle_ = before_ ? std::min(wished, before_->load()) : wished;
  idle_threads = &idle_;
}

ThreadLimit::~ThreadLimit() {
  idle_threads = before_;
}

void parallel_for(int count, const std::function<void(int)>& task) {
  if (count <= 0) return;
  std::optional<ThreadLimit> all;
  if (!idle_threads) all.emplace(0);
  std::atomic<int>& idle = *idle_threads;
  std::vector<std::exception_ptr> errors(count);
  std::atomic<int> next{0};
  std::atomic<bool> failed{false};
  const auto work = [&] {
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
    for (int taken = take(idle, count - 1); taken > 0; --taken)
      helpers.emplace_back([&] {
        idle_threads = &idle;
        work();
        ++idle;
      });
    work();
    ++idle;  // this thread waits now: others' work may have another in its place
  }
  --idle;
  for (const auto& error : errors)
    if (error) std::rethrow_exception(error);
}

void parallel_for(int count, const Progress& progress,
                  const std::function<void(int, const Progress&)>& task) {
  if (!progress) return parallel_for(count, [&](int i) { task(i, {}); });
  Handover handover(progress, static_cast<std::size_t>(std::max(0, count)));
  std::exception_ptr failed;
  {
    const std::jthread working([&, idle = idle_threads] {
      idle_threads = idle;
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
