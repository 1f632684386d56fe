"""The correct name for a view, with its chain of reasons, and how the name that an author used stands beside it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from auctorum.corpus.model import Taxon, Treatment
from auctorum.names.ranks import SPECIES, UNRANKED, rank_named
from auctorum.nomenclature.correct import CorrectName, Outcome, Step
from auctorum.nomenclature.judgement import Legitimacy, Validity
from auctorum.nomenclature.views import Change, correct_in
from auctorum.problems import AuctorumError
from auctorum.site.answers import Answers, set_name
from auctorum.site.code_parts import AuthorRow, Badge, Called, RankRow, Reason
from auctorum.site.ranks import by_rank
from auctorum.site.words import Rich, Run, listed, plain

NO_BREAK = "\N{NO-BREAK SPACE}"
CORRECT, WRONG, OPEN = Badge("correct", "good"), Badge("not the correct name", "bad"), Badge("open", "open")
NO_NAME, AUTONYM = Badge("no name available", "none"), Badge("autonym", "good")
UNREAD = "no work here publishes the name"
_BADGES = {Outcome.NAME: None, Outcome.AUTONYM: AUTONYM, Outcome.UNDETERMINED: OPEN}


def reasons(answers: Answers, found: CorrectName) -> tuple[Reason, ...]:
    """The chain of an answer, each step with its article."""
    return tuple(Reason(_step(answers, step), step.article.replace(" ", NO_BREAK, 1)) for step in found.steps)


def _step(answers: Answers, step: Step) -> Rich:
    """The words of a step, with names as links and the epithet at issue in italics."""
    rich = answers.text(step.text)
    if step.name is None:
        return rich
    epithet = re.compile(rf"\b({re.escape(answers.corpus.names[step.name].name.final_epithet)})\b")
    found: list[Run] = []
    for run in rich:
        if run.href or run.italic:
            found.append(run)
        else:  # every second piece is the epithet
            found += [Run(piece, number % 2 == 1) for number, piece in enumerate(epithet.split(run.text)) if piece]
    return tuple(found)


def answer_words(answers: Answers, found: CorrectName, needed: str = "would be needed") -> Rich:
    """The answer itself: the name, or what would be needed, or between which names it is open."""
    if found.outcome is Outcome.UNDETERMINED:
        rivals = listed([answers.name(name, authors=True) for name in found.rivals])
        return (Run("priority is undetermined between "), *rivals)
    if found.name is None:
        return plain(f"a new name {needed}")
    if found.outcome is Outcome.COMBINATION_NEEDED:
        on: Rich = ()
        if found.based_on is not None:
            on = (Run(", based on "), *answers.name(found.based_on, authors=True))
        return (Run(f"a new combination {needed}, "), *set_name(found.name), *on)
    return answers.sentence([found.name]) if found.id is None else answers.name(found.id, authors=True)


def is_used(answers: Answers, treatment: Treatment, found: CorrectName) -> bool:
    """Whether the name that a work uses is the correct one that was found."""
    settled = found.outcome in (Outcome.NAME, Outcome.AUTONYM)
    return settled and found.name is not None and found.name.bare == answers.corpus.names[treatment.name].name.bare


def use(answers: Answers, treatment: Treatment) -> Called:
    """How the name that a work uses stands to the correct name for its own view at its time; told once, kept."""
    if treatment.id not in answers.uses:
        answers.uses[treatment.id] = _use(answers, treatment)
    return answers.uses[treatment.id]


def _use(answers: Answers, treatment: Treatment) -> Called:
    found = answers.correct_then(treatment)
    if found is None:
        why = "the work states no rank" if treatment.rank == UNRANKED.name else "no place to judge it in is known"
        return Called(OPEN, plain(why), ())
    return _against(answers, treatment, found, "was", "would have been needed")


def _against(answers: Answers, treatment: Treatment, found: CorrectName, tense: str, needed: str) -> Called:
    chain, told = reasons(answers, found), answer_words(answers, found, needed)
    if is_used(answers, treatment, found):
        condition = _condition(answers, found)
        return Called(Badge(f"correct {condition}", "open") if condition else CORRECT, (), chain)
    if _is_unread(answers, treatment.name):
        return Called(OPEN, plain(UNREAD), chain)
    if found.outcome is Outcome.UNDETERMINED:
        return Called(OPEN, told, chain)
    settled = found.outcome in (Outcome.NAME, Outcome.AUTONYM)
    lead = f"that {tense} " if settled else f"none {tense} available: "
    return Called(WRONG, (Run(lead), *told), chain)


def _condition(answers: Answers, found: CorrectName) -> str:
    """What the records leave open about the name that was found: `if validly published`; empty where it is settled."""
    judged = answers.code.of_name(found.id) if found.id is not None else None
    if judged is None:
        return ""
    doubts = ["validly published"] if judged.validity is Validity.UNDETERMINED else []
    doubts += ["legitimate"] if judged.legitimacy is Legitimacy.UNDETERMINED else []
    return f"if {' and '.join(doubts)}" if doubts else ""


def _is_unread(answers: Answers, name: str) -> bool:
    """Whether no work here publishes the name, so that nothing can be said of it."""
    return answers.corpus.publishing_act(name) is None and not answers.corpus.names[name].is_autonym


def author_rows(answers: Answers, taxon: Taxon) -> tuple[AuthorRow, ...]:
    """Each work that accepts the taxon, by date: its name beside the correct one, at its time and today."""
    return tuple(_author_row(answers, answers.corpus.treatments[each]) for each in taxon.treatments)


def _author_row(answers: Answers, treatment: Treatment) -> AuthorRow:
    then, found, before = use(answers, treatment), answers.correct_now(treatment), answers.correct_then(treatment)
    if found is None or before is None:
        now = Called(OPEN, (), ())
    else:
        now = _against(answers, treatment, found, "is", "would be needed")
        if (found.outcome, found.name, found.rivals) == (before.outcome, before.name, before.rivals):
            now = Called(now.badge, (), (), same=True)
    return AuthorRow(
        who=answers.work(treatment.work.id), name=answers.name(treatment.name), rank=treatment.rank, then=then, now=now
    )


def latest_accepting(answers: Answers, taxon: Taxon) -> Treatment | None:
    """The treatment of the latest effectively published work that accepts the taxon."""
    accepting = (answers.corpus.treatments[each] for each in reversed(taxon.treatments))
    return next((one for one in accepting if one.work.record.effectively_published), None)


def rank_rows(answers: Answers, taxon: Taxon, latest: Treatment) -> tuple[RankRow, ...]:
    """What the taxon, as the latest work draws it, must be called at each rank that a work gives its type."""
    ranks = by_rank(rank for rank in _ranks(answers, taxon) if rank != UNRANKED.name)
    return tuple(_rank_row(answers, latest, rank, taxon.group) for rank in ranks)


def _ranks(answers: Answers, taxon: Taxon) -> Iterator[str]:
    """Ranks at which the type is kept, or a name on it was published; above the species only if it stands there.

    That a species has an autonym below it gives the whole species no other rank.
    """
    current = answers.corpus.names[taxon.current]
    for event in answers.history(taxon.group).events:
        if answers.corpus.names[event.used].is_autonym and not current.is_autonym:
            continue
        kept = event.status in ("accepted", "doubtful")
        if event.rank and (kept or (event.is_act and event.stands)) and _of_one_sort(event.rank, current.rank):
            yield event.rank


def _of_one_sort(rank: str, own: str) -> bool:
    """Whether both are at the species or below, or both above it."""
    return (rank_named(rank) >= SPECIES) == (rank_named(own) >= SPECIES)


def _rank_row(answers: Answers, latest: Treatment, rank: str, group: str) -> RankRow:
    under, by = _place(answers, latest, rank, group)
    where: Rich = ()
    if under is not None:
        where = (Run("in "), *answers.name(under), Run(", as "), *answers.work(by), Run(" has it"))
    try:
        found = correct_in(answers.code, latest, Change(rank=rank if rank != latest.rank else "", under=under))
    except AuctorumError as error:
        return RankRow(rank, (), Called(OPEN, plain(str(error)), ()))
    condition = _condition(answers, found)
    badge = Badge(condition, "open") if condition else _BADGES.get(found.outcome, NO_NAME)
    if badge is NO_NAME and _is_unread(answers, latest.name):
        return RankRow(rank, where, Called(OPEN, plain(UNREAD), reasons(answers, found)))
    return RankRow(rank, where, Called(badge, answer_words(answers, found), reasons(answers, found)))


def _place(answers: Answers, latest: Treatment, rank: str, group: str) -> tuple[str | None, str]:
    """Where the latest work has it above that rank; where it is a species there and the rank lies below, the species
    in which the latest other work places it, with that work."""
    level = rank_named(rank)
    if level <= SPECIES or rank_named(latest.rank) > SPECIES:
        return None, ""
    for one in reversed(answers.corpus.by_group.get(group, ())):
        own = answers.corpus.names[one.name].group == group and not answers.corpus.names[one.name].is_autonym
        if own and one.parent is not None and rank_named(one.rank) > SPECIES:
            return one.parent, one.work.id
    for event in reversed(answers.history(group).events):
        act = answers.corpus.publishing_act(event.used) if event.is_act else None
        if act is not None and act.above is not None and act.printed.lower:
            return act.above, act.work.id
    return None, ""
