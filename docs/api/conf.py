"""Sphinx settings of the Python reference. Run by the target docs with the built package on PYTHONPATH."""

import libtexture

project = "libtexture"
release = version = libtexture.__version__
extensions = ["sphinx.ext.autodoc"]
html_theme = "alabaster"
html_theme_options = {"description": libtexture.__doc__, "fixed_sidebar": True, "page_width": "60rem"}
html_sidebars = {"**": ["about.html", "navigation.html", "localtoc.html", "searchbox.html"]}
autodoc_default_options = {"members": True, "undoc-members": False, "member-order": "bysource"}
SPECIAL = str.maketrans({mark: "\\" + mark for mark in "\\*`_|"})


def plain(app, what, name, thing, options, lines):
    """Doc strings come from comments of C++ headers: plain text, a line each, no markup."""
    lines[:] = ["| " + line.strip().translate(SPECIAL) if line.strip() else "" for line in lines]


def setup(app):
    app.connect("autodoc-process-docstring", plain)
