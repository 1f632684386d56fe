"""The merged description, in the telegraphic style of the trade, with source marks [1–3, 5] behind each clause.

A numeric clause gives the majority range, with what anybody states beyond it in parentheses. Where authors
conflict, both sides are given with their marks. Characters of one structure share a sentence; habitat comes last.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from itertools import groupby

from auctorum.characters.show import format_number
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.findings import Finding, RangeAgreement, Side, Span, StateAgreement, Verdict
from auctorum.circumscription.summary import majority_states, span_words, state_words

HABITAT = "habitat"
DIGITS = 2  # significant digits of a measure in running text
_AFTER = {"length": "long", "width": "wide", "height": "high", "thickness": "thick", "diameter": "across"}
_STAGE = {"young": "when young", "mature": "at maturity", "old": "in age", "fruit": "in fruit", "flower": "in flower"}
_PLURAL = {"tooth": "teeth", "foot": "feet", "calyx": "calyces", "leaf": "leaves", "stamen": "stamens"}
# What a person writes a length in, from this many mm on.
_LARGER = ((Fraction(1000), Fraction(1000), "m"), (Fraction(100), Fraction(10), "cm"))


def merged_text(findings: Sequence[Finding], vocabulary: Vocabulary, sources: Sequence[str]) -> str:
    """The description; empty where nobody says anything. `sources` are the works that the marks number."""
    marks = {work: number for number, work in enumerate(sources, 1)}
    sentences: dict[str, list[str]] = {}
    for name, of_character in groupby(findings, key=lambda finding: finding.character):
        told = [finding for finding in of_character if finding.agreement is not None]
        if told:
            character = vocabulary[name]
            clause = "; ".join(_clause(finding, character, marks) for finding in told)
            sentences.setdefault(_subject(character), []).append(clause)
    ordered = sorted(sentences, key=lambda subject: subject == HABITAT)
    return " ".join(_sentence(subject, sentences[subject]) for subject in ordered)


def _subject(character: Character) -> str:
    """What the sentence is about: several for what is counted, present or absent."""
    if character.kind in (Kind.COUNT, Kind.PRESENCE):
        return plural(character.structure)
    return character.structure


def plural(structure: str) -> str:
    """The plural of a structure.

    >>> plural("leaf tooth"), plural("bracteole")
    ('leaf teeth', 'bracteoles')
    """
    *before, last = structure.split(" ")
    return " ".join([*before, _PLURAL.get(last, f"{last}s")])


def _sentence(subject: str, clauses: Sequence[str]) -> str:
    begun = "Found" if subject == HABITAT else f"{subject[:1].upper()}{subject[1:]}"
    return f"{begun} {'; '.join(clauses)}."


def _clause(finding: Finding, character: Character, marks: Mapping[str, int]) -> str:
    stage = _STAGE.get(finding.stage, finding.stage)
    said = f"{_value(finding, character)} {_marked((item.work for item in finding.evidence), marks)}"
    if finding.verdict is Verdict.CONFLICTING and finding.sides:
        against = " against ".join(_side(side, marks) for side in finding.sides)
        said = f"{said}, with {against}"
    return f"{stage} {said}" if stage else said


def _side(side: Side, marks: Mapping[str, int]) -> str:
    return f"{side.says} {_marked(side.works, marks)}"


def _marked(works: Iterable[str], marks: Mapping[str, int]) -> str:
    """Numbers of the works, three or more in a row as a span.

    >>> _marked("abce", {"a": 1, "b": 2, "c": 3, "e": 5})
    '[1–3, 5]'
    """
    numbers = sorted({marks[work] for work in works})
    runs: list[list[int]] = []
    for number in numbers:
        if runs and runs[-1][-1] == number - 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    said = [f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs]
    return f"[{', '.join(said)}]"


def _value(finding: Finding, character: Character) -> str:
    agreed = finding.agreement
    if isinstance(agreed, RangeAgreement):
        return _worded(_range_words(agreed, character), character)
    assert isinstance(agreed, StateAgreement)
    usual = majority_states(finding, character) or agreed.envelope
    rest = [state for state in agreed.envelope if state not in usual]
    said = _worded(state_words(usual, character), character)
    return said + (f" ({state_words(rest, character)})" if rest else "")


def _range_words(agreed: RangeAgreement, character: Character) -> str:
    """`(18–)22–42(–60) mm`: the majority range, and beyond it what anybody states."""
    whole = agreed.envelope
    typical = Span(agreed.majority[0].low, agreed.majority[-1].high) if agreed.majority else whole
    if character.kind is Kind.ANGLE:
        return span_words(typical, character)
    by, unit = _unit(typical, character)
    low, high = _figure(typical.low, by), _figure(typical.high, by)
    core = high if low == high else "–".join(part for part in (low, high) if part)
    if not low or not high:
        core = f"up to {high}" if high else f"{low}+"
    least, most = _figure(whole.low, by), _figure(whole.high, by)
    before = f"({least}–)" if _beyond(whole.low, typical.low) and least != low else ""
    after = f"(–{most})" if _beyond(typical.high, whole.high) and most != high else ""
    return f"{before}{core}{after}{f' {unit}' if unit else ''}"


def _unit(typical: Span, character: Character) -> tuple[Fraction, str]:
    """Divisor and unit in which a person would write the range."""
    top = typical.high if typical.high is not None else typical.low
    if character.unit == "mm" and top is not None:
        for least, by, unit in _LARGER:
            if top >= least:
                return by, unit
    return Fraction(1), character.unit


def _figure(value: Fraction | None, by: Fraction) -> str:
    return "" if value is None else format_number(value / by, DIGITS)


def _beyond(lower: Fraction | None, higher: Fraction | None) -> bool:
    return lower is not None and higher is not None and lower < higher


def _worded(said: str, character: Character) -> str:
    """The value with the word of its property, as a description has it."""
    if character.structure == HABITAT:
        return _habitat(said, character)
    if character.kind is Kind.MEASURE and character.property in _AFTER:
        return f"{said} {_AFTER[character.property]}"
    if character.kind is Kind.RATIO:
        return f"{character.name} ratio {said}"
    return said


def _habitat(said: str, character: Character) -> str:
    before = {Kind.MEASURE: "at ", Kind.ANGLE: "facing "}.get(character.kind, "")
    return f"{before or ('on ' if character.property == 'substrate' else '')}{said}"
