"""Judgements by a working criterion in sentences for people."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.show import format_number, format_span
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.criterion_words import who_set
from auctorum.circumscription.phrases import at_stage, capital, listed
from auctorum.circumscription.wording import stage_words
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import stage_that_counts
from auctorum.determination.criteria.criterion import Judgement, Support, Verdict, chance_of_fitting
from auctorum.records.schema import Criterion

_AGREES, _HARDLY = 0.995, 0.005  # agreement that is said to be whole, or none


def title_of(criterion: Criterion) -> str:
    """`“Long-spurred from 25 mm” (M. Sallow 2024)`; the title alone where it has neither author nor date."""
    by = who_set(criterion)
    return f"“{criterion.title}”" + (f" ({by})" if by else "")


def sentences(corpus: Corpus, criterion: Criterion, judged: Judgement) -> tuple[str, ...]:
    """The verdict with its figures, what supports it, and a conflict of the two, each in a sentence."""
    character = corpus.vocabulary[criterion.decisive.character]
    return (
        _decision(criterion, judged, character),
        *_supporting(judged),
        *([conflict_words(criterion, judged)] if judged.conflict else []),
    )


def words(corpus: Corpus, criterion: Criterion, judged: Judgement) -> str:
    """The sentences in a paragraph."""
    return " ".join(sentences(corpus, criterion, judged))


def conflict_words(criterion: Criterion, judged: Judgement) -> str:
    """What speaks against the verdict, and that it stands all the same."""
    share = f"{(judged.share or 0) * 100:.0f} %"
    if judged.verdict is Verdict.FITS:
        against = f"only {share} of the weight of the supporting traits agrees"
    else:
        against = f"{share} of the weight of the supporting traits speaks for {criterion.taxon}"
    return f"Conflict: {against}; {criterion.decisive.character} decides all the same. Look at the plant again."


def _decision(criterion: Criterion, judged: Judgement, character: Character) -> str:
    title = title_of(criterion)
    if judged.verdict is Verdict.INSUFFICIENT:
        stage = stage_words(stage_that_counts(criterion.decisive.stage, character))
        proves = f", which proves nothing {stage}" if judged.why.endswith(" only") else ""
        return f"Not judged by {title}: {character.name} was {judged.why}{proves}."
    said = f"{_short(character)} {judged.observed}"
    limit = judged.threshold.split(" ", 2)[-1]
    away = _away(judged.margin or Fraction(0), character, at_least=bool(criterion.decisive.at_least))
    if judged.verdict is Verdict.BORDERLINE:
        return f"Borderline by {title}: {said}, {_within(judged, character)} the limit of {limit}{_chance(judged)}."
    lead = "Fits" if judged.verdict is Verdict.FITS else "Does not fit"
    named = f" It is then {judged.name}." if judged.verdict is Verdict.DOES_NOT_FIT and judged.name else ""
    return f"{lead} {title}: {said}, {away} the limit of {limit}.{named}"


def _short(character: Character) -> str:
    """`spur` before a length, else the whole name."""
    return character.name.removesuffix(" length")


def _away(margin: Fraction, character: Character, *, at_least: bool) -> str:
    """`6 mm over`, `just at`; of states `on the side of` or `short of` what fits."""
    if character.kind is Kind.ORDERED:
        return "within" if margin > 0 else "beyond"
    if not margin:
        return "just at"
    far = format_span(abs(margin), abs(margin), character.unit)
    return f"{far} {'over' if (margin > 0) is at_least else 'under'}"


def _within(judged: Judgement, character: Character) -> str:
    if character.kind is Kind.ORDERED:
        return "on both sides of"
    return f"within the error of measuring (±{format_number(judged.error)}{_unit(character)}) of"


def _unit(character: Character) -> str:
    return format_span(Fraction(0), Fraction(0), character.unit).removeprefix("0")


def _chance(judged: Judgement) -> str:
    """The chance that it fits, to a tenth: the error is hardly known better."""
    chance = chance_of_fitting(judged)
    if chance is None:
        return ""
    tenths = round(Decimal(chance) * 10)
    return f"; it fits in about {tenths} cases of 10" if 0 < tenths < 10 else ""


def _supporting(judged: Judgement) -> Iterator[str]:
    heard = [one for one in judged.supports if one.agrees is not None]
    if heard:
        yield f"Supporting: {'; '.join(map(_support, heard))}."
    if unseen := [at_stage(one.character, one.stage) for one in judged.supports if one.agrees is None]:
        yield f"{capital(listed(unseen))} {'was' if len(unseen) == 1 else 'were'} not observed."


def _support(one: Support) -> str:
    """`elevation 270–330 m agrees`, `spur colour green does not (cream to ivory)`."""
    said = f"{one.character} {one.observed}"
    agrees = one.agrees or 0.0
    if agrees >= _AGREES:
        return f"{said} agrees"
    if agrees <= _HARDLY:
        return f"{said} does not ({one.stated})"
    return f"{said} agrees in part ({agrees * 100:.0f} %; {one.stated})"
