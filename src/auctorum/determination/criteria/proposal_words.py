"""A proposed criterion in words that can be read aloud, and as plain data."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from auctorum.characters.show import format_span
from auctorum.circumscription.criterion_words import limit_words
from auctorum.circumscription.phrases import at_stage, capital, counted, interval_words, listed, listed_some
from auctorum.circumscription.separation_names import short_names
from auctorum.circumscription.separation_words import label, percent
from auctorum.corpus.model import Corpus
from auctorum.determination.criteria.kept import Kept
from auctorum.determination.criteria.proposal import words_of
from auctorum.determination.criteria.proposal_model import Proposal
from auctorum.determination.criteria.proposal_threshold import Stand
from auctorum.determination.criteria.tally import Tally

_MOST_BYLINES = 4


def short(corpus: Corpus, made: Proposal) -> Mapping[str, str]:
    """Short names of the taxon and its sisters among each other."""
    return short_names(corpus, (made.taxon, *made.against))


def rule(corpus: Corpus, made: Proposal) -> str:
    """The definition in a sentence or two: what fits, and what a plant that does not fit is called."""
    character, limit = corpus.vocabulary[made.limit.character], made.limit
    what = capital(label(character, limit.stage))
    how = f"{what} {limit_words(limit.printed, at_least=limit.at_least)}: {words_of(corpus, made.taxon)}."
    names, others = short(corpus, made), made.parted
    if made.criterion.otherwise:
        return f"{how} Any other plant: {made.criterion.otherwise}."
    if len(made.against) == 1:
        return how
    rest = listed(names[one] for one in others)
    if len(others) == 1:
        return f"{how} Other plants may be {rest}; no name is given them, since others come into question."
    return f"{how} Other plants are {rest.replace(' and ', ' or ')}: ask further, with `auctorum key`, which of them."


def accounts(corpus: Corpus, made: Proposal) -> tuple[str, ...]:
    """What authors state: the expected error against each sister, who is for and against, how bounds behaved."""
    names = short(corpus, made)
    return (
        *(_stand(one, made, names) for one in made.stands),
        *_who(corpus, made, names),
        *(f"{capital(names[taxon])}: {remark}" for taxon, remark in _remarks(made)),
    )


def bounds(corpus: Corpus, made: Proposal) -> tuple[tuple[str, str, str, str], ...]:
    """By work: its byline, what it states of the taxon, of the sister hardest to part, and `for` or `against`."""
    return tuple(
        (corpus.works[one.work].byline, one.own, one.others, "for" if one.for_it else "against") for one in made.said
    )


def on_plants(corpus: Corpus, made: Proposal) -> tuple[str, ...]:
    """What the named plants show: how many lie on the wrong side, and the threshold that would serve them best."""
    names = short(corpus, made)
    told = [tally_words(one, names[one.taxon], fitting=one.taxon == made.taxon) for one in made.tallies]
    return (*told, *_best(corpus, made, names)) if any(one.measured for one in made.tallies) else (_NO_PLANTS,)


_NO_PLANTS = "No plant named as one of them was measured for it."


def tally_words(one: Tally, name: str, *, fitting: bool) -> str:
    """`Var. longum: 2 of 80 plants on the wrong side (1–9 %), 1 borderline; named by M. Sallow.`"""
    if not one.measured:
        return f"{capital(name)}: none measured."
    wrong, within = one.wrong(fitting=fitting), interval_words(one.interval(fitting=fitting))
    said = f"{wrong or 'none'} of {counted(one.measured, 'plant')} on the wrong side (so {within} of all such plants)"
    near = f", {one.borderline} borderline" if one.borderline else ""
    left = f", {one.insufficient} not judged" if one.insufficient else ""
    by = f"; named by {listed(one.named_by)}" if one.named_by else "; nobody says who named them"
    return f"{capital(name)}: {said}{near}{left}{by}".removesuffix(".") + "."


def kept_words(corpus: Corpus, one: Kept) -> str:
    """A criterion of the knowledge base in a sentence, with the error that authors' figures make expect."""
    character = corpus.vocabulary[one.limit.character]
    said = f"{capital(label(character, one.limit.stage))} {limit_words(one.limit.printed, at_least=one.limit.at_least)}"
    said += f": {one.criterion.taxon}."
    said += f" Any other plant: {one.criterion.otherwise}." if one.criterion.otherwise else ""
    if one.stand is None or one.stand.error is None:
        return f"{said} What authors state gives no error to expect."
    lost, strays = percent(one.stand.lost or 0.0), percent(one.stand.strays or 0.0)
    return f"{said} By what authors state, {lost} of the one would be lost and {strays} of the other taken in."


