"""What the Code says of a name, as remarks with their articles in the edition that the knowledge base follows.

No remark is no verdict beyond what is recorded: it says that none of the rules speaks against the name.
"""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.corpus.model import Act
from auctorum.names.format import format_name
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.homonyms import homonym_note
from auctorum.nomenclature.judgement import Effect, Legitimacy, Ruling, Validity
from auctorum.records.schema import ActKind


@dataclass(frozen=True, slots=True)
class Standing:
    """One remark: a label in the trade's words, the article, and the reason in a sentence."""

    label: str
    article: str  # empty where no article is at issue
    reason: str

    def __str__(self) -> str:
        """The remark in short: `isonym (Art. 6.3 Note 2)`."""
        return f"{self.label} ({self.article})" if self.article else self.label


def standing(code: Code, name: str) -> tuple[Standing, ...]:
    """Remarks on a name, from the act that published it; an autonym and a name without protologue are said to be such.

    Later acts of the same words (isonyms, variant spellings) have remarks of their own: `standing_of_act`.
    """
    entry = code.corpus.names[name]
    if entry.is_autonym:
        reason = "established by the first name of its rank beside it; repeats the epithet of the type, without authors"
        article = "26.1, 26.3" if entry.name.lower else "22.1, 22.3"
        return (Standing("autonym", code.edition.cite(article), reason),)
    published = code.corpus.publishing_act(name)
    if published is None:
        return (Standing("name without protologue", "", "no act in this knowledge base publishes it"),)
    return standing_of_act(code, published)


def standing_of_act(code: Code, act: Act) -> tuple[Standing, ...]:
    """Remarks on one act: what bars it, then what else is worth saying; open questions are `questions`."""
    judged = code.acts.get(act.id)
    if judged is None:
        return tuple(one for one in (_spelled(code, act), _chosen(code, act)) if one is not None)
    isonym = () if judged.isonym_of is None else (_isonym(code, judged.isonym_of),)
    told = (one for one in judged.rulings if one.effect is not Effect.OPEN)
    return (*isonym, *(_remark(code, one, judged.validity) for one in told))


def questions(code: Code, name: str) -> tuple[Ruling, ...]:
    """What the records leave open about the publication of a name, each with what to look up."""
    judged = code.of_name(name)
    return judged.open() if judged is not None else ()


def in_words(code: Code, name: str) -> str:
    """The standing of a name in two words: `valid, legitimate`, `not validly published`, `autonym` ..."""
    if code.corpus.names[name].is_autonym:
        return "autonym"
    judged = code.of_name(name)
    if judged is None:
        return "no protologue recorded"
    if judged.validity is Validity.NOT_VALID:
        return str(Validity.NOT_VALID)
    valid = "validly published" if judged.validity is Validity.VALID else "validity undetermined"
    legitimate = judged.legitimacy or Legitimacy.UNDETERMINED
    told = "legitimacy undetermined" if legitimate is Legitimacy.UNDETERMINED else str(legitimate)
    return f"{valid}, {told}{', conserved' if judged.conserved else ''}"


def abbreviations(code: Code, name: str) -> tuple[str, ...]:
    """The trade's short forms behind a name: nom. inval., nom. nud., nom. illeg., nom. superfl., nom. cons., nom. rej.

    Rec. 50A-50F of the Code recommends these forms (from memory).
    """
    judged = code.of_name(name)
    if judged is None:
        return ()
    keys = {one.key for one in judged.bars()}
    if judged.validity is Validity.NOT_VALID:
        return ("nom. inval.", *(("nom. nud.",) if "nomen-nudum" in keys else ()))
    found = ["nom. illeg."] if judged.legitimacy is Legitimacy.ILLEGITIMATE else []
    if judged.superfluous and found:
        found.append("nom. superfl.")
    if "later-homonym" in keys:
        found.append(homonym_note(code, name).partition(", ")[2])
    if judged.conserved:
        found.append("nom. cons.")
    decisions = code.inquiry.decisions
    if name in decisions.rejected or name in decisions.gives_way_to:
        found.append("nom. rej.")
    return tuple(one for one in found if one)


def _remark(code: Code, ruling: Ruling, validity: Validity) -> Standing:
    invalid = validity is Validity.NOT_VALID and ruling.effect is Effect.BARS
    label = f"not valid: {ruling.label}" if invalid else ruling.label
    return Standing(label, code.edition.cite(ruling.article), ruling.reason)


def _isonym(code: Code, first: str) -> Standing:
    byline = code.corpus.acts[first].work.byline
    return Standing("isonym", f"{code.edition.cite('6.3')} Note 2", f"{byline} had published it on the same type")


def _chosen(code: Code, act: Act) -> Standing | None:
    """Art. 7.10, 7.11, 9.19: a choice of type that is none, or comes after another."""
    if act.record.act is not ActKind.TYPE_DESIGNATION:
        return None
    if not act.work.record.effectively_published:
        return Standing("no designation", code.edition.cite("7.10"), "the work is not effectively published")
    if not act.chooses_type:
        return Standing("no designation", code.edition.cite("7.11"), "from 2001 on it must say: designated here")
    kind = act.record.type.kind if act.record.type is not None else None
    for other in code.corpus.acts_of(act.name):
        same = other.record.type is not None and other.record.type.kind is kind
        if other.chooses_type and same and other.work.date.certainly_before(act.work.date):
            return Standing("later choice", code.edition.cite("9.19"), f"{other.work.byline} chose a {kind} before")
    return None


def _spelled(code: Code, act: Act) -> Standing | None:
    """Art. 61.1: one name has one spelling; others are its orthographical variants."""
    kept, printed = (format_name(name, authors=False) for name in (code.corpus.names[act.name].name, act.printed))
    if not act.spells_otherwise or kept == printed:
        return None
    reason = f"{printed} is another spelling of {kept}"
    return Standing("orthographical variant", code.edition.cite("61.1"), reason)
