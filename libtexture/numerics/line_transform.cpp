#include "libtexture/numerics/line_transform.hpp"

#include <cmath>
#include <cstring>
#include <map>
#include <mutex>
#include <numbers>
#include <utility>

namespace libtexture {
namespace {

// Two numbers in the vector register that every x86-64 has; other machines get what their compiler makes of it.
using Pair [[gnu::vector_size(16)]] = double;

template <class Lanes>
constexpr std::size_t width = sizeof(Lanes) / sizeof(double);

template <class Lanes>
struct Complex {
  Lanes re, im;
};
template <class L>
Complex<L> operator+(const Complex<L>& a, const Complex<L>& b) {
  return {a.re + b.re, a.im + b.im};
}
template <class L>
Complex<L> operator-(const Complex<L>& a, const Complex<L>& b) {
  return {a.re - b.re, a.im - b.im};
}
template <class L>
Complex<L> operator*(double factor, const Complex<L>& a) {
  return {factor * a.re, factor * a.im};
}
template <class L>
Complex<L> times_minus_i(const Complex<L>& a) {
  return {a.im, -a.re};
}
template <class L>
Complex<L> turned(const Complex<L>& a, const Turn& by) {
  return {a.re * by.re - a.im * by.im, a.re * by.im + a.im * by.re};
}

// The transform of few numbers, in place: "butterflies".

template <class L>
void butterfly(Complex<L> (&v)[2]) {
  const Complex<L> difference = v[0] - v[1];
  v[0] = v[0] + v[1];
  v[1] = difference;
}

template <class L>
void butterfly(Complex<L> (&v)[3]) {
  constexpr double sine = std::numbers::sqrt3 / 2;
  const Complex<L> sum = v[1] + v[2];
  const Complex<L> side = times_minus_i(sine * (v[1] - v[2]));
  const Complex<L> middle = v[0] - 0.5 * sum;
  v[0] = v[0] + sum;
  v[1] = middle + side;
  v[2] = middle - side;
}

template <class L>
void butterfly(Complex<L>& a, Complex<L>& b, Complex<L>& c, Complex<L>& d) {
  const Complex<L> even_sum = a + c, even_difference = a - c;
  const Complex<L> odd_sum = b + d, odd_difference = b - d;
  a = even_sum + odd_sum;
  c = even_sum - odd_sum;
  b = {even_difference.re + odd_difference.im, even_difference.im - odd_difference.re};
  d = {even_difference.re - odd_difference.im, even_difference.im + odd_difference.re};
}

template <class L>
void butterfly(Complex<L> (&v)[4]) {
  butterfly(v[0], v[1], v[2], v[3]);
}

template <class L>
void butterfly(Complex<L> (&v)[5]) {
  constexpr double cos_1 = 0.30901699437494742410, cos_2 = -0.80901699437494742410;  // of 2 pi / 5, 4 pi / 5
  constexpr double sin_1 = 0.95105651629515357212, sin_2 = 0.58778525229247312917;
  const Complex<L> sum_1 = v[1] + v[4], sum_2 = v[2] + v[3];
  const Complex<L> difference_1 = v[1] - v[4], difference_2 = v[2] - v[3];
  const Complex<L> middle_1 = v[0] + (cos_1 * sum_1 + cos_2 * sum_2);
  const Complex<L> middle_2 = v[0] + (cos_2 * sum_1 + cos_1 * sum_2);
  const Complex<L> side_1 = times_minus_i(sin_1 * difference_1 + sin_2 * difference_2);
  const Complex<L> side_2 = times_minus_i(sin_2 * difference_1 - sin_1 * difference_2);
  v[0] = v[0] + (sum_1 + sum_2);
  v[1] = middle_1 + side_1;
  v[2] = middle_2 + side_2;
  v[3] = middle_2 - side_2;
  v[4] = middle_1 - side_1;
}

template <class L>
void butterfly(Complex<L> (&v)[8]) {
  constexpr double root = std::numbers::sqrt2 / 2;
  butterfly(v[0], v[2], v[4], v[6]);
  butterfly(v[1], v[3], v[5], v[7]);
  const Complex<L> eighth = {root * (v[3].re + v[3].im), root * (v[3].im - v[3].re)};
  const Complex<L> quarter = times_minus_i(v[5]);
  const Complex<L> three = {root * (v[7].im - v[7].re), -root * (v[7].re + v[7].im)};
  const Complex<L> even[4] = {v[0], v[2], v[4], v[6]};
  const Complex<L> odd[4] = {v[1], eighth, quarter, three};
  for (int j = 0; j < 4; ++j) {
    v[j] = even[j] + odd[j];
    v[j + 4] = even[j] - odd[j];
  }
}

template <class L>
L load(const double* place) {
  L lanes;
  std::memcpy(&lanes, std::assume_aligned<sizeof(L)>(place), sizeof(L));
  return lanes;
}
template <class L>
void store(const L& lanes, double* place) {
  std::memcpy(std::assume_aligned<sizeof(L)>(place), &lanes, sizeof(L));
}

// One group of a pass without its table: `Radix` numbers that lie `apart`, for a run of lines and of places
// that share their turns.
template <int Radix, class L, bool IsTurned>
void run_group(const double* from, std::size_t apart, double* to, std::size_t run, const double* turns) {
  Turn by[Radix];
  if constexpr (IsTurned)
    for (int j = 1; j < Radix; ++j) by[j] = {turns[2 * j - 2], turns[2 * j - 1]};
  for (std::size_t q = 0; q < run; q += width<L>) {
    Complex<L> v[Radix];
    for (int k = 0; k < Radix; ++k) v[k] = {load<L>(from + k * apart + q), load<L>(from + k * apart + run + q)};
    butterfly(v);
    for (int j = 0; j < Radix; ++j) {
      if constexpr (IsTurned)
        if (j > 0) v[j] = turned(v[j], by[j]);
      store(v[j].re, to + j * run + q);
      store(v[j].im, to + (Radix + j) * run + q);
    }
  }
}

template <int Radix, class L>
void run_pass(int groups, const double* turns, const double* from, double* to, std::size_t run) {
  const std::size_t apart = 2 * run * groups;
  run_group<Radix, L, false>(from, apart, to, run, nullptr);
  for (int p = 1; p < groups; ++p)
    run_group<Radix, L, true>(from + 2 * run * p, apart, to + 2 * run * Radix * p, run,
                              turns + 2 * (Radix - 1) * (p - 1));
}

// A prime without a butterfly of its own: the sums as they are defined.
void run_any_pass(int radix, int groups, const double* turns, const double* roots, const double* from, double* to,
                  std::size_t run) {
  const std::size_t apart = 2 * run * groups;
  for (int p = 0; p < groups; ++p)
    for (int j = 0; j < radix; ++j)
      for (std::size_t q = 0; q < run; ++q) {
        Complex<double> sum{0, 0};
        for (int k = 0, root = 0; k < radix; ++k, root = (root + j) % radix) {
          const double* place = from + 2 * run * p + k * apart + q;
          sum = sum + turned(Complex<double>{place[0], place[run]}, {roots[2 * root], roots[2 * root + 1]});
        }
        const double* turn = turns + 2 * ((radix - 1) * (p - 1) + j - 1);
        if (p > 0 && j > 0) sum = turned(sum, {turn[0], turn[1]});
        double* result = to + 2 * run * radix * p + j * run + q;
        result[0] = sum.re;
        result[radix * run] = sum.im;
      }
}

std::vector<int> radices_of(int length) {
  std::vector<int> radices;
  for (const int radix : {8, 4, 2, 3, 5})
    for (; length % radix == 0; length /= radix) radices.push_back(radix);
  for (int prime = 7; length > 1; prime += 2) {
    if (prime * prime > length) prime = length;
    for (; length % prime == 0; length /= prime) radices.push_back(prime);
  }
  return radices;
}

}  // namespace

Turn turn_of(long long numerator, long long denominator) {
  // Eighths of a turn are exact, so that the angle left is at most pi / 4 and known to the last digit.
  const long long eighth = 8 * numerator / denominator;
  const long long nearest = (eighth + 1) / 2;  // quarter turns
  const auto rest = static_cast<long double>(4 * numerator - nearest * denominator);
  const long double angle = rest / denominator * (std::numbers::pi_v<long double> / 2);
  const auto cosine = static_cast<double>(std::cos(angle)), sine = static_cast<double>(std::sin(angle));
  switch (nearest % 4) {
    case 0:
      return {cosine, -sine};
    case 1:
      return {-sine, -cosine};
    case 2:
      return {-cosine, sine};
    default:
      return {sine, cosine};
  }
}

LineTransform::LineTransform(int length) : length_(length) {
  int left = length;
  for (const int radix : radices_of(length)) {
    Pass pass{radix, left / radix, {}, {}};
    for (int p = 1; p < pass.groups; ++p)
      for (int j = 1; j < radix; ++j) {
        const Turn turn = turn_of(static_cast<long long>(p) * j, left);
        pass.turns.insert(pass.turns.end(), {turn.re, turn.im});
      }
    if (radix > 5 && radix != 8)
      for (int j = 0; j < radix; ++j) {
        const Turn root = turn_of(j, radix);
        pass.roots.insert(pass.roots.end(), {root.re, root.im});
      }
    passes_.push_back(std::move(pass));
    left /= radix;
  }
}

std::shared_ptr<const LineTransform> LineTransform::of(int length) {
  static std::mutex mutex;
  static std::map<int, std::shared_ptr<const LineTransform>> kept;
  constexpr std::size_t most_kept = 16;
  const std::lock_guard lock(mutex);
  std::shared_ptr<const LineTransform>& entry = kept[length];
  if (!entry) entry = std::make_shared<LineTransform>(length);
  const std::shared_ptr<const LineTransform> found = entry;
  if (kept.size() > most_kept) kept.clear();
  return found;
}

template <class L>
void LineTransform::run(const Pass& pass, const double* from, double* to, std::size_t run_length) {
  const double* turns = pass.turns.data();
  switch (pass.radix) {
    case 2:
      return run_pass<2, L>(pass.groups, turns, from, to, run_length);
    case 3:
      return run_pass<3, L>(pass.groups, turns, from, to, run_length);
    case 4:
      return run_pass<4, L>(pass.groups, turns, from, to, run_length);
    case 5:
      return run_pass<5, L>(pass.groups, turns, from, to, run_length);
    case 8:
      return run_pass<8, L>(pass.groups, turns, from, to, run_length);
    default:
      return run_any_pass(pass.radix, pass.groups, turns, pass.roots.data(), from, to, run_length);
  }
}

// Stockham's ordering: each pass reads from one buffer and writes to the other, and the last leaves all in
// order. A run is what shares its turns: all lines, times the radices of the passes before.
double* LineTransform::transform(double* from, double* to, int lines) const {
  std::size_t run_length = lines;
  for (const Pass& pass : passes_) {
    if (run_length % width<Pair> == 0)
      run<Pair>(pass, from, to, run_length);
    else
      run<double>(pass, from, to, run_length);
    run_length *= pass.radix;
    std::swap(from, to);
  }
  return from;
}

}  // namespace libtexture
