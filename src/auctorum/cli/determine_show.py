"""The answer on one plant for a terminal: first the name, then why, and at the end what it rests on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from rich.table import Table
from rich.text import Text

from auctorum.circumscription.phrases import capital
from auctorum.cli.determine_setting import Setting
from auctorum.cli.layout import console, heading, table
from auctorum.cli.names_in_text import Italic, italiciser
from auctorum.corpus.resolve import called
from auctorum.determination.criteria.criterion import Verdict
from auctorum.determination.criteria.words import sentences, title_of
from auctorum.determination.model import Wording
from auctorum.determination.telling import words
from auctorum.determination.telling.grounds import cautions, grounds
from auctorum.determination.telling.outcome_words import outcomes
from auctorum.determination.wording import qualified

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.determination.asking import Question
    from auctorum.determination.criteria.criterion import Judgement
    from auctorum.determination.telling.answer import Answer
    from auctorum.determination.telling.authorities import Authority
    from auctorum.records.schema import Criterion

MOST_QUESTIONS = 3


def show(asked: Setting, plant: Plant, told: Answer) -> None:
    """Print the answer."""
    out, italic = console(), italics(asked, told)
    name = italic(words.headline(told.found, told.full, told.genus))
    name.stylize("bold")
    out.print(name)
    out.print(italic(words.why(told.found, asked.thresholds)))
    out.print(italic(" ".join(told.agreement)))
    for part in (
        *_candidates(told, italic),
        *_characters(asked, plant, told, italic),
        *_next(asked, told, italic),
        *_authorities(asked, told, italic),
        *_grounds(asked, told, italic),
    ):
        out.print(part)


def italics(asked: Setting, told: Answer) -> Italic:
    """What sets every name of the answer in italics."""
    plain = {
        *told.names.values(),
        *told.full.values(),
        *told.spoken.values(),
        *(one.name for one in (*told.single, *told.beside)),
    }
    plain |= {one.removeprefix("indet. (likeliest ").removesuffix(")") for one in plain}
    plain |= {called(asked.corpus, asked.corpus.taxa[taxon].current) for taxon in asked.view.left_out}
    plain |= {judged.name for _, judged in told.judged} | {told.genus}
    return italiciser({qualified(name, said) for name in plain if name for said in Wording})


def _bullets(texts: Sequence[Text]) -> Table:
    """Sentences with a dash before each, wrapped beside it."""
    grid = Table.grid(padding=(0, 1))
    grid.add_column()
    grid.add_column(overflow="fold")
    for text in texts:
        grid.add_row("–", text)
    return grid


def _candidates(told: Answer, italic: Italic) -> Iterator[object]:
    found = told.found
    if found.best is None or len(found.candidates) == 1:
        return
    several, rest = words.told_apart(found.candidates)
    rows: list[tuple[str | Text, ...]] = [
        (italic(told.names[one.taxon]), words.percent(one.probability)) for one in several
    ]
    uneven = len({one.prior for one in found.candidates}) > 1
    if uneven:
        rows = [(*row, words.percent(one.prior)) for row, one in zip(rows, several, strict=True)]
    if rest:
        most = f", {words.percent(rest[0].probability)} each at most" if rest[0].probability >= words.LEAST else ""
        together = "1 other" if len(rest) == 1 else f"{len(rest)} others{most}, together"
        row = (together, words.percent(sum(one.probability for one in rest)))
        rows.append((*row, words.percent(sum(one.prior for one in rest))) if uneven else row)
    yield ""
    yield table(("candidate", "probability", *(("beforehand",) if uneven else ())), rows, right=(1, 2))


def _characters(asked: Setting, plant: Plant, told: Answer, italic: Italic) -> Iterator[object]:
    found = told.found
    if found.contributions:
        yield heading("\nWhat each character says")
        yield _bullets([italic(words.telling(one, found, told.names)) for one in found.contributions])
        if silent := words.silence(found, told.names):
            yield italic(silent)
        if taken := asked.taken(plant):
            yield taken
    if found.unused:
        yield heading("\nNot used")
        said = [words.unused_words(one.character, one.stage, one.said, one.why) for one in found.unused]
        yield _bullets(list(map(Text, said)))


def _next(asked: Setting, told: Answer, italic: Italic) -> Iterator[object]:
    yield heading("\nWhat to observe next")
    if not told.asked:
        yield "Nothing more that authors state is likely to change the name."
        return
    yield "In brackets, how likely each outcome is as things stand; then what it would make of the plant."
    grid = Table.grid(padding=(0, 1))
    grid.add_column(justify="right")
    grid.add_column(overflow="fold")
    for number, one in enumerate(told.asked[:MOST_QUESTIONS], 1):
        grid.add_row(f"{number}.", question(asked, one, told, italic))
    yield grid


def question(asked: Setting, one: Question, told: Answer, italic: Italic) -> Text:
    """A character, how to observe it, and what its outcomes would do."""
    character = asked.corpus.vocabulary[one.character]
    stage = f" ({one.stage})" if one.stage in character.stages else ""
    how = f": {character.how}" if character.how else ""
    done = "; ".join(outcomes(one, told.found, character, told.names))
    return Text.assemble((f"{one.character}{stage}", "bold"), f"{how}\n", italic(f"{done}."))


def _authorities(asked: Setting, told: Answer, italic: Italic) -> Iterator[object]:
    yield heading("\nOn whose authority")
    for criterion, judged in told.judged:
        yield italic(_judged_words(asked, criterion, judged))
    if told.unusable:
        yield f"Not tried: {', '.join(id_ for id_, _, _ in told.unusable)}."
    rows = [_authority_row(one, italic) for one in (*told.single, *told.beside)]
    if rows:
        yield Text()
        headings = ("according to", "it is", "probability", "characters used")
        yield table(headings, rows, right=(2, 3))


def _judged_words(asked: Setting, criterion: Criterion, judged: Judgement) -> str:
    """The judgement in sentences; where a site's elevation decides, not how far it is from the limit."""
    if judged.margin is None and judged.verdict is not Verdict.INSUFFICIENT:
        seen = f"{criterion.decisive.character} {judged.observed} by its site"
        return f"{capital(str(judged.verdict))}, by {title_of(criterion)}: {seen}."
    return " ".join(sentences(asked.corpus, criterion, judged))


def _authority_row(one: Authority, italic: Italic) -> tuple[str | Text, ...]:
    """One view's name for the plant, and how far it can be asked."""
    chance = "only candidate" if one.alone else words.percent(one.probability)
    by = one.view.removeprefix("sec. ")
    if not one.used:
        return by, "says nothing of what was observed", "", "0"
    return by, italic(one.name), chance, str(one.used)


def _grounds(asked: Setting, told: Answer, italic: Italic) -> Iterator[object]:
    yield heading("\nWhat this rests on")
    rests = grounds(
        asked.corpus, asked.view, asked.beforehand, among=bool(asked.taxa), of_site=told.of_site,
        reckoned=told.reckoned,
    )  # fmt: skip
    yield italic(" ".join(rests))
    yield heading("\nMind")
    yield " ".join(cautions(asked.corpus))
