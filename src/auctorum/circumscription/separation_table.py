"""Several taxa side by side: a row for each character with what is known of each taxon and how well each pair parts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from statistics import fmean

from auctorum.characters.vocabulary import Vocabulary
from auctorum.circumscription.separation import Parting, Separation
from auctorum.circumscription.summary import NOTHING


@dataclass(frozen=True, slots=True)
class Row:
    """One character at one stage: `says` by taxon, a dash for silence; `errors` by pair, None where one is silent."""

    character: str
    stage: str
    says: tuple[str, ...]
    errors: tuple[float | None, ...]

    @property
    def mean(self) -> float | None:
        """The mean error over the pairs that can be judged; None where none can."""
        known = [error for error in self.errors if error is not None]
        return fmean(known) if known else None


def pairs(found: Separation) -> tuple[tuple[str, str], ...]:
    """The pairs of taxa, in the order of the partings and of the errors of a row."""
    return tuple(combinations(found.taxa, 2))


def rows(found: Separation, vocabulary: Vocabulary) -> tuple[Row, ...]:
    """A row for each character and stage; the smallest mean error first, equals in the order of the vocabulary."""
    of_row: dict[tuple[str, str], list[Parting]] = {}
    for one in found.partings:
        of_row.setdefault((one.character, one.stage), []).append(one)
    made = [_row(*told, several, found) for told, several in of_row.items()]
    order = {name: number for number, name in enumerate(vocabulary)}
    made.sort(key=lambda row: (row.mean is None, round(row.mean or 0.0, 9), order[row.character], row.stage))
    return tuple(made)


def _row(character: str, stage: str, several: Sequence[Parting], found: Separation) -> Row:
    says = {taxon: words for one in several for taxon, words in zip((one.a, one.b), one.says, strict=True)}
    errors = {(one.a, one.b): one.error for one in several}
    return Row(
        character,
        stage,
        tuple(says.get(taxon, NOTHING) for taxon in found.taxa),
        tuple(errors.get(pair) for pair in pairs(found)),
    )
