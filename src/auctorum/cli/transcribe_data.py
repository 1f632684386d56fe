"""A transcript as plain data for JSON."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields

from auctorum.characters.prose.draft import Choice, Draft, Transcript, one_line
from auctorum.characters.values import Range, Reading, States
from auctorum.cli.transcribe_kept import Kept, confidence_word, proposals, state_proposals, statements
from auctorum.records.schema import StatementRecord

_NOT_SAID = ("parts", "step")  # how figures were printed; the value in plain notation shows it


def transcript_data(
    name: str, transcript: Transcript, kept: Iterable[Kept], sure: float, page: str
) -> dict[str, object]:
    """The statements with their places in the text (characters from 0), what was kept, and what was left."""
    chosen = {one.draft: one for one in kept}

    def statement(number: int, draft: Draft) -> dict[str, object]:
        found = chosen.get(draft)
        said = statements(transcript, [found], page) if found else []
        return {
            "number": number,
            "start": draft.start,
            "end": draft.end,
            "words": transcript.words(draft),
            **_choice(draft.choice),
            "confidence": draft.confidence,
            "confidence_in_words": confidence_word(draft, sure),
            "doubts": list(map(str, draft.doubts)),
            "others": list(map(_choice, draft.others)),
            "kept": [statement_data(one) for one in said],
        }

    return {
        "file": name,
        "text": transcript.text,
        "statements": [statement(number, draft) for number, draft in enumerate(transcript.drafts, 1)],
        "not_understood": [
            {"start": one.start, "end": one.end, "words": one_line(transcript.words(one))}
            for one in transcript.left
            if one.why is None
        ],
        "no_trait": [
            {"start": one.start, "end": one.end, "words": one_line(transcript.words(one)), "what": str(one.why)}
            for one in transcript.left
            if one.why is not None
        ],
        "new_characters": [
            {"name": one.name, "structure": one.structure, "property": one.property, "kind": str(one.kind)}
            | {"unit": one.unit, "states": [state.name for state in one.states], "stages": list(one.stages)}
            for one in proposals(draft.choice for draft in transcript.drafts)
        ],
        "new_states": {
            name: [state.name for state in states]
            for name, states in state_proposals(draft.choice for draft in transcript.drafts).items()
        },
    }


def statement_data(statement: StatementRecord) -> dict[str, str]:
    """A statement as a literature file holds it, without empty fields."""
    keys = ("character", "verbatim", "value", "stage", "page", "note")
    return {key: value for key in keys if (value := getattr(statement, key))}


def _choice(choice: Choice) -> dict[str, object]:
    return {
        "character": choice.character.name,
        "known": choice.known,
        "new_states": list(choice.new_states),
        "value": choice.value,
        "readings": [_reading(one) for one in choice.readings],
    }


def _reading(reading: Reading) -> dict[str, object]:
    return {"stage": reading.stage, **_value(reading.value)}


def _value(value: Range | States) -> dict[str, object]:
    """Bounds that are stated, as printed; or states with how often they occur."""
    if isinstance(value, States):
        return {
            "states": [
                {"state": share.state, **({"to": share.to} if share.to else {}), "how_often": str(share.modality)}
                for share in value.shares
            ]
        }
    said = {one.name: getattr(value, one.name) for one in fields(value) if one.name not in _NOT_SAID}
    return {key: stated for key, stated in said.items() if stated not in (None, False, "")}
