#pragma once
// TextureLeft: how much texture is left once so much clear is gone, over the possible worlds.

#include <vector>

#include "libtexture/plan/spread.hpp"

namespace libtexture {

/// Texture left, where the curve of texture against clear passes a removal.
struct TextureLeft {
  double removed_um = 0;  ///< mean clear removed by the sequence so far [um]
  Spread rms_um = {};  ///< texture left, all waves [um]; a world that ended before keeps what it ended with

  bool operator==(const TextureLeft&) const = default;
  static constexpr auto fields() {
    return FieldTable{optional("removed_um", &TextureLeft::removed_um),
                      optional("rms_um", &TextureLeft::rms_um)};
  }
};

/// One world through a sequence, from its start on: as many of each, at least one.
struct TexturePath {
  std::vector<double> removed_um = {};  ///< rising [um]
  std::vector<double> rms_um = {};      ///< texture left, all waves [um]
};

/// Quantiles over the paths at even removals, from none to what all but 5 % of the worlds stay below; between
/// the points of a path waves decay evenly, as in full contact. One point where nothing is removed.
std::vector<TextureLeft> texture_left(const std::vector<TexturePath>& paths);

}  // namespace libtexture
