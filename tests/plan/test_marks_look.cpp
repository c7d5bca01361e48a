// MarksLook: what passes until marks are gone say, against closed forms and simulated looks.
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>

#include "catch.hpp"
#include "libtexture/plan/marks_look.hpp"
#include "ranks.hpp"
#include "steps.hpp"

using namespace libtexture;
using steps::step_of;

namespace {

MarksLook look() {
  return {.marked_by = step_of("P2000 film"),
          .marked_um = 4,
          .next = {step_of("P3000 film")},
          .log_sd = .2,
          .depth_log_sd = .3,
          .wear_log_sd = .5};
}

/// Clear that the marks owe where they are exp(shift) times as deep: c delta - z_v, (37): the cap decides.
double owed_um(double shift) {
  return 7 * .164 * std::exp(shift) * std::pow(1.4147 / 1.4, .25) - .1;
}

}  // namespace

TEST_CASE("with exact eyes and a step that is known, the marks give the depth that the passes remove") {
  // Closed form: gone between n - 1 and n passes, so the depth lies between those removals plus z_v over c.
  MarksLook exact = look();
  exact.log_sd = .01;
  exact.wear_log_sd = 0;
  exact.depth_log_sd = 1;
  exact.gone_passes = 4;
  const MarksSeen seen = judge_marks(exact);
  const auto shift_of = [&](double removed_um) { return std::log((removed_um + .1) / (owed_um(0) + .1)); };
  const double least = shift_of(exact.next.removed_um(3)), most = shift_of(exact.next.removed_um(4));
  CHECK(std::log(seen.depth.median) == Catch::Approx((least + most) / 2).margin(.15 * (most - least)));
  CHECK(seen.depth.log_sd == Catch::Approx((most - least) / std::sqrt(12.)).epsilon(.15));  // uniform
  CHECK(seen.wear.log_sd < 1e-2);
}

TEST_CASE("what a look cannot tell apart stays: depth over wear rate is told, their product is not") {
  // Two normal numbers a and b of which a - b is read exactly: var(a) = A B/(A + B) (closed form). Owed less
  // z_v is not quite in proportion to the depth, nor the removal to the wear rate: 10 %.
  MarksLook sharp = look();
  sharp.log_sd = .02;
  sharp.next.step.motion.feed_mm_per_s = 1000;  // thin passes: they tell the removal closely
  sharp.next.step.abrasive.loading_um = 1e5;
  sharp.gone_passes = sharp.next.passes_to(owed_um(0));
  sharp.left_passes = *sharp.gone_passes - 1;
  const MarksSeen seen = judge_marks(sharp);
  const double left = .3 * .5 / std::hypot(.3, .5);
  CHECK(seen.depth.log_sd == Catch::Approx(left).epsilon(.1));
  CHECK(seen.wear.log_sd == Catch::Approx(left).epsilon(.1));
}

TEST_CASE("nothing seen before the first pass says nothing") {
  MarksLook blank = look();
  blank.left_passes = 0;
  const MarksSeen seen = judge_marks(blank);
  CHECK(seen.depth.median == Catch::Approx(1).epsilon(1e-9));
  CHECK(seen.depth.log_sd == Catch::Approx(.3).epsilon(1e-4));
  CHECK(seen.wear.log_sd == Catch::Approx(.5).epsilon(1e-4));
}

TEST_CASE("looks drawn from what is believed before fall evenly under what is believed after") {
  // Ranks are even where the inference is right (Talts et al. 2018).
  boost::random::mt19937_64 generator(4);
  boost::random::normal_distribution<> normal;
  const int looks = 1000;
  ranks::Parts depths, wears;
  for (int i = 0; i < looks; ++i) {
    const double depth = .3 * normal(generator), wear = .5 * normal(generator);
    MarksLook one = look();
    const double goes_at_um = owed_um(depth) * std::exp(one.log_sd * normal(generator));
    int gone = 1;
    while (gone < 9 && one.next.removed_um(gone, wear) < goes_at_um) ++gone;
    if (gone < 9)
      one.gone_passes = gone;
    else
      one.left_passes = 8;  // given up
    const MarksSeen seen = judge_marks(one);
    depths.add(seen.depth, std::exp(depth));
    wears.add(seen.wear, std::exp(wear));
  }
  CAPTURE(depths.counts(), wears.counts());
  CHECK(depths.chi_square() < ranks::once_in_1000);
  CHECK(wears.chi_square() < ranks::once_in_1000);
}
