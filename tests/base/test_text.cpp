#include <string>

#include "catch.hpp"
#include "libtexture/base/text.hpp"

using namespace libtexture;

// Which bytes are UTF-8 is set down in RFC 3629; the characters named here are those of the Unicode Standard,
// chapter 23 (control codes, separators, bidirectional formatting).

TEST_CASE("letters of UTF-8 are told from bytes that are none") {
  CHECK(utf8_bytes("T\xc3\xbcr") == 4);
  CHECK(utf8_bytes("\xe2\x82\xac\xf0\x9f\x98\x80") == 7);
  CHECK(utf8_bytes("T\xfcr") == 1);                       // Latin-1
  CHECK(utf8_bytes(std::string_view("T\0u\0", 4)) == 1);  // UTF-16
  CHECK(utf8_bytes("\xc0\xaf") == 0);                     // longer than needed
  CHECK(utf8_bytes("\xed\xa0\x80") == 0);                 // half of a pair
  CHECK(utf8_bytes("ab\xe2\x82") == 2);                   // cut
}

TEST_CASE("a message shows no control character, and none that turns the direction") {
  CHECK(shown("\x1b[31mred\r\n\x7f") == "?[31mred???");
  CHECK(shown("a\xe2\x80\xaetxt.exe") == "a?txt.exe");  // U+202E
  CHECK(shown("a\xc2\x85z\xe2\x80\xa8") == "a?z?");     // U+0085, U+2028
  CHECK(shown("T\xfcr, T\xc3\xbcr") == "T?r, T\xc3\xbcr");
}

TEST_CASE("a message cuts what is long, between letters") {
  const std::string umlauts = "\xc3\xbc\xc3\xbc\xc3\xbc";
  CHECK(shown(umlauts, 3) == umlauts);
  CHECK(shown(umlauts, 2) == "\xc3\xbc\xc3\xbc...");
  CHECK(shown(std::string(1000000, 'x')).size() == 63);
  CHECK(letter_count(umlauts) == 3);
}
