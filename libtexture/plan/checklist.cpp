#include "libtexture/plan/checklist.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"
#include "libtexture/process/identity.hpp"

namespace libtexture {

std::vector<Statement> checklist_of(const std::vector<Panel>& panels, const std::vector<Step>& steps) {
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
                              {.kind = StatementKind::make_test_spot, .step = title_of(steps.front())}};
  if (std::any_of(steps.begin(), steps.end(), is_dry_sanding))
    list.push_back({.kind = StatementKind::connect_extraction});
  if (std::any_of(steps.begin(), steps.end(), is_wet))
    list.push_back({.kind = StatementKind::keep_plugs_dry});
  return list;
}

}  // namespace libtexture
