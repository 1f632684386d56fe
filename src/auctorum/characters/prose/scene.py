"""What is being spoken of while a description is read: the organ, its whole, how often, at which stage."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from auctorum.characters.figures import Line
from auctorum.characters.measured import Measure
from auctorum.characters.prose.comparisons import Likeness
from auctorum.characters.prose.found import Doubt
from auctorum.characters.prose.items import Item
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.values import Modality, Range, Share

_MOST_OF_CLAUSE = 40


@dataclass(slots=True)
class Said:
    """One statement while it is being read; `start` and `end` are tokens.

    One of four is set: `share` for a state, `figure` for a range, `arc` for an aspect, `like` for a comparison with
    `to`, or for a ratio where `to` is empty.
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
    implied: bool = False  # the young state of what is only said to lose its hair
    doubts: set[Doubt] = field(default_factory=set)


@dataclass(slots=True)
class Scene:
    """The state of the reading between two items."""

    line: Line
    subjects: list[Noun] = field(default_factory=list)
    main: list[Noun] = field(default_factory=list)  # the subject outside of a `with`
    organ: list[Noun] = field(default_factory=list)  # the last organ that is no part, for `they`
    beside: list[Noun] = field(default_factory=list)  # named by `with`; the states of a plant may go on about it
    first: list[Noun] = field(default_factory=list)  # the first subject of the clause
    subject_at: int = -1  # the token where the subject is named, -1 where it is carried on
    subject_end: int = -1  # the token after its name
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
    to: bool = False  # `to` stands between two states
    pending: Item | None = None  # a comparison whose other organ is still to come: `narrower than, and half as long as`
    elliptic: bool = False  # the organ is named by its place only: `the lower 2–2.5`
    per: str = ""  # what a count is counted in
    carried: bool = False  # no organ has been named in this sentence
    given: bool = False  # the words are of a character whose organ was given
    unnamed: bool = False  # the subject was given, and no organ is named yet
    strange: bool = False  # a word before was not understood
    taxon: str = ""  # the last epithet of the plant described, where its name stands at the head
    aside: bool = False  # another plant is named in this sentence
    elsewhere: bool = False  # a heading names another plant, the text is a key, or a section is no description
    section: str = ""  # "sentence" or "paragraph": how far a section reaches that is no description
    uncertain: bool = False  # probably, perhaps
    side: str = ""  # upper or lower, said before the words: `beneath tomentose`
    named: bool = False  # whether this clause has named its subject
    once: bool = False  # the subject holds for one state only: `e basi cordata ovata`
    outer: list[tuple[list[Noun], Modality | None, str]] = field(default_factory=list)

    @property
    def subject(self) -> Noun | None:
        return self.subjects[-1] if self.subjects else None

    @property
    def last(self) -> Said | None:
        return self.said[-1] if self.said else None

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

    def say(self, noun: Noun, name: str, start: int, end: int) -> Said:
        """Add a statement about the noun at the stage that holds here, with what is taken for granted; to be filled."""
        stage = self.stage
        if self.mark:
            self.marked_property = self.marked_property or name
            if self.marked_property == name:
                stage, start = self.mark, min(start, self.mark_at)
        if not self.clause_said and 0 <= self.subject_at < start:
            start = self.subject_at
        if self.subject_at >= end:  # the organ stands behind the words: 4-8 teeth
            end = self.subject_end
        said = Said(noun, name, start, end, self.clause, self.sentence, stage=stage, per=self.per)
        said.doubts = self._doubts(noun)
        self.said.append(said)
        return said

    def say_figure(self, noun: Noun, name: str, item: Item, figure: Measure, *doubts: Doubt) -> Said:
        """Add a figure of the noun, and its usual part as a second statement."""
        said = self.say(noun, name, item.start, item.end)
        said.doubts.update(doubts)
        said.figure = _turned(replace(figure, usual=None), name)
        said.often = self.often_of(figure.often, item.start)
        if figure.usual is not None:
            low, high = figure.usual
            usual = replace(figure, low=low, high=high, least=None, most=None, usual=None, more=False,
                            approximate=figure.usual_about)  # fmt: skip
            self.said.append(replace(said, figure=usual, often=Modality.USUALLY, doubts=set(said.doubts)))
        return said

    def often_of(self, own: Modality | None, start: int) -> Modality | None:
        """How often a value is so: by its `own` word, or one just before `start`, past a small word; None for always.

        `usually at 300 m`: the word may stand up to three tokens before.
        """
        near = self.often_about is None and 0 < start - self.often_at <= 3
        often = own or (self.often if near else None)
        return None if often is Modality.ALWAYS else often

    def _doubts(self, noun: Noun) -> set[Doubt]:
        taken = {
            Doubt.CARRIED: self.carried,
            Doubt.NO_ORGAN: self.unnamed,
            Doubt.STRANGE_WORD: self.strange,
            Doubt.STRANGE_ORGAN: not noun.known,
            Doubt.OTHER_TAXON: self.aside and not self.elsewhere,
            Doubt.ASIDE: (self.elsewhere or bool(self.section)) and noun.kind != "habitat",
            Doubt.DOUBTED: self.uncertain,
        }
        return {doubt for doubt, holds in taken.items() if holds}

    def open_clause(self) -> None:
        """A comma: the subject outside of a `with` is spoken of again."""
        self.clause += 1
        self.subjects = list(self.main)
        self.first, self.named, self.once = list(self.main), False, False
        self.subject_at = -1
        self.denied = self.to = self.uncertain = False
        self.per = self.side = ""

    def open_sentence(self) -> None:
        """A stop: the subject is carried on, all else forgotten."""
        self.beside = []
        self.open_clause()
        self.sentence += 1
        self.stage = self.mark = ""
        self.often, self.often_about = None, None
        self.carried, self.strange, self.aside = True, False, False
        self.outer.clear()


def _turned(figure: Measure, name: str) -> Measure:
    """An arc that crosses north (315–45°) ends above 360."""
    if name != "angle":
        return figure
    low, high = figure.low, figure.high
    if low and high and 0 <= high.value < low.value <= 360:
        return replace(figure, high=replace(high, value=high.value + 360))
    return figure
