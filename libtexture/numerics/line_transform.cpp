#include "libtexture/numerics/line_transform.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <map>
#include <mutex>
#include <numbers>
#include <utility>

namespace libtexture {
namespace {

// Two numbers in the vector register that every x86-64 has; other machines get what their compiler makes of
// it.
using Pair [[gnu::vector_size(16)]] = double;

template <class Lanes>
constexpr std::size_t width = sizeof(Lanes) / sizeof(double);

using Direction = LineTransform::Direction;
using Pass = LineTransform::Pass;
constexpr int any_radix = 0;  // that of a pass whose radix has no butterfly of its own

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
void butterfly(Complex<L> (&)[1]) {}

template <class L>
[[gnu::always_inline]] inline void butterfly(Complex<L> (&v)[2]) {
  const Complex<L> difference = v[0] - v[1];
  v[0] = v[0] + v[1];
  v[1] = difference;
}

template <class L>
[[gnu::always_inline]] inline void butterfly(Complex<L> (&v)[3]) {
  constexpr double sine = std::numbers::sqrt3 / 2;
  const Complex<L> sum = v[1] + v[2];
  const Complex<L> side = times_minus_i(sine * (v[1] - v[2]));
  const Complex<L> middle = v[0] - 0.5 * sum;
  v[0] = v[0] + sum;
  v[1] = middle + side;
  v[2] = middle - side;
}

template <class L>
[[gnu::always_inline]] inline void butterfly(Complex<L>& a, Complex<L>& b, Complex<L>& c, Complex<L>& d) {
  const Complex<L> even_sum = a + c, even_difference = a - c;
  const Complex<L> odd_sum = b + d, odd_difference = b - d;
  a = even_sum + odd_sum;
  c = even_sum - odd_sum;
  b = {even_difference.re + odd_difference.im, even_difference.im - odd_difference.re};
  d = {even_difference.re - odd_difference.im, even_difference.im + odd_difference.re};
}

template <class L>
[[gnu::always_inline]] inline void butterfly(Complex<L> (&v)[4]) {
  butterfly(v[0], v[1], v[2], v[3]);
}

template <class L>
[[gnu::always_inline]] inline void butterfly(Complex<L> (&v)[5]) {
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
[[gnu::always_inline]] inline void butterfly(Complex<L> (&v)[8]) {
  constexpr double root = std::numbers::sqrt2 / 2;
  butterfly(v[0], v[2], v[4], v[6]);
  butterfly(v[1], v[3], v[5], v[7]);
  const Complex<L> even[4] = {v[0], v[2], v[4], v[6]};
  const Complex<L> odd[4] = {v[1],
                             {root * (v[3].re + v[3].im), root * (v[3].im - v[3].re)},
                             times_minus_i(v[5]),
                             {root * (v[7].im - v[7].re), -root * (v[7].re + v[7].im)}};
  for (int j = 0; j < 4; ++j) {
    v[j] = even[j] + odd[j];
    v[j + 4] = even[j] - odd[j];
  }
}

// The same for any prime, by the definition. Mirrored numbers share their cosines and sines.
template <class L>
void butterfly(std::vector<Complex<L>>& v, std::vector<Complex<L>>& sums, const std::vector<Turn>& roots) {
  const std::size_t radix = roots.size();
  const Complex<L> first = v[0];
  for (std::size_t k = 1; 2 * k < radix; ++k) {
    const Complex<L> difference = v[k] - v[radix - k];
    v[k] = v[k] + v[radix - k];
    v[radix - k] = difference;
    v[0] = v[0] + v[k];
  }
  for (std::size_t j = 1; 2 * j < radix; ++j) {
    Complex<L> middle = first, side{};
    for (std::size_t k = 1, root = j; 2 * k < radix; ++k, root = (root + j) % radix) {
      middle = middle + roots[root].re * v[k];
      side = side - roots[root].im * v[radix - k];
    }
    sums[j] = middle + times_minus_i(side);
    sums[radix - j] = middle - times_minus_i(side);
  }
  std::copy(sums.begin() + 1, sums.end(), v.begin() + 1);
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

// Numbers as they lie in a caller's memory. A line read backwards, but for its first place, gives the
// inverse.
struct Strided {
  double* first;
  std::ptrdiff_t step, apart;
  std::ptrdiff_t backwards_from = 0;

  explicit Strided(const Lines& lines) : first(lines.first), step(2 * lines.step), apart(2 * lines.apart) {}
  double* place(std::ptrdiff_t index) const {
    return first + step * (index > 0 && backwards_from > 0 ? backwards_from - index : index);
  }

  template <class L>
  Complex<L> read(const double* place, std::ptrdiff_t line) const {
    const double* a = place + line * apart;
    if constexpr (width<L> == 1)
      return {a[0], a[1]};
    else {
      const L one = load<L>(a), other = load<L>(a + apart);
      return {L{one[0], other[0]}, L{one[1], other[1]}};
    }
  }
  template <class L>
  void write(const Complex<L>& value, double* place, std::ptrdiff_t line) const {
    double* a = place + line * apart;
    if constexpr (width<L> == 1) {
      a[0] = value.re;
      a[1] = value.im;
    } else {
      store(L{value.re[0], value.im[0]}, a);
      store(L{value.re[1], value.im[1]}, a + apart);
    }
  }
};

// Numbers between passes: runs that share their turns, each first its real and then its imaginary parts.
struct Runs {
  double* first;
  std::ptrdiff_t length;

  double* place(std::ptrdiff_t index) const { return first + 2 * length * index; }

  template <class L>
  Complex<L> read(const double* place, std::ptrdiff_t q) const {
    return {load<L>(place + q), load<L>(place + length + q)};
  }
};

template <int Radix, class L, bool IsTurned, class Source>
[[gnu::always_inline]] inline void run_group(const Source from, std::ptrdiff_t group, std::ptrdiff_t groups,
                                             const Turn* turns, double* to, std::ptrdiff_t run) {
  // Copies, because the compiler cannot know that results are not stored over the originals.
  Turn by[Radix];
  for (int j = 1; j < Radix; ++j)
    if constexpr (IsTurned) by[j] = turns[j - 1];
  const double* places[Radix];
  for (int k = 0; k < Radix; ++k) places[k] = from.place(group + k * groups);
  for (std::ptrdiff_t q = 0; q < run; q += width<L>) {
    Complex<L> v[Radix];
    for (int k = 0; k < Radix; ++k) v[k] = from.template read<L>(places[k], q);
    butterfly(v);
    for (int j = 0; j < Radix; ++j) {
      if constexpr (IsTurned)
        if (j > 0) v[j] = turned(v[j], by[j]);
      store(v[j].re, to + j * run + q);
      store(v[j].im, to + (Radix + j) * run + q);
    }
  }
}

template <int Radix, class L, class Source>
void run_pass(const Pass& pass, const Source& from, double* to, std::ptrdiff_t run) {
  run_group<Radix, L, false>(from, 0, pass.groups, nullptr, to, run);
  const Turn* turns = pass.turns.data();
  for (int group = 1; group < pass.groups; ++group, turns += Radix - 1)
    run_group<Radix, L, true>(from, group, pass.groups, turns, to + 2 * run * Radix * group, run);
}

template <class L, class Source>
void run_any_pass(const Pass& pass, const Source& from, double* to, std::ptrdiff_t run) {
  const std::ptrdiff_t radix = pass.radix, groups = pass.groups;
  std::vector<Complex<L>> v(radix), sums(radix);
  for (std::ptrdiff_t group = 0; group < groups; ++group, to += 2 * run * radix)
    for (std::ptrdiff_t q = 0; q < run; q += width<L>) {
      for (std::ptrdiff_t k = 0; k < radix; ++k)
        v[k] = from.template read<L>(from.place(group + k * groups), q);
      butterfly(v, sums, pass.roots);
      for (std::ptrdiff_t j = 0; j < radix; ++j) {
        if (group > 0 && j > 0) v[j] = turned(v[j], pass.turns[(radix - 1) * (group - 1) + j - 1]);
        store(v[j].re, to + j * run + q);
        store(v[j].im, to + (radix + j) * run + q);
      }
    }
}

// The last pass has one group, which leaves each place where it belongs.
template <int Radix, class L>
void run_last_pass(const Runs from, const Strided to, std::ptrdiff_t places, std::ptrdiff_t lines) {
  const double* at = from.first;
  const std::ptrdiff_t apart = 2 * from.length;
  for (std::ptrdiff_t place = 0; place < places; ++place) {
    double* results[Radix];
    for (int j = 0; j < Radix; ++j) results[j] = to.place(place + places * j);
    for (std::ptrdiff_t line = 0; line < lines; line += width<L>, at += width<L>) {
      Complex<L> v[Radix];
      for (int k = 0; k < Radix; ++k) v[k] = from.template read<L>(at + k * apart, 0);
      butterfly(v);
      for (int j = 0; j < Radix; ++j) to.write(v[j], results[j], line);
    }
  }
}

template <class Work>
void with_radix(int radix, Work&& work) {
  switch (radix) {
    case 1:
      return work.template operator()<1>();
    case 2:
      return work.template operator()<2>();
    case 3:
      return work.template operator()<3>();
    case 4:
      return work.template operator()<4>();
    case 5:
      return work.template operator()<5>();
    case 8:
      return work.template operator()<8>();
    default:
      return work.template operator()<any_radix>();
  }
}

template <class L, class Source>
void run_lanes(const Pass& pass, const Source& from, double* to, std::ptrdiff_t run) {
  with_radix(pass.radix, [&]<int Radix>() {
    if constexpr (Radix == any_radix)
      run_any_pass<L>(pass, from, to, run);
    else
      run_pass<Radix, L>(pass, from, to, run);
  });
}

template <class Source>
void run(const Pass& pass, const Source& from, double* to, std::ptrdiff_t run) {
  run % 2 == 0 ? run_lanes<Pair>(pass, from, to, run) : run_lanes<double>(pass, from, to, run);
}

void run_last(const Pass& pass, const Runs& from, Strided to, std::ptrdiff_t lines) {
  std::ptrdiff_t places = from.length / lines;
  if (lines == 1) {  // the places of one line stand in for lines
    to.apart = to.step;
    to.step *= places;
    std::swap(places, lines);
  }
  with_radix(pass.radix, [&]<int Radix>() {
    if constexpr (Radix != any_radix)
      lines % 2 == 0 ? run_last_pass<Radix, Pair>(from, to, places, lines)
                     : run_last_pass<Radix, double>(from, to, places, lines);
  });
}

bool has_butterfly(int radix) {
  return radix <= 5 || radix == 8;
}

std::vector<int> radices_of(int length) {
  std::vector<int> radices;
  for (; length % 4 == 0 && length % 16 != 8; length /= 4) radices.push_back(4);
  for (const int radix : {8, 2, 3, 5})
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
      for (int j = 1; j < radix; ++j) pass.turns.push_back(turn_of(static_cast<long long>(p) * j, left));
    if (!has_butterfly(radix))
      for (int j = 0; j < radix; ++j) pass.roots.push_back(turn_of(j, radix));
    passes_.push_back(std::move(pass));
    left = passes_.back().groups;
  }
  // The first pass reads and another, of a radix with a butterfly, writes.
  while (passes_.size() < 2 || !has_butterfly(passes_.back().radix)) passes_.emplace_back();
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

void LineTransform::transform(const Lines& from, const Lines& to, int lines, Direction direction,
                              AlignedVector<double>& work) const {
  Runs in{work.data(), lines}, out{work.data() + work_size(lines) / 2, lines};
  Strided source(from);
  if (direction == Direction::inverse) source.backwards_from = length_;
  run(passes_.front(), source, in.first, in.length);
  in.length *= passes_.front().radix;
  for (std::size_t k = 1; k + 1 < passes_.size(); ++k) {
    run(passes_[k], in, out.first, in.length);
    out.length = in.length * passes_[k].radix;
    std::swap(in, out);
  }
  run_last(passes_.back(), in, Strided(to), lines);
}

}  // namespace libtexture
