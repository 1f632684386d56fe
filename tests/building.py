"""Small knowledge bases written as YAML inside a test, beside what they give."""

from __future__ import annotations

from collections.abc import Sequence

from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.nomenclature.code import Code, applied
from auctorum.problems import Problem, Severity
from auctorum.records import schema
from auctorum.records.faults import validate_and_salvage
from auctorum.records.yamltext import Places, parse

CHARACTERS = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm}
- {name: petal number, structure: petal, property: count, kind: count}
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  states: [{name: green}, {name: cream}, {name: ivory}]
"""


def read_text(text: str, record: type, file: str):
    """The record in `text`; the text must be good YAML and a good record."""
    data, problems = parse(text, file)
    assert not problems, problems[0]
    found, problems = validate_and_salvage(record, data)
    assert not problems, problems[0]
    return found


def corpus_of(
    *literature: str, characters: str = CHARACTERS, files: Sequence[str] = (), settings: str = "title: Test\n"
) -> tuple[Corpus, list[str]]:
    """The linked corpus of some literature files, and its problems as printed.

    A file is named after the id of its work unless `files` names them.
    """
    read = [read_text(text, schema.Literature, "") for text in literature]
    names = files or [f"{one.work.id}.yaml" for one in read]
    texts = dict(zip(names, literature, strict=True))
    records = schema.Records(
        settings=read_text(settings, schema.Settings, "kb.yaml"),
        characters=read_text(characters, schema.Characters, "characters.yaml"),
        literature=tuple(read_text(text, schema.Literature, file) for file, text in texts.items()),
    )
    linked, problems = link(records)
    corpus = applied(linked).corpus
    places = {file: Places(text, file) for file, text in texts.items()}
    return corpus, [str(_placed(problem, places)) for problem in problems]


def code_of(*literature: str, settings: str = "title: Test\n") -> Code:
    """The judgements on some literature files."""
    return applied(corpus_of(*literature, settings=settings)[0])


def _placed(problem: Problem, places: dict[str, Places]) -> Problem:
    file = problem.place.file
    if not problem.within or file not in places:
        return problem
    place = places[file].locate(problem.within, problem.place)
    return Problem(place, problem.what, problem.remedy, Severity(problem.severity))
