#!/bin/sh
# The package as its users get it: pip install . and pip install -e . into clean environments give the import that the
# build tree gives. Compiles the library, lightly; needs PyPI. First argument: a folder for the environments.
#   sh tests/install.sh build/install
set -eu
cd "$(dirname "$0")/.."
work=${1-build/install}
mkdir -p "$work"
work=$(cd "$work" && pwd)
python=${PYTHON-/usr/bin/python3}
export CMAKE_BUILD_PARALLEL_LEVEL=2 PYTHONDONTWRITEBYTECODE=1
# What is checked is the packaging: no optimisation, and the transform that links nothing.
light="--config-settings=cmake.build-type=Debug --config-settings=cmake.define.CMAKE_CXX_FLAGS_DEBUG=-O0
  --config-settings=cmake.define.LIBTEXTURE_FFT=OWN --config-settings=build-dir=$work/build"
optional="matplotlib jinja2 tqdm"  # which modules of the package import
for way in "" -e; do
  environment=$work/environment$way
  rm -rf "$environment"
  "$python" -m venv "$environment"
  # shellcheck disable=SC2086  # one word per option is what is meant
  "$environment/bin/pip" install -q --disable-pip-version-check $light $way .
  (cd "$work" && "$environment/bin/python" "$OLDPWD/tests/installed.py" && "$environment/bin/libtexture" --version)
  echo "pip install${way:+ $way} . gives the same import: checked"
  # The stubs were written from Debian's pybind11; here the module is built with the one of PyPI.
  if [ -z "$way" ]; then
    "$environment/bin/pip" install -q --disable-pip-version-check -r bindings/stubs/requirements.txt $optional
    (cd "$work" && "$environment/bin/python" -m mypy.stubtest libtexture --ignore-unused-allowlist \
      --mypy-config-file "$OLDPWD/bindings/stubs/mypy.ini" --allowlist "$OLDPWD/bindings/stubs/allowed.txt")
  fi
done
