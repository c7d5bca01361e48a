"""Lines fit side by side: at most 120 columns, as clang-format and ruff keep them in what they format."""

from pathlib import Path

ROOT = Path(__file__).parents[2]
FOLDERS = ("benchmarks", "bindings", "cmake", "data", "docs", "examples", "libtexture", "tests")
ENDINGS = {".cpp", ".hpp", ".py", ".j2", ".toml", ".sh", ".cmake", ".in", ".ini"}


def test_no_line_is_over_120_columns():
    files = [path for folder in FOLDERS for path in (ROOT / folder).rglob("*")]
    files = [path for path in files if path.suffix in ENDINGS or path.name == "CMakeLists.txt"]
    assert len(files) > 300
    long = [
        f"{path.relative_to(ROOT)}:{number}"
        for path in [*files, *ROOT.glob("*.toml"), ROOT / "CMakeLists.txt"]
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if len(line) > 120
    ]
    assert not long
