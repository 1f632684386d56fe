"""Two taxa or more side by side: what tells them apart, as `auctorum compare` prints it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import click
from rich.text import Text

from auctorum.characters.show import format_span
from auctorum.circumscription.phrases import at_stage
from auctorum.circumscription.separation import Parting, Separation, separation
from auctorum.circumscription.separation_names import epithets, full_name, short_names
from auctorum.circumscription.separation_table import Row, pairs, rows
from auctorum.circumscription.separation_words import (
    FAILS,
    HELPS,
    NEARLY,
    USEFUL,
    pair_words,
    percent,
    strength,
    threshold,
    upper,
)
from auctorum.cli.common import check_works, echo_json, find_name
from auctorum.cli.layout import console, heading, italic, table
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import find_character
from auctorum.corpus.resolve import find_taxon

FEW_PAIRS = 3  # pairs up to which each has a column of its own
NOTE = (
    "Overlaps and errors are reckoned from the ranges and states that authors give, every taxon taken to be equally "
    "common; no plants were counted. Error: how often a plant is misjudged by this character alone."
)
WORKS = (
    "Works: how many of those that give the character for both keep the two apart by it; one that repeats another has "
    "no say."
)


def compare_taxa(
    corpus: Corpus, said: Sequence[str], sec: Sequence[str], characters: Sequence[str], as_json: bool
) -> int:
    """Print what tells the taxa apart; returns the exit code: 0 if anything could be compared, 1 if nothing could."""
    taxa = _taxa(corpus, said)
    chosen = {find_character(one, corpus.vocabulary).name for one in characters}
    check_works(corpus, sec)
    found = separation(corpus, taxa, works=sec or None)
    if chosen:
        found = replace(found, partings=tuple(one for one in found.partings if one.character in chosen))
    if as_json:
        echo_json(_data(corpus, found, sec))
    else:
        _show(corpus, found, sec)
    return 0 if found.compares else 1


def _taxa(corpus: Corpus, said: Sequence[str]) -> list[str]:
    """Ids of the taxa that are meant; two names of one taxon are misuse."""
    meant: dict[str, str] = {}
    for words in said:
        taxon = find_taxon(corpus, find_name(corpus, words).id).id
        if taxon in meant:
            raise click.UsageError(f"“{meant[taxon]}” and “{words}” are one taxon: {full_name(corpus, taxon)}")
        meant[taxon] = words
    return list(meant)


def _show(corpus: Corpus, found: Separation, sec: Sequence[str]) -> None:
    out = console()
    numbers, short = _numbers(found), short_names(corpus, found.taxa)
    for taxon in found.taxa:
        one = corpus.taxa[taxon]
        number = f"{numbers[taxon]}  " if len(found.taxa) > 2 else ""
        out.print(heading(Text.assemble(number, italic(corpus.names[one.current].name), one.sense.suffix)))
    if sec:
        out.print(f"After {'; '.join(corpus.works[work].byline for work in sec)} alone.")
    out.print()
    if not found.partings:
        out.print("Nothing is stated of any of them.")
        return
    out.print(_table_of_two(corpus, found) if len(found.taxa) == 2 else _table_of_many(corpus, found))
    out.print()
    for a, b in pairs(found):
        if len(found.taxa) > 2:
            out.print(heading(f"{numbers[a]}–{numbers[b]}  {short[a]} and {short[b]}"))
        out.print(pair_words(corpus, found, a, b))
        out.print()
    out.print(f"{NOTE} {WORKS}" if len(found.taxa) == 2 else NOTE)


def _table_of_two(corpus: Corpus, found: Separation) -> object:
    names = epithets(corpus, found.taxa)
    headings = (
        "character",
        *(names[taxon] for taxon in found.taxa),
        "overlap",
        "threshold",
        "error",
        "works",
        "strength",
    )
    return table(headings, [_row_of_two(corpus, one, names[upper(one)]) for one in found.partings], right=(3, 5, 6))


def _row_of_two(corpus: Corpus, one: Parting, above: str) -> tuple[str, ...]:
    if one.overlap is None or one.error is None:
        return (at_stage(one.character, one.stage), *one.says, "", "", "", "", "unknown")
    both = len(one.support) + len(one.against)
    return (
        at_stage(one.character, one.stage),
        *one.says,
        _percent(one.overlap),
        _threshold(corpus, one, above) if strength(one.error) != FAILS else "",
        _percent(one.error),
        f"{len(one.support)} of {both}" if both else "",
        {NEARLY: "nearly", FAILS: "no use"}.get(strength(one.error), strength(one.error)),
    )


def _threshold(corpus: Corpus, one: Parting, above: str) -> str:
    """`longum ≥ 25 mm`, `robustum from villous on`; empty without a cut."""
    if one.cut is None:
        return ""
    character = corpus.vocabulary[one.character]
    if not character.kind.is_numeric:
        return f"{above} {threshold(one, character)}"
    return f"{above} ≥ {format_span(one.cut.value, one.cut.value, character.unit)}"


def _table_of_many(corpus: Corpus, found: Separation) -> object:
    names, numbers, both = epithets(corpus, found.taxa), _numbers(found), pairs(found)
    told = [f"{numbers[a]}–{numbers[b]}" for a, b in both]
    heads = [f"{numbers[taxon]} {names[taxon]}" for taxon in found.taxa]
    lines = rows(found, corpus.vocabulary)
    if len(both) > FEW_PAIRS:
        return table(
            ("character", *heads, "separates"),
            [(at_stage(row.character, row.stage), *row.says, _parts(row, told)) for row in lines],
        )
    right = range(len(heads) + 1, len(heads) + 1 + len(told))
    errors = [[("" if error is None else _percent(error)) for error in row.errors] for row in lines]
    made = [
        (at_stage(row.character, row.stage), *row.says, *several) for row, several in zip(lines, errors, strict=True)
    ]
    return table(("character", *heads, *(f"error {pair}" for pair in told)), made, right=right)


def _parts(row: Row, told: Sequence[str]) -> str:
    """The pairs that the character separates or nearly does; in parentheses those for which it helps."""
    found = []
    for pair, error in zip(told, row.errors, strict=True):
        if error is not None and strength(error) in USEFUL:
            found.append(f"({pair})" if strength(error) == HELPS else pair)
    return ", ".join(found)


def _numbers(found: Separation) -> dict[str, int]:
    return {taxon: number for number, taxon in enumerate(found.taxa, 1)}


def _percent(share: float) -> str:
    """Whole percent; `< 1 %` for less, 0 only where it is none."""
    return percent(share).replace("none", "0").replace("under", "<")


# --- as data


def _data(corpus: Corpus, found: Separation, sec: Sequence[str]) -> dict[str, object]:
    return {
        "taxa": [{"id": taxon, "name": full_name(corpus, taxon)} for taxon in found.taxa],
        "sec": [{"work": work, "called": corpus.works[work].byline} for work in sec],
        "pairs": [_pair_data(corpus, found, a, b) for a, b in pairs(found)],
        "note": NOTE,
    }


def _pair_data(corpus: Corpus, found: Separation, a: str, b: str) -> dict[str, object]:
    return {
        "a": a,
        "b": b,
        "sentences": pair_words(corpus, found, a, b),
        "characters": [_parting_data(corpus, one) for one in found.of(a, b)],
    }


def _parting_data(corpus: Corpus, one: Parting) -> dict[str, object]:
    """Figures in the unit of the character; null where one of the two is silent, or where there is no threshold."""
    character = corpus.vocabulary[one.character]
    return {
        "character": one.character,
        "stage": one.stage,
        "unit": character.unit,
        "consensus_a": one.says[0],
        "consensus_b": one.says[1],
        "overlap": _figure(one.overlap),
        "error": _figure(one.error),
        "strength": None if one.error is None else strength(one.error),
        "threshold": None
        if one.cut is None
        else {
            "value": float(one.cut.value),
            "words": threshold(one, character),
            "below": one.lower,
            "above": upper(one),
            "lost_below": _figure(one.cut.lost_below),
            "lost_above": _figure(one.cut.lost_above),
        },
        "gap": None if one.gap is None else [float(end) for end in (one.gap.low, one.gap.high) if end is not None],
        "support": list(one.support),
        "against": list(one.against),
        "said_to_differ": list(one.said_to_differ),
        "silent": list(one.silent),
        "blurs": list(one.blurs),
    }


def _figure(value: float | None) -> float | None:
    return None if value is None else round(value, 6)
