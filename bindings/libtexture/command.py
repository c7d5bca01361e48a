"""The words of the command line, over the compiled core."""

import argparse
import sys

from . import __doc__ as description
from . import __version__


def parser():
    """The command line's grammar."""
    words = argparse.ArgumentParser(prog="libtexture", description=description)
    words.add_argument("--version", action="version", version=__version__)
    words.set_defaults(run=lambda _: words.print_help())
    return words


def main(arguments=None):
    """Runs the command; the exit status: 0, or 2 after one line on standard error that says what is wrong."""
    options = parser().parse_args(arguments)
    try:
        options.run(options)
    except (ValueError, OSError) as error:
        print(f"libtexture: {error}", file=sys.stderr)
        return 2
    return 0
