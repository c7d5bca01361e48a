"""The README's Python runs as it stands, but for a smaller patch."""

import re
from pathlib import Path

ROOT = Path(__file__).parents[2]
JOB = "examples/jobs/rear_door.toml"


def test_the_python_of_the_readme_runs(tmp_path, capsys):
    blocks = re.findall(r"```python\n(.*?)```", (ROOT / "README.md").read_text(), re.DOTALL)
    assert len(blocks) == 1
    assert JOB in blocks[0]
    patch = "patch = { rows = 64, cols = 64, pixel_mm = 0.4 }"
    small, count = re.subn(r"^patch = \{.*?\}", patch, (ROOT / JOB).read_text(), flags=re.MULTILINE)
    assert count == 1
    (tmp_path / "job.toml").write_text(small)
    exec(compile(blocks[0].replace(JOB, str(tmp_path / "job.toml")), "README.md", "exec"), {})
    printed = capsys.readouterr().out
    for sequence in ("P1200 first", "P2000 first", "P3000 first"):
        assert f"{sequence}: " in printed


def test_every_file_that_the_documents_link_to_is_there():
    for document in [*ROOT.glob("*.md"), *ROOT.glob("docs/**/*.md")]:
        for link in re.findall(r"\]\(([^)#]+)\)", document.read_text()):
            assert link.startswith("http") or (document.parent / link).exists(), f"{document.name}: {link}"
