#pragma once
// Random numbers addressed by a key, so that the same key gives the same number on any grid and any thread
// count.

#include <cstdint>
#include <initializer_list>

namespace libtexture {

/// A 64-bit hash of the key: splitmix64 steps (docs/physics.md, risk) folded over the words.
std::uint64_t hash_key(std::initializer_list<std::uint64_t> key);

/// A number uniform in [0, 1) for the key, in steps of 2^-53.
double uniform_at(std::initializer_list<std::uint64_t> key);

}  // namespace libtexture
