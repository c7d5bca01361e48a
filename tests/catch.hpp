#pragma once
// Catch2 is version 2 on Debian 12 and version 3 on Debian 13.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
#else
#include <catch2/catch.hpp>
namespace Catch {
using Detail::Approx;  // where version 3 has it
namespace Matchers {
inline auto ContainsSubstring(const std::string& part) {  // as version 3 calls it
  return Contains(part);
}
}  // namespace Matchers
}
#endif
