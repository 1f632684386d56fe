"""`auctorum match`"""

from __future__ import annotations

from pathlib import Path
from typing import IO, TYPE_CHECKING

import click

from auctorum.cli.common import echo_json, json_option, kb_option, load_quietly

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus
    from auctorum.matching.compare import Difference
    from auctorum.matching.match import Candidate, Match
    from auctorum.nomenclature.code import Code


@click.command()
@click.argument("labels", nargs=-1, metavar="LABEL...")
@click.option(
    "--file",
    "file",
    type=click.File(encoding="utf-8-sig", errors="replace"),
    help="Labels from a file, one a line (- for input).",
)
@kb_option
@json_option
@click.pass_context
def match(ctx: click.Context, labels: tuple[str, ...], file: IO[str] | None, kb: Path, as_json: bool) -> None:
    """Which name is meant by each misspelt LABEL: the name, how it stands, what differed, and runners-up.

    Where two names are as likely, both are listed; where none is near enough, it says so rather than guess.
    Exit code 1 if any label has no match.
    """
    asked = [*labels, *(line.strip() for line in file or () if line.strip())]
    if not asked:
        raise click.UsageError("give at least one LABEL, or --file")
    from auctorum.matching.index import index_corpus
    from auctorum.matching.match import match as match_label

    code = load_quietly(kb)
    index = index_corpus(code.corpus)
    found = [match_label(label, index) for label in asked]
    if as_json:
        echo_json([_data(code, one) for one in found])
    else:
        for number, one in enumerate(found):
            _show(code, one, first=number == 0)
    ctx.exit(1 if any(one.verdict == "none" for one in found) else 0)


def _standing(corpus: Corpus, name: str) -> tuple[str, str]:
    """How the name stands sec. the latest work that places it, in words, and the accepted name."""
    from auctorum.names.format import format_name
    from auctorum.nomenclature.history import latest_placement

    placed = latest_placement(corpus, name)
    if placed is None:
        return "no work in the knowledge base places it", ""
    sec = f"sec. {corpus.works[placed.work].byline}"
    accepted = format_name(corpus.names[placed.accepted].name)
    return (f"accepted {sec}" if placed.accepted == name else f"synonym of {accepted} {sec}"), accepted


def _remarks(code: Code, name: str) -> list[str]:
    """What the Code says of the name, in short."""
    from auctorum.nomenclature.standing import standing

    return [] if code.corpus.names[name].is_autonym else list(map(str, standing(code, name)))


def _ordered(code: Code, found: Match) -> list[Candidate]:
    """Candidates by score; of equal ones those first of which the Code has nothing to remark."""
    return sorted(found.candidates, key=lambda one: (-one.score, bool(_remarks(code, one.id))))


def _data(code: Code, found: Match) -> dict[str, object]:
    return {
        "label": found.label,
        "verdict": str(found.verdict),
        "why": found.why,
        "set_aside": list(found.set_aside),
        "candidates": [_candidate(code, one) for one in _ordered(code, found)],
    }


def _candidate(code: Code, one: Candidate) -> dict[str, object]:
    from auctorum.names.format import format_name

    corpus = code.corpus
    standing, accepted = _standing(corpus, one.id)
    return {
        "name": format_name(corpus.names[one.id].name),
        "score": round(one.score, 3),
        "kind": one.kind,
        "standing": standing,
        "remarks": _remarks(code, one.id),
        "accepted_name": accepted,
        "differences": [
            {"label": part.label_part, "name": part.name_part, "position": part.position, "kind": part.kind}
            for part in one.differences
        ],
    }


def _show(code: Code, found: Match, *, first: bool) -> None:
    from rich.text import Text

    from auctorum.cli.layout import console, italic

    out, corpus = console(), code.corpus
    if not first:
        out.print()
    out.print(Text.assemble(("“" + found.label + "”", "bold"), f": {_verdict(found)}"))
    candidates = _ordered(code, found) if found.verdict == "several" else list(found.candidates)
    shown = candidates if found.verdict == "several" else candidates[:1] if found.best else []
    for one in shown:
        out.print(Text.assemble("  ", italic(corpus.names[one.id].name), f"  score {one.score:.3f}"))
        out.print(f"    {'; '.join([_standing(corpus, one.id)[0], *_remarks(code, one.id)])}")
        if one.differences:
            out.print(f"    {'; '.join(_difference(part) for part in one.differences)}")
    if found.set_aside:
        out.print(f"    set aside: {'; '.join(found.set_aside)}")
    others = [one for one in candidates if one not in shown and one.score > 0]
    if others:
        near = Text("; ").join(Text.assemble(italic(corpus.names[o.id].name), f" {o.score:.3f}") for o in others)
        out.print(Text.assemble("    nearest: " if found.best is None else "    runners-up: ", near))


def _difference(part: Difference) -> str:
    """`um → on (another letter)`; nothing on one side is written as a dash."""
    return f"{part.label_part or '–'} → {part.name_part or '–'} ({part.kind})"


def _verdict(found: Match) -> str:
    if found.verdict == "none":
        return f"no match ({found.why})" if found.why else "no match"
    return "one name" if found.verdict == "one" else f"{len(found.candidates)} names are possible"
