#include "libtexture/plan/job.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>
#include <sstream>

#include "libtexture/base/error.hpp"
#include "libtexture/base/units.hpp"
#include "libtexture/plan/plausible.hpp"
#include "libtexture/process/identity.hpp"

namespace libtexture {

namespace {

constexpr int most_note_lines = 10;  // it stands above every answer

double mean_total_um(const std::vector<Panel>& panels) {
  double sum = 0;
  std::size_t count = 0;
  for (const Panel& panel : panels)
    for (const Reading& reading : panel.readings) {
      if (!teaches(reading)) continue;
      sum += total_um(reading);
      ++count;
    }
  return sum / static_cast<double>(count);
}

/// Results, and what is drawn at random, go by names.
template <class Named>
void require_names_differ(const std::vector<Named>& list, std::string_view owner, std::string_view field) {
  std::set<std::string> names;
  for (const Named& one : list) {
    if (one.name.empty() || names.insert(one.name).second) continue;
    require(false, owner, field, "must have names that differ",
            std::string("\"").append(one.name).append("\" twice"));
  }
}

/// A name stands for one tool: what is drawn at random and what a test spot found go by it.
class NamedTools {
 public:
  template <class Tool>
  void add(const Tool& tool, const std::string& place) {
    if (tool.name.empty()) return;
    const auto [known, is_new] = builds_.emplace(tool.name, build_of(tool));
    require(is_new || known->second == build_of(tool), "Job", place,
            "must have a name of its own: another tool of that name is made otherwise",
            std::string("\"").append(tool.name).append("\""));
  }

 private:
  std::map<std::string, std::string> builds_;
};

void require_one_tool_a_name(const std::vector<Sequence>& sequences) {
  NamedTools abrasives, backings, motions;
  for (std::size_t i = 0; i < sequences.size(); ++i)
    for (std::size_t j = 0; j < sequences[i].step.size(); ++j) {
      const Step& step = sequences[i].step[j];
      const std::string place = "sequence[" + std::to_string(i) + "].step[" + std::to_string(j) + "].";
      abrasives.add(step.abrasive, place + "abrasive");
      backings.add(step.backing, place + "backing");
      motions.add(step.motion, place + "motion");
    }
}

/// A few lines of plain text, as require_name asks of each.
void require_note(const std::string& note) {
  std::istringstream lines(note);
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count)
    if (!line.empty()) require_name(line, "Job", "note");
  require(count >= 1, "Job", "note", "must not be empty; leave it out", "\"\"");
  require(count <= most_note_lines, "Job", "note", "must be at most 10 lines", count);
}

// A patch lies on each panel, and a step that stops at a defect has one to stop at.
void require_defect_fits(const Job& job) {
  const std::optional<Defect>& defect = job.target.defect;
  if (defect && defect->patch_mm)
    for (std::size_t p = 0; p < job.panel.size(); ++p) {
      const double across_mm = std::sqrt(4 / std::numbers::pi * job.panel[p].area_m2) / metre_per_mm;
      require(*defect->patch_mm <= across_mm, "Job", "target.defect.patch_mm",
              "must fit on panel[" + std::to_string(p) + "], at most " + to_text(across_mm, 0) +
                  " mm; leave it out where the whole panel is worked",
              *defect->patch_mm);
    }
  if (defect) return;
  for (std::size_t i = 0; i < job.sequence.size(); ++i)
    for (std::size_t j = 0; j < job.sequence[i].step.size(); ++j)
      require(!job.sequence[i].step[j].stop.defect_um, "Job",
              "sequence[" + std::to_string(i) + "].step[" + std::to_string(j) + "].stop.defect_um",
              "must come with target.defect; without one use removed_um", "no defect");
}

void require_texture_fits(const TextureSource& texture, const Grid& patch) {
  const std::vector<TextureBand> bands = drawn_bands(texture);
  for (std::size_t i = 0; i < bands.size(); ++i) {
    try {
      require_fits(bands[i], patch);
    } catch (const InvalidInput& error) {
      const std::string place = texture.seen ? "seen" : texture.wet_film ? "wet_film.base" : "bands";
      const std::string at = "Job: texture." + place;
      throw InvalidInput((texture.seen ? at : at + "[" + std::to_string(i) + "]") + ": " + error.what());
    }
  }
}

}  // namespace

