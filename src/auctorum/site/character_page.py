"""The page of a character: what it is, how to measure it, and what is said of it across taxa."""

from __future__ import annotations

from auctorum.characters.colours import Lab, difference, lab_of, screen_colour
from auctorum.characters.munsell import UnreadableColour
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Finding
from auctorum.corpus.model import Taxon
from auctorum.site.answers import Answers
from auctorum.site.findings import block
from auctorum.site.page_parts import WordsRow
from auctorum.site.pages import CharacterPage, StateLine
from auctorum.site.rows import words_row

KINDS = {
    "measure": "a measurement", "count": "a count", "ratio": "a ratio of two measurements",
    "angle": "an angle, or a direction", "ordered": "states along a spectrum, in order",
    "nominal": "states without an order", "presence": "present or absent",
}  # fmt: skip


def character_page(answers: Answers, character: Character) -> CharacterPage:
    """The whole page of one character."""
    facts = (
        ("concerns" if character.structure == "habitat" else "part of the plant", character.structure),
        ("property", character.property),
        ("kind", KINDS[character.kind]),
        ("unit", character.unit),
        ("growth stages told apart", ", ".join(character.stages)),
        ("other words", ", ".join(character.words)),
    )
    return CharacterPage(
        name=character.name,
        meaning=character.meaning,
        how=character.how,
        facts=tuple(fact for fact in facts if fact[1]),
        states=_states(character) or tuple(StateLine(name) for name in state_names(character)),
        blocks=tuple(
            block(answers, finding, answers.taxon(taxon.id), taxon.id, f"{taxon.id}-")
            for taxon, finding in _findings(answers, character)
        ),
        rows=statements(answers, character.name),
    )


def _states(character: Character) -> tuple[StateLine, ...]:
    """The states in order; along a spectrum each with its difference in colour from the one before."""
    labs = [_lab(state.colour) for state in character.states]
    found = []
    for place, (state, lab) in enumerate(zip(character.states, labs, strict=True)):
        before = labs[place - 1] if place and character.kind is Kind.ORDERED else None
        pair = f"{character.states[place - 1].name} to {state.name}"
        apart = f"{pair}: {difference(before, lab):.0f}" if before and lab else ""
        screen = screen_colour(lab) if lab else ""
        found.append(StateLine(state.name, ", ".join(state.words), state.meaning, state.colour or "", screen, apart))
    return tuple(found)


def _lab(colour: str | None) -> Lab | None:
    try:
        return lab_of(colour) if colour else None
    except UnreadableColour:
        return None  # beyond the renotation; the problems page tells


def _findings(answers: Answers, character: Character) -> list[tuple[Taxon, Finding]]:
    """Findings with evidence, taxon by taxon, in the order of their names."""
    return [
        (taxon, finding)
        for taxon in sorted(answers.corpus.taxa.values(), key=lambda taxon: taxon.id)
        for finding in answers.diagnosis(taxon.id).findings
        if finding.character == character.name and finding.evidence
    ]


def statements(answers: Answers, character: str) -> tuple[WordsRow, ...]:
    """Everything said of one character, by taxon, then by date."""
    treatments = answers.corpus.treatments
    found = [each for each in answers.corpus.statements.values() if each.character == character]
    found.sort(key=lambda each: (treatments[each.treatment].name, each.work.date, each.id))
    return tuple(words_row(answers, each, answers.name(treatments[each.treatment].name)) for each in found)
