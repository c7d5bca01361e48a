#include "libtexture/base/student_reach.hpp"

#include <boost/math/distributions/students_t.hpp>

#include "libtexture/base/error.hpp"

namespace libtexture {

double student_reach(int degrees_of_freedom, double confidence) {
  require(degrees_of_freedom >= 1, "student_reach", "degrees_of_freedom", "must be >= 1", degrees_of_freedom);
  require(confidence > 0 && confidence < 1, "student_reach", "confidence", "must be > 0 and < 1", confidence);
  return boost::math::quantile(boost::math::students_t(degrees_of_freedom), (1 + confidence) / 2);
}

}  // namespace libtexture
