"""What is known of each character of one taxon, made ready once to be set beside what is known of others."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.circumscription.density import Density, densities, overlap, overlap_of_states
from auctorum.circumscription.findings import Finding, RangeAgreement, Span, StateAgreement
from auctorum.circumscription.summary import NOTHING, summary
from auctorum.circumscription.voices import Voice, voices


@dataclass(frozen=True, slots=True)
class Known:
    """One character at one stage: how the plants are spread over it, who says so, and what most say, in print.

    `density` is that of numbers, None for states; `weights` are those of states, empty for numbers. `envelope` is the
    hull of numbers, extremes included. `own` are the works that repeat no other, by date. `says` is what at least half
    of the works say; what any says where no half agrees.
    """

    density: Density | None
    weights: Mapping[str, Fraction]
    envelope: Span | None
    own: Mapping[str, Voice]
    says: str


Knowledge = Mapping[tuple[str, str], Known]  # of one taxon by character and stage, where anybody says anything


def knowledge(findings: Iterable[Finding], vocabulary: Vocabulary) -> Knowledge:
    """What is known of a taxon, in the order of its findings."""
    return {
        (one.character, one.stage): _known(one, vocabulary[one.character])
        for one in findings
        if one.agreement is not None
    }


def shared_part(one: Known, other: Known) -> float | None:
    """The overlap coefficient, 0 (apart) to 1 (alike); None where no bound of a number is stated."""
    if one.density is not None and other.density is not None:
        return overlap(one.density, other.density)
    if not one.weights or not other.weights:
        return None
    return overlap_of_states(one.weights, other.weights)


def _known(finding: Finding, character: Character) -> Known:
    agreed, line = finding.agreement, summary(finding, character)
    return Known(
        density=densities([finding], character)[0] if character.kind.is_numeric else None,
        weights=dict(agreed.weights) if isinstance(agreed, StateAgreement) else {},
        envelope=agreed.envelope if isinstance(agreed, RangeAgreement) else None,
        own={voice.work: voice for voice in voices(finding.evidence, character) if not voice.repeats},
        says=line.envelope if line.majority == NOTHING else line.majority,
    )
