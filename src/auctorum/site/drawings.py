"""From answers to pictures: a history becomes a rank path, a finding becomes a ladder."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from auctorum.characters.show import format_value
from auctorum.characters.states import state_names
from auctorum.characters.values import Modality, Share, States
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Evidence, Finding, RangeAgreement, Span, StateAgreement
from auctorum.circumscription.measures import measures
from auctorum.circumscription.phrases import at_stage
from auctorum.circumscription.summary import span_words
from auctorum.names.ranks import UNRANKED
from auctorum.nomenclature.history import Event, History
from auctorum.records.schema import ActKind
from auctorum.site.answers import NEAREST, Answers
from auctorum.site.more_drawings import plants_rung, thresholds
from auctorum.site.page_parts import Figure
from auctorum.site.pictures.range_ladder import Ladder, Rung, explanation, range_ladder
from auctorum.site.pictures.rank_path import Mark, Path, rank_path, sample
from auctorum.site.pictures.state_ladder import Patch, StateLadder, StateRow, state_ladder
from auctorum.site.ranks import by_rank
from auctorum.site.words import Rich, capital, plain, sentence, text_of

SUNK, WRONG, NO_STANDING, LEFT_OUT = "in synonymy", "misapplied", "no standing", "left out"
ASIDE = (SUNK, WRONG, NO_STANDING, LEFT_OUT)
ABOUT_A_NAME = (ActKind.TYPE_DESIGNATION, ActKind.VARIANT_SPELLING)  # acts that move nothing
_OF_STATUS = {"accepted": "disc", "synonym": "ring", "misapplied": "cross", "doubtful": "query"}
_MEANING = {
    "square": "published as new",
    "diamond": "moved, re-ranked or renamed",
    "hollow": "printed without standing under the Code",
    "disc": "accepted",
    "ring": "sunk into another taxon",
    "query": "kept with doubt",
    "cross": "name held to be misapplied",
    "tick": "covers the group, leaves it out",
}
_STRENGTH = {
    Modality.ALWAYS: "solid", Modality.USUALLY: "solid", Modality.OFTEN: "hatched", Modality.SOMETIMES: "hatched",
    Modality.OCCASIONALLY: "outline", Modality.RARELY: "outline", Modality.NEVER: "cross",
}  # fmt: skip


def path_figure(answers: Answers, group: str, name: Rich, key: str) -> Figure | None:
    """The rank path of a group of names; None where the corpus has neither act nor placement of it."""
    history = answers.history(group)
    marks = tuple(_marks(answers, history))
    if not marks:
        return None
    used = {mark.lane for mark in marks}
    ranks = by_rank(used - set(ASIDE))
    lanes = (*ranks, *(lane for lane in ASIDE if lane in used))
    title = f"Rank path of {text_of(name)}"
    path = Path(title, _described(history, marks), lanes, len(ranks), marks)
    shapes = [shape for shape in _MEANING if any(mark.shape == shape for mark in marks)]
    caption = (*plain("Rank path of "), *name, *plain(": years across, ranks as steps. The line joins the acts."))
    return Figure(
        rank_path(path, key), rank_path(path, f"{key}-n", narrow=True), caption,
        tuple((sample(shape), _MEANING[shape]) for shape in shapes),
    )  # fmt: skip


def _marks(answers: Answers, history: History) -> Iterator[Mark]:
    """One mark for each lane on which a work stands, by year; an act says more than a placement beside it."""
    found: dict[tuple[str, str], Mark] = {}
    plain_ones = {event.work for event in history.events if event.status and not _is_autonym(answers, event)}
    for event in history.events:
        if event.is_act and event.what in ABOUT_A_NAME:
            continue
        if _is_autonym(answers, event) and event.work in plain_ones:
            continue  # a species and its autonym in one work are one view of the type
        mark = _mark(answers, event)
        key = (event.work, mark.lane)
        if key not in found or (event.is_act and not found[key].joined):
            found[key] = mark
    silent = [Mark(answers.corpus.works[work].year, LEFT_OUT, "tick", answers.bylines[work]) for work in history.silent]
    yield from sorted([*found.values(), *silent], key=lambda mark: mark.year)


def _is_autonym(answers: Answers, event: Event) -> bool:
    return answers.corpus.names[event.used].is_autonym


def _mark(answers: Answers, event: Event) -> Mark:
    label = answers.bylines[event.work]
    if event.is_act:
        if without_standing(event):
            return Mark(event.year, NO_STANDING, "hollow", label)
        label = f"{label}, nom. illeg." if event.illegitimate else label
        shape = "square" if event.what == ActKind.NEW_TAXON else "diamond"
        return Mark(event.year, event.rank or UNRANKED.name, shape, label, joined=True)
    lane = {"synonym": SUNK, "misapplied": WRONG}.get(event.status, event.rank or UNRANKED.name)
    return Mark(event.year, lane, _OF_STATUS.get(event.status, "query"), label)


def without_standing(event: Event) -> bool:
    """Whether the act of `event` fails to publish a name at all."""
    return not event.stands


def _described(history: History, marks: Iterable[Mark]) -> str:
    """The picture in a sentence or two, for those who cannot see it."""
    acts = [f"{mark.label} as {mark.lane}" for mark in marks if mark.joined]
    views = [f"{view.label}: {len(view.authors)}" for view in history.views]
    told = [f"Acts: {'; '.join(acts)}." if acts else "", f"Authors by view: {'; '.join(views)}." if views else ""]
    told.append(f"Works that cover the group and leave it out: {len(history.silent)}." if history.silent else "")
    return " ".join(filter(None, told)) + " The table below says the same."


def ladder_figure(answers: Answers, finding: Finding, taxon: str, key: str) -> Figure | None:
    """The ladder of a finding on the taxon; None where nobody says anything.

    Measured plants stand below the works; values that part the taxon from its first sisters cross the picture.
    """
    character = answers.corpus.vocabulary[finding.character]
    if not finding.evidence:
        return None
    title = f"{capital(at_stage(finding.character, finding.stage))}: {text_of(answers.taxon(taxon, link=False))}"
    description = " ".join(sentence(remark) for remark in finding.remarks) + f" Verdict: {finding.verdict}."
    if character.kind.is_numeric:
        ranges = _ladder(answers, finding, character, title, description)
        if character.kind is not Kind.ANGLE:
            seen = answers.observed(taxon).get((finding.character, finding.stage))
            partings = [one for _, found in answers.apart(taxon, NEAREST) for one in found.partings]
            crossing = thresholds(answers, finding, partings, taxon)
            ranges = replace(ranges, plants=plants_rung(seen), thresholds=crossing)
        narrow = range_ladder(ranges, f"{key}-n", narrow=True)
        return Figure(range_ladder(ranges, key), narrow, (), explanation(ranges))
    states = _states(answers, finding, character, title, description)
    pictures = state_ladder(states, key), state_ladder(states, f"{key}-n", narrow=True)
    return Figure(*pictures, plain(_unsaid(answers, finding)))


def _unsaid(answers: Answers, finding: Finding) -> str:
    """Who says nothing, in words: rows without a mark would bury the few that have one."""
    silent = [text_of(work) for work in answers.works(finding.silent)]
    return f"Says nothing: {', '.join(silent)}." if silent else ""


def _ladder(answers: Answers, finding: Finding, character: Character, title: str, description: str) -> Ladder:
    rungs = [(evidence.year, evidence.work, _rung(answers, evidence, character)) for evidence in finding.evidence]
    compass = character.kind is Kind.ANGLE
    turn = next((_middle(rung.numbers) for *_, rung in rungs), 0.0)
    if compass:
        rungs = [(year, work, _moved(rung, turn)) for year, work, rung in rungs]
    rungs += [(_year(answers, work), work, Rung(answers.bylines[work])) for work in finding.silent]
    agreement = finding.agreement
    majority: list[tuple[float, float]] = []
    core, shared = None, ""
    if isinstance(agreement, RangeAgreement) and len({evidence.work for evidence in finding.evidence}) > 1:
        majority = [ends for span in agreement.majority if (ends := _ends(span))]
        core = _ends(agreement.core) if agreement.core else None
        printed = measures(finding.evidence, character).rounded_span
        shared = span_words(agreement.core and printed(agreement.core), character)
    if compass:
        majority = [_nearest_turn(ends, turn) for ends in majority]
        core = _nearest_turn(core, turn) if core else None
    return Ladder(
        title, description, character.unit, tuple(rung for *_, rung in sorted(rungs, key=lambda row: row[:2])),
        tuple(majority), core, shared, whole=character.kind is Kind.COUNT, compass=compass,
    )  # fmt: skip


def _middle(numbers: Iterable[float]) -> float:
    """The middle of some bearings, to which the others are turned: north may be 0 in one work, 360 in the next."""
    known = list(numbers)
    return (min(known) + max(known)) / 2 if known else 0.0


def _nearest_turn(ends: tuple[float, float], middle: float) -> tuple[float, float]:
    """The same bearings, by whole turns as near to `middle` as they come."""
    shift = 360.0 * round((middle - sum(ends) / 2) / 360)
    return ends[0] + shift, ends[1] + shift


def _moved(rung: Rung, middle: float) -> Rung:
    if not rung.numbers:
        return rung
    low, high = min(rung.numbers), max(rung.numbers)
    shift = _nearest_turn((low, high), middle)[0] - low

    def turned(end: float | None) -> float | None:
        return None if end is None else end + shift

    return replace(
        rung, low=turned(rung.low), high=turned(rung.high), least=turned(rung.least), most=turned(rung.most)
    )  # fmt: skip


def _rung(answers: Answers, evidence: Evidence, character: Character) -> Rung:
    span, extremes = evidence.span or Span(None, None), evidence.extremes or Span(None, None)
    low, high, least, most = (
        None if end is None else float(end) for end in (span.low, span.high, extremes.low, extremes.high)
    )
    return Rung(
        answers.bylines[evidence.work], format_value(evidence.value, character), low, high,
        least if least != low else None, most if most != high else None, bool(evidence.repeats),
    )  # fmt: skip


def _states(answers: Answers, finding: Finding, character: Character, title: str, description: str) -> StateLadder:
    names = state_names(character)
    column = {name: index for index, name in enumerate(names)}
    rows = []
    for evidence in finding.evidence:
        shares = evidence.value.shares if isinstance(evidence.value, States) else ()
        patches = tuple(patch for share in shares if (patch := _patch(share, column)) is not None)
        label = answers.bylines[evidence.work]
        rows.append((evidence.year, evidence.work, StateRow(label, patches, bool(evidence.repeats))))
    core = finding.agreement.core if isinstance(finding.agreement, StateAgreement) else ()
    several = len({evidence.work for evidence in finding.evidence}) > 1
    shared = tuple(column[state] for state in core if state in column) if several else ()
    ordered = tuple(row for *_, row in sorted(rows, key=lambda row: (row[0], row[1])))
    return StateLadder(title, description, names, ordered, character.kind is Kind.ORDERED, shared)


def _patch(share: Share, column: Mapping[str, int]) -> Patch | None:
    """A share as columns; None where a state is not in the vocabulary."""
    first, last = column.get(share.state), column.get(share.to or share.state)
    if first is None or last is None:
        return None
    return Patch(min(first, last), max(first, last), _STRENGTH[share.modality])


def _ends(span: Span) -> tuple[float, float] | None:
    return None if span.low is None or span.high is None else (float(span.low), float(span.high))


def _year(answers: Answers, work: str) -> int:
    return answers.corpus.works[work].year
