"""What the Code says of a name, as far as the records tell: remarks with their articles.

The rules here are those that need nothing but the acts themselves; each is one small function with its
article (ICN, Shenzhen Code 2018), listed in `RULES`. No remark is no verdict: it says that none of these
rules speaks against the name.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from auctorum.corpus.model import Act, Corpus
from auctorum.names.format import format_name, words
from auctorum.records.schema import ActKind, DescriptionKind

RANK_NEEDED_FROM = 1953
FULL_REFERENCE_FROM = 1953


@dataclass(frozen=True, slots=True)
class Standing:
    """One remark: a label in the trade's words, the article, and the reason in a sentence."""

    label: str
    article: str
    reason: str


Rule = Callable[[Corpus, Act], "Standing | None"]


def standing(corpus: Corpus, name: str) -> tuple[Standing, ...]:
    """Remarks on a name, from the act that published it; an autonym and a name without protologue are said to be such.

    Later acts of the same words (isonyms, variant spellings) have remarks of their own: `standing_of_act`.
    """
    entry = corpus.names[name]
    if entry.is_autonym:
        reason = "established by the first name of its rank beside it; repeats the epithet of the type, without authors"
        return (Standing("autonym", "Art. 26.1, 26.3" if entry.name.lower else "Art. 22.1, 22.3", reason),)
    establishing = [act for act in corpus.acts_of(name) if act.establishes]
    if not establishing:
        return (Standing("name without protologue", "-", "no act in this knowledge base publishes it"),)
    return standing_of_act(corpus, establishing[0])


def standing_of_act(corpus: Corpus, act: Act) -> tuple[Standing, ...]:
    """Remarks on one act, in the order of `RULES`."""
    return tuple(remark for rule in RULES if (remark := rule(corpus, act)) is not None)


def effectively_published(_corpus: Corpus, act: Act) -> Standing | None:
    """Art. 29-31: only printed matter that was distributed, or an online work with ISSN or ISBN, publishes."""
    if act.work.record.effectively_published or not act.establishes:
        return None
    note = act.work.record.effective_note or "the work is recorded as not effectively published"
    return Standing("not effectively published", "Art. 29.1", note.rstrip("."))


def accepted_by_author(_corpus: Corpus, act: Act) -> Standing | None:
    """Art. 36.1: a name that its author does not accept is not validly published."""
    if act.record.accepted or not act.establishes:
        return None
    return Standing("not accepted by its author", "Art. 36.1", f"{act.work.byline} did not accept the name")


def described(_corpus: Corpus, act: Act) -> Standing | None:
    """Art. 38.1: a new taxon needs a description, a diagnosis, or a reference to one."""
    given = act.record.description
    if act.record.act is not ActKind.NEW_TAXON or given is None or given.kind is not DescriptionKind.NONE:
        return None
    return Standing("nomen nudum", "Art. 38.1", "neither description nor diagnosis was given")


def rank_indicated(_corpus: Corpus, act: Act) -> Standing | None:
    """Art. 37.1, 37.3: a name needs a rank from 1953 on; an earlier one without is valid, but has no priority."""
    if act.rank != "unranked" or not act.establishes:
        return None
    if act.work.year >= RANK_NEEDED_FROM:
        return Standing("not validly published", "Art. 37.1", "no rank was indicated, on or after 1 January 1953")
    return Standing("without rank", "Art. 37.3", "no rank was indicated; it has no priority but in homonymy")


def basionym_referred_to(_corpus: Corpus, act: Act) -> Standing | None:
    """Art. 41.5: from 1953 on a combination needs a full and direct reference to its basionym."""
    given = act.record.basionym_reference
    if not act.establishes or act.work.year < FULL_REFERENCE_FROM or given not in ("partial", "none"):
        return None
    reason = f"the reference to the {'replaced name' if act.replaces else 'basionym'} is {given}, after 1952"
    return Standing("not validly published", "Art. 41.5", reason)


def first_of_its_words(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 6.3 Note 2: the same name on the same type, published again, is an isonym without standing."""
    acts = [one for one in corpus.acts_of(act.name) if one.establishes]
    if not act.establishes or acts[0].id == act.id:
        return None
    return Standing("isonym", "Art. 6.3 Note 2", f"{acts[0].work.byline} had published it on the same type")


def no_earlier_homonym(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 53.1: a name spelled like an earlier one of the same rank on another type is illegitimate."""
    if not act.establishes:
        return None
    for same in corpus.homonyms.get(words(corpus.names[act.name].name), ()):
        if same == act.name:
            continue
        entry = corpus.names[same]
        first = corpus.acts[entry.acts[0]]
        if first.work.record.effectively_published and first.work.date < act.work.date:
            earlier = f"{format_name(entry.name)} {first.work.year}"
            return Standing("later homonym, illegitimate", "Art. 53.1", f"{earlier} has the same words on another type")
    return None


def not_superfluous(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 52.1: a name that took in the type of an older name of its rank, which ought to have been used."""
    if not act.establishes:
        return None
    for cited in act.cites:
        entry = corpus.names[cited]
        if cited in (act.basionym, act.replaces, act.name) or entry.rank != act.rank or not entry.acts:
            continue
        first = corpus.acts[entry.acts[0]]
        if first.work.record.effectively_published and first.work.date < act.work.date:
            reason = f"it took in the type of {format_name(entry.name)}, which ought to have been used"
            if act.basionym is not None:
                return Standing("superfluous, yet legitimate", "Art. 52.4", f"{reason}; it rests on a basionym")
            return Standing("superfluous, illegitimate", "Art. 52.1", reason)
    return None


def rests_on_legitimate_name(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 6.10, 58.1: a basionym must be legitimate; on an illegitimate name rests a new name, dated from then."""
    if act.basionym is None or not act.establishes:
        return None
    published = [one for one in corpus.acts_of(act.basionym) if one.establishes]
    # The two rules by which a name is illegitimate here; they look at no basionym, so a circle of them does no harm.
    faults = [rule(corpus, published[0]) for rule in (no_earlier_homonym, not_superfluous)] if published else []
    if not any(fault is not None and fault.label.endswith(", illegitimate") for fault in faults):
        return None
    older = format_name(corpus.names[act.basionym].name)
    reason = f"{older} is illegitimate and can't be its basionym: a name of its own authors, without parentheses"
    return Standing("rests on an illegitimate name", "Art. 6.10, 58.1", reason)


def spelled_as_published(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 61.1: one name has one spelling; others are its orthographical variants."""
    if act.record.act is not ActKind.VARIANT_SPELLING:
        return None
    kept, printed = (format_name(name, authors=False) for name in (corpus.names[act.name].name, act.printed))
    return Standing("orthographical variant", "Art. 61.1", f"{printed} is another spelling of {kept}")


RULES: tuple[Rule, ...] = (
    effectively_published,
    accepted_by_author,
    described,
    rank_indicated,
    basionym_referred_to,
    first_of_its_words,
    no_earlier_homonym,
    not_superfluous,
    rests_on_legitimate_name,
    spelled_as_published,
)
