"""Characters put into the text of characters.yaml; text in, text out, and nothing that stands there is changed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

import yaml

from auctorum.characters.vocabulary import Character, State
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


def with_characters(text: str, characters: Sequence[Character]) -> str:
    """The vocabulary file `text` with the characters at its end; one that it names already is not added.

    Raises Unwritable where the file cannot be read, or nothing can be put in without changing it.
    """
    known = names_in(text)
    new = [one for one in characters if one.name not in known]
    if not new:
        return text
    items = [Item(f"{{{', '.join(_lines(one))}}}", tuple(_lines(one))) for one in new]
    root = composed(text)
    there = value_at(root, "characters")
    shift = there.start_mark.column - root.start_mark.column if is_block_list(there) else 0
    made = with_items(text, root, "characters", items, shift)
    if names_in(made) != [*known, *(one.name for one in new)]:
        why = "the characters cannot be put into the file without changing what stands there"
        raise Unwritable(why, f"put them in yourself:\n{as_yaml(new)}")
    return made


def with_states(text: str, lacking: Mapping[str, Sequence[State]]) -> str:
    """The vocabulary file `text` with states at the end of the lists of its characters; one that it names stays as is.

    `lacking` has the new states by the name of their character; one that the file does not have is passed over.
    Raises Unwritable as `with_characters` does.
    """
    made = text
    for name, wanted in lacking.items():
        known = states_in(made).get(name)
        new = [one for one in wanted if known is not None and one.name.casefold() not in map(str.casefold, known)]
        if known is None or not new:
            continue
        grown = _with_states(made, name, new)
        if states_in(grown) != {**states_in(made), name: [*known, *(one.name for one in new)]}:
            why = f"the states cannot be put into `{name}` without changing what stands there"
            raise Unwritable(why, f"put them in yourself:\n{states_as_yaml({name: new})}")
        made = grown
    return made


def _with_states(text: str, name: str, new: Sequence[State]) -> str:
    root = composed(text)
    listed = value_at(root, "characters")
    owner = next(
        one for one in (listed.value if isinstance(listed, yaml.SequenceNode) else ())
        if (said := value_at(one, "name")) is not None and str(said.value).strip() == name.strip()
    )  # fmt: skip
    return with_items(text, owner, "states", [Item(_state(one), (_state(one),)) for one in new], shift=2)


def states_as_yaml(lacking: Mapping[str, Sequence[State]]) -> str:
    """The states as items of lists in characters.yaml, ready to paste, under the names of their characters.

    >>> print(states_as_yaml({"leaf shape": [State("oblong")]}))
      # leaf shape
          - {name: oblong}
    """
    lines = [(f"  # {name}", *(f"      - {_state(one)}" for one in states)) for name, states in lacking.items()]
    return "\n".join(line for several in lines for line in several)


def states_in(text: str) -> dict[str, list[str]]:
    """The names of the states of each character in a vocabulary file; raises Unwritable where it cannot be read."""
    return {
        str(one.get("name", "")): [str(state.get("name", "")) for state in one.get("states") or ()]
        for one in reversed(_characters_in(text))
    }


def as_yaml(characters: Iterable[Character]) -> str:
    """The characters as items of the list in characters.yaml, ready to paste.

    >>> from auctorum.characters.vocabulary import Kind
    >>> print(as_yaml([Character("style length", "style", "length", Kind.MEASURE, "mm")]))
      - name: style length
        structure: style
        property: length
        kind: measure
        unit: mm
    """
    items = [
        [f"  - {line}" if number == 0 else f"    {line}" for number, line in enumerate(_lines(one))]
        for one in characters
    ]
    return "\n".join(line for lines in items for line in lines)


def names_in(text: str) -> list[str]:
    """The names of the characters in a vocabulary file, in order; raises Unwritable where it cannot be read."""
    return [str(one.get("name", "")) for one in _characters_in(text)]


def _characters_in(text: str) -> list[dict[str, Any]]:
    """The characters of the file, an empty record for what is none, with states that are records."""
    listed = [one if isinstance(one, dict) else {} for one in data_of(text).get("characters") or []]
    return [one | {"states": [state for state in one.get("states") or () if isinstance(state, dict)]} for one in listed]


def _lines(character: Character) -> list[str]:
    """`key: value` for everything that the character states."""
    said = {"name": character.name, "structure": character.structure, "property": character.property}
    lines = [f"{key}: {plain_or_quoted(value)}" for key, value in said.items()]
    lines.append(f"kind: {character.kind}")
    if character.unit:
        lines.append(f"unit: {plain_or_quoted(character.unit)}")
    for key, listed in (("stages", character.stages), ("words", character.words)):
        if listed:
            lines.append(f"{key}: [{', '.join(map(plain_or_quoted, listed))}]")
    for key, told in (("how", character.how), ("meaning", character.meaning)):
        if told:
            lines.append(f"{key}: {quoted(told)}")
    if character.states:
        lines.append(f"states: [{', '.join(map(_state, character.states))}]")
    return lines


def _state(state: State) -> str:
    words = f", words: [{', '.join(map(plain_or_quoted, state.words))}]" if state.words else ""
    colour = f", colour: {plain_or_quoted(state.colour)}" if state.colour else ""
    meaning = f", meaning: {quoted(state.meaning)}" if state.meaning else ""
    return f"{{name: {plain_or_quoted(state.name)}{words}{colour}{meaning}}}"
