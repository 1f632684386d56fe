"""What the rules may ask while acts are judged: types, dates, and how the acts judged before were judged."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from datetime import date

from auctorum.corpus.groups import type_groups
from auctorum.corpus.model import Act, Corpus, Treatment, Work
from auctorum.corpus.spelling import recorded_genders
from auctorum.names.fold import epithet_keys, fold
from auctorum.names.format import format_name, words
from auctorum.names.name import Name
from auctorum.nomenclature.editions import Edition
from auctorum.nomenclature.judgement import Legitimacy, Validity
from auctorum.records.schema import ActKind, DescriptionKind, Status

# Marks round the id of a name in a reason that is worded before the name can be cited.
_BEFORE, _AFTER = "\x02", "\x03"
_HELD = re.compile(f"{_BEFORE}([^{_AFTER}]*){_AFTER}")


class Inquiry:
    """One run of judging. `types` are the groups of names by the types they had when published.

    Rules read it; the judges (validity, then legitimacy) enter what they found in `validity` and `legitimacy`,
    by act.
    """

    def __init__(self, corpus: Corpus, edition: Edition) -> None:
        self.corpus = corpus
        self.edition = edition
        self.types = original_types(corpus)
        self._establishing = _establishing(corpus)
        self._same_words = {one: ids for ids in corpus.homonyms.values() if len(ids) > 1 for one in ids}
        self.genders = recorded_genders(corpus.acts.values())
        self.validity: dict[str, Validity] = {}
        self.legitimacy: dict[str, Legitimacy] = {}
        self.decisions = Decisions(corpus)
        self.roots: dict[str, str] = {}  # name -> the basionym at the root of the combinations it rests on (Art. 6.10)
        self._first: dict[tuple[str, str], list[str]] = {}  # (type, rank) -> competing names, the first of each epithet
        self._alike = _by_epithet(corpus)
        self._sorted: dict[tuple[tuple[str, ...], ...], tuple[str, ...]] = {}
        self.cited = False  # whether names have their authors by the rules; until then reasons hold their ids
        self.unmade: set[str] = set()  # names found to be invalid only when their species was judged (Art. 27.2)

    def start_again(self) -> None:
        """Forget every legitimacy; what was found of validity stays."""
        self.legitimacy.clear()
        self.roots.clear()
        self._first.clear()
        self._sorted.clear()

    def validity_of(self, name: str) -> Validity:
        """The best that any act of a name comes to; undetermined where no act of it is known or yet judged."""
        entry = self.corpus.names[name]
        if entry.is_autonym:
            return Validity.VALID
        found = [self.validity[id_] for id_ in entry.acts if id_ in self.validity]
        for best in (Validity.VALID, Validity.UNDETERMINED, Validity.NOT_VALID):
            if best in found:
                return best
        return Validity.UNDETERMINED

    def homonyms_of(self, name: str) -> tuple[str, ...]:
        """The names that share the words of a name, itself among them; empty where there is no other."""
        return self._same_words.get(name, ())

    def establishing(self, name: str) -> tuple[Act, ...]:
        """The acts that put a name forward, by date."""
        return self._establishing.get(name, ())

    def publishing(self, name: str) -> Act | None:
        """The act that publishes a name: the first that is not found to be invalid, else the first at all."""
        acts = self.establishing(name)
        if len(acts) == 1:
            return acts[0]
        standing = (act for act in acts if self.validity.get(act.id) is not Validity.NOT_VALID)
        return next(standing, acts[0] if acts else None)

    def legitimacy_of(self, name: str) -> Legitimacy:
        """Legitimacy of a name by the act that publishes it; undetermined where that is not yet judged."""
        act = self.publishing(name)
        return self.legitimacy.get(act.id, Legitimacy.UNDETERMINED) if act is not None else Legitimacy.UNDETERMINED

    def shuts_out(self, act: Act, name: str | None) -> bool:
        """Whether the act excludes the type of a name (ICN Art. 48.1), that name or another on its type."""
        if name is None or not act.excludes:
            return False
        return self.types[name] in {self.types[one] for one in act.excludes}

    def included(self, act: Act) -> frozenset[str]:
        """Types that the author definitely included (ICN Art. 52.2): its own, those of the names cited, and of those
        that the same work sinks into it."""
        own = (one for one in self.corpus.by_name.get(act.name, ()) if one.work.id == act.work.id)
        sunk = [name for one in own if one.status is Status.ACCEPTED for name in one.synonyms]
        named = (act.name, act.basionym, act.replaces, act.same_taxon, *act.cites, *sunk)
        return frozenset({self.types[name] for name in named if name} - {self.types[name] for name in act.excludes})

    def takes_up_uncited(self, act: Act) -> bool:
        """Whether an older epithet used without citation makes the act a combination: before 1953 (ICN Art. 41.4)."""
        return act.same_taxon is not None and act.work.date.first_day < date(1953, 1, 1)

    def is_new_taxon(self, act: Act) -> bool:
        """Whether it must meet the conditions for a new taxon: by its kind, or as it rests on no name (35.1, 48.1)."""
        if act.record.act in (ActKind.NEW_TAXON, ActKind.USAGE):
            return True
        claimed = act.basionym or act.replaces
        return claimed is not None and (self.shuts_out(act, claimed) or self.is_no_name_yet(claimed, act))

    def is_no_name_yet(self, name: str, act: Act) -> bool:
        """Whether a name is not validly published, or was only after the act (ICN Art. 6.10, 41.1)."""
        if self.validity_of(name) is Validity.NOT_VALID:
            return True
        first = self.publishing(name)
        return first is not None and first.id != act.id and published_before(act, first)

    def above(self, act: Act) -> str | None:
        """The genus or species that an act places its name in: as recorded, or in the same work, else the first name
        of those words that is one by then."""
        same = self.homonyms_of(act.above) if act.above is not None and not act.record.under else ()
        if not same or any(one.work.id == act.work.id for one in self.establishing(act.above or "")):
            return act.above
        return next((name for name in same if not self.is_no_name_yet(name, act)), act.above)

    def enter_competing(self, name: str, rank: str) -> None:
        """Note a name judged to compete at its rank: the first with its epithet on its type is kept."""
        known = self._first.setdefault((self.types[name], rank), [])
        keys = epithet_keys(self.corpus.names[name].name.final_epithet)
        for at, other in enumerate(known):
            if not keys.isdisjoint(epithet_keys(self.corpus.names[other].name.final_epithet)):
                known[at] = min(name, other, key=self.position)
                return
        known.append(name)

    def competing_on(self, types: Iterable[str], rank: str) -> list[str]:
        """The names entered so far that compete at a rank on these types, the first of each epithet."""
        return [name for type_ in types for name in self._first.get((type_, rank), ())]

    def of_like_epithet(self, name: Name) -> tuple[str, ...]:
        """Names beside which a name of these words would be a homonym, itself among them, in order of date.

        Of one genus for species and for its subdivisions of whatever rank, of one species for what is below it
        (ICN Art. 53.1, 53.3); single words that are the same. Gender makes no difference.
        """
        keys = tuple(_epithet_keys(name))
        if keys not in self._sorted:
            found = {one for key in keys for one in self._alike.get(key, ())}
            self._sorted[keys] = tuple(sorted(found, key=self.position))
        return self._sorted[keys]

    def position(self, name: str) -> tuple[date, date, str]:
        """By what names are set in order: the date of the act that publishes them, then their id."""
        act = self.publishing(name)
        return (act.work.date.earliest, act.work.date.latest, name) if act else (date.max, date.max, name)

    def called(self, name: str) -> str:
        """A name with its authors, for a sentence."""
        return format_name(self.corpus.names[name].name) if self.cited else f"{_BEFORE}{name}{_AFTER}"

    def worded(self, reason: str) -> str:
        """A reason with every name in it cited."""
        return _HELD.sub(lambda found: self.called(found[1]), reason) if _BEFORE in reason else reason


class Decisions:
    """What committees and later authors decided about names, from the acts that record it."""

    def __init__(self, corpus: Corpus) -> None:
        self.conserved: dict[str, Act] = {}
        self.rejected: dict[str, Act] = {}
        self.barred_homonyms: dict[str, Act] = {}  # earlier homonyms of conserved names: not to be used (14.10)
        self.suppressed: set[str] = set()  # rejected with all names based on them (Art. 56.1)
        self.gives_way_to: dict[str, list[str]] = {}  # name -> names conserved against it
        self.alike: dict[str, set[str]] = {}  # names ruled confusably alike (Art. 53.2)
        self.chosen: dict[tuple[str, str], Work] = {}  # (adopted, passed over) -> the work that chose (Art. 11.5)
        for act in corpus.acts.values():
            if act.work.record.effectively_published:
                self._take(corpus, act)
        for one in corpus.treatments.values():  # by date
            if one.synonyms and one.status is Status.ACCEPTED and one.work.record.effectively_published:
                self._take_choice(corpus, one)

    def _take_choice(self, corpus: Corpus, one: Treatment) -> None:
        """Who adopts one of two names of one date and sinks the other chooses between them (Art. 11.5)."""
        mine = corpus.publishing_act(one.name)
        for name in one.synonyms:
            theirs = corpus.publishing_act(name)
            if mine is None or theirs is None or mine.work.id != theirs.work.id or mine.rank != theirs.rank:
                continue
            if one.work.id != mine.work.id and (name, one.name) not in self.chosen:
                self.chosen.setdefault((one.name, name), one.work)

    def _take(self, corpus: Corpus, act: Act) -> None:
        kind = act.record.act
        if kind is ActKind.CONSERVATION:
            self.conserved.setdefault(act.name, act)
            for name in act.against:
                self.gives_way_to.setdefault(name, []).append(act.name)
                if words(corpus.names[name].name) == words(corpus.names[act.name].name):
                    self.barred_homonyms.setdefault(name, act)
        elif kind is ActKind.REJECTION:
            self.rejected.setdefault(act.name, act)
            self.suppressed.add(act.name)
        elif kind is ActKind.CONFUSABLE:
            for name in act.against:
                self.alike.setdefault(act.name, set()).add(name)
                self.alike.setdefault(name, set()).add(act.name)
        elif kind is ActKind.FIRST_CHOICE:
            for name in act.against:
                if name != act.name and (name, act.name) not in self.chosen:
                    self.chosen.setdefault((act.name, name), act.work)


def original_types(corpus: Corpus) -> Mapping[str, str]:
    """Name -> first name on the type it had when published, before any type was chosen or conserved."""
    later = (ActKind.TYPE_DESIGNATION, ActKind.CONSERVATION)
    if not any(act.record.act in later for act in corpus.acts.values()):
        return {id_: entry.group for id_, entry in corpus.names.items()}
    ranks = {id_: entry.rank for id_, entry in corpus.names.items()}
    autonyms = {id_: entry.autonym_of for id_, entry in corpus.names.items() if entry.autonym_of}
    return type_groups(corpus.names, corpus.acts.values(), autonyms, ranks, later_types=False)


def _establishing(corpus: Corpus) -> dict[str, tuple[Act, ...]]:
    found: dict[str, list[Act]] = {}
    for act in corpus.acts.values():
        if act.establishes:
            found.setdefault(act.name, []).append(act)
    return {name: tuple(acts) for name, acts in found.items()}


def _epithet_keys(name: Name) -> Iterator[tuple[str, ...]]:
    """Keys of which two names share one where they would be homonyms on two types."""
    if name.lower:
        within: tuple[str, ...] = ("lower", fold(name.genus), fold(name.species))
    elif name.species:
        within = ("species", fold(name.genus))
    elif name.divisions:
        within = ("division", fold(name.genus))
    else:
        yield ("word", fold(name.genus))
        return
    for key in epithet_keys(name.final_epithet):
        yield (*within, key)


def _by_epithet(corpus: Corpus) -> dict[tuple[str, ...], list[str]]:
    found: dict[tuple[str, ...], list[str]] = {}
    for id_, entry in corpus.names.items():
        if entry.published_by is not None:
            for key in _epithet_keys(entry.name):
                found.setdefault(key, []).append(id_)
    return found


def described(act: Act) -> bool | None:
    """Whether the act gives or refers to a description; None where the record does not say."""
    given = act.record.description
    return None if given is None else given.kind is not DescriptionKind.NONE


def published_before(first: Act, act: Act) -> bool:
    """Whether one act certainly came out before another; acts of one work are of one date."""
    return first.work.id != act.work.id and first.work.date.certainly_before(act.work.date)


def order_is_open(one: Act, other: Act) -> bool:
    """Whether the dates leave open which of two works came first."""
    if one.work.id == other.work.id:
        return False
    return not (published_before(one, other) or published_before(other, one))


def since(act: Act, day: date) -> bool:
    """Whether the act came out on that day or later; a span of dates counts by its last day."""
    return act.work.date.last_day >= day


def joined(names: Iterable[str]) -> str:
    """Names in a sentence: `A, B and C`."""
    *first, last = names
    return f"{', '.join(first)} and {last}" if first else last
