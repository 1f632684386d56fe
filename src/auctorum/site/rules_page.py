"""The rules that names are judged by, as a page: the table of the engine, and the acts that each rule speaks of."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from auctorum.corpus.model import Act
from auctorum.nomenclature.editions import Edition
from auctorum.nomenclature.inquiry import Inquiry
from auctorum.nomenclature.judgement import Judgement, Ruling
from auctorum.nomenclature.rules import legitimacy as legit
from auctorum.nomenclature.rules.table import VALIDITY, VALIDITY_UNDER_A_NAME, Rule
from auctorum.site.answers import Answers
from auctorum.site.code_parts import RuleRow
from auctorum.site.pages import RulesPage

Asked = Callable[[Inquiry, Act, Judgement], Ruling | None]


def _of_act(rule: Rule) -> Asked:
    return lambda inquiry, act, _judged: rule(inquiry, act)


# Each rule of legitimacy, and how it is asked once an act is judged.
LEGITIMACY: tuple[tuple[Callable[..., object], Asked], ...] = (
    (legit.standing_given, _of_act(legit.standing_given)),
    (legit.no_earlier_homonym, _of_act(legit.no_earlier_homonym)),
    (legit.not_ruled_confusable, _of_act(legit.not_ruled_confusable)),
    (legit.not_superfluous, _of_act(legit.not_superfluous)),
    (
        legit.rescued_by_its_basionym,
        lambda inquiry, act, judged: legit.rescued_by_its_basionym(inquiry, act, judged.basionym),
    ),
    (legit.conserved, _of_act(legit.conserved)),
    (legit.rejected, _of_act(legit.rejected)),
    (
        legit.reclassified,
        lambda inquiry, act, judged: legit.reclassified(inquiry, act, judged.treated_as, judged.replaced),
    ),
)
LEADS = (
    ("Valid publication", "Asked of every act that puts a name forward, in this order. A name that fails one of them is"
     " no name; what the records leave open is shown as open."),
    ("Legitimacy, and what an act is under the rules", "Asked of what is validly published, in order of date, since"
     " it depends on earlier names."),
)  # fmt: skip


def rules_page(answers: Answers) -> RulesPage:
    """Every rule with its article, its sentence and its acts."""
    edition = answers.code.edition
    # Only where something was ruled can a rule have spoken.
    judged = [one for one in answers.code.acts.values() if one.rulings]
    validity = [(rule, _of_act(rule)) for rule in (*VALIDITY, *VALIDITY_UNDER_A_NAME)]
    groups = (
        (heading, lead, tuple(_row(answers, rule, asked, judged) for rule, asked in rules))
        for (heading, lead), rules in zip(LEADS, (validity, LEGITIMACY), strict=True)
    )
    return RulesPage(edition.name, _notes(edition), len(answers.code.acts), tuple(groups))


def _notes(edition: Edition) -> tuple[str, ...]:
    """What the edition has otherwise than the Shenzhen Code, by which the sentences go."""
    notes = ["Names of every date are judged by this one edition, whatever the Code of their day said."]
    if edition.latin_until is None:
        notes.append("It asks for a Latin description or diagnosis of new taxa without end of date.")
    if edition.numbers:
        notes.append("Articles are numbered as it numbers them.")
    if edition.name.startswith("Madrid"):
        notes.append("It was not read article by article: the rules are taken to be those of the Shenzhen Code.")
    return tuple(notes)


def _row(answers: Answers, rule: Callable[..., object], asked: Asked, judged: Iterable[Judgement]) -> RuleRow:
    article, sentence = told(rule)
    acts = tuple(
        (answers.name(one.name, authors=True), answers.work(answers.corpus.acts[one.act].work.id), ruling.label)
        for one in judged
        if (ruling := _spoken(answers, asked, one)) is not None
    )
    return RuleRow(answers.code.edition.cite(article), sentence, acts)


def _spoken(answers: Answers, asked: Asked, judged: Judgement) -> Ruling | None:
    """The ruling of a judgement that came from this rule; None if none did."""
    made = asked(answers.code.inquiry, answers.corpus.acts[judged.act], judged)
    if made is None:
        return None
    grounds: Sequence[Ruling] = judged.rulings
    return next((one for one in grounds if (one.key, one.reason) == (made.key, made.reason)), None)


def told(rule: Callable[..., object]) -> tuple[str, str]:
    """Article (without `Art.`) and sentences of a rule, from its docstring up to any example.

    >>> told(legit.conserved)
    ('14.1', 'A conserved name is legitimate, whatever rules speak against it.')
    """
    words = " ".join((rule.__doc__ or "").partition(">>>")[0].split())
    article, colon, sentence = words.partition(": ")
    if not colon or not article.startswith("Art. "):
        article, sentence = "", words
    return article.removeprefix("Art. ").replace("-", "–"), sentence[:1].upper() + sentence[1:].replace("`", "")
