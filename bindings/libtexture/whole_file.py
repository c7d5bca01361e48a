"""Files that are written whole or not at all, all of a command's or none."""

import errno
import fcntl
import os
from contextlib import contextmanager
from pathlib import Path

from . import _core


def require_writable(path):
    """OSError unless a file can be put at the path; said before long work, not after it."""
    if os.path.lexists(path) and not Path(path).is_file():
        is_link_to_nothing = os.path.islink(path) and not os.path.exists(path)
        if not is_link_to_nothing or is_loop(path):
            raise OSError(f"{path}: is not a file")
    path = Path(path).resolve()
    if not path.parent.is_dir():
        raise FileNotFoundError(f"{path}: there is no folder {path.parent}")
    if not os.access(path.parent, os.W_OK):
        raise PermissionError(f"{path}: the folder {path.parent} may not be written to")


def require_outputs(outputs, inputs):
    """Checks the files that a command writes, before its work; none of them may be one that it reads, or another one
    that it writes. ValueError or OSError."""
    for path in outputs:
        require_writable(path)
    require_apart(outputs, inputs)
    for index, path in enumerate(outputs):
        if any(is_same(path, other) for other in outputs[:index]):
            raise ValueError(f"{path}: two outputs would be written to it")


def require_apart(outputs, inputs):
    """ValueError where an output would be written over an input."""
    for path in outputs:
        if any(is_same(path, other) for other in inputs):
            raise ValueError(f"{path}: is an input, and would be written over")


def files_of(job):
    """The files that a job names, which were read with it."""
    return [path for path in (job.texture.file, job.catalogue) if path]


def is_same(path, other):
    path, other = Path(path), Path(other)
    if path.exists() and other.exists():
        return path.samefile(other)  # links included
    return path.resolve() == other.resolve()


def is_loop(path):
    """Whether links lead round to themselves."""
    try:
        os.stat(path)
    except OSError as error:
        return error.errno == errno.ELOOP
    return False


def write_whole(contents):
    """Writes files, path -> text (UTF-8) or bytes: a reader, or an error half way, sees all of the old ones or all of
    the new ones. ValueError that names the one that cannot be written."""
    _core._write_whole_files(
        [(Path(path), content.encode() if isinstance(content, str) else content) for path, content in contents.items()]
    )


@contextmanager
def held(path):
    """The file is this process's own meanwhile: another one that wants to hold it waits. For what reads a file and
    writes it anew. Its folder is held, as the file itself is replaced; None = nothing to hold."""
    if path is None:
        yield
        return
    folder = os.open(Path(path).resolve().parent, os.O_RDONLY)
    try:
        fcntl.flock(folder, fcntl.LOCK_EX)
        yield
    finally:
        os.close(folder)


@contextmanager
def about(path):
    """ValueError of what is worked with a file names it."""
    try:
        yield
    except ValueError as error:
        if str(error).startswith(str(path)):
            raise
        raise ValueError(f"{path}: {error}") from error
