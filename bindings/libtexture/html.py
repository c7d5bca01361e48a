"""Values and results as small tables, for notebooks."""

from html import escape
from numbers import Number

import numpy as np

from . import Comparison, Predicted, Prediction, Recommendation, Statement
from .choice_table import comparison_table, recommendation_table
from .table import table

LONGEST_LIST = 8
ANSWERS = {  # what answers a question is shown as the command line shows it
    Predicted: lambda predicted: table(predicted.prediction),
    Prediction: table,
    Comparison: comparison_table,
    Recommendation: recommendation_table,
}


def html_of(thing):
    """A table of the thing's properties, for an answer under its text."""
    answer = ANSWERS.get(type(thing))
    if not answer:
        return members_of(thing)
    return f"<pre>{escape(answer(thing))}</pre><details><summary>all members</summary>{members_of(thing)}</details>"


def members_of(thing):
    """A row a property; rows of the same kind, as of a history's steps, become columns of figures."""
    members = {name: getattr(thing, name) for name, member in vars(type(thing)).items() if isinstance(member, property)}
    lines = [f"<tr><th style='text-align: left'>{name}</th><td style='text-align: left'>{cell(value)}</td></tr>"
             for name, value in members.items()]  # fmt: skip
    return f"<table><caption>{type(thing).__name__}</caption><tbody>{''.join(lines)}</tbody></table>"


def cell(value):
    """One member, as HTML."""
    if isinstance(value, np.ndarray) and (value.ndim > 1 or value.size > LONGEST_LIST):
        return (
            f"array of {' x '.join(map(str, value.shape))}, {value.min():.4g} to {value.max():.4g}"
            if value.size
            else "none"
        )
    if isinstance(value, (list, tuple, np.ndarray)):
        return rows_of(value)
    if isinstance(value, dict):
        return ", ".join(f"{escape(str(key))}: {cell(one)}" for key, one in value.items()) or "none"
    return figure(value)


def rows_of(values):
    """A list: a table where its items have fields, sentences one below the other, else its first items."""
    if len(values) and isinstance(values[0], Statement):
        return "<br>".join(escape(value.text) for value in values)
    if len(values) and hasattr(values[0], "replace") and hasattr(values[0], "to_dict"):
        rows = [{name: getattr(one, name) for name in one.to_dict()} for one in values[:LONGEST_LIST]]
        names = list(dict.fromkeys(name for row in rows for name in row))
        head = "".join(f"<th>{name}</th>" for name in names)
        body = "".join(
            "<tr>" + "".join(f"<td>{figure(row.get(name))}</td>" for name in names) + "</tr>" for row in rows
        )
        return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>{more(values)}"
    return ", ".join(figure(value) for value in values[:LONGEST_LIST]) + more(values) if len(values) else "none"


def more(values):
    return f" and {len(values) - LONGEST_LIST} more" if len(values) > LONGEST_LIST else ""


def figure(value):
    """One number, word or value in few characters: a tool, grit or step by its name."""
    if isinstance(value, Number) and not isinstance(value, bool):
        return f"{value:.6g}"
    if hasattr(value, "to_dict") and getattr(value, "name", ""):
        return escape(value.name)
    if type(value) in ANSWERS or hasattr(value, "to_dict") and not hasattr(value, "replace"):
        return f"a {type(value).__name__}"  # long, or with maps
    if hasattr(value, "to_dict"):
        return figure(value.to_dict())
    if isinstance(value, dict) and len(value) <= LONGEST_LIST:
        return ", ".join(f"{escape(str(name))}: {figure(one)}" for name, one in value.items()) or "none"
    if isinstance(value, (dict, list)) and len(value) > LONGEST_LIST:
        return f"{len(value)} items"
    if isinstance(value, list):
        return ", ".join(map(figure, value)) or "none"
    return escape(str(value))
