#include "libtexture/plan/checklist.hpp"

#include <algorithm>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/process/disc_contact.hpp"

namespace libtexture {

std::vector<std::string> checklist_of(const std::vector<Panel>& panels, const std::vector<Step>& steps) {
  require(!steps.empty(), "Checklist", "steps", "must hold at least one step", "none");
  double edge_length_m = 0;
  for (const Panel& panel : panels) edge_length_m += panel.edge_length_m.value_or(0);
  const std::string edges =
      edge_length_m > 0 ? to_text(edge_length_m) + " m of edges and body lines" : "edges and body lines";
  const auto is_dry_sanding = [](const Step& step) {
    return step.wetness == Wetness::dry && step.abrasive.carrier != Carrier::compound;
  };
  const auto is_wet = [](const Step& step) { return step.wetness != Wetness::dry; };
  const std::string& first = title_of(steps.front());

  std::vector<std::string> list{
      "Wash and dry: grit that stays on the panel scratches deeper than any disc.",
      "Strip wax and polish residue: they clog discs and hide old scratches, and the gauge reads them.",
      "Mask " + edges + ", trim and openings.",
      "Set a light that shows the texture and the scratches at a low angle, and keep it there.",
      "Test spot: read the film, make the passes of \"" + first +
          "\" on a small place, clean, read at the same places again, and calibrate the job with it.",
  };
  if (std::any_of(steps.begin(), steps.end(), is_dry_sanding))
    list.push_back("Connect extraction at the tool, check its filter, and put the mask on.");
  if (std::any_of(steps.begin(), steps.end(), is_wet))
    list.push_back("Keep plugs and leads out of the water, behind a residual-current device.");
  return list;
}

}  // namespace libtexture
