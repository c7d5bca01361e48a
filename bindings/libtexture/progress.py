"""How much of long work is done: a bar for notebooks, a line for the command."""

import sys
from collections.abc import Callable
from types import TracebackType


class ProgressBar:
    """A bar of tqdm, called with the share that is done. progress=True makes one; make your own to name it, or to keep
    it between calls: `with lt.ProgressBar("door") as bar: lt.predict(job, progress=bar)`."""

    def __init__(self, description: str = "libtexture") -> None:
        try:
            from tqdm.auto import tqdm
        except ImportError as error:
            raise ImportError(
                "ProgressBar: needs the Python package tqdm, which is not installed", name="tqdm"
            ) from error
        self._bar = tqdm(
            total=100, desc=description, bar_format="{desc}: {percentage:3.0f} % |{bar}| {elapsed}<{remaining}"
        )

    def __call__(self, share_done: float) -> None:
        self._bar.update(100 * share_done - self._bar.n)

    def close(self, is_done: bool = True) -> None:
        """Ends the bar: full, or where the work stopped."""
        if is_done:
            self(1.0)
        self._bar.close()

    def __enter__(self) -> "ProgressBar":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, where: TracebackType | None
    ) -> None:
        self.close(error is None)


class Percentage:
    """A line on standard error that tells how much is done, for people only."""

    def __init__(self, doing: str) -> None:
        self.doing = doing
        self.line = ""

    def __enter__(self) -> "Percentage | None":
        return self if sys.stderr.isatty() else None

    def __call__(self, share_done: float) -> None:
        line = f"{self.doing} {int(100 * share_done):3d} %"
        if line != self.line:
            self.line = line
            print(f"\r{line}", end="", file=sys.stderr, flush=True)

    def __exit__(self, *_: object) -> None:
        if self.line:
            print("\r" + " " * len(self.line) + "\r", end="", file=sys.stderr, flush=True)


def part_of(progress: Callable[[float], object] | None, part: int, parts: int) -> Callable[[float], object] | None:
    """Progress of one of several works, one after the other: part counts from 0; None where nobody looks."""
    return progress and (lambda share_done: progress((part + share_done) / parts))
