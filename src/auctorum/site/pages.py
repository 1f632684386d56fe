"""The frozen contexts that templates get: what stands on each kind of page, and nothing else."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.site.words import Rich


@dataclass(frozen=True, slots=True)
class Shell:
    """What every page shows around its subject. `root` leads back to the root of the site."""

    site: str
    notice: str
    licence: str
    editors: tuple[str, ...]
    code_edition: str
    root: str
    section: str
    crumbs: tuple[Rich, ...]
    problems: int


@dataclass(frozen=True, slots=True)
class Figure:
    """A picture in two shapes, with its caption, which may be empty, and an explanation of the marks
    (SVG sample, words)."""

    wide: str
    narrow: str
    caption: Rich
    key: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class EventRow:
    """One act or placement of a name."""

    date: str
    who: Rich
    page: str
    what: str
    name: Rich
    rank: str
    where: Rich
    notes: Rich
    is_act: bool


@dataclass(frozen=True, slots=True)
class ViewRow:
    """One way of keeping a type, with everybody who does; `share` is of all authors, 0 to 100."""

    label: Rich
    authors: int
    works: tuple[Rich, ...]
    span: str
    share: int


@dataclass(frozen=True, slots=True)
class WordsRow:
    """What one work says, word for word, and as read; `about` is the taxon or character where that is not plain."""

    who: Rich
    year: int
    page: str
    about: Rich
    verbatim: str
    read: str
    note: str


@dataclass(frozen=True, slots=True)
class SideRow:
    """Authors on one side of a conflict."""

    says: str
    works: tuple[Rich, ...]


@dataclass(frozen=True, slots=True)
class FindingBlock:
    """One character of a taxon (or one taxon of a character): verdict, remarks, picture, words.

    `most` is what at least half of the authors say, or empty.
    """

    anchor: str
    subject: Rich
    stage: str
    verdict: str
    sign: str
    most: str
    remarks: tuple[Rich, ...]
    figure: Figure | None
    open: bool
    sides: tuple[SideRow, ...]
    silent: tuple[Rich, ...]
    rows: tuple[WordsRow, ...]


@dataclass(frozen=True, slots=True)
class VerdictGroup:
    """Findings with one verdict, with what the verdict means."""

    verdict: str
    sign: str
    meaning: str
    blocks: tuple[FindingBlock, ...]


@dataclass(frozen=True, slots=True)
class NameRow:
    """A name in a list: with authors, place of publication, and its standing."""

    name: Rich
    rank: str
    place: Rich
    work: Rich
    standing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class StandingRow:
    """One thing that the Code says of a name."""

    label: str
    article: str
    reason: Rich


@dataclass(frozen=True, slots=True)
class WorkRow:
    """A publication in a list of literature."""

    work: Rich
    entry: Rich
    note: str


@dataclass(frozen=True, slots=True)
class TaxonRow:
    """A taxon in a list, with its state of opinion in a line."""

    taxon: Rich
    rank: str
    opinion: Rich
    works: int
    contested: bool


@dataclass(frozen=True, slots=True)
class DecadeRow:
    """The works of one decade."""

    decade: str
    works: tuple[Rich, ...]


@dataclass(frozen=True, slots=True)
class HomePage:
    """The first page."""

    description: Rich
    counts: tuple[tuple[str, str], ...]  # what is counted, and how many, in figures
    years: str
    contested: tuple[TaxonRow, ...]
    taxa: tuple[TaxonRow, ...]
    decades: tuple[DecadeRow, ...]
    figure: Figure | None
    figure_of: Rich
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TaxonPage:
    """What all authors make of one type."""

    name: Rich
    rank: str
    sense: str
    type: Rich
    answer: tuple[Rich, ...]
    path: Figure | None
    events: tuple[EventRow, ...]
    views: tuple[ViewRow, ...]
    left_out: tuple[Rich, ...]
    groups: tuple[VerdictGroup, ...]
    consensus: Rich
    sources: tuple[WorkRow, ...]
    unread: tuple[WordsRow, ...]
    names: tuple[NameRow, ...]
    synonyms: tuple[tuple[Rich, tuple[Rich, ...]], ...]
    misapplied: tuple[tuple[Rich, tuple[Rich, ...]], ...]
    literature: tuple[WorkRow, ...]


@dataclass(frozen=True, slots=True)
class ActRow:
    """One act: what, where, on what it rests, and the words."""

    what: str
    who: Rich
    place: Rich
    rank: str
    facts: tuple[tuple[str, Rich], ...]
    verbatim: str
    note: Rich


@dataclass(frozen=True, slots=True)
class NamePage:
    """One name and its life."""

    name: Rich
    rank: str
    is_autonym: bool
    variants: tuple[Rich, ...]
    place: Rich
    taxa: tuple[Rich, ...]
    acts: tuple[ActRow, ...]
    standing: tuple[StandingRow, ...]
    same_type: tuple[NameRow, ...]
    uses: tuple[EventRow, ...]


@dataclass(frozen=True, slots=True)
class CharacterPage:
    """One character of the vocabulary, and what is said of it."""

    name: str
    meaning: str
    how: str
    facts: tuple[tuple[str, str], ...]
    states: tuple[tuple[str, str, str, str], ...]  # name, other words, meaning, colour reference
    blocks: tuple[FindingBlock, ...]
    rows: tuple[WordsRow, ...]


@dataclass(frozen=True, slots=True)
class TreatmentBlock:
    """How one work keeps one name, and its words."""

    anchor: str
    name: Rich
    facts: tuple[tuple[str, Rich], ...]
    verbatim: str
    note: Rich
    rows: tuple[WordsRow, ...]


@dataclass(frozen=True, slots=True)
class WorkPage:
    """One publication."""

    title: str
    entry: Rich
    addresses: tuple[tuple[str, str], ...]
    facts: tuple[tuple[str, Rich], ...]
    note: Rich
    acts: tuple[tuple[Rich, ActRow], ...]
    treatments: tuple[TreatmentBlock, ...]
    leaves_out: tuple[Rich, ...]


@dataclass(frozen=True, slots=True)
class AuthorPage:
    """One author: works, names published, views held."""

    name: str
    full: str
    works: tuple[WorkRow, ...]
    names: tuple[NameRow, ...]
    views: tuple[EventRow, ...]


@dataclass(frozen=True, slots=True)
class IndexEntry:
    """A line of an index; `detail` tells like things apart."""

    rich: Rich
    detail: str
    href: str


@dataclass(frozen=True, slots=True)
class ListPage:
    """A list of like things: characters, publications, authors; grouped under headings (may be empty)."""

    title: str
    lead: str
    groups: tuple[tuple[str, tuple[IndexEntry, ...]], ...]


@dataclass(frozen=True, slots=True)
class SearchPage:
    """Everything with a page, by kind, in alphabetical order."""

    groups: tuple[tuple[str, tuple[IndexEntry, ...]], ...]


@dataclass(frozen=True, slots=True)
class ProblemRow:
    """One problem of the knowledge base."""

    place: str
    what: str
    remedy: str


@dataclass(frozen=True, slots=True)
class ProblemsPage:
    """Every problem, errors first, file by file."""

    errors: tuple[tuple[str, tuple[ProblemRow, ...]], ...]
    warnings: tuple[tuple[str, tuple[ProblemRow, ...]], ...]
    counts: tuple[int, int]


@dataclass(frozen=True, slots=True)
class GlossaryPage:
    """Terms of the trade in our words, and the vocabulary of characters and states."""

    terms: tuple[tuple[str, str, str], ...]  # anchor, term, meaning
    characters: tuple[tuple[Rich, str, tuple[tuple[str, str], ...]], ...]  # character, meaning, its states


Page = (
    HomePage | TaxonPage | NamePage | CharacterPage | WorkPage | AuthorPage
    | ListPage | SearchPage | ProblemsPage | GlossaryPage
)  # fmt: skip
