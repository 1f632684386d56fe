"""What the Code makes of one name, for its page: the badge, what is open, and what it rests on."""

from __future__ import annotations

from collections.abc import Iterator

from auctorum.corpus.spelling import spelling
from auctorum.names.format import format_name, words
from auctorum.nomenclature.homonyms import homonym_note, homonymy
from auctorum.nomenclature.judgement import Judgement, Legitimacy, Validity
from auctorum.nomenclature.standing import in_words, questions
from auctorum.site.answers import Answers, set_name
from auctorum.site.code_parts import Badge, Question
from auctorum.site.words import Rich, Run, listed, plain


def badge(answers: Answers, name: str) -> Badge:
    """The standing of a name in a few words."""
    return Badge(in_words(answers.code, name), _look(answers, name))


def _look(answers: Answers, name: str) -> str:
    judged = answers.code.of_name(name)
    if judged is None:
        return "good" if answers.corpus.names[name].is_autonym else "open"
    if judged.validity is Validity.NOT_VALID:
        return "none"
    if judged.legitimacy is Legitimacy.ILLEGITIMATE:
        return "bad"
    settled = judged.validity is Validity.VALID and judged.legitimacy is Legitimacy.LEGITIMATE
    return "good" if settled else "open"


def open_questions(answers: Answers, name: str) -> tuple[Question, ...]:
    """What the records leave open about the publication of a name."""
    return tuple(
        Question(one.label, answers.code.edition.cite(one.article), answers.text(one.reason), answers.text(one.look_up))
        for one in questions(answers.code, name)
    )


def name_facts(answers: Answers, name: str) -> tuple[tuple[str, Rich], ...]:
    """Kind of act, basionym, replaced name, homonyms and corrected spelling of a name, with labels; what there is."""
    judged = answers.code.of_name(name)
    facts = [*_origins(answers, judged)] if judged is not None else []
    facts += [*_homonyms(answers, name), *_spelling(answers, name)]
    return tuple(fact for fact in facts if fact[1])


def _origins(answers: Answers, judged: Judgement) -> Iterator[tuple[str, Rich]]:
    act = answers.corpus.acts[judged.act]
    called = act.record.act
    differs = judged.treated_as is not called
    yield "published as", plain(f"{judged.treated_as}, though called {called}" if differs else str(called))
    for label, other in (("basionym", judged.basionym), ("replaces", judged.replaced)):
        if other is not None:
            yield label, answers.name(other, authors=True)


def _homonyms(answers: Answers, name: str) -> Iterator[tuple[str, Rich]]:
    found = homonymy(answers.code, name)
    if found is not None:
        which = "an earlier" if found.later else "another"
        alike = "name of the same words" if found.kind == "identical" else "name ruled confusably alike"
        yield "homonym", (*answers.name(found.other, authors=True), Run(f", {which} {alike} on another type"))
    note = homonym_note(answers.code, name)
    if note != format_name(answers.corpus.names[name].name):
        yield "cited as", answers.text(note)


def _spelling(answers: Answers, name: str) -> Iterator[tuple[str, Rich]]:
    """The spelling as printed where the rules correct it, with the reasons, and other spellings that works print."""
    entry, act = answers.corpus.names[name], answers.corpus.publishing_act(name)
    if act is not None and words(act.printed) != words(entry.name):
        made = spelling(act, answers.recorded_genders)
        why = "; ".join(f"{one.reason} ({answers.code.edition.cite(one.article)})" for one in made.changes)
        before = (*plain("printed "), *set_name(act.printed), *plain(", corrected to "))
        yield "spelling", (*before, *set_name(entry.name.bare), *plain(f": {why}" if why else ""))
    others = [one for one in entry.variants if act is None or words(one) != words(act.printed)]
    yield "also spelt", listed([set_name(one) for one in others])
