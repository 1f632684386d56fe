"""`auctorum survey` on the terminal, as CSV and as JSON."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING, Any

import click

from auctorum.cli.common import echo_json
from auctorum.corpus.cautions import cautions_of

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus
    from auctorum.determination.survey.model import Survey


def put_out(corpus: Corpus, found: Survey, *, as_json: bool) -> None:
    """As data: JSON, or CSV with a row for each site and view."""
    from auctorum.determination.survey.data import CSV_HEADINGS, csv_rows, survey_data
    from auctorum.exchange.as_csv import neutral

    if as_json:
        echo_json(survey_data(corpus, found) | {"cautions": list(cautions_of(corpus))})
    else:
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\n")
        for row in (CSV_HEADINGS, *csv_rows(corpus, found)):
            writer.writerow([neutral(cell) for cell in row])
        click.echo(out.getvalue(), nl=False)


def show(corpus: Corpus, found: Survey, sections: Sequence[str]) -> None:
    """The sections asked for, in their order, with who must be asked before anybody searches."""
    from rich.text import Text

    from auctorum.cli.layout import console, heading, italic
    from auctorum.determination.survey.words import lead

    out, taxon = console(), corpus.taxa[found.taxon]
    title = Text("Plants of ").append_text(italic(corpus.names[taxon.current].name)).append(taxon.sense.suffix)
    out.print(heading(title))
    out.print(lead(found))
    for section, parts in _SECTIONS.items():
        if section in sections:
            for part in parts(corpus, found):
                out.print(part)


def _counts(corpus: Corpus, found: Survey) -> Iterator[Any]:
    from auctorum.cli.layout import heading, table
    from auctorum.determination.survey.words import (
        BORDERLINE_HEADINGS,
        HEADINGS,
        borderline_rows,
        borderline_words,
        count_rows,
        how_counted,
        remarks,
        site_headings,
        site_rows,
    )

    yield heading("\nHow many, and by whose definition")
    yield table(HEADINGS, count_rows(found, found.whole), right=(1, 2, 3, 4, 5))
    yield from borderline_words(found, found.whole)
    yield from remarks(found)
    if len(found.sites) > 1:
        yield heading("\nAt each site")
        headings = site_headings(found)
        yield table(headings, site_rows(found), right=tuple(range(2, len(headings))))
        if near := list(borderline_rows(found)):
            yield table(BORDERLINE_HEADINGS, near, right=(1, 2))
    yield "\n".join(how_counted(found))


def _curve(corpus: Corpus, found: Survey) -> Iterator[Any]:
    from auctorum.cli.layout import heading, table
    from auctorum.determination.survey.curve_words import (
        BOUND_HEADINGS,
        bound_rows,
        curve_headings,
        curve_rows,
        curve_title,
    )

    yield heading("\nHow the count hangs on the threshold")
    if found.curve is None:
        yield "No threshold: no criterion concerns the taxon, and the records propose none."
        return
    yield curve_title(corpus, found.curve)
    if found.curve.measured:
        yield table(curve_headings(found.curve), curve_rows(corpus, found), right=(0, 1, 2))
    if found.curve.bounds:
        yield table(BOUND_HEADINGS, bound_rows(corpus, found.curve), right=(2, 3, 4))


def _spectrum(corpus: Corpus, found: Survey) -> Iterator[Any]:
    from auctorum.cli.layout import heading
    from auctorum.determination.survey.curve_words import gap_words

    yield heading("\nGap or spectrum")
    yield from gap_words(corpus, found) if found.curve is not None else ("No decisive character.",)


def _observers(corpus: Corpus, found: Survey) -> Iterator[Any]:
    from auctorum.cli.layout import heading
    from auctorum.determination.survey.curve_words import measurer_words

    yield heading("\nWho measures differently")
    yield from measurer_words(corpus, found)


def _wanted(_corpus: Corpus, found: Survey) -> Iterator[Any]:
    from auctorum.cli.layout import heading, table
    from auctorum.determination.survey.ahead_words import WANTED_HEADINGS, wanted_rows, wanted_title

    yield heading("\nHow many plants more")
    yield wanted_title(found)
    yield table(WANTED_HEADINGS, wanted_rows(found), right=(1, 2))


def _candidates(corpus: Corpus, found: Survey) -> Iterator[Any]:
    """The remarks on sites are for whoever goes there, and stand nowhere but on this terminal."""
    from auctorum.cli.layout import heading, numbered, table
    from auctorum.determination.survey.ahead_words import (
        CANDIDATE_HEADINGS,
        SEARCHING,
        candidate_rows,
        envelope_words,
        no_candidates,
    )

    yield heading("\nWhere to look next")
    yield from envelope_words(found)
    ranked = found.candidates.ranked
    if not ranked:
        yield no_candidates()
        return
    yield table(CANDIDATE_HEADINGS, candidate_rows(found), right=(2,))
    remarks = [(one.site, corpus.sites[one.site].locationRemarks) for one in ranked]
    yield from (f"{site}: {remark}" for site, remark in remarks if remark)
    yield heading("\nBefore you go")
    yield numbered((*SEARCHING, *cautions_of(corpus)))


_SECTIONS: dict[str, Callable[[Corpus, Survey], Iterator[Any]]] = {
    "counts": _counts,
    "curve": _curve,
    "spectrum": _spectrum,
    "observers": _observers,
    "wanted": _wanted,
    "candidates": _candidates,
}
