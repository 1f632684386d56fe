"""A key to chosen taxa, from what their authors say of them."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.circumscription.diagnosis import findings_of
from auctorum.circumscription.findings import Finding
from auctorum.circumscription.key.grow import Node, downwards, grown
from auctorum.circumscription.key.leads import Pair, Telling, further_pairs, main_pair
from auctorum.circumscription.key.model import Couplet, Expected, Key, Lead, Threshold, Want
from auctorum.circumscription.key.questions import Held
from auctorum.circumscription.key.told import Told, can_be_asked, told_of
from auctorum.circumscription.key.wanting import want
from auctorum.corpus.model import Corpus
from auctorum.problems import AuctorumError


class TooFewTaxa(AuctorumError, ValueError):
    """A key to fewer than two taxa."""

    remedy = "name two taxa or more"

    def __init__(self, given: int) -> None:
        super().__init__(given)
        self.given = given

    def __str__(self) -> str:
        return f"a key parts two taxa at least, and {self.given or 'none'} {'is' if self.given < 2 else 'are'} given"


def key(
    corpus: Corpus, taxa: Sequence[str], *, works: Collection[str] | None = None,
    characters: Collection[str] | None = None,
) -> Key:  # fmt: skip
    """A key to the taxa with those ids, sec. all works or `works`, by all characters or those named.

    Raises KeyError for an unknown taxon, TooFewTaxa for fewer than two different ones.
    """
    findings = {id_: findings_of(corpus, id_, works=works) for id_ in taxa}
    return key_of(findings, corpus.vocabulary, characters)


def key_of(
    findings: Mapping[str, Iterable[Finding]], vocabulary: Vocabulary, characters: Collection[str] | None = None
) -> Key:
    """As `key`, of findings by taxon; taxa in the order of the mapping, which changes nothing else."""
    if len(findings) < 2:
        raise TooFewTaxa(len(findings))
    asked = [one for one in vocabulary.values() if can_be_asked(one) and (characters is None or one.name in characters)]
    names = {character.name for character in asked}
    by_taxon = {id_: {(one.character, one.stage): one for one in several} for id_, several in findings.items()}
    told = {id_: told_of(by.values(), vocabulary, names) for id_, by in by_taxon.items()}
    root = grown({id_: Held(1.0, True, one) for id_, one in told.items()}, asked)
    built = _Builder(tuple(asked), Telling(by_taxon), told)
    couplets = built.couplets(root)
    reason = None if couplets else built.want(root.ends_in)
    return Key(tuple(findings), tuple(one.name for one in asked), couplets, _expected(root, len(told)), reason)


@dataclass(frozen=True, slots=True)
class _Builder:
    """Turns the places of the tree into couplets with words."""

    characters: tuple[Character, ...]
    telling: Telling
    told: Mapping[str, Told]

    def couplets(self, root: Node) -> tuple[Couplet, ...]:
        """The couplets of the tree, each followed by those of its first lead, then by those of its second."""
        order = list(_as_printed(root))
        numbers = {id(node): number for number, (node, _) in enumerate(order, 1)}
        named = _named_below(root)
        asked: dict[int, frozenset[str]] = {}  # node -> the characters asked on the way to it and there
        made = []
        for node, above in order:
            assert node.question is not None
            before = frozenset() if above is None else asked[id(above)]
            asked[id(node)] = before | {node.question.character.name}
            left = [one for one in self.characters if one.name not in asked[id(node)]]
            made.append(self._couplet(node, above, numbers, left, named))
        return tuple(made)

    def _couplet(
        self,
        node: Node,
        above: Node | None,
        numbers: Mapping[int, int],
        left: Sequence[Character],
        named: Mapping[int, frozenset[str]],
    ) -> Couplet:
        """One couplet; `left` are the characters that may confirm it, `named` the taxa named from each node on."""
        question, sides = node.question, node.sides
        assert question is not None and sides is not None
        reached = (named[id(sides[0])], named[id(sides[1])])
        further = further_pairs(node.play, question, left, reached, self.telling)
        pairs = [main_pair(node.play, question, self.telling), *(pair for _, pair in further)]
        first, second = (self._lead(sides[upper], upper, pairs, numbers) for upper in _order(node))
        return Couplet(
            numbers[id(node)],
            None if above is None else numbers[id(above)],
            (question.character.name, *(character.name for character, _ in further)),
            question.rules,
            (first, second),
        )

    def _lead(self, side: Node, upper: bool, pairs: Sequence[Pair], numbers: Mapping[int, int]) -> Lead:
        pieces = tuple(pair[upper] for pair in pairs)
        holds = tuple((id_, held.mass) for id_, held in side.play.items())
        ends = side.ends_in
        return Lead(pieces, upper, numbers.get(id(side)), ends, holds, self.want(ends) if len(ends) > 1 else None)

    def want(self, taxa: Sequence[str]) -> Want:
        """Why the taxa can't be parted."""
        return want(sorted(taxa), self.told, self.characters)


def _order(node: Node) -> tuple[bool, bool]:
    """The side that is over first stands first, so that leads lie near their couplets; of two alike that which has
    the higher figures, or the first of the states."""
    question, sides = node.question, node.sides
    assert question is not None and sides is not None
    lower, upper = (side.couplets for side in sides)
    if lower != upper:
        return (False, True) if lower < upper else (True, False)
    return (True, False) if isinstance(question.rules[0], Threshold) else (False, True)


def _named_below(root: Node) -> dict[int, frozenset[str]]:
    """By node the taxa that are named at its ends."""
    found: dict[int, frozenset[str]] = {}
    for node in reversed(list(downwards(root))):
        ends = frozenset(node.ends_in) if node.sides is None else frozenset()
        found[id(node)] = ends.union(*(found[id(side)] for side in node.sides or ()))
    return found


def _as_printed(root: Node) -> Iterator[tuple[Node, Node | None]]:
    """Every place with a question, and the one above it, in the order of the couplets."""
    waiting: list[tuple[Node, Node | None]] = [(root, None)]
    while waiting:
        node, above = waiting.pop()
        if node.sides is not None:
            yield node, above
            waiting += [(node.sides[upper], node) for upper in reversed(_order(node))]


def _expected(root: Node, taxa: int) -> Expected:
    """What the likelihoods alone promise, all taxa alike."""
    steps = right = undecided = 0.0
    waiting = [(root, 0)]
    while waiting:
        node, depth = waiting.pop()
        if node.sides is not None:
            waiting += [(side, depth + 1) for side in node.sides]
            continue
        mass = sum(node.play[id_].mass for id_ in node.ends_in)
        steps += depth * mass
        if len(node.ends_in) == 1:
            right += mass
        else:
            undecided += mass
    told = right + undecided
    return Expected(steps / told if told else 0.0, max(0.0, 1 - told / taxa), undecided / taxa)
