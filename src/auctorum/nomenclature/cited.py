"""Names as a synonymy cites them: in full, with place of publication, spellings, isonyms; and types."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from auctorum.corpus.model import Act, Corpus
from auctorum.names.format import format_team, words
from auctorum.names.name import Name, Team
from auctorum.names.parse import parse_authors, parse_name
from auctorum.problems import AuctorumError
from auctorum.records.schema import ActKind, TypeKind, TypeRecord

Notes = Callable[[str], tuple[str, ...]]  # id of a name -> abbreviations of its standing, such as `nom. illeg.`

NOT_VALID = "nom. inval."
_MONTHS = ("", "Jan.", "Feb.", "Mar.", "Apr.", "May", "June", "July", "Aug.", "Sept.", "Oct.", "Nov.", "Dec.")
_DESIGNATED = (TypeKind.LECTOTYPE, TypeKind.NEOTYPE, TypeKind.EPITYPE)


@dataclass(frozen=True, slots=True)
class Source:
    """A work that says something, and where; `page` is empty where none is recorded or the whole work is meant."""

    work: str
    byline: str
    page: str = ""

    def __str__(self) -> str:
        """As a text refers to it: `Orrin 1889: 107`."""
        return f"{self.byline}: {self.page}" if self.page else self.byline


@dataclass(frozen=True, slots=True)
class Spelling:
    """Another spelling of a name; `source` is None where the protologue itself prints it."""

    name: Name
    epithet_only: bool  # whether nothing but the final epithet is spelt otherwise
    source: Source | None


@dataclass(frozen=True, slots=True)
class Isonym:
    """The same name on the same type, published again: without standing (ICN Art. 6.3 Note 2)."""

    authors: str
    place: str
    work: str


@dataclass(frozen=True, slots=True)
class TypeOfName:
    """One element of a type. `words` are the specimen, figure or name, or the work's own words where that is unknown.

    `designated_by` is the author and year of a later choice (ICN Art. 9.3, 9.8, 9.9); empty for the protologue's.
    """

    kind: str
    words: str
    herbarium: str = ""
    designated_by: str = ""
    name: Name | None = None  # what `words` say, for a type that is a name (Art. 10.1)


@dataclass(frozen=True, slots=True)
class Cited:
    """One name with what stands behind it. `place` is empty for an autonym and for a name without protologue."""

    id: str
    name: Name
    place: str = ""
    work: str = ""
    notes: tuple[str, ...] = ()
    spellings: tuple[Spelling, ...] = ()
    isonyms: tuple[Isonym, ...] = ()
    is_autonym: bool = False

    @property
    def is_designation(self) -> bool:
        """Whether it was never validly published, so that it is no name in the sense of the Code (ICN Art. 12.1)."""
        return not_valid(self.notes)


def no_notes(_name: str) -> tuple[str, ...]:
    """Nothing about any name."""
    return ()


def not_valid(notes: tuple[str, ...]) -> bool:
    """Whether the notes on a name say that it was never validly published.

    >>> not_valid(("nom. inval. (Art. 36.1)",))
    True
    """
    return any(NOT_VALID in note for note in notes)


def cited(corpus: Corpus, name: str, notes: Notes = no_notes) -> Cited:
    """The name with that id, cited in full."""
    entry, published = corpus.names[name], corpus.publishing_act(name)
    again = [act for act in corpus.acts_of(name) if published is not None and _repeats(act, published)]
    return Cited(
        id=name,
        name=entry.name,
        place=place_of_publication(published) if published else "",
        work=published.work.id if published else "",
        notes=notes(name),
        spellings=tuple(_spellings(corpus, name, published)),
        isonyms=tuple(Isonym(_authors(act), place_of_publication(act), act.work.id) for act in again),
        is_autonym=entry.is_autonym,
    )


def _repeats(act: Act, published: Act) -> bool:
    """Whether an act publishes a name again that is there already (ICN Art. 6.3 Note 2); a thesis does not."""
    later = act.id != published.id and not act.work.date.certainly_before(published.work.date)
    return act.establishes and later and not act.is_plainly_no_name


def _authors(act: Act) -> str:
    return act.record.authors or format_team(Team(act.work.authors))


def _spellings(corpus: Corpus, name: str, published: Act | None) -> Iterator[Spelling]:
    """Each spelling once, by date, as the first work that prints it."""
    kept = _before_the_epithet(corpus.names[name].name)
    seen: set[Name] = set()
    for act in corpus.acts_of(name):
        if act.record.act is not ActKind.VARIANT_SPELLING or act.printed in seen:
            continue
        seen.add(act.printed)
        own = published is not None and published.work.id == act.work.id
        source = None if own else Source(act.work.id, act.work.byline, act.record.page)
        yield Spelling(act.printed, _before_the_epithet(act.printed) == kept, source)


def _before_the_epithet(name: Name) -> str:
    return words(name).removesuffix(name.final_epithet)


def place_of_publication(act: Act) -> str:
    """Where an act stands, as names are cited with it: title in short, volume, page, plate, year.

    The date of effective publication follows in square brackets where it differs from the printed one:
    `J. Tessarn Field Soc. 27: 18. 1933 [6 Feb. 1934]`.
    """
    record = act.work.record
    title = record.container_title_short or record.container_title or record.title
    issue = f"({record.issue})" if record.issue and record.volume else ""
    volume = f" {record.volume}{issue}" if record.volume else ""
    plate = act.record.plate
    where = ", ".join(filter(None, (act.record.page, f"t. {plate}" if plate[:1].isdigit() else plate)))
    stop = "" if title.endswith(".") and not (volume or where) else "."
    place = f"{_within(act)}{title}{volume}{': ' if where else ''}{where}{stop} {_dates(act)}"
    return " ".join(place.split())


def _within(act: Act) -> str:
    """`in Vane, ` where the record gives the authors of the publication so; they are no part of the name."""
    try:
        within = parse_authors(act.record.authors).own.within if act.record.authors else Team()
    except AuctorumError:
        return ""  # named as a problem by the linker
    return f"in {format_team(within)}, " if within else ""


def _dates(act: Act) -> str:
    record = act.work.record
    years = dict.fromkeys(part[:4] + part[4:].lstrip("-0123456789") for part in record.issued.split("/"))
    printed = date_in_short("/".join(years))
    if not record.effective or record.effective == record.issued:
        return printed
    return f"{printed} [{date_in_short(record.effective)}]"


def date_in_short(date: str) -> str:
    """An EDTF date as citations print it; a year with unknown digits stays as it is.

    >>> date_in_short("1934-02-06"), date_in_short("1896-03~"), date_in_short("1904-12/1905?"), date_in_short("190X")
    ('6 Feb. 1934', 'ca. Mar. 1896', 'Dec. 1904–1905?', '190X')
    """
    if date.startswith("../"):
        return f"not later than {date_in_short(date[3:])}"
    if date.endswith("/.."):
        return f"{date_in_short(date[:-3])} or later"
    if "/" in date:
        return "–".join(map(date_in_short, date.split("/")))
    bare = date.rstrip("~?%")
    year, *rest = bare.split("-")
    month, day = [*map(int, rest), 0, 0][:2]
    told = " ".join(filter(None, (str(day or ""), _MONTHS[month], year)))
    return f"{'ca. ' if date[-1:] in '~%' else ''}{told}{'?' if date[-1:] in '?%' else ''}"


def types_of(corpus: Corpus, group: str) -> tuple[TypeOfName, ...]:
    """What is recorded of the type that the names of `group` share, by date, each element once.

    Syntypes are left out where one is chosen as lectotype (ICN Art. 9.3, 9.6); a holotype is kept beside a later
    neotype. A choice that was not effectively published is none (Art. 7.10). Articles from memory.
    """
    acts = [act for name in corpus.groups[group] for act in corpus.acts_of(name)]
    found: dict[tuple[str, str, str], TypeOfName] = {}
    chosen_for: set[tuple[str, str]] = set()  # name and kind: of later choices the first is followed (Art. 9.19)
    for act in sorted(acts, key=lambda act: (act.work.date, act.id)):
        if act.record.type is not None and _states_type(act):
            one = _type(act, act.record.type)
            if not act.establishes:
                if (act.name, one.kind) in chosen_for:
                    continue
                chosen_for.add((act.name, one.kind))
            found.setdefault((one.kind, one.words, one.herbarium), one)
    chosen = any(kind == TypeKind.LECTOTYPE for kind, *_ in found)
    return tuple(one for one in found.values() if not (chosen and one.kind == TypeKind.SYNTYPE))


def _states_type(act: Act) -> bool:
    return act.establishes or act.chooses_type


def _type(act: Act, type_: TypeRecord) -> TypeOfName:
    later = act.record.act is not ActKind.NEW_TAXON and type_.kind in _DESIGNATED
    words_said = type_.specimen or (f"“{type_.verbatim}”" if type_.verbatim else "")
    name = None
    if type_.kind is TypeKind.NAME and type_.specimen:
        try:
            name = parse_name(type_.specimen)
        except AuctorumError:
            name = None  # words that are no name stand as they are
    return TypeOfName(
        kind=str(type_.kind),
        words=" ".join(words_said.split()),
        herbarium=type_.herbarium,
        designated_by=act.work.byline if later else "",
        name=name,
    )
