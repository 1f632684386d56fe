"""Pages that set a taxon beside its sisters: what tells them apart, character by character, and what does not."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from auctorum.characters.vocabulary import Character
from auctorum.circumscription.findings import Finding
from auctorum.circumscription.separation import Parting, Separation
from auctorum.circumscription.separation_names import epithets
from auctorum.circumscription.separation_words import HINTS, USEFUL, pair_words, percent, strength, threshold, upper
from auctorum.site.answers import NEAREST, Answers
from auctorum.site.more_drawings import profile_figure
from auctorum.site.page_parts import ApartRow, Figure, SisterBlock
from auctorum.site.pages import ApartPage
from auctorum.site.paths import slug
from auctorum.site.words import Rich, Run, plain

MOST_PICTURES = 1
# What stands behind the abbreviation of a rank, or an abbreviated genus with its species.
_SHORT = re.compile(r"(?:(?<=\bvar\. )|(?<=\bsubsp\. )|(?<=\bf\. ))[a-z-]+|\b[A-Z]\. [a-z-]{3,}")
Findings = Mapping[tuple[str, str], Finding]


def apart_page(answers: Answers, taxon: str) -> ApartPage:
    """The taxon beside each of its sisters of which anything is stated."""
    return ApartPage(
        answers.taxon(taxon, link=True),
        tuple(_block(answers, taxon, sister, found) for sister, found in answers.apart(taxon) if found.compares),
    )


def apart_sentences(answers: Answers, taxon: str) -> tuple[tuple[Rich, str, Rich], ...]:
    """For the nearest sisters: the sister, the address of all that is known of the two, and what tells them apart."""
    page = answers.apart_paths.get(taxon, "")
    told = []
    for sister, found in answers.apart(taxon, NEAREST):
        if found.compares:
            words = _set(pair_words(answers.corpus, found, taxon, sister))
            told.append((answers.taxon(sister), f"{page}#{_anchor(sister)}", words))
    return tuple(told)


def _set(text: str) -> Rich:
    """The sentences with the Latin of short names (`var. longum`, `C. album`) in italics."""
    runs: list[Run] = []
    done = 0
    for found in _SHORT.finditer(text):
        runs += [Run(text[done : found.start()]), Run(found[0], italic=True)]
        done = found.end()
    return (*runs, Run(text[done:]))


def _anchor(sister: str) -> str:
    return slug(f"from {sister}")


def _block(answers: Answers, taxon: str, sister: str, found: Separation) -> SisterBlock:
    names = epithets(answers.corpus, (taxon, sister))
    known = [one for one in found.partings if one.error is not None]
    silent = [one for one in found.partings if one.error is None]
    return SisterBlock(
        anchor=_anchor(sister),
        sister=answers.taxon(sister),
        heads=(_latin(names[taxon]), _latin(names[sister])),
        sentences=_set(pair_words(answers.corpus, found, taxon, sister)),
        rows=tuple(_row(answers, one, names) for one in known),
        unknown=tuple((*answers.character(one.character), *plain(one.stage and f" ({one.stage})")) for one in silent),
        figures=tuple(_figures(answers, taxon, sister, known)),
    )


def _row(answers: Answers, one: Parting, names: Mapping[str, str]) -> ApartRow:
    character = answers.corpus.vocabulary[one.character]
    both = len(one.support) + len(one.against)
    word = strength(one.error or 0.0)
    return ApartRow(
        character=answers.character(one.character),
        stage=one.stage,
        says=one.says,
        overlap=percent(one.overlap or 0.0),
        threshold=_threshold(one, character, names) if word in (*USEFUL, HINTS) else (),
        error=percent(one.error or 0.0),
        works=f"{len(one.support)} of {both}" if both else "",
        support=answers.works(one.support),
        strength=word,
    )


def _threshold(one: Parting, character: Character, names: Mapping[str, str]) -> Rich:
    rule = threshold(one, character)
    return (*_latin(names[upper(one)]), *plain(f" {rule}")) if rule else ()


def _latin(name: str) -> Rich:
    """An epithet alone in italics; of a longer name the Latin."""
    return (Run(name, italic=True),) if name.isalpha() and name.islower() else _set(name)


def _figures(answers: Answers, taxon: str, sister: str, known: Iterable[Parting]) -> Iterable[Figure]:
    """The profiles of the measured characters that part the two best."""
    first, second = (_by_character(answers, one) for one in (taxon, sister))
    drawn = 0
    for one in known:
        told = (one.character, one.stage)
        if drawn == MOST_PICTURES or one.cut is None or strength(one.error or 0.0) not in (*USEFUL, HINTS):
            continue
        own, other = answers.taxon(taxon, link=False), answers.taxon(sister, link=False)
        key = slug(f"p {sister} {one.character} {one.stage}")
        figure = profile_figure(answers, first[told], own, key, (other, second[told], one))
        if figure is not None:
            drawn += 1
            yield figure


def _by_character(answers: Answers, taxon: str) -> Findings:
    return {(one.character, one.stage): one for one in answers.diagnosis(taxon).findings}
