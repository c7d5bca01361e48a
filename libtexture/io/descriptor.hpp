#pragma once
// Descriptors: how a value is read, written, copied and compared where only its address is known. JSON and
// the Python classes work on descriptors, so that the compiler sees each struct once and not once per use.

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <typeinfo>
#include <vector>

namespace libtexture {

/// What a value is, and the operations on it that its form has; the others are null.
struct Descriptor {
  enum class Form { boolean, integer, seed, number, text, word, grit, optional, list, array, map, record };

  /// A field of a record.
  struct Member {
    const char* name;
    std::ptrdiff_t offset;  ///< bytes from the record's address
    const Descriptor* type;
    bool is_required;
  };

  Form form;
  const std::type_info* type;
  const Descriptor* element = nullptr;  ///< of an optional, list, array or map

  // word: an enum
  std::vector<std::string_view> words = {};
  std::size_t (*word_index)(const void*) = nullptr;  ///< words.size() where the value has no word
  void (*set_word)(void*, std::size_t index) = nullptr;

  // optional (size 0 or 1), list, array
  std::size_t (*size)(const void*) = nullptr;
  const void* (*at)(const void*, std::size_t index) = nullptr;
  void* (*append)(void*) = nullptr;  ///< a new element; of an array: null
  void (*clear)(void*) = nullptr;    ///< of an optional, list or map

  // map, by text
  void (*for_each)(const void*, const std::function<void(const std::string&, const void*)>& visit) = nullptr;
  void* (*insert)(void*, const std::string& key) = nullptr;

  // record
  std::vector<Member> members = {};
  void* (*make)() = nullptr;
  void* (*copy)(const void*) = nullptr;
  void (*destroy)(void*) = nullptr;
  void (*assign)(void* to, const void* from) = nullptr;
  bool (*equal)(const void*, const void*) = nullptr;
  void (*validate)(const void*) = nullptr;     ///< null where there is no rule
  std::string (*text)(const void*) = nullptr;  ///< null where it has no words

  std::vector<std::string> member_names() const;
};

/// The address of a record's member.
inline const void* member_of(const void* record, const Descriptor::Member& member) {
  return static_cast<const char*>(record) + member.offset;
}
inline void* member_of(void* record, const Descriptor::Member& member) {
  return static_cast<char*>(record) + member.offset;
}

/// False for an empty optional and for a number that is unset.
bool is_given(const Descriptor& descriptor, const void* value);

}  // namespace libtexture
