#!/bin/sh
# Installs what is missing of apt.txt, and of MORE_PACKAGES. Sourced by examples/run and tests/run, from the top of the
# tree.
set -eu

packages="$(grep -v '^#' apt.txt) ${MORE_PACKAGES:-}"
if command -v dpkg-query >/dev/null 2>&1 && command -v apt-get >/dev/null 2>&1; then
  missing=
  for package in $packages; do
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'install ok installed' || missing="$missing $package"
  done
  if [ -n "$missing" ]; then
    as_root=
    [ "$(id -u)" -eq 0 ] || as_root=sudo
    echo "Installing:$missing"
    export DEBIAN_FRONTEND=noninteractive
    # shellcheck disable=SC2086  # one word per package is what is meant
    $as_root apt-get update -qq && $as_root apt-get install -y -qq --no-install-recommends $missing
  fi
elif ! command -v cmake >/dev/null 2>&1 || ! command -v ninja >/dev/null 2>&1; then
  echo "This is not a Debian system. Install the equivalents of these Debian packages, then run this again:" >&2
  echo "$packages" >&2
  exit 1
fi