def _stand(one: Stand, made: Proposal, names: Mapping[str, str]) -> str:
    name, own = names[one.sister], names[made.taxon]
    if one.lost is None or one.strays is None:
        return f"Against {name}: nobody states it of both."
    if not one.parts:
        return f"Against {name}: this threshold does not part them."
    lost = f"{percent(one.lost)} of {own} on the wrong side, {percent(one.strays)} of {name}"
    return f"Against {name}: {lost}; a plant as likely of the one as of the other is misjudged in {_error(one)}."


def _error(one: Stand) -> str:
    told = percent(one.error or 0.0)
    return "none of the cases" if told == "none" else f"{told} of the cases"


def _who(corpus: Corpus, made: Proposal, names: Mapping[str, str]) -> Iterator[str]:
    both = f"{names[made.taxon]} and {names[made.worst.sister]}"
    if not made.said:
        yield f"No work takes a stand between {both}."
        return
    support, against = made.worst.support, made.worst.against
    if support:
        yield f"On its two sides {both} are kept by {counted(len(support), 'work')} ({_bylines(corpus, support)})."
    else:
        yield f"No independent work keeps {both} on its two sides."
    if against:
        ranges = "work gives ranges" if len(against) == 1 else "works give ranges"
        yield f"{len(against)} independent {ranges} that do not keep to it ({_bylines(corpus, against)})."


def _bylines(corpus: Corpus, works: tuple[str, ...]) -> str:
    return listed_some([corpus.works[work].byline for work in works], _MOST_BYLINES)


def _remarks(made: Proposal) -> Iterator[tuple[str, str]]:
    for taxon, finding in zip((made.taxon, made.worst.sister), made.findings, strict=True):
        for remark in finding.remarks:
            yield taxon, remark


def _best(corpus: Corpus, made: Proposal, names: Mapping[str, str]) -> Iterator[str]:
    best = made.on_plants
    if best is None:
        return
    unit = corpus.vocabulary[made.limit.character].unit
    at = format_span(best.value, best.value, unit)
    wrong = (
        f"{best.wrong or 'none'} of {best.n} of {names[made.taxon]} and {best.others_wrong or 'none'} of {best.others}"
    )
    same = "The same limit" if best.value == made.limit.value else f"A limit of {at}"
    yield f"{same} would serve these plants best: {wrong} of {names[made.worst.sister]} on the wrong side."


def proposal_data(corpus: Corpus, made: Proposal) -> dict[str, object]:
    """The proposal as plain data for JSON; figures in the canonical unit, taxa and works by their ids."""
    limit, one = made.limit, made.criterion
    return {
        "taxon": made.taxon,
        "id": one.id,
        "title": one.title,
        "names": {"fits": one.taxon, "otherwise": one.otherwise},
        "decisive": {
            "character": limit.character,
            "stage": limit.stage,
            "unit": corpus.vocabulary[limit.character].unit,
            "at_least" if limit.at_least else "at_most": float(limit.value),
            "printed": limit.printed,
        },
        "supporting": [
            {"character": each.character, "stage": each.stage, "value": each.value, "weight": float(each.weight)}
            for each in one.supporting
        ],
        "against": [_stand_data(each) for each in made.stands],
        "hardest": made.worst.sister,
        "stated": [
            {"work": each.work, "taxon": each.own, "hardest": each.others, "for": each.for_it} for each in made.said
        ],
        "bounds": [{"taxon": taxon, "remark": remark} for taxon, remark in _remarks(made)],
        "plants": [tally_data(each, fitting=each.taxon == made.taxon) for each in made.tallies],
        "best_on_plants": None
        if made.on_plants is None
        else {
            "value": float(made.on_plants.value),
            "wrong": made.on_plants.wrong,
            "of": made.on_plants.n,
            "others_wrong": made.on_plants.others_wrong,
            "of_others": made.on_plants.others,
        },
        "weak_points": list(made.weak),
    }


def _stand_data(one: Stand) -> dict[str, object]:
    return {
        "taxon": one.sister,
        "parted": one.parts,
        "lost": one.lost,
        "taken_in": one.strays,
        "expected_error": one.error,
        "works_for": list(one.support),
        "works_against": list(one.against),
    }


def tally_data(one: Tally, *, fitting: bool) -> dict[str, object]:
    """The verdicts on the plants of one taxon as plain data; `fitting`: those that should fit."""
    low, high = one.interval(fitting=fitting)
    return {
        "taxon": one.taxon,
        "fits": one.fits,
        "does_not_fit": one.does_not_fit,
        "borderline": one.borderline,
        "insufficient": one.insufficient,
        "conflicts": one.conflicts,
        "wrong": one.wrong(fitting=fitting),
        "wrong_interval": [low, high],
        "named_by": list(one.named_by),
    }


def support_rows(made: Proposal) -> Iterable[tuple[str, str, str]]:
    """Supporting traits: the character, the value that speaks for the taxon, the weight."""
    return ((at_stage(one.character, one.stage), one.value, str(one.weight)) for one in made.criterion.supporting)
