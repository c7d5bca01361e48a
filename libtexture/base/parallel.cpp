#include "libtexture/base/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <thread>
#include <vector>

#include "libtexture/base/error.hpp"

namespace libtexture {

void parallel_for(int count, int threads, const std::function<void(int)>& task) {
  require(threads >= 0, "parallel_for", "threads", "must be >= 0 (0 = all)", threads);
  if (count <= 0) return;
  if (threads == 0) threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
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
    for (int t = 1; t < std::min(threads, count); ++t) helpers.emplace_back(work);
    work();
  }
  for (const auto& error : errors)
    if (error) std::rethrow_exception(error);
}

void parallel_for_small(std::size_t count, const std::function<void(std::size_t)>& work) {
  constexpr std::size_t in_a_row = 64;
  parallel_for(static_cast<int>((count + in_a_row - 1) / in_a_row), 0, [&](int task) {
    const std::size_t first = static_cast<std::size_t>(task) * in_a_row;
    for (std::size_t i = first; i < std::min(count, first + in_a_row); ++i) work(i);
  });
}

}  // namespace libtexture
