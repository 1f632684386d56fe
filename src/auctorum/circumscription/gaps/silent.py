"""Works that leave out what nearly all others give of a taxon, where it matters."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from auctorum.circumscription.findings import Verdict
from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import PARTS_WELL, one_more, value_of
from auctorum.circumscription.gaps.words import listed, pages_of
from auctorum.circumscription.phrases import counted

NEARLY_ALL = 0.75  # of the other works
FEWEST = 3  # works below which there is no custom to leave


@dataclass(frozen=True, slots=True)
class _Left:
    """A character that a work leaves out of a taxon; `voices` is the number of works that give it."""

    work: str
    taxon: str
    character: str
    voices: int
    value: float
    in_conflict: bool


def silent(ground: Ground) -> Iterator[Gap]:
    """One gap for each work: what it leaves out that at least three works and three quarters of the others give, if
    that separates the taxon from a sister or is in conflict."""
    by_work: dict[str, list[_Left]] = {}
    for taxon in ground.taxa:
        if ground.several_works(taxon):
            for left in _left_out(ground, taxon):
                by_work.setdefault(left.work, []).append(left)
    for work, several in by_work.items():
        yield _gap(ground, work, several)


def _left_out(ground: Ground, taxon: str) -> Iterator[_Left]:
    speaking: dict[str, set[str]] = {}
    quiet: dict[str, tuple[str, ...]] = {}
    differing = set()
    for finding in ground.told(taxon):
        speaking.setdefault(finding.character, set()).update(item.work for item in finding.evidence)
        quiet[finding.character] = finding.silent
        if finding.verdict in (Verdict.CONFLICTING, Verdict.DRIFTING):
            differing.add(finding.character)
    for character, works in speaking.items():
        others = len(works) + len(quiet[character]) - 1
        if not quiet[character] or len(works) < FEWEST or len(works) < NEARLY_ALL * others:
            continue
        value, in_conflict = ground.apart.value(taxon, character), character in differing
        if in_conflict or value >= value_of(PARTS_WELL):
            for work in quiet[character]:
                yield _Left(work, taxon, character, len(works), value, in_conflict)


def _gap(ground: Ground, work: str, several: list[_Left]) -> Gap:
    taxa = tuple(dict.fromkeys(left.taxon for left in several))
    ranks = [ground.rank(one_more(left.value, left.voices), left.taxon) for left in several]
    first = several[ranks.index(max(ranks))]
    treatments = [ground.treatment(taxon, work) for taxon in taxa]
    matter = "works differ on it" if first.in_conflict else "it tells the taxon from a sister"
    byline = ground.corpus.works[work].byline
    return Gap(
        GapKind.SILENT,
        max(ranks),
        question=f"{byline}: does it give the {_listed(ground, several, first.taxon)}?",
        why=f"{counted(first.voices, 'work')} give the {ground.label(first.character)} of {ground.title(first.taxon)}, "
        f"and {matter}.{_also(ground, several, [taxon for taxon in taxa if taxon != first.taxon])}",
        todo=f"Look up {pages_of(treatments)} once more, and its figures and tables; add what it says under `traits:`.",
        taxa=taxa,
        works=(work,),
        characters=tuple(dict.fromkeys(left.character for left in several)),
        place=treatments[0].record.place,
    )


def _also(ground: Ground, several: Sequence[_Left], taxa: Sequence[str]) -> str:
    """What it leaves out of further taxa; of more than two the first, and how many more."""
    parts = [_listed(ground, several, taxon) for taxon in taxa]
    if len(parts) > 2:
        parts = [parts[0], f"something of {len(parts) - 1} more taxa"]
    return f" Left out, too: {'; '.join(parts)}." if parts else ""


def _listed(ground: Ground, several: Sequence[_Left], taxon: str) -> str:
    left = ground.labels(one.character for one in several if one.taxon == taxon)
    return f"{listed(left)} of {ground.title(taxon)}"
