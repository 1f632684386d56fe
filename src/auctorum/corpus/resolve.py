"""Words -> the name they refer to, in one knowledge base."""

from __future__ import annotations

from collections import Counter
from collections.abc import Container, Iterable, Mapping

from auctorum.corpus.model import Corpus, Sense, Taxon
from auctorum.names.fold import fold
from auctorum.names.format import format_name, words
from auctorum.names.name import Authors, Name
from auctorum.names.nearest import nearest
from auctorum.names.parse import parse
from auctorum.problems import AuctorumError
from auctorum.records.schema import Criterion


class UnknownName(AuctorumError, LookupError):
    """Words that are no name of the knowledge base; `near` are the names most like them."""

    def __init__(self, said: str, near: tuple[str, ...]) -> None:
        super().__init__(said, near)
        self.said, self.near = said, near

    def __str__(self) -> str:
        return f"no name `{self.said}` in the knowledge base"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        if self.near:
            return f"nearest: {'; '.join(self.near)}"
        return "add the act that published it, or correct the spelling"


class AmbiguousName(AuctorumError, LookupError):
    """Words that several homonyms share; `candidates` are the names with authors."""

    def __init__(self, said: str, candidates: tuple[str, ...]) -> None:
        super().__init__(said, candidates)
        self.said, self.candidates = said, candidates

    def __str__(self) -> str:
        return f"`{self.said}` may be {len(self.candidates)} names"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return f"write it with authors: {'; '.join(self.candidates)}"


class MoreThanAName(AuctorumError, ValueError):
    """Words of which only a part is a name, so that it is not sure which name is meant."""

    remedy = "write the name alone; put doubts and remarks in `note:`, and plants without a name in no record"

    def __init__(self, said: str, name: str, rest: str) -> None:
        super().__init__(said, name, rest)
        self.said, self.name, self.rest = said, name, rest

    def __str__(self) -> str:
        return f"`{self.said}` holds more than a name: {self.name}, and `{self.rest}`"


def name_alone(said: str) -> Name:
    """The name that the words are; raises UnreadableName, or MoreThanAName where anything else stands with it."""
    usage = parse(said)
    rest = [word for word, _ in usage.qualifiers]
    rest += [one for one in (usage.sense, usage.notes, usage.remainder) if one]
    if rest:
        raise MoreThanAName(said, format_name(usage.name), " ".join(rest))
    return usage.name


def without_year(said: str) -> tuple[str, int | None]:
    """The words without a year behind the authors, and that year: it tells homonyms by one author apart.

    >>> without_year("Exemplum album Orrin 1911"), without_year("Exemplum album")
    (('Exemplum album Orrin', 1911), ('Exemplum album', None))
    """
    words_said, _, last = said.rstrip().rpartition(" ")
    if words_said and last.isascii() and last.isdigit() and len(last) == 4:
        return words_said.rstrip(" ,"), int(last)
    return said, None


