#pragma once
// Coating: the coats of paint, from the top down (ISO 4618 words), with what is known of their thickness.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"

namespace libtexture {

/// One coat of paint.
struct Coat {
  std::string name;             ///< "clear", "base", "primer", ...
  double thickness_um = unset;  ///< mean thickness [um], > 0 to 5000
  double uncertainty_um = 0;    ///< standard uncertainty of the mean [um], >= 0
  /// Indentation hardness [MPa], > 0; clear coats 150-300 (ISO 14577 practice, memory). Only that of the
  /// clear is used: a coat under it that is laid bare is worn as clear.
  double hardness_mpa = 200;

  void validate() const;
  bool operator==(const Coat&) const = default;
  static constexpr auto fields() {
    return FieldTable{required("name", &Coat::name), required("thickness_um", &Coat::thickness_um),
                      optional("uncertainty_um", &Coat::uncertainty_um),
                      optional("hardness_mpa", &Coat::hardness_mpa)};
  }
};

/// Coats from the top down; the first is the clear that is spent.
struct Coating {
  std::vector<Coat> coats;  ///< at least one

  const Coat& clear() const { return coats.front(); }
  double total_um() const;  ///< thickness of all coats [um]

  void validate() const;
  bool operator==(const Coating&) const = default;
  static constexpr auto fields() { return FieldTable{required("coats", &Coating::coats)}; }
};

}  // namespace libtexture
