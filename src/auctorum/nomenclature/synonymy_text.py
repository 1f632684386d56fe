"""A synonymy written out: as plain text, Markdown, HTML, and data for JSON.

Signs, common practice, no source: ≡ on the same type, = on another type, – misapplied. Latin words stand in italics
where the form has them; ranks, authors and places upright.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from auctorum.names.format import Run, format_authors, format_name, parts
from auctorum.names.typeset import html, markdown
from auctorum.nomenclature.cited import Cited, Source, TypeOfName
from auctorum.nomenclature.synonymy import Block, Misapplication, Synonymy

INDENT = "  "


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a synonymy: `what` it holds, how far it is set in, and its text in runs (text, whether Latin)."""

    what: str  # accepted, homotypic, heterotypic, misapplied, type, according-to, sec
    depth: int
    runs: tuple[Run, ...]

    @property
    def text(self) -> str:
        """The words, without italics and indent."""
        return "".join(text for text, _ in self.runs)


def lines(found: Synonymy) -> tuple[Line, ...]:
    """The synonymy line by line, in the order of print."""
    return tuple(_lines(found))


def _lines(found: Synonymy) -> Iterator[Line]:
    alone = len(found.sec) == 1  # who says so goes without saying
    yield Line("accepted", 0, cited_runs(found.accepted))
    yield from _names("homotypic", 1, found.homotypic)
    yield from _types(1, found.types)
    for block in found.heterotypic:
        yield from _names("heterotypic", 1, block.names[:1])
        yield from _names("homotypic", 2, block.names[1:])
        yield from _types(2, block.types)
        if not alone:
            yield Line("according-to", 2, ((_according_to(block.according_to), False),))
    for wrong in found.misapplied:
        yield Line("misapplied", 1, _misapplied_runs(wrong))
    said = f"Sec. {'; '.join(map(str, found.sec))}." if found.sec else "Over all works of the knowledge base."
    yield Line("sec", 0, ((said, False),))


_SIGNS = {"homotypic": "≡ ", "heterotypic": "= "}


def _names(what: str, depth: int, names: Iterable[Cited]) -> Iterator[Line]:
    for one in names:
        yield Line(what, depth, _joined(((_SIGNS[what], False), *cited_runs(one))))


def _types(depth: int, types: Sequence[TypeOfName]) -> Iterator[Line]:
    if not types:
        return
    runs: list[Run] = [("Type: " if len(types) == 1 else "Types: ", False)]
    for number, one in enumerate(types):
        runs += [("; ", False)] if number else []
        runs += parts(one.name) if one.name is not None else [(one.words, False)] if one.words else []
        runs.append((_kept(one), False))
    yield Line("type", depth, _joined(runs))


def _kept(one: TypeOfName) -> str:
    """Herbarium, kind and who chose it, in parentheses; nothing for a type that is a name as it was published."""
    kind = "" if one.name is not None else one.kind
    told = ", ".join(filter(None, (one.herbarium, kind, one.designated_by and f"designated by {one.designated_by}")))
    return f"{' ' if one.words else ''}({told})" if told else ""


def _according_to(sources: Iterable[Source]) -> str:
    return f"[sec. {'; '.join(map(str, sources))}]"


def _misapplied_runs(wrong: Misapplication) -> tuple[Run, ...]:
    auct = f" auct. non {wrong.authors}" if wrong.authors else " auct."
    used = f": {'; '.join(wrong.used_in)}" if wrong.used_in else ""
    said = _according_to(wrong.according_to)
    return _joined((("– ", False), *parts(wrong.name), (f"{auct}{used} {said}", False)))


def cited_runs(one: Cited) -> tuple[Run, ...]:
    """A name with place, notes, other spellings and isonyms, in runs; a designation's words in quotation marks.

    Authors of a designation stand outside the quotation marks.
    """
    runs: list[Run] = []
    if one.is_designation:
        authors = format_authors(one.name.authors)
        runs += [("“", False), *parts(one.name.bare), ("”", False), (f" {authors}" if authors else "", False)]
    else:
        runs += parts(one.name)
    runs.append(("".join(f", {told}" for told in (one.place, *one.notes) if told), False))
    for spelling in one.spellings:
        said = [(spelling.name.final_epithet, True)] if spelling.epithet_only else parts(spelling.name)
        where = f"” in {spelling.source})" if spelling.source else "”)"
        runs += [(" (as “", False), *said, (where, False)]
    label = "again" if one.is_designation else "isonym"
    runs += [(f"; {label}: {again.authors}, {again.place}", False) for again in one.isonyms]
    return _joined(runs)


