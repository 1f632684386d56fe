"""The answer of `auctorum verify-labels` as a document, for every format alike."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from rich.text import Text as Styled

from auctorum.circumscription.separation_names import short_names
from auctorum.cli.names_in_text import italiciser
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import called
from auctorum.determination.labels import words as said
from auctorum.determination.labels.data import CSV_HEADINGS, csv_rows
from auctorum.determination.labels.model import LabelFinding, LabelReport, LabelVerdict, Strength
from auctorum.exchange.document import Block, Document, Heading, Items, Paragraph, Run, Table, Text, joined, text

Set = Callable[[str], Text]
_OF_PLANTS = 6  # place in SELLER_HEADINGS from which on columns are of plants, and no more of names


def document(corpus: Corpus, report: LabelReport, *, full: bool, published: bool) -> Document:
    """Sellers, labels, and what contradicts; `full` tells of each label at length, `published` quotes every work."""
    set_ = _setter(corpus, report)
    return Document(text("Labels against their plants"), tuple(_blocks(corpus, report, set_, full, published)))


def csv_table(report: LabelReport) -> Table:
    """A row for each label."""
    headings = tuple(text(one) for one in CSV_HEADINGS)
    return Table((), headings, tuple(tuple(text(cell) for cell in row) for row in csv_rows(report)))


def _blocks(corpus: Corpus, report: LabelReport, set_: Set, full: bool, published: bool) -> Iterator[Block]:
    alone = len(report.findings) == 1
    if not alone:
        yield from _sums(report, set_)
    if not full:
        taxa = tuple(dict.fromkeys(one.meaning.taxon for one in report.findings if one.meaning.taxon is not None))
        yield Heading(text("Labels"))
        yield _table(said.LABEL_HEADINGS, said.label_rows(report, short_names(corpus, taxa)), set_)
    told = [one for one in report.findings if full or one.verdict is LabelVerdict.CONTRADICTED]
    if told:
        yield Heading(text("The label" if alone else "Each label" if full else "What contradicts"))
    for one in told:
        yield from _label(corpus, one, set_, published)
    yield Heading(text("What this rests on"))
    yield Items(tuple(set_(each) for each in (*said.grounds(report), *_unusable(report))))
    yield Heading(text("Before you buy"))
    yield Items(tuple(text(each) for each in said.cautions()))
    if published and corpus.settings.notice:
        yield Paragraph(text(corpus.settings.notice), aside=True)


def _sums(report: LabelReport, set_: Set) -> Iterator[Block]:
    """All labels in a sentence, and for each seller the names as printed, then the plants: two tables fit the line."""
    yield Paragraph(set_(said.lead(report)))
    heads, rows = said.SELLER_HEADINGS, said.seller_rows(report)
    yield Heading(text("Sellers: names as printed"))
    yield _table(heads[:_OF_PLANTS], tuple(row[:_OF_PLANTS] for row in rows), set_, right=(1, 2, 3, 4, 5))
    yield Heading(text("Sellers: plants"))
    of_plants = tuple((row[0], *row[_OF_PLANTS:]) for row in rows)
    yield _table((heads[0], *heads[_OF_PLANTS:]), of_plants, set_, right=(1, 2))
    if report.whole.interval is not None:
        yield Paragraph(text(said.INTERVALS), aside=True)


def _label(corpus: Corpus, one: LabelFinding, set_: Set, published: bool) -> Iterator[Block]:
    yield Heading(set_(said.title_of_label(one)), 2)
    yield Paragraph(set_(" ".join(said.account(corpus, one))))
    against = (*one.of_strength(Strength.STRONG), *one.of_strength(Strength.WEAK))
    if against:
        words = (said.trait_words(each, None) if published else said.trait_words(each) for each in against)
        yield Items(tuple(map(set_, words)))


def _unusable(report: LabelReport) -> Iterator[str]:
    for id_, why, remedy in report.unusable:
        yield f"The criterion {id_} was not tried: {why} ({remedy})."


def _table(
    headings: tuple[str, ...], rows: tuple[tuple[str, ...], ...], set_: Set, right: tuple[int, ...] = ()
) -> Table:
    return Table((), tuple(map(text, headings)), tuple(tuple(map(set_, row)) for row in rows), right)


def _setter(corpus: Corpus, report: LabelReport) -> Set:
    """What sets the names that the answer holds in italics."""
    taxa = [one.meaning.taxon for one in report.findings if one.meaning.taxon is not None]
    names = {called(corpus, name) for one in report.findings for name in one.matched.names}
    names |= {called(corpus, corpus.taxa[taxon].current) for taxon in taxa} | set(short_names(corpus, taxa).values())
    names |= {one.instead.name for one in report.findings if one.instead is not None}
    names |= {name for each in corpus.criteria for name in (each.taxon, each.otherwise) if name}
    italic = italiciser(names)
    return lambda words: _runs(italic(words))


def _runs(styled: Styled) -> Text:
    """The runs of a styled text; what its spans cover is italic."""
    found: list[Run] = []
    at = 0
    for span in sorted(styled.spans):
        between = styled.plain[at : span.start]
        found += [Run(between, between == " " and bool(found)), Run(styled.plain[span.start : span.end], True)]
        at = span.end
    return joined((*found, Run(styled.plain[at:])))
