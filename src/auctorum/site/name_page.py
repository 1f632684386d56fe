"""The page of a name: its words, acts, type, standing, and who uses it how."""

from __future__ import annotations

from collections.abc import Iterator

from auctorum.corpus.model import NameEntry, Treatment
from auctorum.site.answers import Answers
from auctorum.site.citations import date_words, protologue
from auctorum.site.judged import badge, name_facts, open_questions
from auctorum.site.page_parts import EventRow, StandingRow
from auctorum.site.pages import NamePage
from auctorum.site.rows import STATUS_WORDS, act_row, name_row, placement_row
from auctorum.site.words import Run


def name_page(answers: Answers, entry: NameEntry) -> NamePage:
    """The whole page of one name."""
    acts = answers.corpus.acts_of(entry.id)
    published = answers.corpus.publishing_act(entry.id)
    same = [name for name in answers.corpus.groups.get(entry.group, ()) if name != entry.id]
    taxa = answers.taxa_of_group.get(entry.group, ())
    return NamePage(
        name=answers.name(entry.id, authors=True, link=False),
        rank=entry.rank,
        is_autonym=entry.is_autonym,
        badge=badge(answers, entry.id),
        place=protologue(published) if published else (),
        taxa=tuple(answers.taxon(taxon.id) for taxon in taxa),
        acts=tuple(act_row(answers, act) for act in acts),
        standing=tuple(
            StandingRow(each.label, each.article, answers.text(each.reason)) for each in answers.standing(entry.id)
        ),
        questions=open_questions(answers, entry.id),
        facts=name_facts(answers, entry.id),
        same_type=tuple(name_row(answers, name) for name in same),
        uses=tuple(_uses(answers, entry)),
    )


def _uses(answers: Answers, entry: NameEntry) -> Iterator[EventRow]:
    """How each work uses the name, by date: in a treatment of its own, or in a list under another."""
    for treatment, status in answers.uses_of_name.get(entry.id, ()):
        yield _listed(answers, entry, treatment, status) if status else placement_row(answers, treatment)


def _listed(answers: Answers, entry: NameEntry, treatment: Treatment, status: str) -> EventRow:
    same_type = status == "synonym" and answers.corpus.names[treatment.name].group == entry.group
    before = "of " if same_type else "into " if status == "synonym" else "for "
    where = (Run(before), *answers.name(treatment.name))
    return EventRow(
        date=date_words(treatment.work.date.text), who=answers.work(treatment.work.id), page=treatment.record.page,
        what="synonym on the same type" if same_type else STATUS_WORDS[status], name=answers.name(entry.id),
        rank=treatment.rank, where=where, notes=(), is_act=False,
    )  # fmt: skip
