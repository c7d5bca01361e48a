"""What --json writes."""

import json
from typing import Any

from . import Job, __version__


def figures_text(figures: dict[str, Any], job: Job | None = None) -> str:
    """Figures as JSON, beside the version that computed them, and the job and its seed where there is one."""
    source: dict[str, Any] = {"version": __version__}
    if job is not None:
        source |= {"seed": job.seed, "job": job.to_dict()}
    return json.dumps({**source, **figures}, indent=2, allow_nan=False) + "\n"
