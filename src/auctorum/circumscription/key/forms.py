"""A key written out: as plain text, as Markdown, and as data for JSON. (As a web page: `page.py`.)

Numbered couplets of two leads, the second marked by a dash; dots lead to the next couplet or to a name (common
practice, no source). Latin words stand in italics where the form has them.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator

from auctorum.circumscription.key.evaluate import Evaluation
from auctorum.circumscription.key.model import Couplet, Lead, Rule, Threshold, Want
from auctorum.circumscription.key.words import Page, Runs, below, came_from, end, notes, statement, title
from auctorum.names.format import Run
from auctorum.names.typeset import escaped, markdown

WIDTH = 88
_CAUTIONS = "Cautions"


def lines(told: Page, width: int = WIDTH) -> tuple[Runs, ...]:
    """The key line by line in runs, each with whether it is Latin; leads are filled up with dots to the width."""
    return tuple(_lines(told, width))


def _lines(told: Page, width: int) -> Iterator[Runs]:
    yield from wrapped(title(told), width)
    yield ()
    indent = max((len(came_from(couplet)) for couplet in told.key.couplets), default=1) + 2
    for couplet in told.key.couplets:
        for mark, lead in zip((came_from(couplet), "–"), couplet.leads, strict=True):
            yield from _lead_lines(mark.ljust(indent), lead, told, width)
        yield ()
    for paragraph in (*notes(told), *below(told)):
        yield from wrapped(paragraph, width)
        yield ()
    if told.cautions:
        yield ((f"{_CAUTIONS}:", False),)
        for caution in told.cautions:
            yield from (((line, False),) for line in textwrap.wrap(f"- {caution}", width, subsequent_indent="  "))


def _lead_lines(mark: str, lead: Lead, told: Page, width: int) -> Iterator[Runs]:
    """What the lead says, wrapped under itself, then dots and where it leads; that on a line of its own if need be."""
    target: Runs = ((str(lead.goes_to), False),) if lead.goes_to is not None else end(lead, told)
    room = width - len(mark)
    said = textwrap.wrap(statement(lead), room)
    needed = sum(len(text) for text, _ in target)
    if len(said[-1]) + needed + 5 > room:
        said.append("")
    for number, line in enumerate(said[:-1]):
        yield ((f"{' ' * len(mark) if number else mark}{line}", False),)
    start = (mark if len(said) == 1 else " " * len(mark)) + said[-1]
    dots = max(3, width - len(start) - needed - 2)
    yield ((f"{start} {'.' * dots} " if said[-1] else f"{start}{'.' * (dots + 1)} ", False), *target)


def wrapped(paragraph: Runs, width: int) -> Iterator[Runs]:
    """The runs in lines of at most this width, broken between words."""
    line: list[Run] = []
    length = 0
    for word, latin in _words(paragraph):
        if length and length + len(word.rstrip()) > width:
            yield _trimmed(line)
            line, length = [], 0
        if line and line[-1][1] == latin:
            line[-1] = (line[-1][0] + word, latin)
        else:
            line.append((word, latin))
        length += len(word)
    yield _trimmed(line)


def _words(paragraph: Runs) -> Iterator[Run]:
    """Words with the space behind them; no break is made between two runs without a space, but that is rare."""
    for text, latin in paragraph:
        yield from ((word, latin) for word in re.findall(r"\S+\s*|\s+", text))


def _trimmed(line: list[Run]) -> Runs:
    text, latin = line[-1]
    return (*line[:-1], (text.rstrip(), latin))


def as_text(told: Page, width: int = WIDTH) -> str:
    """Plain text, no line longer than the width unless a name is; ends in a line feed."""
    return "".join("".join(text for text, _ in line).rstrip() + "\n" for line in lines(told, width))


def as_markdown(told: Page) -> str:
    """Markdown: a heading, a paragraph for each couplet with a break between its leads, then notes and cautions."""
    made = [f"## {markdown(title(told))}"]
    for couplet in told.key.couplets:
        leads = zip((came_from(couplet), "–"), couplet.leads, strict=True)
        made.append("\\\n".join(_markdown_lead(mark, lead, told) for mark, lead in leads))
    made += [markdown(paragraph) for paragraph in (*notes(told), *below(told))]
    if told.cautions:
        made += [f"### {_CAUTIONS}", "\n".join(f"- {escaped(caution)}" for caution in told.cautions)]
    return "\n\n".join(made) + "\n"


def _markdown_lead(mark: str, lead: Lead, told: Page) -> str:
    target = f"**{lead.goes_to}**" if lead.goes_to is not None else markdown(end(lead, told))
    return f"**{mark}** {escaped(statement(lead))} … {target}"


def key_data(told: Page) -> dict[str, object]:
    """The key as data for JSON; taxa by id, figures in the unit of the character."""
    key = told.key
    return {
        "taxa": [{"id": id_, "name": _plain(told.names[id_])} for id_ in key.taxa],
        "according_to": told.sec,
        "characters": list(key.characters),
        "couplets": [_couplet_data(couplet) for couplet in key.couplets],
        "not_parted": None if key.want is None else _want_data(key.want),
        "expected": {"steps": key.expected.steps, "wrong": key.expected.wrong, "undecided": key.expected.undecided},
        "evaluation": None if told.evaluation is None else _evaluation_data(told.evaluation),
        "notes": [_plain(note) for note in (*notes(told), *below(told))],
        "cautions": list(told.cautions),
    }


def _plain(runs: Runs) -> str:
    return "".join(text for text, _ in runs)


def _couplet_data(couplet: Couplet) -> dict[str, object]:
    return {
        "number": couplet.number,
        "came_from": couplet.came_from,
        "characters": list(couplet.characters),
        "rules": [_rule_data(rule) for rule in couplet.rules],
        "leads": [_lead_data(lead) for lead in couplet.leads],
    }


def _rule_data(rule: Rule) -> dict[str, object]:
    if isinstance(rule, Threshold):
        return {"stage": rule.stage, "threshold": float(rule.value)}
    return {"stage": rule.stage, "lower": list(rule.lower), "upper": list(rule.upper)}


def _lead_data(lead: Lead) -> dict[str, object]:
    return {
        "says": statement(lead),
        "pieces": list(lead.pieces),
        "side": "upper" if lead.upper else "lower",
        "goes_to": lead.goes_to,
        "taxa": list(lead.taxa),
        "holds": [{"taxon": id_, "share": share} for id_, share in lead.holds],
        "not_parted": None if lead.want is None else _want_data(lead.want),
    }


def _want_data(reason: Want) -> dict[str, object]:
    return {
        "silent": [{"character": character, "taxa": list(taxa)} for character, taxa in reason.silent],
        "overlapping": reason.overlapping,
        "least_overlapping": reason.closest,
        "overlap": reason.overlap,
    }


def _evaluation_data(one: Evaluation) -> dict[str, object]:
    return {
        "plants": one.plants,
        "right": one.right,
        "wrong": one.wrong,
        "undecided": one.undecided,
        "wrong_interval": list(one.interval),
        "mistaken": [{"taxon": a, "taken_for": b, "plants": many} for a, b, many in one.mistaken],
        "misled": [{"couplet": number, "plants": lost, "of": asked} for number, lost, asked in one.misled],
        "without_observation": one.unseen,
        "named_by": list(one.named_by),
    }
