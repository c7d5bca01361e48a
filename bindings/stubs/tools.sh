#!/bin/sh
# Puts the generator and the checker of stubs, from PyPI, into an environment beside a build: tools.sh build/test
set -eu
tools=$1/stubs/tools
if ! [ -e "$tools/installed" ]; then
  python=$(sed -n 's/^Python_EXECUTABLE:[A-Z]*=//p' "$1/CMakeCache.txt")
  "$python" -m venv --clear --system-site-packages "$tools"
  "$tools/bin/pip" install -q --disable-pip-version-check -r "$(dirname "$0")/requirements.txt"
  touch "$tools/installed"
fi
