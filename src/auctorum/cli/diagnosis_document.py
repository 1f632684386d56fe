"""The answer of `auctorum diagnosis` as a document, for every format alike."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import StrEnum
from fractions import Fraction

from auctorum.characters.show import format_span
from auctorum.circumscription.converted import left_out
from auctorum.circumscription.findings import Finding
from auctorum.circumscription.headlines import headlines
from auctorum.circumscription.lineage_words import lineage_sentences
from auctorum.circumscription.observed_words import sentences
from auctorum.circumscription.phrases import at_stage, capital, counted
from auctorum.circumscription.summary import NOTHING, summary
from auctorum.circumscription.traits import Trait, descriptions, standing
from auctorum.cli.diagnosis_found import Account, Found
from auctorum.cli.diagnosis_tables import (
    comparative_table,
    plants_table,
    statement_table,
    taxon_text,
    trait_table,
    worth_table,
)
from auctorum.corpus.model import Corpus, Work
from auctorum.exchange.document import Block, Document, Heading, Items, Paragraph, Run, Sources, Text, text
from auctorum.names.format import format_name, parts
from auctorum.site.citations import entry
from auctorum.site.words import NameFinder
from auctorum.site.words import Run as SiteRun


class Detail(StrEnum):
    """How much is told."""

    DESCRIPTION = "description"
    TABLE = "table"
    FULL = "full"


def document(found: Found, detail: Detail, *, wide: bool, published: bool) -> Document:
    """The answer: description, traits, what authors say, sources.

    `wide` puts all that is told of a character in one table; `published` cites works in full, and closes with the
    cautions and the notice of the knowledge base.
    """
    corpus = found.asked.corpus
    texts, sources = descriptions(corpus, [account.traits for account in found.accounts])
    tables = detail is not Detail.DESCRIPTION
    several = len(found.accounts) > 1
    blocks: list[Block] = list(_preface(found))
    if several and tables:
        blocks += (Heading(text("Side by side")), comparative_table(found))
    for account, said in zip(found.accounts, texts, strict=True):
        blocks += _of_taxon(found, account, said, detail, wide)
    if sources:
        cite = published or detail is Detail.FULL
        blocks += (Heading(text("Sources")), _sources(corpus, sources, cite))
    if published:
        blocks += _closing(corpus)
    return Document(_title(found), tuple(blocks))


def _title(found: Found) -> Text:
    return _listed([taxon_text(found.asked.corpus, account.taxon.id) for account in found.accounts])


def _listed(names: Sequence[Text]) -> Text:
    pieces: list[str | Text] = []
    for number, name in enumerate(names):
        pieces += ([] if not number else [" and " if number == len(names) - 1 else ", "]) + [name]
    return text(*pieces)


def _preface(found: Found) -> Iterator[Block]:
    if len(found.accounts) == 1:
        yield Paragraph(text(f"From {_treated(found, found.accounts[0])}."))
        if found.accounts[0].taxon.sense.meaning:
            yield Paragraph(text(found.accounts[0].taxon.sense.meaning), aside=True)
    if found.asked.works:
        bylines = "; ".join(found.asked.corpus.works[work].byline for work in found.asked.works)
        yield Paragraph(text(f"Only sec. {bylines}."), aside=True)
    if found.asked.unit:
        yield Paragraph(text(_note(found.asked.corpus, found.asked.unit)), aside=True)


def _treated(found: Found, account: Account) -> str:
    characters = len({trait.finding.character for trait in account.traits.traits})
    return f"{counted(len(account.traits.diagnosis.works), 'treatment')}, {counted(characters, 'character')}"


def _note(corpus: Corpus, unit: str) -> str:
    """That lengths are converted, and which are not."""
    said = format_span(Fraction(0), Fraction(0), unit).removeprefix("0 ")
    note = f"Lengths are converted from the units that the works print to {said}, and rounded."
    kept = ", ".join(left_out(corpus.vocabulary, unit))
    return f"{note} Left in its own unit: {kept}." if kept else note


def _of_taxon(found: Found, account: Account, said: str, detail: Detail, wide: bool) -> Iterator[Block]:
    several = len(found.accounts) > 1
    if several:
        yield Heading(taxon_text(found.asked.corpus, account.taxon.id))
        yield Paragraph(text(f"From {_treated(found, account)}."))
        if account.taxon.sense.meaning:
            yield Paragraph(text(account.taxon.sense.meaning), aside=True)
    else:
        yield Heading(text("Description"))
    yield Paragraph(text(said or "Nobody describes it."))
    if detail is Detail.DESCRIPTION:
        return
    if not several:
        yield from _traits(found, account, wide)
    yield from _without_plants(found, account)
    if detail is Detail.FULL:
        yield from _statements(found, account, several)


def _traits(found: Found, account: Account, wide: bool) -> Iterator[Block]:
    corpus = found.asked.corpus
    told = headlines((trait.finding for trait in account.traits.traits), corpus.works)
    if told:
        yield Heading(text("What stands out"))
        yield Items(tuple(text(str(one)) for one in told))
    yield Heading(text("Traits"))
    yield trait_table(found, account, wide=wide)
    if not wide:
        worths = worth_table(found, account)
        if worths.rows:
            yield Heading(text("What each trait is worth"))
            yield worths
        if account.observed:
            yield Heading(text("Own plants"))
            yield plants_table(found, account)


def _without_plants(found: Found, account: Account) -> Iterator[Block]:
    if found.asked.with_plants and not account.observed:
        name = taxon_text(found.asked.corpus, account.taxon.id, authors=False)
        measured = "for these characters" if account.plants else "in specimens.csv"
        yield Paragraph(text("No plant named as ", name, f" is measured {measured}."))


# --- what each author says


def _statements(found: Found, account: Account, several: bool) -> Iterator[Block]:
    yield Heading(text("What each author says"), level=2 if several else 1)
    for trait in account.traits.traits:
        if trait.finding.evidence:
            yield from _of_trait(found, account, trait)
    lines = lineage_sentences(account.repetitions, found.asked.corpus.works)
    if lines and not found.asked.characters:
        yield Heading(text("Who repeats whom"), level=2 if several else 1)
        yield Items(tuple(text(line) for line in lines))


def _of_trait(found: Found, account: Account, trait: Trait) -> Iterator[Block]:
    corpus, finding = found.asked.corpus, trait.finding
    yield Heading(text(f"{at_stage(*trait.key)}: {finding.verdict}"), level=2)
    yield Paragraph(text(" ".join([*finding.remarks, *_standing(corpus, finding)])))
    yield statement_table(found, account, trait)
    seen = account.observed.get(trait.key)
    if seen is not None:
        yield Paragraph(text("Own plants: ", " ".join(sentences(corpus, finding, seen))))


def _standing(corpus: Corpus, finding: Finding) -> Iterator[str]:
    """How many stand behind it, what all share, and who is silent."""
    core = summary(finding, corpus.vocabulary[finding.character]).core
    shared = f"; shared by all: {core}" if core != NOTHING and finding.count.works > 1 else ""
    yield f"{capital(standing(finding.count))}{shared}".removesuffix(".") + "."
    if finding.silent:
        yield f"Silent: {'; '.join(corpus.works[work].byline for work in finding.silent)}."


# --- sources, cautions


def _sources(corpus: Corpus, sources: Sequence[str], cite: bool) -> Sources:
    """The works by author and year, or cited in full with the names of plants in their titles set as such."""
    works = [corpus.works[work] for work in sources]
    if not cite:
        return Sources(tuple(text(work.byline) for work in works))
    names = [one.name.bare for one in corpus.names.values()]
    finder = NameFinder({format_name(name): tuple(SiteRun(*run) for run in parts(name)) for name in names})
    return Sources(tuple(_cited(work, finder) for work in works))


def _cited(work: Work, finder: NameFinder) -> Text:
    """The entry of a list of literature; with the year that the text calls it by, where the title page has another."""
    later = f" Published in {work.year}." if work.record.issued[:4] != str(work.year) else ""
    return text(tuple(Run(run.text, run.italic) for run in entry(work, finder.set)), later)


def _closing(corpus: Corpus) -> Iterator[Block]:
    if corpus.settings.cautions:
        yield Heading(text("Before you go out"))
        yield Items(tuple(text(one) for one in corpus.settings.cautions))
    if corpus.settings.notice:
        yield Paragraph(text(corpus.settings.notice), aside=True)
