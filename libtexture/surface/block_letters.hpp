#pragma once
// Block letters: capitals made of straight strokes of our own, as a sign has them.

#include <string_view>
#include <vector>

namespace libtexture {

/// Height of a block letter over the width of its strokes: that of the smallest letter which normal sight
/// reads, 5 arcmin with strokes of 1 arcmin (ISO 8596).
inline constexpr double strokes_a_height = 5;

/// A straight stroke with round ends, between the middles of its ends, counted from the lower left corner of
/// its line of text, to the right and up [mm].
struct LetterStroke {
  double from_right_mm, from_up_mm, to_right_mm, to_up_mm;
};

/// The strokes of a line of text, letter by letter, each height_mm/strokes_a_height wide. A letter is 4
/// strokes wide (I: 1; M, T, V, W, Y: 5), the gap between letters 1 stroke, and a space adds 3.
/// words: capitals A to Z and spaces; InvalidInput for anything else. height_mm > 0.
std::vector<LetterStroke> block_letters(std::string_view words, double height_mm);

}  // namespace libtexture
