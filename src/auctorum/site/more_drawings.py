"""From answers to pictures of what stands behind a range: its coverage, who repeats whom, plants and thresholds."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from auctorum.characters.show import format_span
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Finding, RangeAgreement, Span
from auctorum.circumscription.independence import Tie
from auctorum.circumscription.measures import measures
from auctorum.circumscription.observed import Observed
from auctorum.circumscription.phrases import at_stage, counted
from auctorum.circumscription.separation import Parting
from auctorum.circumscription.separation_names import epithets
from auctorum.circumscription.separation_words import USEFUL, strength
from auctorum.circumscription.summary import span_words
from auctorum.site.answers import Answers
from auctorum.site.page_parts import Figure
from auctorum.site.pictures.coverage_profile import Profile, coverage_profile
from auctorum.site.pictures.lineage import Lineage, explanation, lineage_picture
from auctorum.site.pictures.range_ladder import Rung
from auctorum.site.words import Rich, capital, plain, text_of

FEWEST = 3  # works below which a profile of their agreement is but their ranges again
MOST_THRESHOLDS = 2


def lineage_figure(answers: Answers, taxon: str) -> Figure | None:
    """Who repeats whom in treating the taxon; None where nobody repeats anybody."""
    found = answers.lineage(taxon)
    if not found.lines:
        return None
    works = tuple((work, answers.bylines[work], answers.corpus.works[work].year) for work in found.works)
    lines = tuple(
        (line.later, line.earlier, line.tie is Tie.DECLARED, len(line.equal), len(line.shared)) for line in found.direct
    )
    repeating = {line.later for line in found.direct}
    told = f"Of {len(works)} works {len(repeating)} repeat an earlier one. The sentences below say the same."
    title = f"Who repeats whom on {text_of(answers.taxon(taxon, link=False))}"
    picture = Lineage(title, told, works, lines)
    caption = plain("Works by date; a line leads from a work to the one whose figures it repeats.")
    return Figure(
        lineage_picture(picture, "lineage"), lineage_picture(picture, "lineage-n", narrow=True), caption,
        explanation(picture),
    )  # fmt: skip


def profile_figure(
    answers: Answers, finding: Finding, subject: Rich, key: str, beside: tuple[Rich, Finding, Parting] | None = None
) -> Figure | None:
    """How many of the works hold each value; None for what has no figures, or is told by few.

    `beside` is another taxon with its finding on the same character, and what parts the two.
    """
    character, agreed = answers.corpus.vocabulary[finding.character], finding.agreement
    if not isinstance(agreed, RangeAgreement) or character.kind is Kind.ANGLE:
        return None
    if beside is None and finding.count.independent < FEWEST:
        return None
    title = f"{capital(at_stage(finding.character, finding.stage))}: how many works hold each value, {text_of(subject)}"
    other, threshold = None, None
    if beside is not None:
        rich, second, parting = beside
        if not isinstance(second.agreement, RangeAgreement):
            return None
        title += f" and {text_of(rich)}"
        other = (text_of(rich), _steps(second.agreement))
        if parting.cut is not None:
            threshold = (float(parting.cut.value), _figure(parting.cut.value, character))
    printed = measures(finding.evidence, character).rounded_span
    most = "; ".join(span_words(printed(span), character) for span in agreed.majority)
    described = f"Half of the works or more hold {most or 'no value'}."
    profile = Profile(
        title, described, character.unit, _steps(agreed), tuple(_ends(span) for span in agreed.majority),
        _ends(agreed.core) if agreed.core else None, text_of(subject), other, threshold,
        most=most, shared=span_words(agreed.core and printed(agreed.core), character),
        whole=character.kind is Kind.COUNT,
    )  # fmt: skip
    return Figure(coverage_profile(profile, key), coverage_profile(profile, f"{key}-n", narrow=True), ())


def plants_rung(found: Observed | None) -> Rung | None:
    """The measured plants as one more row of a ladder; None without plants, or where they show states."""
    if found is None or not isinstance(found.value, Range):
        return None
    value = found.value
    low, high, least, most = (
        None if end is None else float(end) for end in (value.low, value.high, value.least, value.most)
    )
    return Rung(counted(found.n, "plant"), found.text, low, high, least, most)


def thresholds(
    answers: Answers, finding: Finding, partings: Iterable[Parting], taxon: str
) -> tuple[tuple[float, str], ...]:
    """Where the finding parts the taxon well from others: the value, and which lies on the other side."""
    character = answers.corpus.vocabulary[finding.character]
    found: dict[Fraction, str] = {}
    for one in partings:
        fits = (one.character, one.stage) == (finding.character, finding.stage) and one.cut is not None
        if not fits or one.cut is None or one.error is None or strength(one.error) not in USEFUL:
            continue
        other = one.b if one.a == taxon else one.a
        side = "below it" if one.lower == other else "from there on"
        words = f"{_figure(one.cut.value, character)}: {side} {epithets(answers.corpus, (one.a, one.b))[other]}"
        found.setdefault(one.cut.value, words)
    return tuple((float(value), words) for value, words in found.items())[:MOST_THRESHOLDS]


def _figure(value: Fraction, character: Character) -> str:
    return format_span(value, value, character.unit)


def _steps(agreed: RangeAgreement) -> tuple[tuple[float | None, float | None, float], ...]:
    return tuple((*_ends(Span(step.low, step.high)), float(step.share)) for step in agreed.coverage)


def _ends(span: Span) -> tuple[float | None, float | None]:
    return (None if span.low is None else float(span.low), None if span.high is None else float(span.high))
