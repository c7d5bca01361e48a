#include "allocations.hpp"

#include <atomic>
#include <cerrno>
#include <cstddef>

// The C library's own functions, under the names that it keeps for replacements of the public ones (glibc).
extern "C" {
void* __libc_malloc(std::size_t);
void* __libc_memalign(std::size_t, std::size_t);
}

namespace {
std::atomic<long> count{0};
}

extern "C" {

void* malloc(std::size_t size) {
  ++count;
  return __libc_malloc(size);
}

void* memalign(std::size_t alignment, std::size_t size) {
  ++count;
  return __libc_memalign(alignment, size);
}

void* aligned_alloc(std::size_t alignment, std::size_t size) {
  return memalign(alignment, size);
}

int posix_memalign(void** memory, std::size_t alignment, std::size_t size) {
  *memory = memalign(alignment, size);
  return *memory ? 0 : ENOMEM;
}

}  // extern "C"

long benchmark::allocations() {
  return count;
}
