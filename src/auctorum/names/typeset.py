"""Text with Latin names in it, as `format.parts` cuts them into runs, set in Markdown and in HTML."""

from __future__ import annotations

import re
from collections.abc import Iterable
from html import escape

from auctorum.names.format import Run

_SPECIAL = re.compile(r"[\\`*_{}\[\]<>|~]|&(?=#?\w)")


def markdown(runs: Iterable[Run]) -> str:
    """The runs as Markdown, in which no sign of the text means anything.

    >>> markdown([("Exemplum album", True), (" var. ", False), ("a_b", True)])
    '*Exemplum album* var. *a\\\\_b*'
    """
    return "".join(_emphasised(text) if latin else escaped(text) for text, latin in runs)


def html(runs: Iterable[Run]) -> str:
    """The runs as HTML, everything escaped.

    >>> html([("Exemplum", True), (" & <b>", False)])
    '<i>Exemplum</i> &amp; &lt;b&gt;'
    """
    return "".join(f"<i>{escape(text)}</i>" if latin else escape(text) for text, latin in runs)


def escaped(text: str) -> str:
    """Text in which no sign is read as Markdown."""
    return _SPECIAL.sub(lambda found: f"\\{found[0]}", text)


def _emphasised(text: str) -> str:
    """Signs of emphasis touch the words, or they are none."""
    bare = text.strip()
    before, after = text[: len(text) - len(text.lstrip())], text[len(text.rstrip()) :]
    return f"{before}*{escaped(bare)}*{after}" if bare else text
