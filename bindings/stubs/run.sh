#!/bin/sh
# Writes the stubs of bindings/libtexture anew from the built package, then has mypy compare stubs and package
# and check the examples, as a typed user's code:
#   sh bindings/stubs/run.sh build/default        writes and checks
#   sh bindings/stubs/run.sh --check build/test   checks only
# Needs PyPI the first time.
set -eu
cd "$(dirname "$0")/../.."
write=yes
if [ "${1-}" = --check ]; then write=no; shift; fi
build=${1-build/default}
sh bindings/stubs/tools.sh "$build"
python=$PWD/$build/stubs/tools/bin/python
export PYTHONPATH="$PWD/$build/python" MYPYPATH="$PWD/$build/python" PYTHONDONTWRITEBYTECODE=1
if [ $write = yes ]; then
  "$python" bindings/stubs/make.py bindings/libtexture
  cmake --build "$build" --target libtexture_python >/dev/null
fi
settings=$PWD/bindings/stubs examples=$PWD/examples
cd "$build/stubs"  # where mypy keeps what it knows
"$python" -m mypy.stubtest libtexture --mypy-config-file "$settings/mypy.ini" --allowlist "$settings/allowed.txt" \
  --ignore-unused-allowlist
"$python" -m mypy --config-file "$settings/mypy.ini" --follow-imports silent --scripts-are-modules "$examples"/*.py
