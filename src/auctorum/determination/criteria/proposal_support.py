"""The supporting traits of a proposed criterion: their values in plain notation, weighted by what they tell apart."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal
from statistics import fmean

from auctorum.characters.read import read_statement
from auctorum.characters.show import format_range
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.findings import Finding
from auctorum.circumscription.separation import Parting
from auctorum.circumscription.separation_words import FAILS, strength
from auctorum.circumscription.summary import NOTHING, summary
from auctorum.corpus.criteria import Limit, trait_of
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import UNSTATED
from auctorum.problems import AuctorumError
from auctorum.records.schema import Supporting

_LEAST = Decimal("0.1")  # weights are told to a tenth of the best; what comes to less is left out


def supporting(
    corpus: Corpus, findings: Sequence[Finding], limit: Limit, partings: Mapping[str, Sequence[Parting]]
) -> tuple[Supporting, ...]:
    """Traits that help to tell the taxon from the sisters of `partings`, the weightiest first.

    A weight is 1 less twice the mean error, which is nothing for a guess, scaled so that the best has 1. One author
    more, by whom the trait tells nothing, is reckoned in, so that what few state weighs less. Left out are traits
    that part nothing, and those that repeat the decisive measure at another stage or in a ratio.
    """
    worths: dict[tuple[str, str], float] = {}
    for one in findings:
        if one.stage != UNSTATED and not _same_again(one.character, limit, corpus):
            worths[one.character, one.stage] = _worth(one.character, one.stage, partings)
    best = max(worths.values(), default=0.0)
    if not best:
        return ()
    found = []
    for finding in findings:
        worth = worths.get((finding.character, finding.stage), 0.0)
        weight = Decimal(str(worth / best)).quantize(_LEAST, ROUND_HALF_UP)
        value = spoken(finding, corpus.vocabulary[finding.character]) if weight >= _LEAST else ""
        if value:
            found.append(Supporting(character=finding.character, value=value, stage=finding.stage, weight=weight))
    return tuple(sorted(found, key=lambda one: -one.weight))


def spoken(finding: Finding, character: Character) -> str:
    """What most authors say of the taxon, in plain notation that reads back; "" where nothing does.

    Numbers with what any author says as extremes: `(10–)14–18(–20) mm`.
    """
    told = summary(finding, character)
    for words in (_with_extremes(told.majority, told.envelope, character), told.majority, told.envelope):
        if words not in ("", NOTHING) and _reads(words, finding, character):
            return words
    return ""


def _same_again(name: str, limit: Limit, corpus: Corpus) -> bool:
    vocabulary = corpus.vocabulary
    return name == limit.character or limit.character in vocabulary[name].of or name in vocabulary[limit.character].of


def _worth(character: str, stage: str, partings: Mapping[str, Sequence[Parting]]) -> float:
    """The mean over the sisters of 1 less twice the error; nothing for one that the trait does not tell apart."""
    return fmean(
        next((_of(one) for one in several if (one.character, one.stage) == (character, stage)), 0.0)
        for several in partings.values()
    )


def _of(one: Parting) -> float:
    if one.error is None or strength(one.error) == FAILS:
        return 0.0
    authors = len(one.support) + len(one.against)
    return max(0.0, 1 - 2 * (authors * one.error + 0.5) / (authors + 1))


def _with_extremes(majority: str, envelope: str, character: Character) -> str:
    if not character.kind.is_numeric or character.kind is Kind.ANGLE or NOTHING in (majority, envelope):
        return ""
    inner, outer = _range(majority, character), _range(envelope, character)
    if inner is None or outer is None or inner.unit != outer.unit:
        return ""
    least = outer.low if outer.low is not None and inner.low is not None and outer.low < inner.low else None
    most = outer.high if outer.high is not None and inner.high is not None and outer.high > inner.high else None
    return format_range(replace(inner, least=least, most=most))


def _range(words: str, character: Character) -> Range | None:
    try:
        readings = read_statement(words, character)
    except AuctorumError:
        return None
    value = readings[0].value
    return value if len(readings) == 1 and isinstance(value, Range) else None


def _reads(words: str, finding: Finding, character: Character) -> bool:
    try:
        trait_of(Supporting(character=character.name, value=words, stage=finding.stage), Vocabulary((character,)))
    except AuctorumError:
        return False
    return True
