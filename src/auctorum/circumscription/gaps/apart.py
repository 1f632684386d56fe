"""How well characters tell taxa apart, from what is stated of them: each pair and each finding is made ready once."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import combinations

from auctorum.circumscription.density import overlap_of_states
from auctorum.circumscription.findings import Finding, RangeAgreement, StateAgreement
from auctorum.circumscription.gaps.rank import OF_HABITAT, PARTS_WELL, UNKNOWN_VALUE, value_of
from auctorum.circumscription.separation import Parting, separation_known
from auctorum.circumscription.separation_known import Known, knowledge
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.model import Corpus

CLOSEST = 6  # sisters among which the value of a character is looked for
PERFECT = 0.99  # a value that no other can better by much

Key = tuple[str, str]  # character and stage


class Apart:
    """The taxa of a corpus beside one another; `told` gives the findings on a taxon, `sisters` those beside it."""

    def __init__(
        self, corpus: Corpus, told: Callable[[str], Iterable[Finding]], sisters: Callable[[str], Sequence[str]]
    ) -> None:
        self._corpus, self._told, self._sisters = corpus, told, sisters
        self._findings: dict[str, Mapping[Key, Finding]] = {}
        self._knowledge: dict[tuple[str, Key], Known] = {}
        self._parted: dict[tuple[str, ...], float] = {}
        self._values: dict[tuple[str, str], float] = {}

    def is_habitat(self, character: str) -> bool:
        """Whether a character is of the place where a plant grows, and tells nothing of a plant in the hand."""
        return of_habitat(self._corpus.vocabulary[character])

    def partings(self, one: str, other: str) -> tuple[Parting, ...]:
        """What parts two taxa, best first, all characters of plants and then where they grow."""
        found = {taxon: {key: self._known(taxon, key) for key in self._stated(taxon)} for taxon in (one, other)}
        return separation_known(self._corpus, found).of(one, other)

    def parts_well(self, one: str, other: str) -> bool:
        """Whether some character of the plants themselves parts the two taxa: the most promising are tried first."""
        first, second = self._stated(one), self._stated(other)
        plants = (key for key in first if key in second and not self.is_habitat(key[0]))
        promising = sorted(plants, key=lambda key: _in_common(first[key], second[key]))
        return any(self._value(one, other, key) >= value_of(PARTS_WELL) for key in promising)

    def value(self, taxon: str, character: str) -> float:
        """How well the character parts the taxon from that of its closest sisters from which it parts it best; 0 to 1.

        A middling figure where nobody can tell.
        """
        if (taxon, character) not in self._values:
            pairs = ((taxon, sister) for sister in self._sisters(taxon)[:CLOSEST])
            found = self._best(pairs, character)
            self._values[taxon, character] = self.unknown_value(character) if found is None else found[0]
        return self._values[taxon, character]

    def unknown_value(self, character: str) -> float:
        """The value of a character of which nobody can tell yet whether it parts anything."""
        return UNKNOWN_VALUE * self.most(character)

    def most(self, character: str) -> float:
        """The value of the character where it never errs."""
        return OF_HABITAT if self.is_habitat(character) else 1.0

    def value_among(self, taxa: Sequence[str], character: str) -> tuple[float, tuple[str, str]] | None:
        """How well the character parts some two of the first of these taxa, and which; None where nobody can tell."""
        return self._best(combinations(taxa[:CLOSEST], 2), character)

    def _best(self, pairs: Iterable[tuple[str, str]], character: str) -> tuple[float, tuple[str, str]] | None:
        """The best value in the pairs, and the pair; one as good as perfect ends the search."""
        best = None
        perfect = PERFECT * self.most(character)
        for one, other in pairs:
            for key in self._stated(one):
                if key[0] == character and key in self._stated(other):
                    value = self._value(one, other, key)
                    if best is None or value > best[0]:
                        best = value, (one, other)
                    if value >= perfect:
                        return best
        return best

    def _value(self, one: str, other: str, key: Key) -> float:
        """The value of a character and stage between two taxa; 0 where what is said of it cannot be compared."""
        pair = (*sorted((one, other)), *key)
        if pair not in self._parted:
            found = separation_known(self._corpus, {taxon: {key: self._known(taxon, key)} for taxon in (one, other)})
            error = found.partings[0].error
            self._parted[pair] = 0.0 if error is None else value_of(error) * self.most(key[0])
        return self._parted[pair]

    def _known(self, taxon: str, key: Key) -> Known:
        if (taxon, key) not in self._knowledge:
            self._knowledge[taxon, key] = knowledge([self._stated(taxon)[key]], self._corpus.vocabulary)[key]
        return self._knowledge[taxon, key]

    def _stated(self, taxon: str) -> Mapping[Key, Finding]:
        if taxon not in self._findings:
            self._findings[taxon] = {(one.character, one.stage): one for one in self._told(taxon)}
        return self._findings[taxon]


def _in_common(one: Finding, other: Finding) -> float:
    """How much two findings seem to share, 0 to 1: by their envelopes, or the weights of their states."""
    first, second = one.agreement, other.agreement
    if isinstance(first, StateAgreement) and isinstance(second, StateAgreement):
        return overlap_of_states(dict(first.weights), dict(second.weights))
    if not isinstance(first, RangeAgreement) or not isinstance(second, RangeAgreement):
        return 1.0
    ends = (first.envelope.low, first.envelope.high, second.envelope.low, second.envelope.high)
    if any(end is None for end in ends):
        return 1.0
    a, b, c, d = (float(end) for end in ends if end is not None)
    return max(0.0, min(b, d) - max(a, c)) / (max(b, d) - min(a, c) or 1.0)
