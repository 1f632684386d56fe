"""The tree of a key: the place with most left to part is asked first, and twigs that part too little are cut again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush

from auctorum.characters.vocabulary import Character
from auctorum.circumscription.key.asking import best_question
from auctorum.circumscription.key.questions import Held, Play, Question, follow, named

# What a couplet must save: of all plants this part more that come out right; in large keys of those of one taxon.
LEAST_SAVED, LEAST_SAVED_OF_ONE = 0.005, 0.05
LEAST_BITS = 0.005
_COUPLETS_FOR_A_TAXON, _COUPLETS_MORE = 5, 20  # how far a tree grows before it is pruned


@dataclass(slots=True)
class Node:
    """One place of the tree while it grows: an end until it has a question and the two nodes that follow.

    `lost` is the mass of taxa that come here and are no longer in play.
    """

    play: Play
    lost: float
    question: Question | None = None
    sides: tuple[Node, Node] | None = None
    ends_in: tuple[str, ...] = ()
    couplets: int = 0  # from here down, once the tree is pruned

    def loss(self) -> float:
        """The plants that come out wrong, and those of a group as if one of it were taken at random, if it ends."""
        kept = named(self.play)
        mass = sum(self.play[id_].mass for id_ in kept)
        rest = sum(held.mass for id_, held in self.play.items() if id_ not in kept)
        return self.lost + rest + mass * (1 - 1 / len(kept))


def grown(play: Mapping[str, Held], characters: Sequence[Character]) -> Node:
    """The tree, pruned; every taxon is named at one of its ends at least."""
    root = Node(dict(sorted(play.items())), 0.0)
    waiting: list[tuple[float, int, Node]] = [(-root.loss(), 0, root)]
    least = least_saved(len(play))
    made, most = 0, len(play) * _COUPLETS_FOR_A_TAXON + _COUPLETS_MORE
    while waiting and made < most:
        loss, _, node = heappop(waiting)
        if -loss - node.lost < least or len(node.play) < 2:
            continue
        question = best_question(node.play, characters)
        if question is None or question.worth < LEAST_BITS:
            continue
        node.question, node.sides = question, (_side(node, question, False), _side(node, question, True))
        made += 1
        for number, side in enumerate(node.sides):
            heappush(waiting, (-side.loss(), 2 * made + number, side))
    _prune(root, least)
    _name_ends(root)
    return root


def least_saved(taxa: int) -> float:
    """What a couplet must save, in plants of one taxon."""
    return min(LEAST_SAVED * taxa, LEAST_SAVED_OF_ONE)


def _side(node: Node, question: Question, upper: bool) -> Node:
    play: dict[str, Held] = {}
    lost = node.lost / 2  # what is lost already may be anywhere
    for id_, held in node.play.items():
        sent = question.sent[id_]
        following = follow(held, sent, question.character, question.rules, upper)
        if sent.led[upper]:
            play[id_] = following
        else:
            lost += following.mass
    return Node(play, lost)


def downwards(root: Node) -> Iterator[Node]:
    """Every node, each before those that follow from it, the lower side first."""
    waiting = [root]
    while waiting:
        node = waiting.pop()
        yield node
        if node.sides:
            waiting += reversed(node.sides)


def _prune(root: Node, least: float) -> None:
    """Cut what saves too little for its couplets, from the ends upwards."""
    best: dict[int, tuple[float, int]] = {}  # node -> loss below it, and couplets there
    for node in reversed(list(downwards(root))):
        alone = node.loss()
        if node.sides is None:
            best[id(node)] = (alone, 0)
            continue
        below = [best[id(side)] for side in node.sides]
        loss, couplets = sum(one for one, _ in below), 1 + sum(many for _, many in below)
        if alone - loss < least * couplets:
            node.question, node.sides = None, None
            loss, couplets = alone, 0
        best[id(node)] = (loss, couplets)
        node.couplets = couplets


def _name_ends(root: Node) -> None:
    """The taxa of each end; one named at none is named where most of its plants come."""
    ends = [node for node in downwards(root) if node.sides is None]
    where: dict[str, Node] = {}
    for node in ends:
        node.ends_in = named(node.play)
        for id_, held in node.play.items():
            if id_ not in where or held.mass > where[id_].play[id_].mass:
                where[id_] = node
    told = {id_ for node in ends for id_ in node.ends_in}
    for id_, node in where.items():
        if id_ not in told:
            node.ends_in = (*node.ends_in, id_)
