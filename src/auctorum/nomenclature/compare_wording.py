"""What changes between two works, in sentences to be read or read aloud.

A sentence is a row of pieces: words, and names as values, so that whoever shows it can set the names in italics.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import chain

from auctorum.corpus.model import Corpus
from auctorum.names.format import format_name
from auctorum.names.name import Name
from auctorum.names.ranks import SPECIES, rank_named
from auctorum.nomenclature.compare import Absence, Change, Comparison, Kind, Move
from auctorum.nomenclature.positions import Position, Source
from auctorum.nomenclature.regrouping import Regrouping, Share
from auctorum.records.schema import Status

Piece = str | Name
Pieces = tuple[Piece, ...]


def plain(pieces: Iterable[Piece]) -> str:
    """The pieces as one text."""
    return "".join(format_name(piece) if isinstance(piece, Name) else piece for piece in pieces)


def called_works(comparison: Comparison) -> tuple[str, str]:
    """How sentences call the two works: by authors and year, by id where these are the same."""
    a, b = comparison.a, comparison.b
    return (a.byline, b.byline) if a.byline != b.byline or a.id == b.id else (a.id, b.id)


def summary(comparison: Comparison) -> str:
    """The counts in two sentences: types by kind of change, then names."""
    a, b = called_works(comparison)
    tally = Counter(change.kind for change in comparison.changes)
    silent = Counter(change.kind for change in comparison.changes if change.absence is Absence.SILENT)
    only = {Kind.ONLY_A: (a, b), Kind.ONLY_B: (b, a)}
    told = []
    for kind in Kind:
        if tally[kind] and kind in only:
            here, other = only[kind]
            silence = f" ({other} covers the group and is silent on {silent[kind]})" if silent[kind] else ""
            told.append(f"{tally[kind]} only in {here}{silence}")
        elif tally[kind]:
            told.append(f"{tally[kind]} {kind}")
    number = len(comparison.changes)
    if not number:
        return f"From {a} to {b}, no types: neither work keeps, sinks or misapplies any."
    types = f"{number} type{'' if number == 1 else 's'}"
    lists = (("gained", comparison.gained), ("lost", comparison.lost), ("changed", comparison.renamed))
    names = ", ".join(f"{len(found) or 'none'} {what}" for what, found in lists)
    return f"From {a} to {b}, {types}: {', '.join(told)}. Accepted names: {names}."


def sentence(corpus: Corpus, comparison: Comparison, change: Change) -> Pieces:
    """How both works have one type, and what changes; without full stop."""
    a, b = called_works(comparison)
    if change.a is None or change.b is None:
        told = _told_by_one(corpus, change, a, b)
    else:
        told = _told_by_both(corpus, change, change.a, change.b, a, b)
    return (*told, *_remarks(corpus, change, a, b))


def _told_by_one(corpus: Corpus, change: Change, a: str, b: str) -> Pieces:
    one, here, other = (change.a, a, b) if change.a else (change.b, b, a)
    assert one is not None
    return (_name(corpus, one.name), ": ", *_how(corpus, one), f" in {here}; {other} {change.absence}")


def _told_by_both(corpus: Corpus, change: Change, one: Position, two: Position, a: str, b: str) -> Pieces:
    kind, name = change.kind, _name(corpus, one.name)
    if kind is Kind.KEPT:
        return (name, ": ", str(kind), ", with doubt in both" if one.status is Status.DOUBTFUL else "")
    if kind is Kind.RENAMED:
        moves = " and ".join(_moved(corpus, one.name, two.name, move) for move in change.moves)
        return (name, f" in {a} is ", _name(corpus, two.name), f" in {b}: {moves} on the same type")
    if kind in _CIRCUMSCRIBED:
        return (name, f" is {_CIRCUMSCRIBED[kind]} in {b} than in {a}")
    if kind is Kind.PLACED:
        return (name, ": the same name, placed in ", *_placed(corpus, one, two, a, b))
    if kind is Kind.SYNONYM and one.accepted == two.accepted:
        return (name, ": ", *_how(corpus, one), " in both")
    if kind is Kind.MISAPPLIED_ALIKE and one.accepted == two.accepted:
        return (name, ": ", *_how(corpus, one), " in both")
    if kind is Kind.RAISED:
        before = _how(corpus, one, beside=two.name)
        return (_name(corpus, two.name), ", ", *before, f" in {a}, is ", *_how(corpus, two), f" in {b}")
    before, after = _how(corpus, one), _how(corpus, two, beside=one.name)
    if kind in (Kind.SUNK, Kind.MOVED):
        return (name, ", ", *before, f" in {a}, is ", *after, f" in {b}")
    return (name, ": ", *before, f" in {a}, ", *after, f" in {b}")


def _moved(corpus: Corpus, old: str, new: str, move: Move) -> str:
    """The move in words: of a name it is known what the other parent is."""
    if move is not Move.PARENT:
        return str(move)
    same_genus = corpus.names[old].name.genus == corpus.names[new].name.genus
    return "another species" if same_genus else "another genus"


_CIRCUMSCRIBED = {
    Kind.WIDENED: "wider",
    Kind.NARROWED: "narrower",
    Kind.RECAST: "drawn otherwise",
}


def _placed(corpus: Corpus, one: Position, two: Position, a: str, b: str) -> Pieces:
    assert one.parent is not None and two.parent is not None  # else it would be no move
    return (_name(corpus, one.parent), f" in {a} and in ", _name(corpus, two.parent), f" in {b}")


def how(corpus: Corpus, position: Position) -> Pieces:
    """How one work has a type: `accepted as variety of Exemplum album`, `a synonym of Exemplum album`."""
    return _how(corpus, position)


def _how(corpus: Corpus, position: Position, beside: str | None = None) -> Pieces:
    """As `how`; the name used is told where it is another than the one that stands beside."""
    told = _standing(corpus, position)
    if beside is None or position.name == beside:
        return told
    return (*told, " (as ", _name(corpus, position.name), ")")


def _standing(corpus: Corpus, position: Position) -> Pieces:
    if position.is_kept:
        doubt = "kept with doubt" if position.status is Status.DOUBTFUL else "accepted"
        if position.parent is None or rank_named(position.rank) <= SPECIES:
            entry = " (without an entry of its own)" if position.source is Source.IMPLIED else ""
            return (f"{doubt} as {position.rank}{entry}",)
        return (f"{doubt} as {position.rank} of ", _name(corpus, position.parent))
    word = "a synonym of " if position.status is Status.SYNONYM else "misapplied to "
    if position.accepted is None:
        return (f"{word}something the record does not name",)
    return (word, _name(corpus, position.accepted))


def _remarks(corpus: Corpus, change: Change, a: str, b: str) -> Pieces:
    """What is told beside the kind: types in and out, another place, misapplication."""
    found: list[Pieces] = []
    if change.gains:
        found.append(("it takes in ", *_names(corpus, change.gains)))
    if change.loses:
        found.append(("it leaves out ", *_names(corpus, change.loses)))
    if change.a and change.b and change.kind in _CIRCUMSCRIBED and Move.PARENT in change.moves:
        found.append(("it is placed in ", *_placed(corpus, change.a, change.b, a, b)))
    lead = ": " if change.kind in _CIRCUMSCRIBED else "; "
    for position, work in ((change.a, a), (change.b, b)):
        if position and position.misapplied_to and position.status is not Status.MISAPPLIED:
            wrong = _name(corpus, position.misapplied_to)
            found.append(("others misapplied the name to ", wrong, f", says {work}"))
    return tuple(chain.from_iterable((lead if not number else "; ", *one) for number, one in enumerate(found)))


def pages(comparison: Comparison, change: Change) -> str:
    """Where it is said: `Orrin 1911: 107; Vane 1922: 14`; empty where no page is known."""
    sides = zip(called_works(comparison), (change.a, change.b), strict=True)
    return "; ".join(f"{work}: {position.page}" for work, position in sides if position and position.page)


def regrouping_sentence(corpus: Corpus, comparison: Comparison, regrouping: Regrouping) -> Pieces:
    """`X sec. A is divided into X and Y sec. B`, or `X sec. B unites X and Y sec. A`; without full stop."""
    a, b = called_works(comparison)
    here, verb, there = (a, "is divided into", b) if regrouping.is_division else (b, "unites", a)
    whole = _share(corpus, Share(regrouping.whole, entire=True))
    shares = _listed([_share(corpus, share) for share in regrouping.shares])
    return (*whole, f" sec. {here} {verb} ", *shares, f" sec. {there}")


def _share(corpus: Corpus, share: Share) -> Pieces:
    sense = " in the strict sense" if share.part.strict else ""
    return (_name(corpus, share.part.name), sense + ("" if share.entire else " (in part)"))


def _names(corpus: Corpus, names: Iterable[str]) -> Pieces:
    return _listed([(_name(corpus, name),) for name in names])


def _listed(items: Sequence[Pieces]) -> Pieces:
    """`X`, `X and Y`, `X, Y and Z`."""
    found: list[Piece] = []
    for number, item in enumerate(items):
        if number:
            found.append(" and " if number == len(items) - 1 else ", ")
        found += item
    return tuple(found)


def _name(corpus: Corpus, name: str) -> Name:
    """A name as running text has it: with authors only where homonyms share its words."""
    found = corpus.names[name].name
    return found if corpus.has_homonyms(name) else found.bare
