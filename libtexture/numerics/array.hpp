#pragma once
// Arrays: what callers hold (Array2d) and what transforms work on (AlignedVector).

#include <Eigen/Core>
#include <complex>
#include <new>
#include <vector>

namespace libtexture {

/// A map of values on a grid, shape (rows, cols), row-major as in numpy.
using Array2d = Eigen::Array<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// Allocates on cache lines: transforms of unaligned arrays differ in the last digit.
template <class T>
struct AlignedAllocator {
  using value_type = T;
  static constexpr std::align_val_t alignment{64};
  AlignedAllocator() = default;
  template <class U>
  explicit AlignedAllocator(const AlignedAllocator<U>&) {}
  T* allocate(std::size_t n) { return static_cast<T*>(::operator new(n * sizeof(T), alignment)); }
  void deallocate(T* p, std::size_t) { ::operator delete(p, alignment); }
  template <class U>
  bool operator==(const AlignedAllocator<U>&) const {
    return true;
  }
};

template <class T>
using AlignedVector = std::vector<T, AlignedAllocator<T>>;

}  // namespace libtexture
