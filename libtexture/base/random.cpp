#include "libtexture/base/random.hpp"

namespace libtexture {

std::uint64_t hash_key(std::initializer_list<std::uint64_t> key) {
  std::uint64_t state = 0;
  for (const std::uint64_t word : key) {
    state += word + 0x9e3779b97f4a7c15ULL;
    state = (state ^ (state >> 30)) * 0xbf58476d1ce4e5b9ULL;
    state = (state ^ (state >> 27)) * 0x94d049bb133111ebULL;
    state ^= state >> 31;
  }
  return state;
}

double uniform_at(std::initializer_list<std::uint64_t> key) {
  return static_cast<double>(hash_key(key) >> 11) * 0x1.0p-53;
}

}  // namespace libtexture