class NeverAccepted(AuctorumError, LookupError):
    """A name that no work of the knowledge base accepts, so that nobody describes its taxon."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name

    def __str__(self) -> str:
        return f"no work treats {self.name} as a taxon of its own"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return f'see `auctorum history "{self.name}"` for what works make of it'


class NameTable:
    """Names by their words, spelling variants included; looked up by exact words, then without capitals and marks.

    `names` maps ids to names with authors; `published_in` gives, for an id, the works whose own use of the
    bare words means that name, `years` the year in which it was published; `written` gives the last year that
    a work can be of, and `no_names` holds designations: neither they nor later names are meant by bare words.
    """

    def __init__(
        self,
        names: Mapping[str, Name],
        published_in: Mapping[str, frozenset[str]] | None = None,
        years: Mapping[str, int] | None = None,
        written: Mapping[str, int] | None = None,
        no_names: Container[str] = (),
    ) -> None:
        self._names = dict(names)
        self._published_in = published_in or {}
        self._years = years or {}
        self._written = written or {}
        self._no_names = no_names
        self._by_words: dict[str, list[str]] = {}
        self._by_fold: dict[str, list[str]] = {}
        for id_, name in names.items():
            self._enter(name, id_)

    def _enter(self, name: Name, id_: str) -> None:
        for table, key in ((self._by_words, words(name)), (self._by_fold, fold(words(name)))):
            ids = table.setdefault(key, [])
            if id_ not in ids:
                ids.append(id_)

    def name(self, id_: str) -> Name:
        """The name of an id."""
        return self._names[id_]

    def add_spelling(self, spelling: Name, id_: str) -> None:
        """Enter another spelling of a name."""
        self._enter(spelling, id_)

    def add(self, id_: str, name: Name) -> None:
        """Enter a name that no act publishes (an autonym, or one without protologue)."""
        self._names[id_] = name
        self._enter(name, id_)

    def resolve(self, said: str, work: str | None = None) -> str:
        """Id of the name that `said` refers to; in `work`, a homonym published there is preferred.

        Raises UnreadableName, MoreThanAName, UnknownName or AmbiguousName. Authors need not be given; if they are,
        they must be those of the name, and a year behind them that of its publication.
        """
        words_said, year = without_year(said)
        return self.resolve_name(name_alone(words_said), said, work, year)

    def resolve_name(self, name: Name, said: str, work: str | None = None, year: int | None = None) -> str:
        """As `resolve`, for a name already parsed."""
        ids = self._by_words.get(words(name)) or self._by_fold.get(fold(words(name)), [])
        if not ids:
            raise UnknownName(said, self.near(said))
        if name.authors:
            ids, others = [id_ for id_ in ids if same_authors(name.authors, self._names[id_].authors)], ids
            if not ids:
                raise UnknownName(said, self._listed(others))
        if year is not None:
            ids, others = [id_ for id_ in ids if self._years.get(id_, year) == year], ids
            if not ids:
                raise UnknownName(said, self._listed(others))
        if len(ids) > 1 and work is not None:
            own = [id_ for id_ in ids if work in self._published_in.get(id_, ())]
            ids = own if len(own) == 1 else ids
        if len(ids) > 1:
            ids = self._meant(ids, work)
        if len(ids) > 1:
            raise AmbiguousName(said, self._listed(ids))
        return ids[0]

    def _meant(self, ids: list[str], work: str | None) -> list[str]:
        """Of homonyms those that a work can mean: none published only later, and no designation beside a name."""
        year = self._written.get(work or "")
        known = [id_ for id_ in ids if year is None or self._years.get(id_, year) <= year] or ids
        return [id_ for id_ in known if id_ not in self._no_names] or known

    def _listed(self, ids: Iterable[str]) -> tuple[str, ...]:
        """Names with their authors, and with their year where those are the same."""
        ids = list(ids)
        cited = Counter(format_name(self._names[id_]) for id_ in ids)
        told = ((format_name(self._names[id_]), self._years.get(id_)) for id_ in ids)
        return tuple(sorted(f"{text} {year}" if cited[text] > 1 and year else text for text, year in told))

    def above(self, name: Name, work: str) -> str | None:
        """Id of the genus or species that the words of a name stand in; None if it is not known.

        Of homonyms the one published in the same work is meant, else the earliest.
        """
        if name.lower:
            over = Name(name.genus, name.species)
        elif name.species or name.divisions:
            over = Name(name.genus)
        else:
            return None
        ids = self._by_words.get(words(over), ())
        return next((id_ for id_ in ids if work in self._published_in.get(id_, ())), ids[0] if ids else None)

    def near(self, said: str) -> tuple[str, ...]:
        """The names most like the words, best first."""
        return nearest(said, self._by_words)


def same_authors(said: Authors, known: Authors) -> bool:
    """Whether the citation `said` can mean `known`: `ex` and parentheses may be left out, names be abbreviated."""

    ours, theirs = said.own.team.members, known.own.team.members
    if said.own.team.and_others:
        ours, theirs = ours[:1], theirs[:1]
    return len(ours) == len(theirs) and all(map(_same_person, ours, theirs))


def _same_person(said: str, known: str) -> bool:
    """Whether two forms of a name are one, abbreviated with a point or not."""
    ours, theirs = fold(said), fold(known)
    return ours == theirs or (said.endswith(".") and theirs.startswith(ours.removesuffix(".")))


def called(corpus: Corpus, name: str) -> str:
    """A name in running text: its words, with authors only where homonyms share them."""
    return format_name(corpus.names[name].name, authors=corpus.has_homonyms(name))


def lookup(corpus: Corpus, said: str) -> str:
    """Id of the name that a user means; raises UnreadableName, UnknownName (with the nearest) or AmbiguousName."""
    published = ((id_, corpus.publishing_act(id_)) for id_ in corpus.names)
    years = {id_: act.work.year for id_, act in published if act is not None}
    table = NameTable({entry.id: entry.name for entry in corpus.names.values()}, years=years)
    for entry in corpus.names.values():
        for variant in entry.variants:
            table.add_spelling(variant, entry.id)
    if said in corpus.names:
        return said
    return table.resolve(said)


def find_taxon(corpus: Corpus, name: str) -> Taxon:
    """The taxon that is meant by the name with that id; raises NeverAccepted.

    Where a type makes a taxon in the wide and one in the strict sense, a species name means the wide, its
    autonym the strict one.
    """
    entry = corpus.names[name]
    of_type = [taxon for taxon in corpus.taxa.values() if taxon.group == entry.group]
    if not of_type:
        raise NeverAccepted(format_name(entry.name))
    wanted = Sense.STRICT if entry.is_autonym else Sense.WIDE
    return next((taxon for taxon in of_type if taxon.sense is wanted), of_type[0])


Sides = tuple[str | None, str | None]


def sides_of_criterion(corpus: Corpus, criterion: Criterion) -> Sides:
    """Ids of the taxon of a plant that fits a working criterion, and of one that does not.

    None for a name that is not given, not known or never accepted; `check` tells it.
    """
    return _taxon_said(corpus, criterion.taxon), _taxon_said(corpus, criterion.otherwise)


def _taxon_said(corpus: Corpus, said: str) -> str | None:
    try:
        return find_taxon(corpus, lookup(corpus, said)).id if said else None
    except AuctorumError:
        return None


def taxa_of_criterion(corpus: Corpus, criterion: Criterion) -> tuple[str, ...]:
    """Ids of the taxa between which a working criterion decides, without those that are not given or not known."""
    return tuple(taxon for taxon in sides_of_criterion(corpus, criterion) if taxon is not None)
