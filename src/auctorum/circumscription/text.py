"""The merged description in the telegraphic style of the trade, with source marks [1–3,5] behind each claim.

A number is given as the range that at least half of the works hold, with what others state beyond it in
parentheses. A bound that one work alone sets far out is told by itself, as is a work that is apart from the rest.
Characters of one structure share a sentence; so do the parts of it that follow (leaf, leaf apex, leaf tooth).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise

from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.claims import number_claim, state_claim
from auctorum.circumscription.findings import Finding, RangeAgreement
from auctorum.circumscription.phrases import capital
from auctorum.circumscription.wording import MATURE, of_habitat, plural, stage_words
from auctorum.corpus.readings import UNSTATED

HABITAT_SENTENCE = "habitat"


@dataclass(frozen=True, slots=True)
class Clause:
    """What is said of one character: its structure, whether that stands in the plural, and the words.

    `named`: the words tell themselves what they are about, as those of a ratio do.
    """

    structure: str
    several: bool
    words: str
    named: bool


def merged_text(findings: Sequence[Finding], vocabulary: Vocabulary, sources: Sequence[str]) -> str:
    """The description; empty where nobody says anything. `sources` are the works that the marks number from 1."""
    marks = {work: number for number, work in enumerate(sources, 1)}
    clauses = []
    for name, several in groupby(findings, key=lambda finding: finding.character):
        told = [finding for finding in several if finding.agreement is not None]
        if told:
            clauses.append(_clause(told, vocabulary[name], marks))
    return " ".join(_sentence(group) for group in _by_sentence(clauses))


def _clause(told: Sequence[Finding], character: Character, marks: Mapping[str, int]) -> Clause:
    """One character; stages part its values, but for the mature plant alone, which descriptions mean."""
    claims = [_claim(finding, character, marks) for finding in told]
    if [finding.stage for finding in told] in ([""], [MATURE], [UNSTATED]):
        words = claims[0]
    else:
        parts = [
            f"{stage_words(finding.stage)} {claim}" if finding.stage else claim
            for finding, claim in zip(told, claims, strict=True)
        ]
        words = ("; " if any(_parted(part) for part in parts) else ", ").join(parts)
    structure = HABITAT_SENTENCE if of_habitat(character) else character.structure
    return Clause(structure, character.kind in (Kind.COUNT, Kind.PRESENCE), words, character.kind is Kind.RATIO)


def _claim(finding: Finding, character: Character, marks: Mapping[str, int]) -> str:
    """The value of a finding with its sources."""
    said = (number_claim if isinstance(finding.agreement, RangeAgreement) else state_claim)(finding, character)
    return "".join(f"{words} {marked(works, marks)}" for words, works in said)


def _by_sentence(clauses: Iterable[Clause]) -> list[list[Clause]]:
    """Clauses of one structure together, where it is first named; its parts in the same sentence, after it."""
    of_structure: dict[str, list[Clause]] = {}
    for clause in clauses:
        of_structure.setdefault(clause.structure, []).append(clause)
    sentences: dict[str, list[Clause]] = {}
    for structure, several in of_structure.items():
        whole = next((head for head in sentences if structure.startswith(f"{head} ")), structure)
        sentences.setdefault(whole, []).extend(several)
    return list(sentences.values())


def _sentence(clauses: Sequence[Clause]) -> str:
    head = clauses[0].structure
    said = ""
    for structure, group in groupby(clauses, key=lambda clause: clause.structure):
        several = sorted(group, key=lambda clause: clause.named)
        own = several[0].words
        for earlier, later in pairwise(several):
            parted = later.named or _parted(earlier.words) or _parted(later.words)
            own += ("; " if parted else ", ") + later.words
        subject = "" if several[0].named else _subject(structure, head, any(clause.several for clause in several))
        said += f"{'; ' if said else ''}{subject}{own}"
    return f"{capital(said)}."


def _subject(structure: str, head: str, several: bool) -> str:
    if structure == HABITAT_SENTENCE:
        return ""
    named = structure if structure == head else structure.removeprefix(f"{head} ")
    return f"{plural(named) if several else named} "


def _parted(words: str) -> bool:
    """Whether a clause has parts of its own, so that a comma after it would mislead."""
    return ", " in words or "; " in words


def marked(works: Iterable[str], marks: Mapping[str, int]) -> str:
    """Numbers of the works, three or more in a row as a span.

    >>> marked("abce", {"a": 1, "b": 2, "c": 3, "e": 5})
    '[1–3,5]'
    """
    runs: list[list[int]] = []
    for number in sorted({marks[work] for work in works}):
        if runs and runs[-1][-1] == number - 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    said = [f"{run[0]}–{run[-1]}" if len(run) > 2 else ",".join(map(str, run)) for run in runs]
    return f"[{','.join(said)}]"
