#pragma once
// Worlds: the possible worlds that a prediction is drawn from: person, tools, clear and texture.

#include <cstdint>
#include <string>
#include <vector>

#include "libtexture/plan/job.hpp"

namespace libtexture {

/// What is the same for every sequence in a world. All vectors hold one value per world.
struct Worlds {
  Uncertainty uncertainty = {};
  std::uint64_t seed = 0;
  std::vector<double> texture_scale = {};    ///< factor on all heights of the texture
  std::vector<double> hardness_factor = {};  ///< factor on the clear's hardness
  std::vector<double> person = {};           ///< how hard the person presses: a standard normal number
  std::vector<double> size_exponent = {};    ///< of wear rates, less the one that the tools state
  std::vector<double> defect_um = {};  ///< depth or height of the target's defect [um]; empty without one
  /// Where on the texture it lies: share of the patch that loses less clear, 0 to 1; empty without one.
  std::vector<double> defect_rank = {};
};

/// The worlds of a job: log-normal factors (Boost.Math), stratified. Another sequence, another number of
/// panels, or more clear move nothing in them.
Worlds worlds_of(const Job& job);

/// What a step draws besides, one value per world. The force, of mean 1, log-normal with motion.force_cv
/// between persons and force_within_cv from step to step (by its place in the sequence). The others,
/// log-normal of median 1, by the keys of abrasive and backing (identity.hpp), so that each is the same
/// tool in all sequences. Wear rates have a part that their family shares, and, where a figure was carried
/// over from another grain, the world's exponent of the law of size (docs/physics.md (68a)); groove depth,
/// its cap and the room for swarf have a part that all abrasives share on a clear. What a test spot gave
/// under this hand on this clear holds for the world's force and hardness: they are divided out, not drawn
/// again (68b).
struct StepWorlds {
  std::vector<double> force_factor;
  std::vector<double> wear_factor;
  std::vector<double> stiffness_factor;
  std::vector<double> groove_factor;   ///< of the mean groove depth
  std::vector<double> cap_factor;      ///< of the deepest groove over the mean
  std::vector<double> loading_factor;  ///< of the room for swarf
  /// Dwell at the place of a defect: a standard normal number; empty without one.
  std::vector<double> defect_dwell = {};
};
StepWorlds step_worlds(const Worlds& worlds, const Step& step, int place);

/// The step as it is in a world, on a crown (none = flat). Wear rate and force stay within what is believed
/// of any (least_wear_mm3_per_n_m ..., least_force_n ...). Where the force would make a foam of the backing
/// collapse it is taken as the most that does not: nobody goes on with a disc that has bottomed out.
Step in_world(const Step& step, const StepWorlds& drawn, std::size_t world,
              const std::optional<Crown>& crown);

/// Standard normal numbers, one in each of `samples` layers of equal probability (Latin hypercube,
/// docs/physics.md, risk), in an order that only seed and name decide.
std::vector<double> stratified_normals(int samples, std::uint64_t seed, const std::string& name);

}  // namespace libtexture
