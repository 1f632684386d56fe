"""From a corpus to the texts of all pages; nothing is written here.

Each page is a job of its own, so that a large site can be rendered on both cores. The same corpus gives the
same texts in the same order, however they were rendered.
"""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass

from jinja2 import Environment

from auctorum.nomenclature.code import Code
from auctorum.problems import Problem
from auctorum.site.answers import Answers
from auctorum.site.apart_page import apart_page
from auctorum.site.character_page import character_page
from auctorum.site.compare_page import comparison_page, comparisons_page
from auctorum.site.group_page import group_page
from auctorum.site.home_page import home_page
from auctorum.site.lists import glossary_page, list_pages, problems_page, search_index, search_page
from auctorum.site.name_page import name_page
from auctorum.site.page_parts import Shell
from auctorum.site.pages import Page
from auctorum.site.paths import root_of
from auctorum.site.rules_page import rules_page
from auctorum.site.survey_page import survey_page
from auctorum.site.taxon_page import taxon_page
from auctorum.site.templates import asset_texts, environment
from auctorum.site.words import Rich, Run, capital, text_of
from auctorum.site.work_page import author_page, work_page

SERIAL_UP_TO = 400  # pages; below this a second process costs more than it saves
CHUNK = 25


@dataclass(frozen=True, slots=True)
class Job:
    """One page to be rendered: its kind, what it is about (an id), and its path."""

    kind: str
    subject: str
    path: str


class Renderer:
    """Answers and templates, ready to render any job."""

    def __init__(self, code: Code, problems: Sequence[Problem]) -> None:
        self.answers = Answers(code, problems)
        self.env: Environment = environment()

    def jobs(self) -> tuple[Job, ...]:
        """Every page of the site, in order."""
        answers = self.answers
        single = (
            ("home", "index.html"),
            ("search", "search.html"),
            ("problems", "problems.html"),
            ("glossary", "glossary.html"),
            ("rules", "rules.html"),
            ("compare", "compare.html"),
        )
        found = [Job(kind, "", path) for kind, path in single]
        folders = ("names", "characters", "publications", "authors", *(("survey",) if answers.surveys.paths else ()))
        found += [Job("list", folder, f"{folder}/index.html") for folder in folders]
        beside, surveys = answers.apart_paths, answers.surveys.paths
        for taxon, path in answers.taxon_paths.items():  # what both pages need is worked out in one worker
            found.append(Job("taxon", taxon, path))
            found += [Job("survey", taxon, surveys[taxon])] if taxon in surveys else []
            found += [Job("apart", taxon, beside[taxon])] if taxon in beside else []
        for kind, paths in (
            ("name", answers.name_paths), ("character", answers.character_paths),
            ("work", answers.work_paths), ("author", answers.author_paths),
            ("comparison", answers.compared.paths), ("group", answers.group_paths),
        ):  # fmt: skip
            found += [Job(kind, subject, path) for subject, path in paths.items()]
        return tuple(found)

    def text(self, job: Job) -> tuple[str, str]:
        """Path and text of one page."""
        page = self.page(job)
        title, section, crumbs = self._about(job, page)
        template = self.env.get_template(f"{job.kind}.html.jinja")
        return job.path, template.render(page=page, shell=self._shell(job, section, crumbs), title=title)

    def page(self, job: Job) -> Page:
        """The context of one page."""
        answers, corpus, subject = self.answers, self.answers.corpus, job.subject
        match job.kind:
            case "home":
                return home_page(answers)
            case "search":
                return search_page(answers)
            case "problems":
                return problems_page(answers.problems)
            case "glossary":
                return glossary_page(answers)
            case "list":
                return dict(list_pages(answers))[job.path]
            case "taxon":
                return taxon_page(answers, corpus.taxa[subject])
            case "name":
                return name_page(answers, corpus.names[subject])
            case "character":
                return character_page(answers, corpus.vocabulary[subject])
            case "work":
                return work_page(answers, corpus.works[subject])
            case "rules":
                return rules_page(answers)
            case "compare":
                return comparisons_page(answers)
            case "comparison":
                return comparison_page(answers, subject)
            case "apart":
                return apart_page(answers, subject)
            case "survey":
                return survey_page(answers, subject)
            case "group":
                return group_page(answers, subject)
            case _:
                return author_page(answers, subject)

    def _about(self, job: Job, page: Page) -> tuple[str, str, tuple[Rich, ...]]:
        """Title for the window, section for the menu, and what leads to the page."""
        answers = self.answers
        match job.kind:
            case "home":
                return "", "home", ()
            case "search" | "problems" | "glossary" | "rules" | "compare":
                return job.kind.capitalize(), job.kind, ()
            case "list" if job.subject == "survey":
                return "Surveys", "survey", ()
            case "list":
                return job.subject.capitalize(), job.subject, ()
            case "taxon":
                return text_of(answers.taxon(job.subject, link=False)), "home", (_crumb("Taxa", "index.html"),)
            case "name":
                return text_of(answers.name(job.subject, link=False)), "names", (_crumb("Names", "names/index.html"),)
            case "character":
                return capital(job.subject), "characters", (_crumb("Characters", "characters/index.html"),)
            case "work":
                return (
                    answers.bylines[job.subject],
                    "publications",
                    (_crumb("Publications", "publications/index.html"),),
                )
            case "comparison":
                byline = answers.bylines[job.subject]
                return f"From {byline} to others", "compare", (_crumb("Compare", "compare.html"),)
            case "survey":
                title = f"Plants of {text_of(answers.taxon(job.subject, link=False))}"
                return title, "survey", (_crumb("Surveys", "survey/index.html"),)
            case "apart":
                title = f"{text_of(answers.taxon(job.subject, link=False))} beside its sisters"
                return title, "compare", (_crumb("Compare", "compare.html"),)
            case "group":
                return f"{job.subject} at a glance", "compare", (_crumb("Compare", "compare.html"),)
            case _:
                return job.subject, "authors", (_crumb("Authors", "authors/index.html"),)

    def _shell(self, job: Job, section: str, crumbs: tuple[Rich, ...]) -> Shell:
        settings = self.answers.corpus.settings
        return Shell(
            site=settings.title, notice=settings.notice, licence=settings.licence, editors=settings.editors,
            code_edition=settings.code_edition, root=root_of(job.path), section=section, crumbs=crumbs,
            surveys=bool(self.answers.surveys.paths),
        )  # fmt: skip


