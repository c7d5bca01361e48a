#pragma once
// Progress: reports to Python, and Ctrl-C, from work that runs without the interpreter's lock.

#include <pybind11/pybind11.h>

#include <exception>

#include "libtexture/base/progress.hpp"

namespace libtexture::python {

namespace py = pybind11;

/// How work says how far it is, in a signature.
#define PROGRESS "progress: bool | Callable[[float], object] | None = None"

/// What the work answers, done while other Python threads run on.
template <class Work>
auto without_lock(const Work& work) {
  const py::gil_scoped_release released;
  return work();
}

/// Where work reports to: what the caller gave as progress, a bar of our own where that is True. Made and
/// dropped with the interpreter's lock held.
class Reporter {
 public:
  explicit Reporter(const py::object& progress) : callable_(progress) {
    if (progress.is(py::bool_(false))) callable_ = py::none();
    if (progress.is(py::bool_(true))) {
      callable_ = py::module_::import("libtexture.progress").attr("ProgressBar")();
      is_own_ = true;
    }
  }
  ~Reporter() {
    if (!is_own_) return;
    try {
      callable_.attr("close")(std::uncaught_exceptions() == 0);
    } catch (py::error_already_set& error) {
      error.discard_as_unraisable("libtexture: the progress bar");
    }
  }
  Reporter(const Reporter&) = delete;
  Reporter& operator=(const Reporter&) = delete;

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
  py::object callable_;
  bool is_own_ = false;
};

}  // namespace libtexture::python
