"""The frozen pieces that pages are put together from: rows of tables, figures, blocks of findings."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.site.code_parts import Called
from auctorum.site.words import Rich


@dataclass(frozen=True, slots=True)
class Shell:
    """What every page shows around its subject. `root` leads back to the root of the site, `surveys` tells whether the
    menu leads to any."""

    site: str
    notice: str
    licence: str
    editors: tuple[str, ...]
    code_edition: str
    root: str
    section: str
    crumbs: tuple[Rich, ...]
    surveys: bool = False


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
    """One act or placement of a name; `use` tells how the name stands to the correct one, None for an act."""

    date: str
    who: Rich
    page: str
    what: str
    name: Rich
    rank: str
    where: Rich
    notes: Rich
    is_act: bool
    use: Called | None = None


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
    """What one work says, word for word, and as read; `about` is the taxon or character where that is not plain.

    `holds` tells how many of the measured plants the statement holds; empty where none were measured.
    """

    who: Rich
    page: str
    about: Rich
    verbatim: str
    read: str
    note: str
    holds: str = ""


@dataclass(frozen=True, slots=True)
class ApartRow:
    """One character between two taxa: what each is, how far they overlap, where to part them, who bears that out."""

    character: Rich
    stage: str
    says: tuple[str, str]
    overlap: str
    threshold: Rich
    error: str
    works: str
    support: tuple[Rich, ...]
    strength: str


@dataclass(frozen=True, slots=True)
class SisterBlock:
    """A taxon beside one sister; `heads` are their last epithets, `unknown` the characters stated of one alone."""

    anchor: str
    sister: Rich
    heads: tuple[Rich, Rich]
    sentences: Rich
    rows: tuple[ApartRow, ...]
    unknown: tuple[Rich, ...]
    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True)
class SideRow:
    """Authors on one side of a conflict."""

    says: str
    works: tuple[Rich, ...]


@dataclass(frozen=True, slots=True)
class FindingBlock:
    """One character of a taxon (or one taxon of a character): verdict, remarks, picture, words.

    `most` is what at least half of the authors say, or empty; `count` tells how many authors speak, how many of them
    of their own.
    """

    anchor: str
    subject: Rich
    stage: str
    verdict: str
    sign: str
    most: str
    count: str
    remarks: tuple[Rich, ...]
    seen: tuple[Rich, ...]  # what measured plants show, in sentences
    figure: Figure | None
    profile: Figure | None
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


@dataclass(frozen=True, slots=True)
class DecadeRow:
    """The works of one decade."""

    decade: str
    works: tuple[Rich, ...]


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
class TreatmentBlock:
    """How one work keeps one name, and its words."""

    anchor: str
    name: Rich
    facts: tuple[tuple[str, Rich], ...]
    verbatim: str
    note: Rich
    rows: tuple[WordsRow, ...]


@dataclass(frozen=True, slots=True)
class IndexEntry:
    """A line of an index; `detail` tells like things apart."""

    rich: Rich
    detail: str
    href: str


@dataclass(frozen=True, slots=True)
class ProblemRow:
    """One problem of the knowledge base."""

    place: str
    what: str
    remedy: str
