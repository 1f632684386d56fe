"""Lists, the index for search, problems and the glossary."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence

from auctorum.characters.states import state_names
from auctorum.names.format import format_name
from auctorum.problems import Problem, Severity
from auctorum.site.answers import Answers
from auctorum.site.citations import entry
from auctorum.site.glossary import TERMS
from auctorum.site.home_page import decades
from auctorum.site.page_parts import IndexEntry, ProblemRow
from auctorum.site.pages import GlossaryPage, ListPage, ProblemsPage, SearchPage
from auctorum.site.paths import slug
from auctorum.site.survey_page import survey_entries
from auctorum.site.words import alternating, counted, linked, text_of

FOLDERS = ("literature", "criteria")  # of a knowledge base


def search_page(answers: Answers) -> SearchPage:
    """Everything that has a page, by kind, alphabetical within each."""
    groups = (
        ("Names", name_entries(answers)),
        ("Characters", character_entries(answers)),
        ("Authors", author_entries(answers)),
        ("Publications", tuple(each for _, group in _work_groups(answers) for each in group)),
    )
    return SearchPage(tuple((title, _alphabetical(entries)) for title, entries in groups if entries))


def search_index(answers: Answers) -> str:
    """The index as a script: rows of kind, words (every second run in italics), detail, address."""
    rows = [
        [title.lower(), alternating(each.rich), each.detail, each.href]
        for title, entries in search_page(answers).groups
        for each in entries
    ]
    text = json.dumps(rows, ensure_ascii=True, separators=(",", ":"))
    for sign in "<>&":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return f"window.auctorumIndex={text};\n"


def name_entries(answers: Answers) -> tuple[IndexEntry, ...]:
    """Names with the rank and year, and the spellings that works have used for them."""
    found = []
    for name in answers.corpus.names.values():
        published = answers.corpus.publishing_act(name.id)
        year = str(published.work.year) if published else ""
        variants = [format_name(variant, authors=False) for variant in name.variants]
        detail = ", ".join(filter(None, (name.rank, year, *(f"also spelt {variant}" for variant in variants))))
        found.append(IndexEntry(answers.name(name.id, authors=True), detail, answers.name_paths[name.id]))
    return tuple(found)


def character_entries(answers: Answers) -> tuple[IndexEntry, ...]:
    """Characters with their structure's other words."""
    return tuple(
        IndexEntry(
            answers.character(each.name), ", ".join((each.kind, *each.words)), answers.character_paths[each.name]
        )
        for each in answers.corpus.vocabulary.characters
    )


def author_entries(answers: Answers) -> tuple[IndexEntry, ...]:
    """Authors with the number of their works."""
    works = answers.corpus.works.values()
    return tuple(
        IndexEntry(
            answers.author(author), counted(sum(author in work.authors for work in works), "work"),
            answers.author_paths[author],
        )
        for author in answers.authors
    )  # fmt: skip


def _work_groups(answers: Answers) -> tuple[tuple[str, tuple[IndexEntry, ...]], ...]:
    groups = []
    for decade in decades(answers):
        ids = [work for work in answers.corpus.works.values() if f"{work.year // 10 * 10}s" == decade.decade]
        entries = tuple(
            IndexEntry(answers.work(work.id), text_of(entry(work)), answers.work_paths[work.id]) for work in ids
        )
        if entries:
            groups.append((decade.decade, entries))
    return tuple(groups)


def list_pages(answers: Answers) -> tuple[tuple[str, ListPage], ...]:
    """The lists of names, characters, publications and authors, and of surveys if there are any, each with its path."""
    parts: dict[str, list[IndexEntry]] = {}
    for each, character in zip(character_entries(answers), answers.corpus.vocabulary.characters, strict=True):
        parts.setdefault(character.structure, []).append(each)
    letters: dict[str, list[IndexEntry]] = {}
    for name in _alphabetical(name_entries(answers)):
        letters.setdefault(text_of(name.rich).split(" ")[0], []).append(name)
    pages: list[tuple[str, str, str, tuple[tuple[str, tuple[IndexEntry, ...]], ...]]] = [
        ("names", "Names", "Every name in this knowledge base, accepted by somebody or not.", _frozen(letters)),
        ("characters", "Characters", "What is looked at in a plant, part by part.", _frozen(parts)),
        ("publications", "Publications", "Every work that was read, by decade.", _work_groups(answers)),
        ("authors", "Authors", "Everybody who wrote one of the works.", (("", author_entries(answers)),)),
    ]
    if answers.surveys.paths:
        led = "How many plants of the taxa at issue there are, and by whose definition."
        entries = tuple(IndexEntry(linked(rich, path), told, path) for rich, told, path in survey_entries(answers))
        pages.append(("survey", "Surveys", led, (("", entries),)))
    return tuple((f"{folder}/index.html", ListPage(title, lead, groups)) for folder, title, lead, groups in pages)


def problems_page(problems: Sequence[Problem]) -> ProblemsPage:
    """Every problem: errors, warnings and open questions apart, each file by file."""
    errors, warnings, asked = ([each for each in problems if each.severity is kind] for kind in Severity)
    counts = (len(errors), len(warnings), len(asked))
    return ProblemsPage(_by_file(errors), _by_file(warnings), _by_file(asked), counts)


def _by_file(problems: Iterable[Problem]) -> tuple[tuple[str, tuple[ProblemRow, ...]], ...]:
    found: dict[str, list[ProblemRow]] = {}
    for each in problems:
        file = file_of_record(each.place.file)
        above = each.place.file.removesuffix(file)
        what, remedy = (words.replace(above, "") if above else words for words in (each.what, each.remedy))
        found.setdefault(file, []).append(ProblemRow(str(each.place._replace(file=file)), what, remedy))
    return tuple((file, tuple(rows)) for file, rows in found.items())


def file_of_record(file: str) -> str:
    """The path of a file within its knowledge base; where that stands on the machine is nobody's business.

    >>> file_of_record("/home/someone/kb/literature/orrin-1911.yaml"), file_of_record("kb/kb.yaml")
    ('literature/orrin-1911.yaml', 'kb.yaml')
    """
    parts = file.replace("\\", "/").split("/")
    return "/".join(parts[-2:] if len(parts) > 1 and parts[-2] in FOLDERS else parts[-1:])


def glossary_page(answers: Answers) -> GlossaryPage:
    """Terms of the trade, then the vocabulary of this knowledge base."""
    characters = tuple(
        (
            answers.character(each.name), each.meaning,
            tuple((state.name, state.meaning) for state in each.states) or tuple((n, "") for n in state_names(each)),
        )
        for each in answers.corpus.vocabulary.characters
    )  # fmt: skip
    return GlossaryPage(tuple((slug(term), term, meaning) for term, meaning in TERMS), characters)


def _alphabetical(entries: Iterable[IndexEntry]) -> tuple[IndexEntry, ...]:
    return tuple(sorted(entries, key=lambda each: (text_of(each.rich).casefold(), each.href)))


def _frozen(groups: dict[str, list[IndexEntry]]) -> tuple[tuple[str, tuple[IndexEntry, ...]], ...]:
    return tuple((title, tuple(entries)) for title, entries in sorted(groups.items()))
