"""What --json writes."""

import json

from . import Job, __version__


def figures_text(figures, job: Job | None = None):
    """Figures as JSON, beside the version that computed them, and the job and its seed where there is one."""
    source = {"version": __version__}
    if job is not None:
        source |= {"seed": job.seed, "job": job.to_dict()}
    return json.dumps({**source, **figures}, indent=2, allow_nan=False) + "\n"