def _joined(runs: Iterable[Run]) -> tuple[Run, ...]:
    """Runs of one kind made one; empty ones left out."""
    made: list[Run] = []
    for text, latin in runs:
        if made and made[-1][1] == latin:
            made[-1] = (made[-1][0] + text, latin)
        elif text:
            made.append((text, latin))
    return tuple(made)


def as_text(found: Synonymy) -> str:
    """Plain text, one line a name, set in by two spaces a step; ends in a line feed."""
    return "".join(f"{INDENT * line.depth}{line.text}\n" for line in lines(found))


def as_markdown(found: Synonymy) -> str:
    """Markdown: the accepted name and the works as paragraphs, all else as a nested list; ends in a line feed."""
    first, *middle, last = lines(found)
    listed = "".join(f"{INDENT * (line.depth - 1)}- {markdown(line.runs)}\n" for line in middle)
    between = f"{listed}\n" if listed else ""
    return f"{markdown(first.runs)}\n\n{between}{markdown(last.runs)}\n"


def as_html(found: Synonymy) -> str:
    """An HTML fragment: the accepted name, nested lists with a class for each sort of line, the works asked."""
    first, *middle, last = lines(found)
    made = ['<div class="synonymy">', f'<p class="{first.what}">{html(first.runs)}</p>', *_html_list(middle, 1)]
    return "\n".join([*made, f'<p class="{last.what}">{html(last.runs)}</p>', "</div>\n"])


def _html_list(told: Sequence[Line], depth: int) -> Iterator[str]:
    """The lines from `depth` down as a list; those set in further belong to the line above them."""
    if not told:
        return
    yield "<ul>"
    starts = [number for number, line in enumerate(told) if line.depth == depth]
    for start, end in zip(starts, [*starts[1:], len(told)], strict=True):
        item = f'<li class="{told[start].what}">{html(told[start].runs)}'
        below = list(_html_list(told[start + 1 : end], depth + 1))
        yield from [item, *below, "</li>"] if below else [f"{item}</li>"]
    yield "</ul>"


def synonymy_data(found: Synonymy) -> dict[str, object]:
    """The synonymy as data for JSON: keys in the order of print, works by id, unknown places empty."""
    return {
        "accepted": _cited_data(found.accepted),
        "homotypic": [_cited_data(one) for one in found.homotypic],
        "types": [_type_data(one) for one in found.types],
        "heterotypic": [_block_data(block) for block in found.heterotypic],
        "misapplied": [_misapplied_data(one) for one in found.misapplied],
        "sec": [source.work for source in found.sec],
    }


def _cited_data(one: Cited) -> dict[str, object]:
    return {
        "id": one.id,
        "name": format_name(one.name),
        "place": one.place,
        "work": one.work,
        "notes": list(one.notes),
        "designation": one.is_designation,
        "autonym": one.is_autonym,
        "spellings": [
            {"name": format_name(other.name), "work": other.source.work if other.source else one.work}
            for other in one.spellings
        ],
        "isonyms": [{"authors": again.authors, "place": again.place, "work": again.work} for again in one.isonyms],
    }


def _type_data(one: TypeOfName) -> dict[str, str]:
    return {"kind": one.kind, "type": one.words, "herbarium": one.herbarium, "designated_by": one.designated_by}


def _block_data(block: Block) -> dict[str, object]:
    return {
        "names": [_cited_data(one) for one in block.names],
        "types": [_type_data(one) for one in block.types],
        "according_to": _sources_data(block.according_to),
    }


def _misapplied_data(one: Misapplication) -> dict[str, object]:
    return {
        "id": one.id,
        "name": format_name(one.name),
        "not_of": one.authors,
        "used_in": list(one.used_in),
        "according_to": _sources_data(one.according_to),
    }


def _sources_data(sources: Iterable[Source]) -> list[dict[str, str]]:
    return [{"work": one.work, "page": one.page} for one in sources]
