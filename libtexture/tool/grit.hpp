#pragma once
// Grit: the size of the grains. A number alone names none: "3000" differs by 1.8 times between systems.

#include <string>
#include <string_view>

namespace libtexture {

/// A grain size with the system that names it. Immutable, always valid.
class Grit {
 public:
  /// "P2500" (ISO 6344-3 / FEPA), "JIS 3000" (JIS R 6001), "CAMI 600" (ANSI B74.18).
  /// InvalidInput for a bare number, and for a grade that is not known.
  explicit Grit(std::string_view name);

  /// A compound or polish without a grade: median grain diameter [um], .01 to 2000.
  static Grit of_median_um(double median_um);

  const std::string& name() const { return name_; }  ///< "P2500", or "3 um" without a grade
  bool has_grade() const { return has_grade_; }      ///< whether a system names it; else its median does
  double median_um() const { return median_um_; }    ///< median grain diameter [um]
  /// True where the median continues the table by a power law (P3000 and finer): not the standard's figure.
  bool is_extrapolated() const { return is_extrapolated_; }

  bool operator==(const Grit&) const = default;

 private:
  Grit() = default;
  std::string name_;
  double median_um_ = 0;
  bool has_grade_ = false;
  bool is_extrapolated_ = false;
};

}  // namespace libtexture
