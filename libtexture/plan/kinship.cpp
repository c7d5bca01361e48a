#include "libtexture/plan/kinship.hpp"

#include <algorithm>
#include <cmath>

#include "libtexture/base/error.hpp"

namespace libtexture {

namespace {

/// Share of the variance of a lesson's figure that the lesson took away.
double told_share(const Lesson& lesson) {
  const double ratio = lesson.log_sd / lesson.before.log_sd();
  return 1 - ratio * ratio;
}

/// Standard deviation of the common number, 1 before the lesson.
double common_after(const Lesson& lesson) {
  const double tie = lesson.before.common_sd / lesson.before.log_sd();
  return std::sqrt(std::max(0.0, 1 - tie * tie * told_share(lesson)));
}

KinSpread with_common(double log_sd, double common_sd) {
  const double common = std::min(common_sd, log_sd);
  return {common, std::sqrt(std::max(0.0, log_sd * log_sd - common * common))};
}

}  // namespace

double KinSpread::log_sd() const {
  return std::hypot(common_sd, own_sd);
}

double KinSpread::share() const {
  const double all = log_sd();
  return all > 0 ? std::min(1.0, common_sd * common_sd / (all * all)) : 0;
}

KinSpread kin_spread(double log_sd, double share) {
  require_not_negative(log_sd, "KinSpread", "log_sd");
  require_within(share, 0, 1, "KinSpread", "share");
  return {log_sd * std::sqrt(share), log_sd * std::sqrt(1 - share)};
}

Taught taught_itself(const Lesson& lesson) {
  const double before = lesson.before.log_sd();
  if (before <= 0) return {0, lesson.before};
  // Covariance with the common number, over the standard deviation that this one has left.
  const double left = common_after(lesson);
  const double covariance = lesson.before.common_sd * lesson.log_sd * lesson.log_sd / (before * before);
  return {lesson.shift, with_common(lesson.log_sd, left > 0 ? covariance / left : 0)};
}

Taught taught_kin(const Lesson& lesson, const KinSpread& kin, double covariance_besides) {
  const double before = lesson.before.log_sd();
  if (before <= 0) return {0, kin};
  const double covariance = lesson.before.common_sd * kin.common_sd + covariance_besides;
  const double reach = covariance / before;  // of the kin, explained by the lesson's figure
  const double log_sd =
      std::sqrt(std::max(0.0, kin.log_sd() * kin.log_sd() - reach * reach * told_share(lesson)));
  return {covariance / (before * before) * lesson.shift,
          with_common(log_sd, kin.common_sd * common_after(lesson))};
}

}  // namespace libtexture
