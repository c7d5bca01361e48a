#pragma once
// Student's t: how far an estimate from few observations may lie from the truth.

namespace libtexture {

/// Half the width of the interval that holds the truth in `confidence` of cases, 0 to 1, in standard
/// deviations: Student's t. InvalidInput where degrees_of_freedom < 1.
double student_reach(int degrees_of_freedom, double confidence = 0.95);

}  // namespace libtexture
