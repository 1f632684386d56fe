"""The frozen contexts that templates get: what stands on each kind of page, and nothing else."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.site.code_parts import (
    AuthorRow,
    Badge,
    OtherWork,
    Question,
    RankRow,
    RuleRow,
    Start,
    SynonymyView,
)
from auctorum.site.page_parts import (
    ActRow,
    DecadeRow,
    EventRow,
    Figure,
    FindingBlock,
    IndexEntry,
    NameRow,
    ProblemRow,
    SisterBlock,
    StandingRow,
    TaxonRow,
    TreatmentBlock,
    VerdictGroup,
    ViewRow,
    WordsRow,
    WorkRow,
)
from auctorum.site.survey_parts import CountRow, PlaceRow, Table, Threshold
from auctorum.site.words import Rich


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
    surveys: tuple[Rich, ...]  # taxa whose plants are counted
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TaxonPage:
    """What all authors make of one type."""

    name: Rich
    rank: str
    sense: str
    meaning: str  # of the sense, in sentences; empty where there is but one
    type: Rich
    answer: tuple[Rich, ...]
    path: Figure | None
    events: tuple[EventRow, ...]
    views: tuple[ViewRow, ...]
    left_out: tuple[Rich, ...]
    standing_out: tuple[tuple[str, str, Rich], ...]  # anchor, character and sentences of findings that stand out
    apart: tuple[tuple[Rich, str, Rich], ...]  # sister, address of all that is known, what tells the two apart
    groups: tuple[VerdictGroup, ...]
    survey: tuple[Rich, ...]  # how many plants there are, in sentences; empty where it has no survey
    survey_path: str
    lineage: Figure | None
    repeating: tuple[Rich, ...]  # who repeats whom, in sentences
    consensus: Rich
    sources: tuple[WorkRow, ...]
    unread: tuple[WordsRow, ...]
    latest: Rich  # the latest effectively published work that accepts it
    at_ranks: tuple[RankRow, ...]
    by_author: tuple[AuthorRow, ...]
    synonymies: tuple[SynonymyView, ...]
    literature: tuple[WorkRow, ...]


@dataclass(frozen=True, slots=True)
class NamePage:
    """One name and its life."""

    name: Rich
    rank: str
    is_autonym: bool
    badge: Badge
    place: Rich
    taxa: tuple[Rich, ...]
    acts: tuple[ActRow, ...]
    standing: tuple[StandingRow, ...]
    questions: tuple[Question, ...]
    facts: tuple[tuple[str, Rich], ...]
    same_type: tuple[NameRow, ...]
    uses: tuple[EventRow, ...]


@dataclass(frozen=True, slots=True)
class StateLine:
    """One state: `colour` its reference, `screen` that as `#rrggbb`, `apart` how far it is from the state before."""

    name: str
    others: str = ""
    meaning: str = ""
    colour: str = ""
    screen: str = ""
    apart: str = ""


@dataclass(frozen=True, slots=True)
class CharacterPage:
    """One character of the vocabulary, and what is said of it."""

    name: str
    meaning: str
    how: str
    facts: tuple[tuple[str, str], ...]
    states: tuple[StateLine, ...]
    blocks: tuple[FindingBlock, ...]
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
    compare: str  # where it is compared with other works; empty where it is not


@dataclass(frozen=True, slots=True)
class AuthorPage:
    """One author: works, names published, views held."""

    name: str
    full: str
    works: tuple[WorkRow, ...]
    names: tuple[NameRow, ...]
    views: tuple[EventRow, ...]


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
class ProblemsPage:
    """Every problem, errors first, open questions last, file by file."""

    errors: tuple[tuple[str, tuple[ProblemRow, ...]], ...]
    warnings: tuple[tuple[str, tuple[ProblemRow, ...]], ...]
    open_questions: tuple[tuple[str, tuple[ProblemRow, ...]], ...]
    counts: tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class GlossaryPage:
    """Terms of the trade in our words, and the vocabulary of characters and states."""

    terms: tuple[tuple[str, str, str], ...]  # anchor, term, meaning
    characters: tuple[tuple[Rich, str, tuple[tuple[str, str], ...]], ...]  # character, meaning, its states


@dataclass(frozen=True, slots=True)
class RulesPage:
    """The rules that names are judged by, in the order in which they are asked, under headings with a lead each."""

    edition: str
    notes: tuple[str, ...]  # what that edition has otherwise
    acts: int
    groups: tuple[tuple[str, str, tuple[RuleRow, ...]], ...]


@dataclass(frozen=True, slots=True)
class ComparisonsPage:
    """A chooser of two works; `genera` are those whose taxa are compared."""

    genera: tuple[Rich, ...]
    starts: tuple[Start, ...]
    groups: tuple[tuple[Rich, str], ...]  # genera side by side, with how many taxa
    beside: tuple[Rich, ...]  # taxa that are compared with their sisters


@dataclass(frozen=True, slots=True)
class ApartPage:
    """A taxon beside its sisters."""

    taxon: Rich
    sisters: tuple[SisterBlock, ...]


@dataclass(frozen=True, slots=True)
class GroupPage:
    """A genus at a glance; `matrix` is HTML."""

    genus: Rich
    matrix: str
    taxa: int
    shown: int


@dataclass(frozen=True, slots=True)
class SurveyPage:
    """How many plants of a taxon there are, and by whose definition.

    `others` are the other taxa with a survey; `counts` has the headings of `rows` alone. `sites` end with all together,
    `sites_left_out` have no row. `wanted` is None where no view counts anything. `criteria` are a title and facts each.
    """

    taxon: Rich
    lead: str
    answer: tuple[Rich, ...]
    others: tuple[Rich, ...]
    shares: Figure | None
    counts: Table
    rows: tuple[CountRow, ...]
    borderline: tuple[str, ...]
    threshold: Threshold | None
    site_headings: tuple[str, ...]
    sites: tuple[PlaceRow, ...]
    sites_left_out: int
    gap: tuple[str, ...]
    measurers: tuple[str, ...]
    wanted_title: str
    wanted: Table | None
    searching: str
    rests: tuple[Rich, ...]
    criteria: tuple[tuple[str, tuple[tuple[str, Rich], ...]], ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ComparisonPage:
    """What changes from one work to each other work."""

    work: Rich
    entry: Rich
    others: tuple[OtherWork, ...]


Page = (
    HomePage | TaxonPage | NamePage | CharacterPage | WorkPage | AuthorPage | RulesPage | ComparisonsPage
    | ComparisonPage | ApartPage | SurveyPage | GroupPage | ListPage | SearchPage | ProblemsPage | GlossaryPage
)  # fmt: skip
