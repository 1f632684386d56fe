"""What the checking of labels found, in sentences and rows for people.

The wording stays with what the label says and what was measured: nobody is said to be wrong, or to have done wrong.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from auctorum.circumscription.phrases import capital, counted, interval_words, listed
from auctorum.circumscription.wording import MATURE
from auctorum.corpus.cautions import OPINION
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import UNSTATED
from auctorum.determination.criteria.words import sentences
from auctorum.determination.labels.model import (
    Against,
    ByCriterion,
    How,
    LabelFinding,
    LabelReport,
    LabelVerdict,
    SellerSum,
    Strength,
    TraitTest,
)
from auctorum.determination.telling.words import percent

NO_SELLER = "no seller noted"
ALL = "all"
SELLER_HEADINGS = (
    "seller", "labels", "right", "misspelt", "several", "not found", "consistent", "not testable", "contradicted",
)  # fmt: skip
LABEL_HEADINGS = ("label", "says", "name", "plant", "what the plant shows")
_FEW = 3  # statements that are quoted where room is short

RULE = (
    "A trait speaks against a name where the plant lies outside all that works give, extremes, printed precision and "
    "error of measuring included; works that only repeat another do not count. Outside every work, of two at least: "
    "strongly. Outside most of them, or beside a single one: weakly, as where the next state on a spectrum is allowed. "
    "One strong trait contradicts a label, or two weak ones if they are a quarter of those tested."
)
MANY_REASONS = (
    "A plant that does not fit its label may have been mislabelled before it reached the seller, be young, have been "
    "grown in other conditions, or be a form that no author saw."
)
BUYING = (
    "Ask where a plant was raised. Plants dug in the wild may need permits to sell, to buy and to carry, and protected "
    "species may not be sold at all: local law and licences come first."
)
HANDLING = "A name on a label makes no plant safe to eat or to handle."
INTERVALS = (
    "Ranges are Wilson's, 95 %, and given from five tested plants on. They hold for a seller's other plants only if "
    "those noted were taken blindly from them."
)


def lead(report: LabelReport) -> str:
    """How many labels of how many sellers, and what they come to."""
    whole = report.whole
    sellers = sum(bool(one.seller) for one in report.sellers)
    names = [f"{whole.right} right", f"{whole.misspelt} misspelt"]
    names += [f"{whole.several} that may mean several names"] if whole.several else []
    names += [f"{whole.not_found} not found"] if whole.not_found else []
    of_sellers = f" of {counted(sellers, 'seller')}" if sellers else ""
    return (
        f"{capital(counted(whole.labels, 'label'))}{of_sellers}. Names as printed: {', '.join(names)}. Plants: "
        f"{whole.consistent} consistent with the label, {whole.contradicted} contradicted by their own traits, "
        f"{whole.not_testable} not testable."
    )


def seller_rows(report: LabelReport) -> tuple[tuple[str, ...], ...]:
    """A row for each seller, then one for all where there are several; cells as in SELLER_HEADINGS."""
    rows = [_seller_row(one, one.seller or NO_SELLER) for one in report.sellers]
    return (*rows, *([_seller_row(report.whole, ALL)] if len(rows) > 1 else []))


def _seller_row(one: SellerSum, called: str) -> tuple[str, ...]:
    figures = (
        one.labels, one.right, one.misspelt, one.several, one.not_found, one.consistent, one.not_testable,
    )  # fmt: skip
    return (called, *map(str, figures), _share(one))


def _share(one: SellerSum) -> str:
    """`2 of 7 (8–64 %)`; the range only where it says anything."""
    if not one.tested:
        return "none tested"
    told = f"{one.contradicted} of {one.tested}"
    return told if one.interval is None else f"{told} ({interval_words(one.interval)})"


def label_rows(report: LabelReport, short: Mapping[str, str]) -> tuple[tuple[str, ...], ...]:
    """A row for each label; `short` are names of taxa for tables. Cells as in LABEL_HEADINGS."""
    return tuple(
        (one.id, one.label, name_words(one, short), str(one.verdict), _showing(one)) for one in report.findings
    )


def name_words(one: LabelFinding, names: Mapping[str, str]) -> str:
    """How the name is spelt, and the taxon it is of: `misspelt (n for m): C. album var. longum`.

    Of a synonym the taxon is not its own: `right; stands for C. album var. longum`.
    """
    taxon = one.meaning.taxon
    between = "; stands for " if _of_synonym(one) else ": "
    return _spelt(one) if taxon is None else f"{_spelt(one)}{between}{names.get(taxon, one.name)}"


def _of_synonym(one: LabelFinding) -> bool:
    """Whether the one name on the label is a synonym, so that a sentence tells of what."""
    return bool(one.meaning.standing) and one.matched.how is not How.SEVERAL


def _spelt(one: LabelFinding) -> str:
    found = one.matched
    told = "several names are possible" if found.how is How.SEVERAL else str(found.how)
    if found.how is How.MISSPELT or (found.how is How.SEVERAL and found.differences):
        told += f" ({', '.join(dict.fromkeys(found.differences))})"
    if found.form and found.how is not How.SEVERAL:
        told += f" but for {listed(found.form)}" if found.how is How.RIGHT else f", {listed(found.form)}"
    return told


def plant_words(one: LabelFinding) -> str:
    """The verdict, and why where there is none."""
    return f"{one.verdict}: {one.why}" if one.why else str(one.verdict)


def _showing(one: LabelFinding) -> str:
    """`6 traits: spur length 17 mm (against 10 of 10 works)`, the strongest first, or why none was tested.

    Last stands what the plant could be.
    """
    several = [*one.of_strength(Strength.STRONG), *one.of_strength(Strength.WEAK)]
    told = [f"{trait_said(each)} (against {len(each.against)} of {counted(each.works, 'work')})" for each in several]
    tested = counted(sum(each.tested for each in one.traits), "trait")
    said = [one.why or f"{tested}: {'; '.join(told) or 'none against it'}"]
    if one.instead is not None:
        said.append(f"likeliest {one.instead.name}, {percent(one.instead.probability)}")
    return "; ".join(said)


def trait_said(one: TraitTest) -> str:
    """`spur length 17 mm`, `young spur colour ivory`."""
    stage = "" if one.stage in ("", MATURE, UNSTATED) else f"{one.stage} "
    return f"{stage}{one.character} {one.observed}"


def trait_words(one: TraitTest, most: int | None = _FEW) -> str:
    """How one trait speaks against the name: by how much, and against which statements; `most` of them in full.

    `Strong: spur length 17 mm is 1 mm below the lowest that any of 10 works gives; Quessel 1951: 47 gives ...`
    """
    nearest = one.against[0]
    rest = one.against if most is None else one.against[:most]
    quoted = "; ".join(f"{source(each)} “{each.verbatim}”" for each in rest)
    more = len(one.against) - len(rest)
    tail = f"; and {more} more" if more else ""
    said = f"{capital(str(one.strength))}: {trait_said(one)} {_outside(one, nearest)}"
    return f"{said}; {source(nearest)} gives {nearest.stated}. In their words: {quoted}{tail}."


def _outside(one: TraitTest, nearest: Against) -> str:
    if not one.gap or one.gap.endswith("spectrum"):
        return _not_allowed(one) + (f", the nearest is {one.gap} away" if one.gap else "")
    every = len(one.against) == one.works
    side, end = ("below", "lowest") if nearest.below else ("above", "highest")
    if one.works == 1:
        return f"is {one.gap} {side} the {end} that the one work gives which states it"
    if every and len({each.below for each in one.against}) == 1:
        return f"is {one.gap} {side} the {end} that any of {one.works} works gives"
    whole = f"any of {one.works} works gives" if every else f"{len(one.against)} of {one.works} works give"
    return f"is outside what {whole}, {one.gap} {side} the nearest of them"


def _not_allowed(one: TraitTest) -> str:
    if one.works == 1:
        return "is not allowed by the one work that states it"
    allowing = one.works - len(one.against)
    return f"is allowed by {f'{allowing} of {one.works} works only' if allowing else f'none of {one.works} works'}"


def source(one: Against) -> str:
    """`Orrin 1889: 107`."""
    return f"{one.byline}: {one.page}" if one.page else one.byline


def title_of_label(one: LabelFinding) -> str:
    """`INV-L04, Haven market stall 4: “Cremnocentron albun”`."""
    return f"{', '.join(filter(None, (one.id, one.seller)))}: “{one.label}”"


def account(corpus: Corpus, one: LabelFinding) -> Iterator[str]:
    """What the label means and what the plant shows, in sentences; without the traits that speak against it."""
    said = _spelt(one) if _of_synonym(one) else name_words(one, {})
    yield f"{capital(said)}." if one.matched.how is How.SEVERAL else f"The name is {said}."
    if one.matched.set_aside:
        yield f"Set aside: {'; '.join(one.matched.set_aside)}."
    if one.meaning.standing:
        yield one.meaning.standing
    yield f"The plant: {plant_words(one)}."
    inside = [each for each in one.traits if each.tested and each.strength is Strength.NONE]
    if inside:
        yield f"Within what works give, or most of them: {', '.join(map(trait_said, inside))}."
    if one.verdict is not LabelVerdict.NOT_TESTABLE:
        left = [f"{trait_said(each)} ({each.why})" for each in one.traits if not each.tested]
        if left:
            yield f"Not tested: {'; '.join(left)}."
    if one.stage_taken:
        yield "No growth stage was noted; figures were taken as those of a mature plant."
    for each in one.criteria:
        yield criterion_words(corpus, each)
    if one.instead is not None:
        yield instead_words(one)


def criterion_words(corpus: Corpus, one: ByCriterion) -> str:
    """The verdict of a working criterion, and whether the label agrees with it."""
    said = sentences(corpus, one.criterion, one.judged)[0]
    if one.agrees is None:
        return said
    return f"{said} {'So does the label say.' if one.agrees else 'The label says otherwise.'}"


def instead_words(one: LabelFinding) -> str:
    """What all authors together make of the plant."""
    found = one.instead
    if found is None:
        return ""
    chance = percent(found.probability)
    if found.same:
        return f"All the same no other taxon of the knowledge base is likelier: {found.name}, {chance}."
    begun = "By all authors together the plant could be" if one.verdict is LabelVerdict.CONTRADICTED else _LIKELY
    inside = ", which works place in what the label says" if found.inside else ""
    return f"{begun} {found.name}, {chance}{inside}."


_LIKELY = "By all authors together the plant is likeliest"


def grounds(report: LabelReport) -> tuple[str, ...]:
    """The rule, how often it errs, and what a contradiction does not say; each once."""
    return (RULE, *_tried(report), MANY_REASONS)


def _tried(report: LabelReport) -> Iterator[str]:
    trial = report.trial
    if trial.tested:
        yield (
            f"The same rule contradicts {trial.contradicted} of {counted(trial.tested, 'named plant')} of the "
            "knowledge base under their own names, so a contradiction is a reason to look again, and no proof."
        )


def cautions() -> Sequence[str]:
    """What a buyer should bear in mind."""
    return (OPINION, BUYING, HANDLING)
