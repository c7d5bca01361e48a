#pragma once
// BadValue: bad input met while reading values, with the path that leads to it.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "libtexture/base/error.hpp"

namespace libtexture {

using Json = nlohmann::json;

/// Bad input met while reading values; `path` says where it is, what() is one line that names it too.
class BadValue : public InvalidInput {
 public:
  BadValue(const std::string& message, std::string path_) : InvalidInput(message), path(std::move(path_)) {}
  std::string path;  ///< of the key at fault, "sequence[0].step[2].passes"; "" = the whole
};

/// Path of a key below `path`: "panel[0]" and "name" -> "panel[0].name"; keys that are not plain words are
/// quoted.
std::string key_path(const std::string& path, std::string_view key);

/// Path of an element below `path`: "panel" and 0 -> "panel[0]".
std::string element_path(const std::string& path, std::size_t index);

/// Throws BadValue "path: must be `expected` (got ...)" unless `ok`.
void expect(bool ok, const Json& json, const std::string& path, std::string_view expected);

/// Throws BadValue where the table `json` has a key that is not known (naming the nearest known one), or
/// lacks one.
void check_keys(const Json& json, const std::vector<std::string>& known,
                const std::vector<std::string>& needed, const std::string& path);

/// Throws BadValue "path: `message`", the message of a rule ("Motion: force_n must be > 0 ..."); where it
/// names one of the known keys, or a path from one ("Job: coating.clear_um must ..."), the error's path is
/// that.
[[noreturn]] void fail_rule(const std::string& message, const std::vector<std::string>& known,
                            const std::string& path);

}  // namespace libtexture
