"""The templates, wherever the package runs from, and the environment that fills them."""

from __future__ import annotations

from importlib import resources
from itertools import groupby
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined, pass_context
from jinja2.runtime import Context
from markupsafe import Markup, escape

from auctorum.site.errors import UnusableOutput
from auctorum.site.paths import safe_link
from auctorum.site.words import Rich, capital

ASSETS = ("mark.svg", "search.js", "site.css", "survey.js")


def template_folder() -> Path:
    """The folder `site_templates`: inside the installed package, or beside `src` in a checkout.

    Raises UnusableOutput where neither is there, which means a broken installation.
    """
    inside = Path(str(resources.files("auctorum"))) / "site_templates"
    checkout = Path(__file__).resolve().parents[3] / "site_templates"
    for folder in (inside, checkout):
        if folder.is_dir():
            return folder
    raise UnusableOutput(str(inside), "the templates are missing from this installation")


def environment(folder: Path | None = None) -> Environment:
    """Jinja2 with everything escaped, unknown names refused, and `safe_link` to check addresses."""
    env = Environment(
        loader=FileSystemLoader(folder or template_folder()),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    env.filters["safe_link"] = safe_link
    env.filters["rich"] = _rich
    env.filters["capital"] = capital
    return env


def asset_texts(folder: Path | None = None) -> tuple[tuple[str, str], ...]:
    """The style sheet, script and mark that every site carries, as pairs of path and text."""
    assets = (folder or template_folder()) / "assets"
    return tuple((f"assets/{name}", (assets / name).read_text(encoding="utf-8")) for name in ASSETS)


@pass_context
def _rich(context: Context, runs: Rich) -> Markup:
    """Runs as HTML, escaped; neighbours with one address become one link, relative to the page."""
    root = context["shell"].root
    found = []
    for href, same in groupby(runs, key=lambda run: run.href):
        words = "".join(f"<i>{escape(run.text)}</i>" if run.italic else escape(run.text) for run in same)
        found.append(f'<a href="{root}{escape(href)}">{words}</a>' if href else words)
    return Markup("".join(found))
