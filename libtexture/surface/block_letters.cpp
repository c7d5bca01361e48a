#include "libtexture/surface/block_letters.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

// Letters A to Z as lines through points. A point is two digits, right and up, in strokes from the middle of
// the lower left end; a bar parts lines.
constexpr std::array<std::string_view, 26> lines_of_letter{
    "00 03 14 24 33 30|02 32",           // A
    "00 04 24 33 22 02|22 31 20 00",     // B
    "34 14 03 01 10 30",                 // C
    "00 04 24 33 31 20 00",              // D
    "34 04 00 30|02 22",                 // E
    "00 04 34|02 22",                    // F
    "34 14 03 01 10 30 32 22",           // G
    "00 04|30 34|02 32",                 // H
    "00 04",                             // I
    "01 10 20 31 34",                    // J
    "00 04|34 02 30",                    // K
    "04 00 30",                          // L
    "00 04 22 44 40",                    // M
    "00 04 30 34",                       // N
    "10 01 03 14 24 33 31 20 10",        // O
    "00 04 24 33 22 02",                 // P
    "10 01 03 14 24 33 31 20 10|21 30",  // Q
    "00 04 24 33 22 02|12 30",           // R
    "34 14 03 12 22 31 20 00",           // S
    "04 44|24 20",                       // T
    "04 01 10 20 31 34",                 // U
    "04 20 44",                          // V
    "04 10 22 30 44",                    // W
    "00 34|04 30",                       // X
    "04 22 44|22 20",                    // Y
    "04 34 00 30",                       // Z
};

constexpr double space_strokes = 3;

}  // namespace

std::vector<LetterStroke> block_letters(std::string_view words, double height_mm) {
  require_positive(height_mm, "block_letters", "height_mm");
  const double stroke_mm = height_mm / strokes_a_height;
  std::vector<LetterStroke> strokes;
  double left = 0;
  for (const char letter : words) {
    if (letter == ' ') {
      left += space_strokes;
      continue;
    }
    require(letter >= 'A' && letter <= 'Z', "block_letters", "words", "must be capitals A to Z and spaces",
            std::string(1, letter));
    const std::string_view lines = lines_of_letter[static_cast<std::size_t>(letter - 'A')];
    double width = 0;
    const auto right = [&](std::size_t i) { return (left + lines[i] - '0' + 0.5) * stroke_mm; };
    const auto up = [&](std::size_t i) { return (lines[i + 1] - '0' + 0.5) * stroke_mm; };
    for (std::size_t i = 0; i < lines.size(); i += 3) {
      width = std::max(width, lines[i] - '0' + 1.0);
      if (i > 0 && lines[i - 1] == ' ') strokes.push_back({right(i - 3), up(i - 3), right(i), up(i)});
    }
    left += width + 1;
  }
  return strokes;
}

}  // namespace libtexture
