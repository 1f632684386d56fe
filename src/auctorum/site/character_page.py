"""The page of a character: what it is, how to measure it, and what is said of it across taxa."""

from __future__ import annotations

from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character
from auctorum.circumscription.findings import Finding
from auctorum.corpus.model import Taxon
from auctorum.site.answers import Answers
from auctorum.site.findings import block
from auctorum.site.page_parts import WordsRow
from auctorum.site.pages import CharacterPage
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
        states=tuple((each.name, ", ".join(each.words), each.meaning, each.colour or "") for each in character.states)
        or tuple((name, "", "", "") for name in state_names(character)),
        blocks=tuple(
            block(answers, finding, answers.taxon(taxon.id), answers.taxon(taxon.id, link=False), f"{taxon.id}-")
            for taxon, finding in _findings(answers, character)
        ),
        rows=statements(answers, character.name),
    )


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
