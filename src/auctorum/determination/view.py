"""Whose descriptions a plant is determined by, made ready once for any plant: all authors, some, one's own plants."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.circumscription.density import shapes, stating_a_bound
from auctorum.circumscription.diagnosis import Gathered, evidence_about
from auctorum.circumscription.plants import Plant, plants_of
from auctorum.circumscription.separation_names import short_names
from auctorum.circumscription.voices import Voice, voices, weighing
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import called
from auctorum.determination.candidates import Opinions, candidates, in_order, opinions
from auctorum.determination.own import Told, own_voices
from auctorum.determination.tables import Table, numbers, states
from auctorum.problems import AuctorumError

ALL_AUTHORS = "all authors"
OWN_PLANTS = "own plants"

Key = tuple[str, str]  # character and stage
Heard = Mapping[Key, Sequence[Voice]]  # of one taxon


class NothingStated(AuctorumError, LookupError):
    """A view under which nothing is stated of any of the taxa."""

    remedy = "ask other works or other taxa"

    def __init__(self, view: str) -> None:
        super().__init__(view)
        self.view = view

    def __str__(self) -> str:
        return f"{self.view}: no character is stated of any of the taxa"


class Tables(Mapping[Key, Table]):
    """The tables of a view, each made when it is first asked for: a plant shows few of the characters stated."""

    def __init__(self, heard: Sequence[Heard], vocabulary: Vocabulary) -> None:
        self._heard, self._vocabulary = heard, vocabulary
        self._keys = dict.fromkeys(_keys(heard, vocabulary))
        self._made: dict[Key, Table] = {}

    def __getitem__(self, key: Key) -> Table:
        if key not in self._made:
            if key not in self._keys:
                raise KeyError(key)
            table = table_of(self._vocabulary[key[0]], key[1], [one.get(key, ()) for one in self._heard])
            assert table is not None, "a key stands for at least one voice"
            self._made[key] = table
        return self._made[key]

    def __contains__(self, key: object) -> bool:
        return key in self._keys

    def __iter__(self) -> Iterator[Key]:
        return iter(self._keys)

    def __len__(self) -> int:
        return len(self._keys)


def _keys(heard: Sequence[Heard], vocabulary: Vocabulary) -> Iterator[Key]:
    """Characters and stages on which anybody has a voice, in the order of the vocabulary, then of the stages."""
    told: dict[str, set[str]] = {}
    for of_taxon in heard:
        for name, stage in of_taxon:
            told.setdefault(name, set()).add(stage)
    for character in vocabulary.values():
        for stage in character.stages_in_order(told.get(character.name, set())):
            yield character.name, stage


@dataclass(frozen=True, slots=True, eq=False)
class View:
    """The candidates, what each is called here, and the tables of what is stated of them.

    `works` are the ids of the works that speak; `left_out` the taxa of which this view states nothing at all.
    Tables stand in the order of the vocabulary, then of the stages.
    """

    title: str
    works: tuple[str, ...]
    taxa: tuple[str, ...]
    names: Mapping[str, str]
    tables: Mapping[Key, Table]
    vocabulary: Vocabulary
    left_out: tuple[str, ...] = ()


class Statements:
    """Every piece of evidence on every taxon, and who accepts which, gathered once for many views."""

    def __init__(self, corpus: Corpus) -> None:
        self.corpus = corpus
        self._of: dict[str, Gathered] = {}
        self._heard: dict[tuple[str, frozenset[str] | None], Heard] = {}

    @cached_property
    def opinions(self) -> Opinions:
        """Which taxa each work accepts, places one in the other, and sinks."""
        return opinions(self.corpus)

    def candidates(self, works: Collection[str] | None = None) -> tuple[str, ...]:
        """The taxa that the works accept (None: all works), so that a plant can be only one of them."""
        return candidates(self.corpus, self.opinions, works)

    def of(self, taxon: str) -> Gathered:
        """By character and stage; each taxon is gone through once."""
        if taxon not in self._of:
            self._of[taxon] = evidence_about(self.corpus, taxon)
        return self._of[taxon]

    def heard(self, taxon: str, works: Collection[str] | None) -> Heard:
        """The voices that weigh, one for each of those works (None: all); a repetition counts where it is alone.

        Worked out once for each taxon and set of works.
        """
        asked = taxon, None if works is None else frozenset(works)
        if asked not in self._heard:
            self._heard[asked] = self._weighed(*asked)
        return self._heard[asked]

    def _weighed(self, taxon: str, works: frozenset[str] | None) -> Heard:
        found: dict[Key, Sequence[Voice]] = {}
        for key, evidence in self.of(taxon).items():
            said = [item for item in evidence if works is None or item.work in works]
            character = self.corpus.vocabulary[key[0]]
            several = voices(said, character)
            several = tuple(stating_a_bound(several) if character.kind.is_numeric else several)
            if several:
                found[key] = weighing(several)
        return found


def view_of(
    statements: Statements,
    *,
    works: Collection[str] | None = None,
    taxa: Sequence[str] = (),
    own: Iterable[Plant] = (),
    title: str = "",
) -> View:
    """What `works` (ids; None: all; none of them: only one's own plants) state of the taxa, made ready.

    Without `taxa` the candidates are those that the works accept. `own` are plants whose given names are trusted: those
    of each taxon count as one more author. A taxon of which nothing is stated is left out. Raises NothingStated.
    """
    corpus = statements.corpus
    trusted = tuple(own)
    chosen = in_order(corpus, taxa) if taxa else statements.candidates(works or None)
    heard = {}
    for taxon in chosen:
        told = own_voices(plants_of(trusted, taxon), corpus.vocabulary)
        heard[taxon] = joined(statements.heard(taxon, works), told)
    named = title or title_of_view(corpus, works, bool(trusted))
    return made(corpus, heard, works, named)


def joined(heard: Heard, own: Told) -> Heard:
    """What authors say, and one's own plants as one more of them."""
    return dict(heard) | {key: (*heard.get(key, ()), voice) for key, voice in own.items()}


def made(corpus: Corpus, heard: Mapping[str, Heard], works: Collection[str] | None, title: str) -> View:
    """The view of the taxa that have a voice; raises NothingStated where none has."""
    speaking = {taxon: told for taxon, told in heard.items() if told}
    if not speaking:
        raise NothingStated(title)
    taxa, tables = tuple(speaking), Tables(tuple(speaking.values()), corpus.vocabulary)
    said = {voice.work for of_taxon in speaking.values() for several in of_taxon.values() for voice in several}
    spoke = tuple(work for work in corpus.works if work in said)
    left_out = tuple(taxon for taxon, told in heard.items() if not told)
    return View(title, spoke, taxa, _names(corpus, taxa, works), tables, corpus.vocabulary, left_out)


def table_of(character: Character, stage: str, heard: Sequence[Sequence[Voice]]) -> Table | None:
    """The table of one character at one stage, from the voices on each candidate; None where none speaks."""
    if character.kind.is_numeric:
        return numbers(character, stage, [shapes(several, character.kind) for several in heard])
    return states(character, stage, [_shares(several) for several in heard])


def _shares(several: Sequence[Voice]) -> dict[str, float]:
    """The weighted mean of the states of several voices; all count alike where none weighs."""
    weights = [float(voice.weight) for voice in several]
    if not any(weights):
        weights = [1.0] * len(several)
    found: dict[str, float] = {}
    for voice, weight in zip(several, weights, strict=True):
        for state, share in voice.states:
            found[state] = found.get(state, 0.0) + float(share) * weight
    whole = sum(found.values())
    return {state: share / whole for state, share in found.items() if share}


def views_by_work(
    statements: Statements, taxa: Sequence[str] = (), works: Iterable[str] | None = None
) -> tuple[View, ...]:
    """The view of each work (of `works`, if given) that describes any of the taxa it accepts, by date.

    `taxa` narrow the candidates.
    """
    found = []
    asked = None if works is None else set(works)
    for work in (one for one in statements.corpus.works if asked is None or one in asked):
        accepted = statements.candidates((work,))
        chosen = [taxon for taxon in accepted if not taxa or taxon in taxa]
        heard = {taxon: statements.heard(taxon, (work,)) for taxon in chosen}
        if any(heard.values()):
            found.append(made(statements.corpus, heard, (work,), title_of_view(statements.corpus, (work,), False)))
    return tuple(found)


def title_of_view(corpus: Corpus, works: Collection[str] | None, own: bool) -> str:
    """What the view of those works (None: all) is called: `sec. Orrin 1889 and own plants` where `own` speak too."""
    if works is None:
        return f"{ALL_AUTHORS} and {OWN_PLANTS}" if own else ALL_AUTHORS
    bylines = [corpus.works[work].byline for work in works]
    said = f"sec. {'; '.join(bylines)}" if bylines else ""
    return " and ".join(filter(None, (said, OWN_PLANTS if own else "")))


def _names(corpus: Corpus, taxa: Sequence[str], works: Collection[str] | None) -> Mapping[str, str]:
    """What each taxon is called: by the one work asked as that work does, else by the short of its current name."""
    short = dict(short_names(corpus, taxa))
    if works is not None and len(works) == 1:
        (work,) = works
        for taxon in taxa:
            used = [corpus.treatments[one].name for one in corpus.taxa[taxon].treatments
                    if corpus.treatments[one].work.id == work]  # fmt: skip
            if used:
                short[taxon] = called(corpus, used[-1])
    return short
