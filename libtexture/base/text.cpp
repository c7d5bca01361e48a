#include "libtexture/base/text.hpp"

namespace libtexture {

namespace {

constexpr char32_t no_letter = 0xFFFD;

/// Bytes that a first byte announces; 0 = it cannot stand first.
std::size_t announced_bytes(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first < 0xE0) return 2;
  if (first >= 0xE0 && first < 0xF0) return 3;
  if (first >= 0xF0 && first < 0xF5) return 4;
  return 0;
}

bool is_between(char32_t code, char32_t first, char32_t last) {
  return code >= first && code <= last;
}

}  // namespace

Letter first_letter(std::string_view text) {
  const auto first = static_cast<unsigned char>(text[0]);
  const std::size_t bytes = announced_bytes(first);
  if (bytes == 1) return {first, 1, true};
  if (bytes == 0 || bytes > text.size()) return {no_letter, 1, false};
  char32_t code = first & (0x7FU >> bytes);
  for (const char next : text.substr(1, bytes - 1)) {
    if ((static_cast<unsigned char>(next) & 0xC0U) != 0x80) return {no_letter, 1, false};
    code = code << 6 | (static_cast<unsigned char>(next) & 0x3FU);
  }
  // Longer than needed, half of a surrogate pair, or beyond Unicode.
  constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
  if (code < least[bytes] || is_between(code, 0xD800, 0xDFFF) || code > 0x10FFFF)
    return {no_letter, 1, false};
  return {code, bytes, true};
}

bool is_plain(const Letter& letter) {
  const char32_t code = letter.code;
  const bool is_control = code < 0x20 || is_between(code, 0x7F, 0x9F);
  const bool ends_line = code == 0x2028 || code == 0x2029;
  const bool turns_direction = code == 0x061C || code == 0x200E || code == 0x200F ||
                               is_between(code, 0x202A, 0x202E) || is_between(code, 0x2066, 0x2069);
  return letter.is_valid && !is_control && !ends_line && !turns_direction;
}

std::size_t utf8_bytes(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const Letter letter = first_letter(text.substr(at));
    if (!letter.is_valid || letter.code == 0) break;
    at += letter.bytes;
  }
  return at;
}

std::size_t letter_count(std::string_view text) {
  std::size_t count = 0;
  for (; !text.empty(); ++count) text.remove_prefix(first_letter(text).bytes);
  return count;
}

std::string shown(std::string_view text, std::size_t most) {
  std::string result;
  for (std::size_t count = 0; !text.empty(); ++count) {
    if (count == most) return result + "...";
    const Letter letter = first_letter(text);
    result.append(is_plain(letter) ? text.substr(0, letter.bytes) : "?");
    text.remove_prefix(letter.bytes);
  }
  return result;
}

}  // namespace libtexture
