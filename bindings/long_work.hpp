#pragma once
// Long work for Python: its progress, Ctrl-C and its threads, while it runs without the interpreter's lock.

#include <pybind11/pybind11.h>

#include <exception>

#include "libtexture/base/parallel.hpp"
#include "libtexture/base/progress.hpp"

namespace libtexture::python {

namespace py = pybind11;

/// How a caller watches and bounds long work, in a signature and in its arguments.
#define LONG_WORK "progress: bool | Callable[[float], object] | None = None, threads: int = 0"
#define LONG_WORK_ARGUMENTS "progress"_a = py::none(), "threads"_a = 0

/// What the work answers, done while other Python threads run on.
template <class Work>
auto without_lock(const Work& work) {
  const py::gil_scoped_release released;
  return work();
}

/// Long work for a caller in Python: it reports to what was given as progress, a bar of our own where that is
/// True, and uses at most `threads` threads (0 = all the machine has). Made and dropped with the
/// interpreter's lock held, by the thread that does the work.
class LongWork {
 public:
  LongWork(const py::object& progress, int threads) : limit_(threads), callable_(progress) {
    if (progress.is(py::bool_(false))) callable_ = py::none();
    if (progress.is(py::bool_(true))) {
      callable_ = py::module_::import("libtexture.progress").attr("ProgressBar")();
      is_own_ = true;
    }
  }
  ~LongWork() {
    if (!is_own_) return;
    try {
      callable_.attr("close")(std::uncaught_exceptions() == 0);
    } catch (py::error_already_set& error) {
      error.discard_as_unraisable("libtexture: the progress bar");
    }
  }
  LongWork(const LongWork&) = delete;
  LongWork& operator=(const LongWork&) = delete;

  /// Raises what a signal raised (KeyboardInterrupt), then tells the share done. Must not outlive this
  /// object.
  Progress progress() const {
    return [this](double share_done) {
      const py::gil_scoped_acquire lock;
      if (PyErr_CheckSignals() != 0) throw py::error_already_set();
      if (!callable_.is_none()) callable_(share_done);
    };
  }

 private:
  ThreadLimit limit_;
  py::object callable_;
  bool is_own_ = false;
};

}  // namespace libtexture::python
