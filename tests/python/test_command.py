"""The command runs from the build tree."""

import os
import subprocess

import libtexture as lt


def command(*words):
    return subprocess.run([os.environ["LIBTEXTURE_COMMAND"], *words], capture_output=True, text=True)


def test_the_version_is_the_packages():
    assert command("--version").stdout.strip() == lt.__version__


def test_an_unknown_word_ends_with_status_2_and_says_why():
    result = command("--nonsense")
    assert result.returncode == 2
    assert "--nonsense" in result.stderr