void Target::validate() const {
  require(rms_um || preset || image_clarity_percent || letter_mm || defect, "Target",
          "rms_um, preset, image_clarity_percent, letter_mm or defect", "must be given, at least one of them",
          "none");
  if (rms_um) require_positive(*rms_um, "Target", "rms_um");
  if (band_mm) {
    const auto [shortest, longest] = *band_mm;
    const std::string band = to_text(shortest) + " to " + to_text(longest) + " mm";
    require(shortest > 0 && shortest < longest && std::isfinite(longest), "Target", "band_mm",
            "must be two wavelengths > 0, the shorter first", band);
    require(rms_um.has_value(), "Target", "band_mm", "must come with rms_um", band + " alone");
  }
  if (image_clarity_percent) {
    require_positive(*image_clarity_percent, "Target", "image_clarity_percent");
    require_within(*image_clarity_percent, 0, 100, "Target", "image_clarity_percent");
  }
  require(letter_mm.has_value() == distance_m.has_value(), "Target", "letter_mm and distance_m",
          "must be given both or neither", letter_mm ? "letter_mm alone" : "distance_m alone");
  if (letter_mm) require_positive(*letter_mm, "Target", "letter_mm");
  if (distance_m) require_positive(*distance_m, "Target", "distance_m");
  if (eye_to_paint_m) {
    require(distance_m.has_value(), "Target", "eye_to_paint_m", "must come with letter_mm and distance_m",
            *eye_to_paint_m);
    require(*eye_to_paint_m >= 0 && *eye_to_paint_m < *distance_m, "Target", "eye_to_paint_m",
            "must be >= 0 and less than distance_m", *eye_to_paint_m);
  }
  if (defect) defect->validate();
}

Viewer eye_of(const Target& target) {
  return viewer_along(target.distance_m.value(), target.eye_to_paint_m);
}

namespace {

// More than anybody works; lists without an end would be worked for as long.
constexpr std::size_t most_panels = 200, most_sequences = 100, most_steps = 50;

void require_at_most(std::size_t count, std::size_t most, std::string_view owner, std::string_view field) {
  require(count <= most, owner, field, "must hold at most " + std::to_string(most), std::to_string(count));
}

}  // namespace

void Sequence::validate() const {
  require_name(name, "Sequence", "name");
  require(!step.empty(), "Sequence", "step", "must hold at least one step", "none");
  require_at_most(step.size(), most_steps, "Sequence", "step");
  for (const Step& one : step) one.validate();
  require_names_differ(step, "Sequence", "step");
}

void Job::validate() const {
  require(schema == 1, "Job", "schema", "must be 1", schema);
  if (note) require_note(*note);
  patch.validate();
  const double pixels = static_cast<double>(patch.rows) * patch.cols;
  require(pixels <= 0x1p24, "Job", "patch", "must have at most 16777216 pixels", to_text(pixels));
  require(!panel.empty(), "Job", "panel", "must hold at least one panel", "none");
  require_at_most(panel.size(), most_panels, "Job", "panel");
  require_at_most(sequence.size(), most_sequences, "Job", "sequence");
  for (const Panel& one : panel) one.validate();
  require_names_differ(panel, "Job", "panel");
  coating.validate();
  if (coating.clear_um) {
    const double film_um = mean_total_um(panel);
    require(*coating.clear_um < film_um, "Job", "coating.clear_um",
            "must be less than the mean of the readings, " + to_text(film_um) + " um", *coating.clear_um);
  }
  texture.validate();
  require_texture_fits(texture, patch);
  target.validate();
  require_defect_fits(*this);
  budget.validate();
  uncertainty.validate();
  labour.validate();
  edge.validate();
  scratch_limits.validate();
  if (viewer) viewer->validate();
  for (const Sequence& one : sequence) one.validate();
  require_names_differ(sequence, "Job", "sequence");
  require_one_tool_a_name(sequence);
  require_plausible(*this);
  if (!texture.file) require_bands_held(*this, patch);  // a file brings a patch of its own
}

Budget budget_of(const Job& job) {
  if (has_rule(job.budget)) return job.budget;
  Budget budget = default_budget(job.coating.kind);
  budget.reserve_um = job.budget.reserve_um;
  return budget;
}

Viewer viewer_of(const Job& job) {
  if (job.viewer) return *job.viewer;
  if (job.texture.seen) return eye_of(*job.texture.seen);
  return job.target.letter_mm ? eye_of(job.target) : Viewer{};
}

void require_bands_held(const Job& job, const Grid& patch) {
  const double shortest = 2 * patch.pixel_mm, longest = std::max(patch.width_mm(), patch.height_mm());
  const auto check = [&](const std::optional<std::array<double, 2>>& band_mm, const std::string& field) {
    if (!band_mm) return;
    require((*band_mm)[0] <= longest && (*band_mm)[1] >= shortest, "Job", field,
            "must overlap the waves that the patch holds, " + to_text(shortest) + " to " + to_text(longest) +
                " mm",
            to_text((*band_mm)[0]) + " to " + to_text((*band_mm)[1]) + " mm");
  };
  check(job.target.band_mm, "target.band_mm");
  for (std::size_t i = 0; i < job.sequence.size(); ++i)
    for (std::size_t j = 0; j < job.sequence[i].step.size(); ++j)
      check(job.sequence[i].step[j].stop.band_mm,
            "sequence[" + std::to_string(i) + "].step[" + std::to_string(j) + "].stop.band_mm");
}

}  // namespace libtexture
