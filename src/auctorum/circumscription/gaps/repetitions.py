"""Works that say what an earlier one says, where nothing shows that they read it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from auctorum.circumscription.findings import Finding
from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.words import listed
from auctorum.circumscription.independence import Line, suspects
from auctorum.circumscription.phrases import counted
from auctorum.circumscription.voices import voices

Suspect = tuple[str, Line]  # id of the taxon, and what the two works have in common in treating it
MOST_WORKS = 400  # on one taxon: of more, the latest are compared, since every pair of them is


def repetitions(ground: Ground) -> Iterator[Gap]:
    """One gap for each work that may repeat others: one reading of what it cites settles them all.

    The question names the earlier work with which it has most in common.
    """
    by_work: dict[str, list[Suspect]] = {}
    for taxon in ground.taxa:
        if ground.several_works(taxon):
            treatments = [ground.corpus.treatments[one] for one in ground.corpus.taxa[taxon].treatments]
            for line in suspects(ground.corpus, treatments[-MOST_WORKS:]):
                by_work.setdefault(line.later, []).append((taxon, line))
    for work, several in by_work.items():
        yield _gap(ground, work, several)


def _gap(ground: Ground, work: str, several: Sequence[Suspect]) -> Gap:
    taxon, line = max(several, key=lambda one: len(one[1].equal))
    bylines = {id_: ground.corpus.works[id_].byline for id_ in (work, *(one.earlier for _, one in several))}
    earlier = listed(bylines[one.earlier] for _, one in several)
    changes = [(*change, id_) for id_, one in several for change in _changes(ground, id_, one)]
    losing = [(before, after, what, id_) for before, after, what, id_ in changes if after < before]
    ranks = [ground.rank((before - after) / before, id_) for before, after, _, id_ in losing]
    why = (
        f"It says the same in {len(line.equal)} of {counted(len(line.shared), 'character')} of {ground.title(taxon)}, "
    )
    why += "and nothing shows that the one knew the other."
    if losing:
        before, after, what, id_ = losing[ranks.index(max(ranks))]
        why += f" If it repeats, {counted(after, 'independent author')} instead of {before} would stand behind {what}"
        why += f" of {ground.title(id_)}." if id_ != taxon else "."
    return Gap(
        GapKind.REPETITION,
        max(ranks, default=0.0),
        question=f"{bylines[work]}: are its figures those of {bylines[line.earlier]}?",
        why=why,
        todo=f"Look whether {bylines[work]} cites {earlier}; if so, add `cites:` to the file or `follows:` to the "
        "treatment.",
        taxa=tuple(dict.fromkeys(id_ for id_, _ in several)),
        works=tuple(bylines),
        characters=tuple(dict.fromkeys(character for _, one in several for character, _ in one.equal)),
        place=ground.treatment(taxon, work).record.place,
    )


def _changes(ground: Ground, taxon: str, line: Line) -> Iterator[tuple[int, int, str]]:
    """Independent authors of each character said alike, now and without the later work."""
    findings = {(one.character, one.stage): one for one in ground.told(taxon)}
    for key in line.equal:
        if key in findings:
            yield (*_authors(ground, findings[key], line.later), ground.label(*key))


def _authors(ground: Ground, finding: Finding, work: str) -> tuple[int, int]:
    heard = voices(finding.evidence, ground.corpus.vocabulary[finding.character])
    own = [voice for voice in heard if not voice.repeats]
    return len({voice.author for voice in own}), len({voice.author for voice in own if voice.work != work})
