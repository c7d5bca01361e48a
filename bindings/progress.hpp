#pragma once
// Progress: reports to Python, and Ctrl-C, from work that runs without the interpreter's lock.

#include <pybind11/pybind11.h>

#include "libtexture/base/progress.hpp"

namespace libtexture::python {

namespace py = pybind11;

/// What long work reports to: it raises what a signal raised (KeyboardInterrupt), then calls
/// callable(share_done), or nothing if that is None. `callable` is borrowed: the caller's frame holds it
/// while the work runs.
inline Progress as_progress(py::handle callable) {
  return [callable](double share_done) {
    const py::gil_scoped_acquire lock;
    if (PyErr_CheckSignals() != 0) throw py::error_already_set();
    if (!callable.is_none()) callable(share_done);
  };
}

}  // namespace libtexture::python
