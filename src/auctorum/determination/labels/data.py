"""What the checking of labels found as plain data, and as rows of a CSV table; no place, no remark, no recorder."""

from __future__ import annotations

from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import called
from auctorum.determination.criteria.words import title_of
from auctorum.determination.labels.model import (
    ByCriterion,
    Instead,
    LabelFinding,
    LabelReport,
    Matched,
    SellerSum,
    Strength,
    TraitTest,
)
from auctorum.determination.labels.words import cautions, grounds, source, trait_said
from auctorum.names.format import format_name

CSV_HEADINGS = (
    "occurrenceID", "seller", "eventDate", "verbatimIdentification", "name", "differences", "taxon", "standing",
    "plant", "why", "strong", "weak", "nearest statements", "could be", "probability", "criteria",
)  # fmt: skip


def csv_rows(report: LabelReport) -> tuple[tuple[str, ...], ...]:
    """A row for each label, cells as in CSV_HEADINGS; several values of a cell are parted by semicolons."""
    return tuple(map(_csv_row, report.findings))


def _csv_row(one: LabelFinding) -> tuple[str, ...]:
    strong, weak = one.of_strength(Strength.STRONG), one.of_strength(Strength.WEAK)
    nearest = [f"{each.against[0].stated}, {source(each.against[0])}" for each in (*strong, *weak)]
    instead = one.instead
    return (
        one.id,
        one.seller,
        one.date,
        one.label,
        str(one.matched.how),
        "; ".join((*one.matched.differences, *one.matched.form)),
        one.name,
        one.meaning.standing,
        str(one.verdict),
        one.why,
        "; ".join(map(trait_said, strong)),
        "; ".join(map(trait_said, weak)),
        "; ".join(nearest),
        "" if instead is None else instead.name,
        "" if instead is None else f"{instead.probability:.3f}",
        "; ".join(f"{each.criterion.id}: {each.judged.verdict}" for each in one.criteria),
    )


def data(corpus: Corpus, report: LabelReport) -> dict[str, object]:
    """Labels, sellers and all; probabilities and intervals are shares of 1, gaps in the unit of their character."""
    return {
        "labels": [_label(corpus, one) for one in report.findings],
        "sellers": [_seller(one) for one in report.sellers],
        "all": _seller(report.whole),
        "trial": {"tested": report.trial.tested, "contradicted": report.trial.contradicted},
        "criteria_not_tried": [{"id": id_, "why": why, "remedy": remedy} for id_, why, remedy in report.unusable],
        "rests_on": list(grounds(report)),
        "cautions": list(cautions()),
    }


def _label(corpus: Corpus, one: LabelFinding) -> dict[str, object]:
    return {
        "id": one.id,
        "seller": one.seller or None,
        "date": one.date or None,
        "label": one.label,
        "name": _name(corpus, one.matched),
        "taxon": one.meaning.taxon,
        "taxon_name": one.name or None,
        "standing": one.meaning.standing or None,
        "verdict": str(one.verdict),
        "why": one.why or None,
        "stage_taken_as_mature": one.stage_taken,
        "traits": [_trait(each) for each in one.traits],
        "could_be": None if one.instead is None else _instead(corpus, one.instead),
        "criteria": [_criterion(each) for each in one.criteria],
    }


def _name(corpus: Corpus, matched: Matched) -> dict[str, object]:
    return {
        "how": str(matched.how),
        "names": [format_name(corpus.names[name].name) for name in matched.names],
        "differences": list(matched.differences),
        "form": list(matched.form),
        "set_aside": list(matched.set_aside),
        "nearest": list(matched.near),
        "why": matched.why or None,
    }


def _instead(corpus: Corpus, one: Instead) -> dict[str, object]:
    return {
        "taxon": one.taxon,
        "name": one.name,
        "current_name": called(corpus, corpus.taxa[one.taxon].current),
        "probability": round(one.probability, 6),
        "wording": str(one.wording),
        "as_labelled": one.same,
        "inside_taxon_of_label": one.inside,
    }


def _criterion(one: ByCriterion) -> dict[str, object]:
    return {
        "id": one.criterion.id,
        "title": title_of(one.criterion),
        "verdict": str(one.judged.verdict),
        "observed": one.judged.observed or None,
        "threshold": one.judged.threshold,
        "agrees_with_label": one.agrees,
    }


def _trait(one: TraitTest) -> dict[str, object]:
    return {
        "character": one.character,
        "stage": one.stage,
        "observed": one.observed,
        "tested": one.tested,
        "why": one.why or None,
        "works": one.works,
        "strength": str(one.strength) if one.tested else None,
        "gap": one.gap or None,
        "against": [
            {
                "statement": each.statement,
                "work": each.work,
                "byline": each.byline,
                "page": each.page or None,
                "verbatim": each.verbatim,
                "stated": each.stated,
                "gap": round(float(each.gap), 6),
                "side": "below" if each.below else "above or beside",
            }
            for each in one.against
        ],
    }


def _seller(one: SellerSum) -> dict[str, object]:
    return {
        "seller": one.seller or None,
        "labels": one.labels,
        "names": {
            "right": one.right,
            "misspelt": one.misspelt,
            "several_possible": one.several,
            "not_found": one.not_found,
        },
        "plants": {
            "consistent": one.consistent,
            "contradicted": one.contradicted,
            "not_testable": one.not_testable,
        },
        "interval_of_contradicted": None if one.interval is None else [round(end, 4) for end in one.interval],
    }