def _crumb(words: str, href: str) -> Rich:
    return (Run(words, href=href),)


def render(code: Code, problems: Sequence[Problem]) -> Iterator[tuple[str, str]]:
    """Path and text of every file of the site: pages in order, then the index for search, then the assets."""
    renderer = Renderer(code, problems)
    jobs = renderer.jobs()
    if len(jobs) > SERIAL_UP_TO and (os.cpu_count() or 1) > 1:
        yield from _on_all_cores(code, problems, jobs)
    else:
        yield from map(renderer.text, jobs)
    yield "assets/index.js", search_index(renderer.answers)
    yield from asset_texts()


_renderer: Renderer | None = None  # one for each worker process, set when the process starts


def _start(code: Code, problems: Sequence[Problem]) -> None:
    global _renderer
    _renderer = Renderer(code, problems)


def _text(job: Job) -> tuple[str, str]:
    assert _renderer is not None
    return _renderer.text(job)


def _on_all_cores(code: Code, problems: Sequence[Problem], jobs: Sequence[Job]) -> Iterator[tuple[str, str]]:
    # A forked worker inherits the corpus; where there is no fork it is sent to each worker once.
    method = "fork" if "fork" in multiprocessing.get_all_start_methods() else "spawn"
    context = multiprocessing.get_context(method)
    with ProcessPoolExecutor(None, context, initializer=_start, initargs=(code, problems)) as pool:
        yield from pool.map(_text, jobs, chunksize=CHUNK)
