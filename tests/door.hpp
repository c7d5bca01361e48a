#pragma once
// A small job on the catalogue's tools, for tests of plans: a repaired door with thick clear, on a patch that
// is solved in a moment.

#include "libtexture/io/job_file.hpp"

namespace door {

using namespace libtexture;

inline Job job() {
  Reading reading;
  reading.total_um = 250;
  Panel panel;
  panel.name = "door";
  panel.area_m2 = 0.9;
  panel.readings = {reading};
  TextureBand band;
  band.wavelength_mm = 2.5;
  band.rms_um = 0.6;
  Job job;
  job.patch.rows = job.patch.cols = 64;
  job.patch.pixel_mm = 0.4;
  job.panel = {panel};
  job.coating.kind = PaintKind::repaint;
  job.coating.clear_um = 80;
  job.texture.bands = {band};
  job.target.rms_um = 0.15;
  job.uncertainty.samples = 400;
  return job;
}

}  // namespace door
