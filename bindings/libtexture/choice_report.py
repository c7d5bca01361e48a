"""Comparisons and recommendations as pages for a browser or a printer."""

from . import page, plot
from .choice_table import front_distinguishes, plan_of, ranked
from .inputs import input_rows


def comparison_page(comparison, job=None):
    """A comparison (of compare()) as a page: what a class needs is its first sheet."""
    best = next(one for one in comparison.alternatives if one.sequence == comparison.best)
    height = 3.1 + 0.16 * len(comparison.alternatives)
    return page.render(
        "compare.html.j2",
        seed=comparison.seed,
        comparison=comparison,
        best=best,
        ranked=ranked(comparison),
        has_front=front_distinguishes(comparison),
        panels=panels_of(job),
        inputs=input_rows(job, job.sequence if job else []),
        pictures={**lesson(comparison), "pareto": page.chart(plot.pareto_chart, comparison, size=(4.8, height))},
    )


def recommendation_page(recommendation, job=None):
    """A recommendation (of recommend()) as a page."""
    comparison = recommendation.comparison
    plan = plan_of(recommendation)
    return page.render(
        "recommend.html.j2",
        seed=job.seed if job else comparison.seed,
        advice=recommendation,
        comparison=comparison,
        ranked=ranked(comparison),
        has_front=front_distinguishes(comparison),
        panels=panels_of(job),
        plan=plan,
        inputs=input_rows(job, [plan] if plan else []),
        pictures=lesson(comparison) if comparison.alternatives else {},
    )


def lesson(comparison):
    height = 1.5 + 0.42 * len(comparison.alternatives)
    return {"split": page.chart(plot.split_chart, comparison, size=(4.8, height))}


def panels_of(job):
    return ", ".join(panel.name for panel in job.panel) if job else "all panels"
