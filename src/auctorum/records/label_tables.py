"""A table of labels that stands in no knowledge base, read as labels.csv is; opens no file."""

from __future__ import annotations

from collections.abc import Collection

from auctorum.problems import Place, Problem, Severity
from auctorum.records.columns import Column, titles_of
from auctorum.records.schema import PLACE_KEY, Label
from auctorum.records.tables import read_table, records_of

_NAME = "verbatimIdentification"


def read_labels_text(
    text: str, file: str, characters: Collection[str]
) -> tuple[tuple[Label, ...], tuple[Problem, ...]]:
    """The labels in the text of a table, and every problem; `characters` are the names of the vocabulary.

    A label without an occurrenceID is called by its line, `row 12`; a row without a name on its label is a problem and
    left out. A column that is not known is a warning only.
    """
    problems: list[Problem] = []
    titles = titles_of(characters, Label, required=(_NAME,))
    table = read_table(text, file, titles, problems.append, Severity.WARNING)
    if Column(field=_NAME) not in table.columns:
        return (), tuple(sorted(problems))  # said of the header once, not again of each row
    number, rows = table.number_of(_NAME), []
    for data in table.rows:
        if _NAME in data:
            rows.append({"occurrenceID": f"row {data[PLACE_KEY].line}"} | data)
        else:
            place: Place = data[PLACE_KEY]._replace(column=number)
            problems.append(Problem(place, "no name; the row was left out", "write the name as the label spells it"))
    return tuple(records_of(table, Label, rows, problems.append)), tuple(sorted(problems))
