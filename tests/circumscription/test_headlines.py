"""What stands out of a taxon, with counts of what is independent and what is repeated."""

from __future__ import annotations

from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import Verdict
from auctorum.circumscription.headlines import headlines
from auctorum.circumscription.independence import lineage
from auctorum.circumscription.lineage_words import count_words, lineage_data, lineage_sentences
from building import corpus_of

CHARACTERS = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm}
- {name: leaf length, structure: leaf, property: length, kind: measure, unit: mm}
- {name: flower number, structure: flower, property: count, kind: count}
- name: seed surface
  structure: seed
  property: surface
  kind: nominal
  states: [{name: smooth}, {name: reticulate}]
"""
ACTS = "acts:\n- {name: Exemplum, act: new taxon}\n- {name: Exemplum album, act: new taxon}\n"
# Eighty years: the lower bound of the spur stays, the upper wanders; the third work repeats the second, in inches.
WORKS = (
    (1910, {"spur length": "22–34 mm", "leaf length": "30–50 mm", "flower number": "4–8"}, ""),
    (1920, {"spur length": "22–38 mm", "leaf length": "30–52 mm", "flower number": "4–8"}, ""),
    (1930, {"spur length": "0.9–1.5 in.", "leaf length": "1.2–2.0 in."}, "follows: [w-1920], "),
    (1940, {"spur length": "22–41 mm", "leaf length": "31–50 mm", "flower number": "1–2"}, ""),
    (1950, {"spur length": "22–44 mm", "leaf length": "29–51 mm", "flower number": "4–9"}, ""),
    (1960, {"spur length": "22–48 mm", "leaf length": "30–50 mm", "flower number": "4–9"}, ""),
)


def corpus():
    texts = []
    for number, (year, said, follows) in enumerate(WORKS):
        traits = ", ".join(f'{{character: {name}, verbatim: "{words}"}}' for name, words in said.items())
        family = "ABCDEF"[number] + "ell"
        texts.append(
            f'work: {{id: w-{year}, type: book, author: [{{family: {family}}}], issued: "{year}", title: T}}\n'
            + (ACTS if number == 0 else "")
            + f"treatments:\n- {{taxon: Exemplum album, {follows}basis: own material, traits: [{traits}]}}\n"
        )
    found, problems = corpus_of(*texts, characters=CHARACTERS)
    assert problems == []
    return found


def test_what_held_and_what_moved_stands_first_then_who_is_in_conflict() -> None:
    found = corpus()
    told = [str(one) for one in headlines(diagnosis(found, "exemplum-album").findings, found.works)]
    assert told[0].startswith(
        "Spur length. The lower bound never moved: 22 mm in all 5 independent works, 1910 to 1960. "
        "The upper bound rose from 34 mm (Aell 1910) to 48 mm (Fell 1960); tau 1.00, p 0.017."
    )
    assert told[1].startswith("Flower number. Aell 1910 (4–8) and Dell 1940 (1–2) are 2 apart")
    assert told[1].endswith("Silent: Cell 1930.")
    assert len(headlines(diagnosis(found, "exemplum-album").findings, found.works, most=1)) == 1


def test_counts_tell_authors_from_witnesses() -> None:
    spur = diagnosis(corpus(), "exemplum-album").findings[0]
    assert count_words(spur.count) == "6 authors, 5 independent; 1 work repeats another"
    assert [item.repeats for item in spur.evidence] == ["", "", "w-1920", "", "", ""]
    seeds = diagnosis(corpus(), "exemplum-album").findings[3]
    assert (seeds.count.works, seeds.count.silent) == (0, 6)


def test_without_the_original_a_repetition_is_evidence() -> None:
    spur = diagnosis(corpus(), "exemplum-album", works=["w-1910", "w-1930"]).findings[0]
    assert count_words(spur.count) == "2 authors"
    assert [item.weight for item in spur.evidence] == [1, 1]


def test_where_all_others_repeat_one_author_alone_has_spoken() -> None:
    spur = diagnosis(corpus(), "exemplum-album", works=["w-1920", "w-1930"]).findings[0]
    assert spur.verdict is Verdict.SINGLE
    assert spur.remarks == ("Cell 1930 repeats Bell 1920: no new evidence.",)
    assert count_words(spur.count) == "2 authors, 1 independent; 1 work repeats another"


def test_who_repeats_whom_in_words_and_as_data() -> None:
    found = corpus()
    treatments = [found.treatments[one] for one in found.taxa["exemplum-album"].treatments]
    lines = lineage(found, treatments)
    assert lineage_sentences(lines, found.works) == (
        "Cell 1930 repeats Bell 1920, as it is said to, in 2 of 2 characters that both tell.",
    )
    assert lineage_data(lines) == [
        {
            "later": "w-1930",
            "earlier": "w-1920",
            "shown_by": "declared",
            "shared": ["spur length", "leaf length"],
            "equal": ["spur length", "leaf length"],
        }
    ]


def test_a_line_that_a_more_direct_one_covers_is_not_told() -> None:
    """A work that repeats the second, which says most of what the first says, need not have gone back to the first."""
    texts = []
    for number, (leaf, cites) in enumerate((("30–50 mm", ""), ("31–52 mm", ""), ("31–52 mm", "cites: [w-0, w-1]\n"))):
        said = ("spur length", "22–34 mm"), ("leaf length", leaf), ("flower number", "4–8")
        traits = ", ".join(f"{{character: {name}, verbatim: {words}}}" for name, words in said)
        family = "ABC"[number] + "ell"
        texts.append(
            f"work: {{id: w-{number}, type: book, author: [{{family: {family}}}], issued: '191{number}', title: T}}\n"
            f"{cites}{'' if number else ACTS}"
            f"treatments:\n- {{taxon: Exemplum album, basis: own material, traits: [{traits}]}}\n"
        )
    found, problems = corpus_of(*texts, characters=CHARACTERS)
    assert problems == []
    lines = lineage(found, found.treatments.values())
    assert [(line.later, line.earlier, len(line.equal)) for line in lines.lines] == [
        ("w-2", "w-0", 2),
        ("w-2", "w-1", 3),
    ]
    assert [line.earlier for line in lines.direct] == ["w-1"]
