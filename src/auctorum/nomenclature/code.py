"""The Code applied to a corpus: every act judged, every name cited by the rules, autonyms established.

`applied(corpus)` is the one entry: it gives the judgements, and the corpus with the authors of each name as the
rules make them. Validity is judged first, in order of what depends on what; then legitimacy, in order of date, since
it asks for the legitimacy of earlier names.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from auctorum.corpus.model import Act, Corpus
from auctorum.names.ranks import rank_named
from auctorum.nomenclature.autonyms import Autonym, autonyms
from auctorum.nomenclature.citation import cited_names
from auctorum.nomenclature.editions import SHENZHEN, Edition, UnknownEdition, edition_named
from auctorum.nomenclature.inquiry import Inquiry
from auctorum.nomenclature.judgement import Effect, Judgement, Legitimacy, Ruling, Validity
from auctorum.nomenclature.lines import competing
from auctorum.nomenclature.rules import legitimacy as legit
from auctorum.nomenclature.rules.publication import rank_of
from auctorum.nomenclature.rules.table import VALIDITY, VALIDITY_UNDER_A_NAME
from auctorum.records.schema import ActKind


@dataclass(frozen=True)
class Code:
    """The judgements of one corpus under one edition. `inquiry` answers the questions of later steps."""

    corpus: Corpus
    edition: Edition
    inquiry: Inquiry
    acts: Mapping[str, Judgement]
    autonyms: Mapping[tuple[str, str], Autonym]  # (species or genus, rank) -> the autonym

    def of_name(self, name: str) -> Judgement | None:
        """The judgement on the act that publishes a name; None for an autonym and a name without protologue."""
        act = self.inquiry.publishing(name)
        return self.acts[act.id] if act is not None else None


def applied(corpus: Corpus) -> Code:
    """The judgements, with the corpus in which every name is cited as the rules have it."""
    try:
        edition = edition_named(corpus.settings.code_edition)
    except UnknownEdition:
        edition = SHENZHEN  # named as a problem by the check of the settings
    inquiry = Inquiry(corpus, edition)
    acts = [act for act in corpus.acts.values() if act.establishes]
    rulings = _judge_validity(inquiry, acts)
    judged = _judge_legitimacy(inquiry, acts, rulings)
    known = 0
    while len(inquiry.unmade) > known:  # what proved to be no name may have stood in the way of others
        known = len(inquiry.unmade)
        inquiry.start_again()
        judged = _judge_legitimacy(inquiry, acts, rulings)
    corpus = replace(corpus, names=cited_names(inquiry, judged, corpus.names))
    inquiry.corpus, inquiry.cited = corpus, True
    judged = {id_: _worded(inquiry, one) for id_, one in judged.items()}
    return Code(corpus, edition, inquiry, judged, autonyms(inquiry, judged))


def _worded(inquiry: Inquiry, judged: Judgement) -> Judgement:
    """The judgement with the names in its reasons cited."""
    if not judged.rulings:
        return judged
    return replace(judged, rulings=tuple(replace(one, reason=inquiry.worded(one.reason)) for one in judged.rulings))


def _judge_validity(inquiry: Inquiry, acts: Iterable[Act]) -> dict[str, tuple[Ruling, ...]]:
    """The rulings on each act; what it rests on or stands in is judged before it."""
    found: dict[str, tuple[Ruling, ...]] = {}

    def judge(act: Act) -> None:
        found[act.id] = _ruled(inquiry, act)

    def needed(act: Act) -> Iterator[Act]:
        named = (act.above, act.basionym, act.replaces, act.same_taxon)
        same = inquiry.homonyms_of(act.above) if act.above is not None else ()
        for name in dict.fromkeys((*named, *same)):
            if name is not None:
                yield from (one for one in inquiry.establishing(name) if one.id != act.id and not _later(one, act))

    _in_order(acts, needed, judge)
    return found


def _ruled(inquiry: Inquiry, act: Act) -> tuple[Ruling, ...]:
    """The rulings of every rule of valid publication; what they come to is entered."""
    rulings = tuple(ruling for rule in VALIDITY if (ruling := rule(inquiry, act)) is not None)
    inquiry.validity[act.id] = _validity(rulings)
    return rulings


def _validity(rulings: Iterable[Ruling]) -> Validity:
    """What rulings of valid publication come to."""
    effects = {ruling.effect for ruling in rulings}
    valid = Validity.UNDETERMINED if Effect.OPEN in effects else Validity.VALID
    return Validity.NOT_VALID if Effect.BARS in effects else valid


def _judge_legitimacy(
    inquiry: Inquiry, acts: Iterable[Act], rulings: Mapping[str, tuple[Ruling, ...]]
) -> dict[str, Judgement]:
    """Every act judged, in order of date and of what it rests on."""
    found: dict[str, Judgement] = {}

    def judge(act: Act) -> None:
        told = rulings[act.id]
        if not inquiry.unmade.isdisjoint((act.above, act.basionym, act.replaces)):
            told = _ruled(inquiry, act)  # it rests on what turned out to be no name
        found[act.id] = judged = _judgement(inquiry, act, told)
        if judged.validity is Validity.NOT_VALID and inquiry.validity[act.id] is not Validity.NOT_VALID:
            inquiry.unmade.add(act.name)
        inquiry.validity[act.id] = judged.validity
        if judged.legitimacy is not None:
            inquiry.legitimacy[act.id] = judged.legitimacy
        if judged.basionym is not None and judged.isonym_of is None:
            inquiry.roots[act.name] = judged.basionym
        if judged.isonym_of is None and competing(inquiry, act.name) is not None:
            inquiry.enter_competing(act.name, judged.rank)

    def needed(act: Act) -> Iterator[Act]:
        for name in (inquiry.above(act), act.basionym, act.replaces, act.same_taxon):
            first = inquiry.publishing(name) if name is not None else None
            if first is not None and first.id != act.id and not _later(first, act):
                yield first

    def by_date(act: Act) -> tuple[object, ...]:
        return (act.work.date.earliest, act.work.date.latest, rank_named(act.rank), act.work.id, act.id)

    _in_order(sorted(acts, key=by_date), needed, judge)
    return {act: found[act] for act in rulings if act in found}


def _later(one: Act, act: Act) -> bool:
    """Whether an act came out only after another, so that it can't bear on it."""
    return act.work.date.certainly_before(one.work.date)


