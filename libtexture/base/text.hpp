#pragma once
// Text from outside: whether it is UTF-8, and how a message shows it.

#include <cstddef>
#include <string>
#include <string_view>

namespace libtexture {

/// The first letter of a text.
struct Letter {
  char32_t code;      ///< its code point; 0xFFFD where the first byte begins no letter of UTF-8 (RFC 3629)
  std::size_t bytes;  ///< how many it takes, 1 to 4; 1 for such a byte
  bool is_valid;      ///< false for such a byte
};

/// The first letter of a text that is not empty.
Letter first_letter(std::string_view text);

/// Whether a letter is seen as itself: no control character (C0, C1, DEL), no line or paragraph separator,
/// none that turns the direction of what follows, no byte that is no letter.
bool is_plain(const Letter& letter);

/// How many bytes of a text are UTF-8 without a zero byte (which UTF-16 has); text.size() = all.
std::size_t utf8_bytes(std::string_view text);

/// How many letters a text has.
std::size_t letter_count(std::string_view text);

/// A text as a message shows it: '?' in place of every letter that is not plain, and "..." after `most`
/// letters.
std::string shown(std::string_view text, std::size_t most = 60);

}  // namespace libtexture
