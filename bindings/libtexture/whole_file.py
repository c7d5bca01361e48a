"""Files that are written whole or not at all."""

import os
from pathlib import Path


def require_writable(path):
    """OSError unless a file can be put at the path; said before long work, not after it."""
    path = Path(path).resolve()
    if not path.parent.is_dir():
        raise FileNotFoundError(f"{path}: there is no folder {path.parent}")
    if path.exists() and not path.is_file():
        raise OSError(f"{path}: is not a file")
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


def write_whole(path, content):
    """Writes text (UTF-8) or bytes; a reader, or an error half way, sees the old file or the new one."""
    require_writable(path)
    path = Path(path).resolve()
    part = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        part.write_bytes(content.encode() if isinstance(content, str) else content)
        os.replace(part, path)
    finally:
        part.unlink(missing_ok=True)