def _in_order(acts: Iterable[Act], needed: Callable[[Act], Iterator[Act]], judge: Callable[[Act], None]) -> None:
    """Judge every act once, those it needs before it; in a circle the one that was reached first comes last."""
    begun: set[str] = set()
    for start in acts:
        if start.id in begun:
            continue
        begun.add(start.id)
        waiting = [(start, needed(start))]
        while waiting:
            act, further = waiting[-1]
            following = next((one for one in further if one.id not in begun), None)
            if following is None:
                judge(act)
                waiting.pop()
            else:
                begun.add(following.id)
                waiting.append((following, needed(following)))


def _judgement(inquiry: Inquiry, act: Act, rulings: tuple[Ruling, ...]) -> Judgement:
    kind, basionym, replaced = _treated_as(inquiry, act)
    late = tuple(one for rule in VALIDITY_UNDER_A_NAME if (one := rule(inquiry, act)) is not None)
    rulings, validity = (*rulings, *late), inquiry.validity[act.id]
    if late and validity is not Validity.NOT_VALID:
        validity = _validity(rulings)
    reclassified = legit.reclassified(inquiry, act, kind, replaced)
    made = Judgement(
        act=act.id,
        name=act.name,
        rank=rank_of(inquiry, act),
        validity=validity,
        legitimacy=None,
        rulings=(*rulings, reclassified) if reclassified is not None else rulings,
        treated_as=kind,
        basionym=basionym,
        replaced=replaced,
    )
    if validity is Validity.NOT_VALID:
        return made
    first = inquiry.publishing(act.name)
    if first is not None and first.id != act.id:
        return replace(made, isonym_of=first.id, legitimacy=inquiry.legitimacy.get(first.id))
    return _with_legitimacy(inquiry, act, made)


def _with_legitimacy(inquiry: Inquiry, act: Act, made: Judgement) -> Judgement:
    superfluous = legit.not_superfluous(inquiry, act)
    rescue = legit.rescued_by_its_basionym(inquiry, act, made.basionym) if superfluous else None
    against = [
        ruling
        for ruling in (
            legit.standing_given(inquiry, act),
            legit.no_earlier_homonym(inquiry, act),
            legit.not_ruled_confusable(inquiry, act),
            None if rescue else superfluous,
        )
        if ruling is not None
    ]
    kept = legit.conserved(inquiry, act)
    if kept is not None or act.record.standing == "legitimate":
        against = [_harmless(ruling) for ruling in against]
    remarks = [one for one in (rescue, kept, legit.rejected(inquiry, act)) if one is not None]
    effects = {ruling.effect for ruling in against}
    legitimacy = (
        Legitimacy.ILLEGITIMATE
        if Effect.BARS in effects
        else Legitimacy.UNDETERMINED
        if Effect.OPEN in effects
        else Legitimacy.LEGITIMATE
    )
    return replace(
        made,
        legitimacy=legitimacy,
        rulings=(*made.rulings, *against, *remarks),
        superfluous=superfluous is not None,
        conserved=kept is not None,
    )


def _harmless(ruling: Ruling) -> Ruling:
    """A ruling against a name that is legitimate all the same, as a remark."""
    return replace(ruling, effect=Effect.REMARK, label=ruling.label.removesuffix(", illegitimate"))


def _treated_as(inquiry: Inquiry, act: Act) -> tuple[ActKind, str | None, str | None]:
    """The kind of act under the rules, its basionym and its replaced name (ICN Art. 6.10, 6.11, 35.1, 58.1).

    A combination on an illegitimate name is a replacement name, on a designation or without the type of
    its basionym the name of a new taxon; an uncited older epithet makes a combination before 1953.
    """
    presented = act.record.act
    claimed = act.basionym or act.replaces or act.same_taxon
    if claimed is None:
        return (ActKind.NEW_TAXON if presented is ActKind.USAGE else presented), None, None
    if inquiry.shuts_out(act, claimed) or inquiry.is_no_name_yet(claimed, act):
        return ActKind.NEW_TAXON, None, None
    if act.same_taxon is not None and not inquiry.takes_up_uncited(act):
        return ActKind.NEW_TAXON, None, None
    if presented is ActKind.REPLACEMENT_NAME:
        return presented, None, claimed
    if inquiry.legitimacy_of(claimed) is Legitimacy.ILLEGITIMATE:
        return ActKind.REPLACEMENT_NAME, None, claimed
    root = inquiry.roots.get(claimed, claimed)
    if root == act.name:  # a circle of names, which is a problem of its own
        return presented, None, None
    if inquiry.legitimacy_of(root) is Legitimacy.ILLEGITIMATE:
        return ActKind.REPLACEMENT_NAME, None, claimed
    same_rank = inquiry.corpus.names[claimed].rank == act.rank
    fallback = ActKind.NEW_COMBINATION if same_rank else ActKind.CHANGE_OF_RANK
    resting = presented in (ActKind.NEW_COMBINATION, ActKind.CHANGE_OF_RANK)
    return (presented if resting else fallback), root, None
