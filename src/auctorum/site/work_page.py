"""The pages of a publication and of an author."""

from __future__ import annotations

from auctorum.corpus.model import Treatment, Work
from auctorum.site.answers import Answers
from auctorum.site.citations import addresses, date_words, entry, person
from auctorum.site.page_parts import TreatmentBlock
from auctorum.site.pages import AuthorPage, WorkPage
from auctorum.site.paths import slug
from auctorum.site.rows import STATUS_WORDS, act_row, name_row, placement_row, words_row, work_row
from auctorum.site.words import Rich, Run, listed, plain

# What CSL calls the types that are commonest here, in words for a reader; others lose their hyphens only.
KINDS = {
    "article-journal": "article in a journal", "article-magazine": "article in a magazine", "chapter": "part of a book",
    "paper-conference": "paper of a conference", "webpage": "page on the web", "post-weblog": "entry of a web log",
}  # fmt: skip

LANGUAGES = {
    "de": "German", "en": "English", "es": "Spanish", "fr": "French", "it": "Italian", "la": "Latin", "nl": "Dutch",
    "pt": "Portuguese", "ru": "Russian", "sv": "Swedish",
}  # fmt: skip


def work_page(answers: Answers, work: Work) -> WorkPage:
    """The whole page of one publication."""
    treated = answers.corpus.by_work.get(work.id, ())
    return WorkPage(
        title=answers.bylines[work.id],
        entry=entry(work, answers.text),
        addresses=addresses(work),
        facts=_facts(answers, work),
        note=answers.text(work.record.note),
        acts=tuple(
            (answers.name(act.name, authors=True), act_row(answers, act)) for act in answers.corpus.acts_in(work.id)
        ),
        treatments=tuple(_treatment(answers, treatment) for treatment in treated),
        leaves_out=_left_out(answers, work),
        compare=answers.compared.paths.get(work.id, ""),
    )


def _facts(answers: Answers, work: Work) -> tuple[tuple[str, Rich], ...]:
    record = work.record
    effective = record.effective or record.issued
    if not record.effectively_published:
        published = "not effectively published"
    else:
        printed = "" if effective == record.issued else f" (printed date: {date_words(record.issued)})"
        published = date_words(effective) + printed
    facts: list[tuple[str, Rich]] = [
        ("kind", plain(KINDS.get(record.type, record.type.replace("-", " ")))),
        ("authors", listed([answers.author(author) for author in work.authors])),
        ("effective publication", plain("; ".join(filter(None, (published, record.effective_note))))),
        ("language", plain(LANGUAGES.get(record.language, record.language))),
        ("covers in full", listed([answers.name(name) for name in work.covers])),
        ("ISBN", plain(record.ISBN)),
        ("ISSN", plain(record.ISSN)),
    ]
    return tuple(fact for fact in facts if fact[1])


def _treatment(answers: Answers, treatment: Treatment) -> TreatmentBlock:
    record = treatment.record
    kept: Rich = (Run(f"{STATUS_WORDS[treatment.status]}, {treatment.rank}".removesuffix(", ")),)
    if treatment.accepted_as:
        kept = (Run(STATUS_WORDS[treatment.status] + ", under "), *answers.name(treatment.accepted_as))
    parent: Rich = answers.name(treatment.parent) if treatment.parent else ()
    facts: list[tuple[str, Rich]] = [
        ("kept as", kept),
        ("in", parent),
        ("page", plain(record.page.replace("-", "–"))),
        ("synonyms", listed([answers.name(name) for name in treatment.synonyms])),
        ("misapplied", listed([answers.name(name) for name in treatment.misapplied])),
        ("rests on", plain(record.basis if record.basis != "unstated" else "")),
        ("follows", listed(answers.works(treatment.follows))),
    ]
    rows = tuple(
        words_row(answers, each, answers.character(each.character))
        for each in answers.corpus.statements_of(treatment.id)
    )
    return TreatmentBlock(
        anchor=slug(treatment.id), name=answers.name(treatment.name), facts=tuple(fact for fact in facts if fact[1]),
        verbatim=record.verbatim, note=answers.text(record.note), rows=rows,
    )  # fmt: skip


def _left_out(answers: Answers, work: Work) -> tuple[Rich, ...]:
    """Taxa of the groups it covers that it passes over; one line for each type."""
    if not work.covers:
        return ()
    found = [taxon for taxon in answers.corpus.taxa.values() if work.id in answers.history(taxon.group).silent]
    firsts = {taxon.group: taxon for taxon in reversed(found)}
    return tuple(answers.taxon(taxon.id) for taxon in firsts.values())[::-1]


def author_page(answers: Answers, author: str) -> AuthorPage:
    """The whole page of one author."""
    works = [work for work in answers.corpus.works.values() if author in work.authors]
    acts = [act for work in works for act in answers.corpus.acts_in(work.id) if act.establishes]
    names = dict.fromkeys(act.name for act in acts)
    treated = [treatment for work in works for treatment in answers.corpus.by_work.get(work.id, ())]
    return AuthorPage(
        name=author,
        full=_full(author, works),
        works=tuple(work_row(answers, work.id) for work in works),
        names=tuple(name_row(answers, name) for name in names),
        views=tuple(placement_row(answers, treatment) for treatment in treated),
    )


def _full(author: str, works: list[Work]) -> str:
    for work in works:
        for printed, who in zip(work.authors, work.record.author, strict=False):
            if printed == author:
                return person(who)
    return author
