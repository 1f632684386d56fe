"""What the Code says of a name, as far as the records tell: remarks with their articles.

The rules here are those that need nothing but the acts themselves; each is one small function with its
article (ICN, Shenzhen Code 2018). Those about an act that publishes a name are listed in `RULES`. No remark is no
verdict: it says that none of these rules speaks against the name.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from auctorum.corpus.model import Act, Corpus
from auctorum.names.format import format_name, words
from auctorum.names.ranks import UNRANKED
from auctorum.records.schema import ActKind, DescriptionKind

RANK_NEEDED_FROM = 1953
FULL_REFERENCE_FROM = 1953


@dataclass(frozen=True, slots=True)
class Standing:
    """One remark: a label in the trade's words, the article, and the reason in a sentence."""

    label: str
    article: str  # empty where no article is at issue
    reason: str

    def __str__(self) -> str:
        """The remark in short: `isonym (Art. 6.3 Note 2)`."""
        return f"{self.label} ({self.article})" if self.article else self.label


Rule = Callable[[Corpus, Act], "Standing | None"]


def standing(corpus: Corpus, name: str) -> tuple[Standing, ...]:
    """Remarks on a name, from the act that published it; an autonym and a name without protologue are said to be such.

    Later acts of the same words (isonyms, variant spellings) have remarks of their own: `standing_of_act`.
    """
    entry = corpus.names[name]
    if entry.is_autonym:
        reason = "established by the first name of its rank beside it; repeats the epithet of the type, without authors"
        return (Standing("autonym", "Art. 26.1, 26.3" if entry.name.lower else "Art. 22.1, 22.3", reason),)
    published = corpus.publishing_act(name)
    if published is None:
        return (Standing("name without protologue", "", "no act in this knowledge base publishes it"),)
    return standing_of_act(corpus, published)


def standing_of_act(corpus: Corpus, act: Act) -> tuple[Standing, ...]:
    """Remarks on one act, in the order of `RULES`; an act that publishes no name can only spell one otherwise."""
    rules = RULES if act.establishes else (spelled_as_published,)
    return tuple(remark for rule in rules if (remark := rule(corpus, act)) is not None)


def effectively_published(_corpus: Corpus, act: Act) -> Standing | None:
    """Art. 29-31: only printed matter that was distributed, or an online work with ISSN or ISBN, publishes."""
    if act.work.record.effectively_published:
        return None
    note = act.work.record.effective_note or "the work is recorded as not effectively published"
    return Standing("not effectively published", "Art. 29.1", note.rstrip("."))


def accepted_by_author(_corpus: Corpus, act: Act) -> Standing | None:
    """Art. 36.1: a name that its author does not accept is not validly published."""
    if act.record.accepted:
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
    if act.rank != UNRANKED.name:
        return None
    if act.work.year >= RANK_NEEDED_FROM:
        return Standing("not validly published", "Art. 37.1", "no rank was indicated, on or after 1 January 1953")
    return Standing("without rank", "Art. 37.3", "no rank was indicated; it has no priority but in homonymy")


def basionym_referred_to(_corpus: Corpus, act: Act) -> Standing | None:
    """Art. 41.5: from 1953 on a combination needs a full and direct reference to its basionym."""
    given = act.record.basionym_reference
    if act.work.year < FULL_REFERENCE_FROM or given not in ("partial", "none"):
        return None
    reason = f"the reference to the {'replaced name' if act.replaces else 'basionym'} is {given}, after 1952"
    return Standing("not validly published", "Art. 41.5", reason)


def first_of_its_words(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 6.3 Note 2: the same name on the same type, published again, is an isonym without standing."""
    first = corpus.publishing_act(act.name)
    if first is None or first.id == act.id:
        return None
    return Standing("isonym", "Art. 6.3 Note 2", f"{first.work.byline} had published it on the same type")


def no_earlier_homonym(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 53.1: a name spelled like an earlier one of the same rank on another type is illegitimate."""
    for same in corpus.homonyms.get(words(corpus.names[act.name].name), ()):
        first = corpus.publishing_act(same)
        if same != act.name and first is not None and _published_before(first, act):
            earlier = f"{format_name(corpus.names[same].name)} {first.work.year}"
            return Standing("later homonym, illegitimate", "Art. 53.1", f"{earlier} has the same words on another type")
    return None


def _published_before(first: Act, act: Act) -> bool:
    return first.work.record.effectively_published and first.work.date < act.work.date


def not_superfluous(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 52.1: a name that took in the type of an older name of its rank, which ought to have been used."""
    for cited in act.cites:
        entry, first = corpus.names[cited], corpus.publishing_act(cited)
        if cited in (act.basionym, act.replaces, act.name) or entry.rank != act.rank:
            continue
        if first is not None and _published_before(first, act):
            reason = f"it took in the type of {format_name(entry.name)}, which ought to have been used"
            if act.basionym is not None:
                return Standing("superfluous, yet legitimate", "Art. 52.4", f"{reason}; it rests on a basionym")
            return Standing("superfluous, illegitimate", "Art. 52.1", reason)
    return None


def rests_on_legitimate_name(corpus: Corpus, act: Act) -> Standing | None:
    """Art. 6.10, 58.1: a basionym must be legitimate; on an illegitimate name rests a new name, dated from then."""
    published = corpus.publishing_act(act.basionym) if act.basionym is not None else None
    if act.basionym is None or published is None:
        return None
    # The two rules by which a name is illegitimate here; they look at no basionym, so a circle of them does no harm.
    faults = (rule(corpus, published) for rule in (no_earlier_homonym, not_superfluous))
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
)
