#pragma once
// Labour: a person's minutes around the sanding, and the discs that it takes.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/base/fields.hpp"
#include "libtexture/process/history.hpp"
#include "libtexture/process/step.hpp"

namespace libtexture {

/// How long this person takes, the [labour] table of a job. All defaults are estimates.
struct Labour {
  double wipe_minutes_per_m2 = 1.0;      ///< wiping the area dry for a look [min/m2], >= 0; estimate
  double look_minutes = 0.5;             ///< judging it under the light, each look [min], >= 0; estimate
  double disc_change_minutes = 0.5;      ///< [min], >= 0; estimate
  double edge_minutes_per_m_um = 0.5;    ///< by hand, per metre of edge and um to remove, >= 0; estimate
  double masking_minutes_per_m = 1.0;    ///< taping edges and trim, per metre of edge [min/m], >= 0; estimate
  double cleaning_minutes_per_m2 = 6.0;  ///< washing and stripping before, rinsing after, >= 0; estimate

  void validate() const;
  bool operator==(const Labour&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("wipe_minutes_per_m2", &Labour::wipe_minutes_per_m2),
                      optional("look_minutes", &Labour::look_minutes),
                      optional("disc_change_minutes", &Labour::disc_change_minutes),
                      optional("edge_minutes_per_m_um", &Labour::edge_minutes_per_m_um),
                      optional("masking_minutes_per_m", &Labour::masking_minutes_per_m),
                      optional("cleaning_minutes_per_m2", &Labour::cleaning_minutes_per_m2)};
  }
};

/// Where the minutes go.
struct LabourMinutes {
  double sanding_minutes = 0;      ///< machine time [min]
  double looking_minutes = 0;      ///< wiping and looking [min]
  double disc_change_minutes = 0;  ///< [min]
  double edge_minutes = 0;         ///< edges and body lines by hand [min]
  double masking_minutes = 0;      ///< [min]
  double cleaning_minutes = 0;     ///< before and after [min]
  double total_minutes = 0;        ///< all of it [min]

  bool operator==(const LabourMinutes&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("sanding_minutes", &LabourMinutes::sanding_minutes),
                      optional("looking_minutes", &LabourMinutes::looking_minutes),
                      optional("disc_change_minutes", &LabourMinutes::disc_change_minutes),
                      optional("edge_minutes", &LabourMinutes::edge_minutes),
                      optional("masking_minutes", &LabourMinutes::masking_minutes),
                      optional("cleaning_minutes", &LabourMinutes::cleaning_minutes),
                      optional("total_minutes", &LabourMinutes::total_minutes)};
  }
};

/// What the steps with discs of one size take: a small disc needs more lanes, and loads sooner.
struct DiscSizeMinutes {
  double disc_diameter_mm = 0;     ///< [mm]
  int discs = 0;                   ///< used; pads of a compound are cleaned, not counted
  double sanding_minutes = 0;      ///< machine time [min]
  double looking_minutes = 0;      ///< wiping and looking [min]
  double disc_change_minutes = 0;  ///< [min]

  bool operator==(const DiscSizeMinutes&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("disc_diameter_mm", &DiscSizeMinutes::disc_diameter_mm),
                      optional("discs", &DiscSizeMinutes::discs),
                      optional("sanding_minutes", &DiscSizeMinutes::sanding_minutes),
                      optional("looking_minutes", &DiscSizeMinutes::looking_minutes),
                      optional("disc_change_minutes", &DiscSizeMinutes::disc_change_minutes)};
  }
};

/// Discs of one step.
struct DiscLife {
  std::string step = {};  ///< name of the step
  int discs = 0;          ///< used on the panel; pads of a compound are cleaned, not counted
  /// Sanding [min] after which a fresh disc (or clean pad) has lost so much of its cut that it should be
  /// changed (or cleaned); none = it never does.
  std::optional<double> change_after_minutes = {};

  bool operator==(const DiscLife&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("step", &DiscLife::step), optional("discs", &DiscLife::discs),
                      optional("change_after_minutes", &DiscLife::change_after_minutes)};
  }
};

/// Minutes of a panel of so many m2 and metres of edge on which the steps went as the rows say, one a step:
/// looks = passes/look_every_passes, rounded up; every disc is put on once; edges take length x rate x the
/// clear that the sequence removes.
LabourMinutes labour_of(const Labour& labour, double area_m2, double edge_length_m,
                        const std::vector<Step>& steps, const std::vector<HistoryRow>& rows);

/// Of these minutes, what goes by the discs' size, from the smallest disc up.
std::vector<DiscSizeMinutes> minutes_by_disc_size(const Labour& labour, double area_m2,
                                                  const std::vector<Step>& steps,
                                                  const std::vector<HistoryRow>& rows);

/// Adds minutes to a total.
void add(LabourMinutes& total, const LabourMinutes& minutes);
void add(std::vector<DiscSizeMinutes>& total, const DiscSizeMinutes& minutes);

/// Discs of each step that made a pass, on a clear of a hardness [MPa]; rows as above.
std::vector<DiscLife> disc_lives(const std::vector<Step>& steps, const std::vector<HistoryRow>& rows,
                                 double hardness_mpa);

}  // namespace libtexture
