"""The page of a taxon: who said what, when, at which rank, and where they differ."""

from __future__ import annotations

import re
from collections.abc import Mapping

from auctorum.circumscription.headlines import Headline, headlines
from auctorum.circumscription.lineage_words import lineage_sentences
from auctorum.circumscription.phrases import at_stage
from auctorum.corpus.model import Taxon
from auctorum.nomenclature.history import History
from auctorum.site.answers import Answers
from auctorum.site.apart_page import apart_sentences
from auctorum.site.called import author_rows, latest_accepting, rank_rows
from auctorum.site.drawings import path_figure
from auctorum.site.findings import unread_rows, verdict_groups
from auctorum.site.more_drawings import lineage_figure
from auctorum.site.opinion import answer, view_rows
from auctorum.site.page_parts import WorkRow
from auctorum.site.pages import TaxonPage
from auctorum.site.paths import slug
from auctorum.site.rows import STATUS_WORDS, event_row, type_words, work_row
from auctorum.site.survey_page import survey_sentences
from auctorum.site.synonymies import synonymy_views
from auctorum.site.words import Rich, Run, capital

_MARKS = re.compile(r"(\[\d+(?:[,;–-] ?\d+)*\])")


def taxon_page(answers: Answers, taxon: Taxon) -> TaxonPage:
    """The whole page of one taxon."""
    history = answers.history(taxon.group)
    diagnosis = answers.diagnosis(taxon.id)
    accepting = [answers.corpus.treatments[each] for each in taxon.treatments]
    latest = latest_accepting(answers, taxon)
    return TaxonPage(
        name=answers.name(taxon.current, authors=True, link=False),
        rank=accepting[-1].rank if accepting else answers.corpus.names[taxon.current].rank,
        sense=taxon.sense,
        meaning=taxon.sense.meaning,
        type=group_type(answers, taxon.group),
        answer=answer(answers, history),
        path=path_figure(answers, taxon.group, answers.name(taxon.current, link=False), "rank-path"),
        events=tuple(event_row(answers, event) for event in history.events),
        views=view_rows(answers, history),
        left_out=answers.works(history.silent),
        standing_out=tuple(_headline(answers, one) for one in headlines(diagnosis.findings, answers.corpus.works)),
        apart=apart_sentences(answers, taxon.id),
        groups=verdict_groups(answers, taxon),
        survey=survey_sentences(answers, taxon.id),
        survey_path=answers.surveys.paths.get(taxon.id, ""),
        lineage=lineage_figure(answers, taxon.id),
        repeating=tuple(map(answers.text, lineage_sentences(answers.lineage(taxon.id), answers.corpus.works))),
        consensus=_with_marks(answers, diagnosis.text, diagnosis.sources),
        sources=tuple(work_row(answers, work) for work in diagnosis.sources),
        unread=unread_rows(answers, taxon),
        latest=answers.work(latest.work.id) if latest is not None else (),
        at_ranks=rank_rows(answers, taxon, latest) if latest is not None else (),
        by_author=author_rows(answers, taxon),
        synonymies=synonymy_views(answers, taxon),
        literature=_literature(answers, history),
    )


def group_type(answers: Answers, group: str) -> Rich:
    """The type of a group of names, as the latest act that states one states it; nothing where none does."""
    found: Rich = ()
    acts = [act for name in answers.corpus.groups.get(group, ()) for act in answers.corpus.acts_of(name)]
    for act in sorted(acts, key=lambda act: act.work.date):
        if words := type_words(answers, act):
            found = (
                Run(capital(words[0].text), words[0].italic),
                *words[1:],
                Run(" ("),
                *answers.work(act.work.id),
                Run(")"),
            )
    return found


def _headline(answers: Answers, one: Headline) -> tuple[str, str, Rich]:
    return slug(f"{one.character} {one.stage}"), capital(at_stage(one.character, one.stage)), answers.text(one.told)


def _with_marks(answers: Answers, text: str, sources: tuple[str, ...]) -> Rich:
    """The merged text, its marks `[1, 3]` as links to the works they stand for."""
    runs: list[Run] = []
    for part in _MARKS.split(text):
        if not _MARKS.fullmatch(part):
            runs += answers.text(part)
            continue
        for piece in re.split(r"(\d+)", part):
            number = int(piece) if piece.isdigit() else 0
            known = 1 <= number <= len(sources)
            runs.append(Run(piece, href=answers.work_paths[sources[number - 1]] if known else ""))
    return tuple(run for run in runs if run.text)


def _literature(answers: Answers, history: History) -> tuple[WorkRow, ...]:
    """Works that act on or place the type, then those that leave it out, by date."""
    told: dict[str, list[str]] = {}
    for event in history.events:
        words = event.what if event.is_act else STATUS_WORDS.get(event.status, event.status)
        told.setdefault(event.work, []).append(f"{words} ({event.rank})" if event.rank else words)
    notes: Mapping[str, str] = {
        **{work: ", ".join(dict.fromkeys(words)) for work, words in told.items()},
        **dict.fromkeys(history.silent, "leaves it out"),
    }
    ordered = sorted(notes, key=lambda work: (answers.corpus.works[work].date, work))
    return tuple(work_row(answers, work, notes[work]) for work in ordered)
