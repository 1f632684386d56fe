"""The tables of `auctorum diagnosis`: traits, what they are worth, own plants, taxa side by side, statements."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from auctorum.characters.show import format_value
from auctorum.circumscription.converted import converted
from auctorum.circumscription.findings import Evidence, Finding
from auctorum.circumscription.observed import Observed
from auctorum.circumscription.observed_words import cover_words, naming
from auctorum.circumscription.phrases import at_stage, counted
from auctorum.circumscription.separation_names import short_names
from auctorum.circumscription.separation_words import STRENGTHS, USEFUL, strength
from auctorum.circumscription.summary import NOTHING
from auctorum.circumscription.traits import Trait, observed_words
from auctorum.circumscription.traits_apart import Contrast, side, worth
from auctorum.cli.diagnosis_found import Account, Found
from auctorum.corpus.model import Corpus
from auctorum.exchange.document import Run, Table, Text, text, words
from auctorum.names.format import parts

OWN = "own plants"
PLANTS = ("plants", "own range", "contradicted")
CONSENSUS = (
    "Consensus is what at least half of the authors hold, with what others state beyond it in parentheses; the range "
    "of opinions is all that anybody states. Independent are authors who give something of their own, the next "
    "columns count works that repeat another's figures, and works that treat the taxon and leave the character out."
)
WORTH = "Against another taxon: how well the character alone tells the two apart, and where this one lies."


def strengths() -> str:
    """The words for what a character is worth, with how often each misleads.

    >>> strengths().partition(",")[0]
    'A character that separates misjudges 1 plant in 100 at most'
    """
    (least, first), *rest = ((round(100 * error), word) for error, word in STRENGTHS)
    told = [f"A character that {first} misjudges {least} plant in 100 at most"]
    told += [f"one that {word} {many}" for many, word in rest]
    return ", ".join(told) + "."


def taxon_text(corpus: Corpus, taxon: str, *, authors: bool = True) -> Text:
    """A taxon by its name, with the sense in which it is meant."""
    one = corpus.taxa[taxon]
    name = corpus.names[one.current].name
    return text(name if authors else name.bare, one.sense.suffix)


def short_texts(corpus: Corpus, taxa: Sequence[str], *, sense: bool = True) -> dict[str, Text]:
    """Taxa that stand side by side by short names, `var. longum`, with their Latin words in italics.

    Without `sense`, it is told only of those that share a name.
    """
    return {taxon: _shortened(corpus, taxon, short, sense) for taxon, short in short_names(corpus, taxa).items()}


def _shortened(corpus: Corpus, taxon: str, short: str, sense: bool) -> Text:
    runs = parts(corpus.names[corpus.taxa[taxon].current].name.proper.bare)
    whole = "".join(said for said, _ in runs)
    initial = "" if whole.endswith(short) else short[:2]
    rest = short.removeprefix(initial)
    if not (whole.endswith(rest) and initial in ("", f"{whole[0]}.")):
        return taxon_text(corpus, taxon)
    skip, found = len(whole) - len(rest), [Run(initial, italic=True)] if initial else []
    for said, latin in runs:
        if len(said) > skip:
            found.append(Run(said[max(skip, 0) :], latin))
        skip -= len(said)
    return text(tuple(found), corpus.taxa[taxon].sense.suffix if sense else "")


# --- one taxon


def trait_table(found: Found, account: Account, *, wide: bool) -> Table:
    """One row a character; if `wide`, with what it is worth against each sister, and with own plants."""
    counts = ("independent" if wide else "indep.", "repeat", "silent")
    headings = [text(one) for one in ("character", "consensus", "range of opinions", *counts, "verdict")]
    if wide:
        headings += [text("against ", short) for short in _sisters(found, account)]
        headings += [text(one) for one in PLANTS] if found.asked.with_plants else []
    rows = [_trait_row(found, account, trait, wide) for trait in account.traits.traits]
    caption = f"{CONSENSUS} {WORTH} {strengths()}" if wide and account.beside else CONSENSUS
    numbers = (3, 4, 5, *((len(headings) - len(PLANTS),) if wide and found.asked.with_plants else ()))
    return Table(text(caption), tuple(headings), tuple(rows), right=numbers)


def _trait_row(found: Found, account: Account, trait: Trait, wide: bool) -> tuple[Text, ...]:
    finding = trait.finding
    count = (finding.count.independent, finding.count.repeated, finding.count.silent)
    cells = [at_stage(*trait.key), trait.consensus, trait.opinions, *map(str, count), str(finding.verdict)]
    if wide:
        cells += _worths(found, account, trait)
        cells += _plants_of(found, account, trait) if found.asked.with_plants else []
    return tuple(text(cell) for cell in cells)


def worth_table(found: Found, account: Account) -> Table:
    """What each character is worth against each sister; those of no use against any left out."""
    headings = (text("character"), *(text("against ", short) for short in _sisters(found, account)))
    told = ((trait, _worths(found, account, trait)) for trait in account.traits.traits)
    rows = [
        tuple(text(cell) for cell in (at_stage(*trait.key), *worths))
        for trait, worths in told
        if any(one != NOTHING for one in worths)
    ]
    return Table(text(f"{WORTH} {strengths()}"), headings, tuple(rows))


def plants_table(found: Found, account: Account) -> Table:
    """The range one would write from own plants, and the works it contradicts."""
    rows = [
        tuple(text(cell) for cell in (at_stage(*trait.key), *_plants_of(found, account, trait)))
        for trait in account.traits.traits
        if trait.key in account.observed
    ]
    caption = "The range that you would write from your own plants, and the works whose statements they contradict."
    corpus = found.asked.corpus
    named = dict.fromkeys(told for one in account.observed.values() for told in naming(corpus, one))
    return Table(
        text(" ".join((caption, *named))), tuple(text(one) for one in ("character", *PLANTS)), tuple(rows), right=(1,)
    )


def _sisters(found: Found, account: Account) -> list[Text]:
    short = short_texts(found.asked.corpus, (account.taxon.id, *account.beside))
    return [short[one] for one in account.beside]


def _worths(found: Found, account: Account, trait: Trait) -> list[str]:
    character = found.asked.corpus.vocabulary[trait.finding.character]
    return [worth(partings.get(trait.key), character, account.taxon.id, trait.printed) for partings in account.partings]


def _plants_of(found: Found, account: Account, trait: Trait) -> list[str]:
    seen = account.observed.get(trait.key)
    if seen is None:
        return ["0", NOTHING, NOTHING]
    works = found.asked.corpus.works
    contradicted = "; ".join(works[one.work].byline for one in seen.contradicted)
    return [str(seen.n), own_words(found, trait, seen), contradicted or NOTHING]


def own_words(found: Found, trait: Trait, seen: Observed) -> str:
    """The range written from own plants, in the unit of the authors."""
    return observed_words(trait.printed, found.asked.corpus, seen)


# --- several taxa


def comparative_table(found: Found) -> Table:
    """Characters down, taxa across, and which pair each tells apart best."""
    corpus, taxa = found.asked.corpus, [account.taxon.id for account in found.accounts]
    short, plain = short_texts(corpus, taxa), short_texts(corpus, taxa, sense=False)
    rows: list[tuple[Text, ...]] = []
    for contrast in found.contrasts:
        cells = [text(NOTHING if one is None else one.consensus) for one in contrast.traits]
        name = at_stage(contrast.character, contrast.stage)
        rows.append((text(name), *cells, _apart(corpus, contrast, plain)))
        rows += _own_row(found, contrast) if found.asked.with_plants else ()
    caption = (
        "Each cell is what at least half of the authors hold, with what others state beyond it in parentheses. What "
        f"tells taxa apart stands first. {strengths()}"
    )
    headings = (text("character"), *(short[one] for one in taxa), text("tells apart"))
    return Table(text(caption), headings, tuple(rows))


def _apart(corpus: Corpus, contrast: Contrast, short: dict[str, Text]) -> Text:
    """`separates var. longum from 25 mm on`; with more than two taxa, from which other."""
    best = contrast.best
    if best is None or best.error is None:
        return text(NOTHING)
    word, character = strength(best.error), corpus.vocabulary[contrast.character]
    if word not in USEFUL:
        return text(NOTHING)
    upper = best.a if best.lower in ("", best.b) else best.b
    other = best.b if upper == best.a else best.a
    printed = next(trait.printed for trait in contrast.traits if trait is not None)
    where = side(best, character, upper, printed)
    if len(short) == 2:
        return text(word, *((": ", short[upper], f" {where}") if where else ()))
    return text(f"{word}: ", short[upper], f" {where}, against " if where else " and ", short[other])


def _own_row(found: Found, contrast: Contrast) -> Iterator[tuple[Text, ...]]:
    key = contrast.character, contrast.stage
    seen = [account.observed.get(key) for account in found.accounts]
    if not any(seen):
        return
    cells = [
        NOTHING if one is None or trait is None else f"{own_words(found, trait, one)}; n {one.n}"
        for one, trait in zip(seen, contrast.traits, strict=True)
    ]
    works = found.asked.corpus.works
    against = dict.fromkeys(works[cover.work].byline for one in seen if one for cover in one.contradicted)
    told = f"contradict {'; '.join(against)}" if against else NOTHING
    yield tuple(text(cell) for cell in (f"{at_stage(contrast.character, contrast.stage)}: {OWN}", *cells, told))


# --- statements


def csv_table(found: Found, *, every_statement: bool) -> Table:
    """The one table of a CSV file: every statement, or taxa side by side, or the traits of one taxon."""
    if every_statement:
        return statements_table(found)
    return comparative_table(found) if found.contrasts else trait_table(found, found.accounts[0], wide=True)


def statement_table(found: Found, account: Account, trait: Trait) -> Table:
    """What each author says of one character, own plants in the last row, and how many of these each range holds."""
    finding, seen = trait.finding, account.observed.get(trait.key)
    rows = [_statement(found, finding, item) for item in finding.evidence]
    if seen is not None:
        covers = {cover.work: cover_words(cover) for cover in seen.covers}
        told = (covers.get(item.work, "") for item in finding.evidence)
        rows = [(*row, holds) for row, holds in zip(rows, told, strict=True)]
        rows.append(("", OWN, "", counted(seen.n, "plant"), own_words(found, trait, seen), "", ""))
    headings = ("year", "author", "page", "words", "read as", "repeats", *(("holds plants",) if seen else ()))
    if not any(item.repeats for item in finding.evidence):
        headings, rows = _without(5, headings), [_without(5, row) for row in rows]
    return _plain((), headings, rows)


def _without(place: int, row: tuple[str, ...]) -> tuple[str, ...]:
    return row[:place] + row[place + 1 :]


def statements_table(found: Found) -> Table:
    """Every statement of every taxon, a row each."""
    corpus = found.asked.corpus
    headings = ("taxon", "character", "stage", "year", "author", "page", "words", "read as", "repeats", "work")
    rows: list[Sequence[str]] = []
    for account in found.accounts:
        name = words(taxon_text(corpus, account.taxon.id))
        for trait in account.traits.traits:
            rows += (
                (name, *trait.key, *_statement(found, trait.finding, item), item.work)
                for item in trait.finding.evidence
            )
            seen = account.observed.get(trait.key)
            if seen is not None:
                rows.append((name, *trait.key, "", OWN, "", f"n = {seen.n}", own_words(found, trait, seen), "", ""))
    return _plain((), headings, rows)


def _statement(found: Found, finding: Finding, item: Evidence) -> tuple[str, ...]:
    corpus = found.asked.corpus
    character, unit = corpus.vocabulary[finding.character], found.asked.unit
    read = format_value(item.value, character)
    other = converted(item.value, character, unit) if unit else ""
    read = f"{read} = {other}" if other else read
    repeats = corpus.works[item.repeats].byline if item.repeats else ""
    return str(item.year), " & ".join(corpus.works[item.work].authors), item.page, item.verbatim, read, repeats


def _plain(caption: Text, headings: Iterable[str], rows: Iterable[Sequence[str]]) -> Table:
    return Table(
        caption, tuple(text(one) for one in headings), tuple(tuple(text(cell) for cell in row) for row in rows)
    )
