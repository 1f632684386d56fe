"""What is being spoken of while a description is read: the organ, its whole, how often, at which stage."""

from __future__ import annotations

from dataclasses import dataclass, field

from auctorum.characters.notation import Measure
from auctorum.characters.prose.comparisons import Likeness
from auctorum.characters.prose.found import Doubt
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.values import Modality, Range, Share


_MOST_OF_CLAUSE = 40


@dataclass(slots=True)
class Said:
    """One statement while it is being read; `start` and `end` are tokens.

    `share` is a state, `figure` a range, `like` a comparison with `to`; one of them is set.
    """

    noun: Noun
    property: str
    start: int
    end: int
    clause: int
    sentence: int
    share: Share | None = None
    figure: Measure | None = None
    arc: Range | None = None
    like: Likeness | None = None
    to: str = ""
    stage: str = ""
    often: Modality | None = None
    per: str = ""
    of: str = ""
    doubts: set[Doubt] = field(default_factory=set)


@dataclass(slots=True)
class Scene:
    """The state of the reading between two items."""

    subjects: list[Noun] = field(default_factory=list)
    main: list[Noun] = field(default_factory=list)  # the subject outside of a `with`
    organ: list[Noun] = field(default_factory=list)  # the last organ that is no part, for `they`
    beside: list[Noun] = field(default_factory=list)  # named by `with`; the states of a plant may go on about it
    first: list[Noun] = field(default_factory=list)  # the first subject of the clause
    subject_at: int = -1  # the token where the subject is named, -1 where it is carried on
    subject_end: int = -1
    said: list[Said] = field(default_factory=list)
    clause: int = 0
    sentence: int = 0
    stage: str = ""  # of the organ itself: adult leaves
    mark: str = ""  # of what follows in the clause: at anthesis
    mark_at: int = -1
    marked_property: str = ""
    often: Modality | None = None
    often_about: tuple[str, str] | None = None
    often_at: int = -1
    denied: bool = False
    to: bool = False
    per: str = ""
    carried: bool = False
    given: bool = False  # the words are of a character whose organ was given
    unnamed: bool = False  # the subject was given, and no organ is named yet
    strange: bool = False
    named: bool = False  # whether this clause has named its subject
    once: bool = False  # the subject holds for one state only: `e basi cordata ovata`
    outer: list[tuple[list[Noun], Modality | None, str]] = field(default_factory=list)

    @property
    def whole(self) -> Noun | None:
        return self.main[-1] if self.main else None

    @property
    def clause_said(self) -> list[Said]:
        """What this clause has said so far, the last of it where it is longer than any clause of prose."""
        found = []
        for one in reversed(self.said[-_MOST_OF_CLAUSE:]):
            if one.clause != self.clause:
                break
            found.append(one)
        return found[::-1]

    def open_clause(self) -> None:
        self.clause += 1
        self.subjects = list(self.main)
        self.first, self.named, self.once = list(self.main), False, False
        self.subject_at = -1
        self.denied = self.to = False
        self.per = ""

    def open_sentence(self) -> None:
        self.beside = []
        self.open_clause()
        self.sentence += 1
        self.stage = self.mark = ""
        self.often, self.often_about = None, None
        self.carried, self.strange = True, False
        self.outer.clear()
