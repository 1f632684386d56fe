"""Statements put into the text of a literature file; text in, text out, and nothing that stands there is changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from auctorum.names.format import format_authors, words
from auctorum.names.name import UnreadableName
from auctorum.names.parse import parse as parse_name
from auctorum.problems import AuctorumError
from auctorum.records import forms, schema
from auctorum.records.faults import validate
from auctorum.records.insert import (
    Item,
    Unwritable,
    composed,
    data_of,
    is_block_list,
    plain_or_quoted,
    quoted,
    value_at,
    with_items,
)
from auctorum.records.schema import PLACE_KEY, Conventions, StatementRecord
from auctorum.records.yamltext import CONTROL, parse

_KEYS = ("character", "verbatim", "value", "stage", "page", "note")
_QUOTED = ("verbatim", "value", "note")


class WhichTreatment(AuctorumError, LookupError):
    """A file in which it is not clear whose statements they are; `taxa` are those it treats."""

    def __init__(self, said: str, taxa: tuple[str, ...], lines: tuple[int, ...] = ()) -> None:
        super().__init__(said, taxa, lines)
        self.said, self.taxa, self.lines = said, taxa, lines

    def __str__(self) -> str:
        if self._is_one_name:
            return f"the file has {len(self.taxa)} treatments of `{self.taxa[0]}`"
        if self.said:
            return f"the file treats {len(self.taxa)} taxa that may be `{self.said}`"
        return (
            f"the file treats {len(self.taxa) or 'no'} {'taxon' if len(self.taxa) == 1 else 'taxa'}, and none is named"
        )

    @property
    def remedy(self) -> str:  # type: ignore[override]
        if self._is_one_name:
            *others, last = map(str, self.lines)
            return f"a work treats a name once: make one treatment of those at lines {', '.join(others)} and {last}"
        return (
            f"name one of: {'; '.join(dict.fromkeys(self.taxa))}" if self.taxa else "name the taxon that is described"
        )

    @property
    def _is_one_name(self) -> bool:
        """Several treatments of the very same words, which no name can tell apart."""
        return len(self.lines) > 1 and len({tuple(taxon.split()) for taxon in self.taxa}) == 1


@dataclass(frozen=True, slots=True)
class Appended:
    """The new text, the taxon as the file writes it, what was added, and what had stood there already.

    `there` are the statements of the file, with their page or that of their treatment. `begun` says whether the
    treatment is new.
    """

    text: str
    taxon: str
    added: tuple[StatementRecord, ...]
    there: tuple[StatementRecord, ...]
    begun: bool = False


def appended(text: str, taxon: str, statements: Sequence[StatementRecord]) -> Appended:
    """The literature file `text` with the statements at the end of the treatment of `taxon`.

    An empty `taxon` is the only one treated. Where the taxon has no treatment, one begins at the end. A statement
    of the same character and words as one in the file is not added, whatever its page. Raises WhichTreatment, and
    Unwritable where the file cannot be read or the statements cannot be put in without changing it.
    """
    data, taxon = _literature(text), " ".join(taxon.split())
    treatments = _records(data.get("treatments"))
    number = _number(treatments, taxon)
    known = treatments[number] if number is not None else {}
    kept = {_key(one): one for one in reversed(_records(known.get("traits")))}
    cleaned = tuple(dict.fromkeys(_cleaned(one) for one in statements))
    there = tuple(_as_kept(kept[key], known) for one in cleaned if (key := _key(_pairs(one))) in kept)
    added = tuple(one for one in cleaned if _key(_pairs(one)) not in kept)
    said = str(known.get("taxon", taxon))
    if not added and number is not None:
        return Appended(text, said, (), there)
    made = _inserted(text, number, taxon, added)
    _check(data, made, number, taxon, added)
    return Appended(made, said, added, there, number is None)


def statement_line(statement: StatementRecord) -> str:
    """The statement on one line, as it stands in a list of traits.

    >>> print(statement_line(StatementRecord("spur length", verbatim="spur 22-34 mm", page="107")))
    {character: spur length, verbatim: "spur 22-34 mm", page: 107}
    """
    written = (
        f"{key}: {quoted(value) if key in _QUOTED else plain_or_quoted(value)}"
        for key, value in _pairs(statement).items()
    )
    return "{" + ", ".join(written) + "}"


def new_literature(work: str, conventions: Conventions) -> str:
    """The form of a new literature file, with the conventions of the work where they are not the common ones."""
    said = [f"line: {plain_or_quoted(conventions.line)}"] if conventions.line != "english" else []
    signs = ", ".join(f"{quoted(sign)}: {quoted(unit)}" for sign, unit in sorted(conventions.signs.items()))
    said += [f"signs: {{{signs}}}"] if signs else []
    text = forms.literature(work)
    return text.replace("\nacts:", f"\nconventions: {{{', '.join(said)}}}\nacts:", 1) if said else text


def conventions_of(text: str) -> Conventions:
    """How the work in a literature file prints measures; raises Unwritable where the file does not tell it readably."""
    said = data_of(text).get("conventions")
    found, problems = validate(Conventions, said) if isinstance(said, dict) else (Conventions(), [])
    if found is None or (said is not None and not isinstance(said, dict)):
        why = problems[-1].what if problems else "they are no record"
        raise Unwritable(f"the conventions of the file cannot be read: {why}", "see what `auctorum check` says of it")
    return found


def check_treatment(text: str, taxon: str) -> None:
    """Raises what `appended` would raise for the file and the taxon, whatever the statements."""
    _number(_records(_literature(text).get("treatments")), taxon)


def _literature(text: str) -> dict[str, Any]:
    """The data of a literature file; raises Unwritable for a file of another sort."""
    data = data_of(text)
    if not isinstance(data.get("work"), dict):
        why = "no literature file: it has no `work:` (line 1)"
        raise Unwritable(why, "name the file of a publication; `auctorum new literature ID` starts one")
    return data


def _records(value: Any) -> list[dict[str, Any]]:
    """The items of a list, an empty record for what is none, so that numbers are those of the list."""
    return [one if isinstance(one, dict) else {} for one in value] if isinstance(value, list) else []


def _number(treatments: Sequence[dict[str, Any]], taxon: str) -> int | None:
    """The number of the treatment meant; None where the taxon has none yet."""
    taxa = [str(one.get("taxon", "")) for one in treatments]
    if not taxon:
        if len(taxa) != 1 or not taxa[0]:
            raise _which("", treatments)
        return 0
    alike = [number for number, said in enumerate(taxa) if said and _same(said, taxon)]
    exact = [number for number in alike if taxa[number].split() == taxon.split()]
    found = exact if len(exact) == 1 else alike
    if len(found) > 1:
        raise _which(taxon, [treatments[number] for number in found])
    return found[0] if found else None


def _which(said: str, treatments: Sequence[dict[str, Any]]) -> WhichTreatment:
    places = [one.get(PLACE_KEY) for one in treatments]
    lines = tuple(place.line for place in places if place is not None)
    return WhichTreatment(said, tuple(str(one.get("taxon", "")) for one in treatments), lines)


def _same(one: str, other: str) -> bool:
    """Whether both are one name: the same words, and the same authors where both give them."""
    try:
        first, second = parse_name(one).name, parse_name(other).name
    except UnreadableName:
        return one.split() == other.split()
    authors = format_authors(first.authors), format_authors(second.authors)
    return words(first) == words(second) and (not all(authors) or authors[0] == authors[1])


def _pairs(statement: StatementRecord) -> dict[str, str]:
    """Keys and values of a statement as a file holds them, the empty ones left out."""
    return {key: value for key in _KEYS if (value := getattr(statement, key))}


def _cleaned(statement: StatementRecord) -> StatementRecord:
    """The statement without control characters, which no file of records may hold."""
    character, verbatim, value, stage, page, note = (CONTROL.sub("", getattr(statement, key)) for key in _KEYS)
    return StatementRecord(character, verbatim, value, stage, page, note)


def _key(statement: dict[str, Any]) -> tuple[str, str]:
    """Character and words, which tell a statement from the others of its treatment."""
    said = str(statement.get("verbatim") or statement.get("value", ""))
    return str(statement.get("character", "")), " ".join(said.split())


def _as_kept(statement: dict[str, Any], treatment: dict[str, Any]) -> StatementRecord:
    """A statement as the file has it; one without a page has that of its treatment."""
    character, verbatim, value, stage, page, note = (str(statement.get(key, "")) for key in _KEYS)
    return StatementRecord(character, verbatim, value, stage, page or str(treatment.get("page", "")), note)


def _inserted(text: str, number: int | None, taxon: str, added: Sequence[StatementRecord]) -> str:
    root = composed(text)
    shift = _shift(root)
    items = [Item(line, (line,)) for line in map(statement_line, added)]
    if number is not None:
        treatments = value_at(root, "treatments")
        assert treatments is not None
        return with_items(text, treatments.value[number], "traits", items, shift)
    begun = [f"{key}: {plain_or_quoted(value)}" for key, value in _begun(taxon, added).items()]
    flow = [*begun, f"traits: [{', '.join(item.flow for item in items)}]"] if items else begun
    traits = ["traits:", *(f"{' ' * shift}- {item.flow}" for item in items)] if items else []
    return with_items(text, root, "treatments", [Item(f"{{{', '.join(flow)}}}", (*begun, *traits))], shift)


def _begun(taxon: str, added: Sequence[StatementRecord]) -> dict[str, str]:
    """The fields of a new treatment, its page that of the first statement."""
    page = added[0].page if added else ""
    return {"taxon": taxon, "status": str(schema.Status.ACCEPTED)} | ({"page": page} if page else {})


def _shift(root: Any) -> int:
    """How far lists stand in from their keys in this file, as far as it has any; else as in a new file."""
    treatments = value_at(root, "treatments")
    inner = treatments.value if is_block_list(treatments) else ()
    for owner, key in [*((one, "traits") for one in inner), (root, "treatments"), (root, "acts")]:
        if is_block_list(found := value_at(owner, key)):
            return max(0, int(found.start_mark.column - owner.start_mark.column))
    return 0


def _check(before: dict[str, Any], text: str, number: int | None, taxon: str, added: Sequence[StatementRecord]) -> None:
    """Raises Unwritable unless the new text reads as the old one with the statements at their place."""
    wanted, said = _bare(before), [_pairs(one) for one in added]
    treatments = wanted.setdefault("treatments", [])
    if number is None:
        treatments.append({**_begun(taxon, added), **({"traits": said} if said else {})})
    else:
        treatments[number].setdefault("traits", []).extend(said)
    found, _ = parse(text, "")
    if _bare(found) != wanted:
        why = "the statements cannot be put into the file without changing what stands there"
        raise Unwritable(why, "paste them in yourself")


def _bare(data: Any) -> Any:
    """Data without places and without space around words, in lists and records of its own."""
    if isinstance(data, dict):
        return {key: _bare(value) for key, value in data.items() if key != PLACE_KEY}
    if isinstance(data, list):
        return [_bare(item) for item in data]
    return data.strip() if isinstance(data, str) else data
