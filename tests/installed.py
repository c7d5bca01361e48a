"""What the installed package must give: every module and file of bindings/libtexture, and figures of the core."""

from importlib.metadata import version
from importlib.resources import files
from pathlib import Path

import libtexture as lt

SOURCE = Path(__file__).parents[1] / "bindings" / "libtexture"

assert lt.__version__ == version("libtexture")
for file in SOURCE.rglob("*"):
    if file.is_file() and file.suffix != ".pyc":
        assert files(lt).joinpath(file.relative_to(SOURCE)).read_bytes() == file.read_bytes(), file
field = lt.synthesize(
    bands=[lt.TextureBand(wavelength_mm=2.5, rms_um=1.0)], grid=lt.Grid(rows=32, cols=32, pixel_mm=0.4), seed=1
)
assert abs(field.rms_um - 1) < 1e-9  # the promise of synthesize
assert lt.Catalogue.shipped().abrasives
assert lt.sweep([]) == []
print(f"libtexture {lt.__version__} from {Path(lt.__file__).parent}")
