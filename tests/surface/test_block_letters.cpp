#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "catch.hpp"
#include "libtexture/base/error.hpp"
#include "libtexture/surface/block_letters.hpp"

using namespace libtexture;
using Catch::Approx;

namespace {

// The box that strokes fill, their round ends included.
struct Extent {
  double left = HUGE_VAL, right = -HUGE_VAL, bottom = HUGE_VAL, top = -HUGE_VAL;
};

Extent extent_of(const std::string& words, double height_mm) {
  const double half = height_mm / 10;
  Extent all;
  for (const LetterStroke& one : block_letters(words, height_mm)) {
    all.left = std::min({all.left, one.from_right_mm - half, one.to_right_mm - half});
    all.right = std::max({all.right, one.from_right_mm + half, one.to_right_mm + half});
    all.bottom = std::min({all.bottom, one.from_up_mm - half, one.to_up_mm - half});
    all.top = std::max({all.top, one.from_up_mm + half, one.to_up_mm + half});
  }
  return all;
}

}  // namespace

TEST_CASE("every letter is five strokes high, and no two are alike") {
  // ISO 8596: 5 arcmin with strokes of 1 arcmin is what normal sight reads.
  std::set<std::vector<double>> shapes;
  for (char letter = 'A'; letter <= 'Z'; ++letter) {
    const std::string word(1, letter);
    INFO(word);
    const Extent extent = extent_of(word, 50);
    CHECK(extent.bottom == Approx(0).margin(1e-12));
    CHECK(extent.top == Approx(50));
    CHECK(extent.left == Approx(0).margin(1e-12));
    const bool is_wide = std::string("MTVWY").find(letter) != std::string::npos;
    CHECK(extent.right == Approx(letter == 'I' ? 10 : is_wide ? 50 : 40));
    std::vector<double> shape;
    for (const LetterStroke& one : block_letters(word, 5))
      shape.insert(shape.end(), {one.from_right_mm, one.from_up_mm, one.to_right_mm, one.to_up_mm});
    CHECK(shapes.insert(shape).second);
  }
}

TEST_CASE("a line of text is its letters, a stroke apart, and grows with its height") {
  // L 4, gap 1, I 1, gap 1, space 3, T 5: 15 strokes of 4 mm.
  CHECK(extent_of("LI T", 20).right == Approx(15 * 4));
  CHECK(extent_of("LI T", 40).right == Approx(15 * 8));
  CHECK(block_letters("", 20).empty());
  // E: three strokes from top over left to bottom, one in the middle.
  CHECK(block_letters("E", 20).size() == 4);
}

TEST_CASE("what has no letter is refused") {
  CHECK_THROWS_WITH(block_letters("LAMP 5", 20),
                    "block_letters: words must be capitals A to Z and spaces (got 5)");
  CHECK_THROWS_AS(block_letters("a", 20), InvalidInput);
  CHECK_THROWS_WITH(block_letters("A", 0), "block_letters: height_mm must be > 0 (got 0 mm)");
}
