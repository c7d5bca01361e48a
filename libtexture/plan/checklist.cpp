#include "libtexture/plan/checklist.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"
#include "libtexture/process/identity.hpp"

namespace libtexture {

namespace {

// A factor within which 95 of 100 cases lie, either way.
double factor_of(double log_sd) {
  return std::exp(1.96 * log_sd);
}

Statement test_spot_of(const Step& step, const std::optional<SpotPlan>& spot) {
  Statement statement{.kind = StatementKind::make_test_spot, .step = title_of(step)};
  if (spot && spot->log_sd_after)
    statement.figures = {{"readings", spot->aim_readings},
                         {"passes", *spot->passes},
                         {"removed_um", spot->removed_um},
                         {"factor_before", factor_of(spot->log_sd_before)},
                         {"factor_after", factor_of(*spot->log_sd_after)}};
  return statement;
}

}  // namespace

std::vector<Statement> checklist_of(const std::vector<Panel>& panels, const std::vector<Step>& steps,
                                    const std::optional<SpotPlan>& spot) {
  require(!steps.empty(), "Checklist", "steps", "must hold at least one step", "none");
  double edge_length_m = 0;
  for (const Panel& panel : panels) edge_length_m += panel.edge_length_m.value_or(0);
  const auto is_dry_sanding = [](const Step& step) {
    return step.wetness == Wetness::dry && step.abrasive.carrier != Carrier::compound;
  };
  const auto is_wet = [](const Step& step) { return step.wetness != Wetness::dry; };

  Statement mask{.kind = StatementKind::mask_edges};
  if (edge_length_m > 0) mask.figures["edge_length_m"] = edge_length_m;
  std::vector<Statement> list{{.kind = StatementKind::wash},
                              {.kind = StatementKind::strip},
                              mask,
                              {.kind = StatementKind::set_light},
                              test_spot_of(steps.front(), spot)};
  if (std::any_of(steps.begin(), steps.end(), is_dry_sanding))
    list.push_back({.kind = StatementKind::connect_extraction});
  if (std::any_of(steps.begin(), steps.end(), is_wet))
    list.push_back({.kind = StatementKind::keep_plugs_dry});
  return list;
}

}  // namespace libtexture
