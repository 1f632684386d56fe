"""A table of labels that stands in no knowledge base, read as labels.csv is; opens no file."""

from __future__ import annotations

from collections.abc import Collection

from auctorum.problems import Problem, Severity
from auctorum.records.columns import titles_of
from auctorum.records.schema import PLACE_KEY, Label
from auctorum.records.tables import read_table, records_of


def read_labels_text(
    text: str, file: str, characters: Collection[str]
) -> tuple[tuple[Label, ...], tuple[Problem, ...]]:
    """The labels in the text of a table, and every problem; `characters` are the names of the vocabulary.

    A label without an occurrenceID is called by its line, `row 12`; a row without a name on its label is a problem and
    left out. A column that is not known is a warning only.
    """
    problems: list[Problem] = []
    titles = titles_of(characters, Label, required=("verbatimIdentification",))
    table = read_table(text, file, titles, problems.append, Severity.WARNING)
    rows = [{"occurrenceID": f"row {data[PLACE_KEY].line}"} | data for data in table.rows]
    return tuple(records_of(table, Label, rows, problems.append)), tuple(sorted(problems))
