"""`auctorum compare`"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import echo_json, find_name, json_option, kb_option, load_quietly

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from rich.text import Text

    from auctorum.corpus.model import Corpus
    from auctorum.nomenclature.compare import Change, Comparison
    from auctorum.nomenclature.compare_wording import Piece
    from auctorum.nomenclature.positions import Position
    from auctorum.nomenclature.regrouping import Regrouping


TWO_WAYS = (
    "give --sec twice, for the work to start from and the work to go to; not {works}×{taxa}. "
    "Or name two taxa or more, to see what tells them apart"
)


@click.command()
@click.argument("taxa", metavar="[TAXON]...", nargs=-1)
@click.option(
    "--sec",
    "sec",
    multiple=True,
    metavar="WORK",
    help="A work (its id). Of works: given twice, from the first to the second. Of taxa: only this work; may be given "
    "again.",
)
@click.option("--character", "characters", multiple=True, help="Of taxa: only this character; may be given again.")
@kb_option
@json_option
@click.pass_context
def compare(
    ctx: click.Context,
    taxa: tuple[str, ...],
    sec: tuple[str, ...],
    characters: tuple[str, ...],
    kb: Path,
    as_json: bool,
) -> None:
    """What tells taxa apart, or what changes from one work's view to another's.

    With two TAXA or more: character by character how far they overlap, by which threshold to part them, how often
    that errs and which authors bear it out; then the same in sentences.

    With two works (--sec twice): what changes if you move from the view of the first to that of the second, for all
    plants that either names, type by type: kept, renamed, sunk, raised, divided, united, or only in one of the two.
    One TAXON limits it to that taxon and its parts.
    """
    if len(taxa) > 1:
        from auctorum.cli.compare_taxa import compare_taxa

        ctx.exit(compare_taxa(load_quietly(kb).corpus, taxa, sec, characters, as_json))
    if len(sec) != 2:
        raise click.UsageError(TWO_WAYS.format(works=len(sec), taxa=" and one taxon" if taxa else ""))
    if characters:
        raise click.UsageError("--character goes with two taxa or more; the views of two works differ in names")
    from auctorum.nomenclature.compare import compare as compare_works

    corpus = load_quietly(kb).corpus
    within = find_name(corpus, taxa[0]).id if taxa else None
    found = compare_works(corpus, *sec, within=within)
    if as_json:
        echo_json(_data(corpus, found))
    else:
        _show(corpus, found)
    ctx.exit(0 if found.changes else 1)


def _full(corpus: Corpus, name: str | None) -> str:
    from auctorum.names.format import format_name

    return format_name(corpus.names[name].name) if name else ""


def _data(corpus: Corpus, found: Comparison) -> dict[str, object]:
    from auctorum.nomenclature.compare_wording import summary

    return {
        "from": {"work": found.a.id, "called": found.a.byline},
        "to": {"work": found.b.id, "called": found.b.byline},
        "within": _full(corpus, found.within),
        "summary": summary(found),
        "divisions_and_unions": [_regrouping_data(corpus, found, one) for one in found.regroupings],
        "types": [_change_data(corpus, found, change) for change in found.changes],
        "names_gained": [_full(corpus, name) for name in found.gained],
        "names_lost": [_full(corpus, name) for name in found.lost],
        "names_changed": [{"from": _full(corpus, old), "to": _full(corpus, new)} for old, new in found.renamed],
    }


def _regrouping_data(corpus: Corpus, found: Comparison, one: Regrouping) -> dict[str, object]:
    from auctorum.nomenclature.compare_wording import plain, regrouping_sentence

    return {
        "what": "division" if one.is_division else "union",
        "whole": {"name": _full(corpus, one.whole.name), "strict_sense": one.whole.strict},
        "parts": [
            {"name": _full(corpus, share.part.name), "strict_sense": share.part.strict, "entire": share.entire}
            for share in one.shares
        ],
        "sentence": plain(regrouping_sentence(corpus, found, one)),
    }


def _change_data(corpus: Corpus, found: Comparison, change: Change) -> dict[str, object]:
    from auctorum.nomenclature.compare_wording import plain, sentence

    return {
        "type_of": _full(corpus, change.group),
        "genus": change.genus,
        "kind": change.kind,
        "changed": change.is_change,
        "from": _position_data(corpus, change.a),
        "to": _position_data(corpus, change.b),
        "moves": list(change.moves),
        "takes_in": [_full(corpus, name) for name in change.gains],
        "leaves_out": [_full(corpus, name) for name in change.loses],
        "absence": change.absence or "",
        "sentence": plain(sentence(corpus, found, change)),
    }


def _position_data(corpus: Corpus, position: Position | None) -> dict[str, object] | None:
    """None where the work says nothing of the type."""
    from auctorum.nomenclature.compare_wording import how, plain

    if position is None:
        return None
    return {
        "how": plain(how(corpus, position)),
        "status": position.status,
        "name": _full(corpus, position.name),
        "accepted_name": _full(corpus, position.accepted),
        "names": [_full(corpus, name) for name in position.names],
        "rank": position.rank,
        "parent": _full(corpus, position.parent),
        "misapplied_to": _full(corpus, position.misapplied_to),
        "told_by": position.source.name.lower(),
        "page": position.page,
        "verbatim": position.words,
    }


def _show(corpus: Corpus, found: Comparison) -> None:
    from rich.text import Text

    from auctorum.cli.layout import console, heading, italic
    from auctorum.nomenclature.compare_wording import regrouping_sentence, summary

    out = console()
    if found.within:
        out.print(heading(Text.assemble(italic(corpus.names[found.within].name), " and its parts")))
    out.print(summary(found))
    if found.regroupings:
        out.print()
        out.print(heading("Divided and united"))
        for one in found.regroupings:
            out.print(Text.assemble(_text(regrouping_sentence(corpus, found, one)), "."))
    for genus in dict.fromkeys(change.genus for change in found.changes):
        out.print()
        out.print(heading(Text(genus, style="italic")))
        for line in _lines(corpus, found, [change for change in found.changes if change.genus == genus]):
            out.print(line)
    _show_names(corpus, found)


def _lines(corpus: Corpus, found: Comparison, changes: Iterable[Change]) -> Iterable[Text]:
    """A sentence with its pages for each change; then, in one line each, what stays and what one work leaves aside."""
    from rich.text import Text

    from auctorum.nomenclature.compare import UNCHANGED, Absence, Kind
    from auctorum.nomenclature.compare_wording import called_works, pages, sentence

    changes = list(changes)
    for change in changes:
        if change.is_change and change.absence is not Absence.OUTSIDE:
            said = pages(found, change)
            yield Text.assemble(_text(sentence(corpus, found, change)), f" ({said})." if said else ".")
    for kind in UNCHANGED:
        yield from _listed(corpus, str(kind).capitalize(), [one for one in changes if one.kind is kind])
    a, b = called_works(found)
    for kind, here, other in ((Kind.ONLY_A, a, b), (Kind.ONLY_B, b, a)):
        aside = [one for one in changes if one.kind is kind and one.absence is Absence.OUTSIDE]
        yield from _listed(corpus, f"Only in {here}; {other} {Absence.OUTSIDE}", aside)


def _show_names(corpus: Corpus, found: Comparison) -> None:
    from rich.text import Text

    from auctorum.cli.layout import console, heading, italic

    if not (found.gained or found.lost or found.renamed):
        return
    out = console()
    out.print()
    out.print(heading("Accepted names"))
    for label, names in (("Gained", found.gained), ("Lost", found.lost)):
        if names:
            listed = Text("; ").join(italic(corpus.names[name].name) for name in names)
            out.print(Text.assemble(f"{label}: ", listed, "."))
    for old, new in found.renamed:
        before, after = (italic(corpus.names[name].name) for name in (old, new))
        out.print(Text.assemble("Changed: ", before, " to ", after, "."))


def _listed(corpus: Corpus, label: str, changes: Sequence[Change]) -> Iterable[Text]:
    """The types in one line, with how they stand where they are not plainly accepted; nothing if there are none."""
    from rich.text import Text

    from auctorum.cli.layout import italic
    from auctorum.nomenclature.compare_wording import how

    items = []
    for change in changes:
        position = change.a or change.b
        if position is not None:
            aside = () if position.status == "accepted" else (" (", _text(how(corpus, position)), ")")
            items.append(Text.assemble(italic(corpus.names[position.name].name), *aside))
    if items:
        yield Text.assemble(f"{label}: ", Text("; ").join(items), ".")


def _text(pieces: Iterable[Piece]) -> Text:
    from rich.text import Text

    from auctorum.cli.layout import italic

    return Text.assemble(*(piece if isinstance(piece, str) else italic(piece) for piece in pieces))
