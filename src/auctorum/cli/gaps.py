"""`auctorum gaps`"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.circumscription.gaps.model import GapKind
from auctorum.cli.common import at_work, counted, echo_json, find_name, json_option, kb_option, load_quietly
from auctorum.corpus.cautions import cautions_of
from auctorum.problems import NOWHERE

if TYPE_CHECKING:
    from rich.text import Text

    from auctorum.circumscription.gaps.model import Gap
    from auctorum.corpus.model import Corpus
    from auctorum.determination.places.whereabouts import Whereabouts

MANY = 300  # treatments from which it takes long enough for a sign of life


HELP = """List open questions, those first whose answer would change most: what to read, look up or measure next.

TAXON limits the list to taxa, by their names; without one it is of the whole knowledge base. Each entry says what is
not known, why it matters, and what to do.

The figure behind the kind, 0 to 1, says how much of what the knowledge base now says could change: what hangs on the
answer (the error of the best character, the share of the weight in dispute, one voice among so many) times the share
of works that use the name, twice that for focal taxa. It is a simple judgement of ours and no measurement.

\b
Kinds:
{kinds}

Exit code 1 if there is no open question.
"""


@click.command(help=HELP.format(kinds="\n".join(f"  {kind:<11} {kind.meaning}" for kind in GapKind)))
@click.argument("taxa", nargs=-1, metavar="[TAXON]...")
@click.option(
    "--kind",
    "kinds",
    multiple=True,
    type=click.Choice([kind.value for kind in GapKind]),
    help="Only this kind; may be given again.",
)
@click.option(
    "--limit", default=20, show_default=True, type=click.IntRange(min=0), help="How many to list; 0 lists all."
)
@kb_option
@json_option
@click.pass_context
def gaps(
    ctx: click.Context, taxa: tuple[str, ...], kinds: tuple[str, ...], limit: int, kb: Path, as_json: bool
) -> None:
    from auctorum.circumscription.gaps.find import gaps as open_questions

    corpus = load_quietly(kb).corpus
    names = [find_name(corpus, said).id for said in taxa]
    with at_work("Looking for open questions", long=len(corpus.treatments) > MANY):
        found = open_questions(corpus, names or None, [GapKind(kind) for kind in kinds])
    shown = found[:limit] if limit else found
    if as_json:
        echo_json(_data(corpus, found, shown))
    else:
        _show(corpus, found, shown)
    ctx.exit(0 if found else 1)


def _cautions(corpus: Corpus, shown: Sequence[Gap]) -> tuple[str, ...]:
    """What to mind outdoors, where an entry sends anybody there; the usual where the knowledge base has none."""
    return cautions_of(corpus) if any(gap.in_field for gap in shown) else ()


def _data(corpus: Corpus, found: Sequence[Gap], shown: Sequence[Gap]) -> dict[str, object]:
    from auctorum.determination.places.whereabouts import whereabouts_of

    known = whereabouts_of(corpus)
    return {
        "open_questions": len(found),
        "gaps": [_row(corpus, known, number, gap) for number, gap in enumerate(shown, 1)],
        "cautions": list(_cautions(corpus, shown)),
    }


def _row(corpus: Corpus, known: Whereabouts, number: int, gap: Gap) -> dict[str, object]:
    """What may leave the machine: without the remarks on a site, and without words that tell a place."""
    from auctorum.corpus.resolve import called
    from auctorum.determination.places.localities import withheld_sentence
    from auctorum.determination.places.public_plants import public_words

    taxa = (corpus.taxa[taxon] for taxon in gap.taxa)
    return {
        "number": number,
        "kind": str(gap.kind),
        "rank": round(gap.rank, 4),
        "question": public_words(gap.question, known),
        "why": public_words(gap.why, known),
        "to_do": public_words(gap.todo, known),
        "information_withheld": withheld_sentence(["locationRemarks"] if gap.remarks else []),
        "taxa": [called(corpus, taxon.current) + taxon.sense.suffix for taxon in taxa],
        "names": [called(corpus, name) for name in gap.names],
        "works": list(gap.works),
        "characters": list(gap.characters),
        "sites": [public_words(site, known) for site in gap.sites],
        "place": str(gap.place),
        "in_field": gap.in_field,
    }


def _show(corpus: Corpus, found: Sequence[Gap], shown: Sequence[Gap]) -> None:
    from rich.table import Table
    from rich.text import Text

    from auctorum.cli.layout import console

    out = console()
    if not found:
        out.print("No open question of these kinds.")
        return
    grid = Table.grid(padding=(0, 1))
    grid.add_column(justify="right")
    grid.add_column(overflow="fold")
    for number, gap in enumerate(shown, 1):
        grid.add_row(f"{number}.", _entry(gap))
    out.print(grid)
    if left := len(found) - len(shown):
        out.print(f"{counted(left, 'more open question')}; --limit 0 lists all.")
    if any(gap.kind is GapKind.NAME for gap in shown):
        out.print("What the Code asks about valid publication is listed by: auctorum check --open")
    if cautions := _cautions(corpus, shown):
        out.print()
        out.print(Text("Before anybody goes out", style="bold"))
        for caution in cautions:
            out.print(f"– {caution}")


def _entry(gap: Gap) -> Text:
    """The kind and its rank, the question, why it matters, and what to do, each from a new line."""
    from rich.text import Text

    place = "" if gap.place == NOWHERE else f" ({gap.place})"
    remarks = f" Remarks: {gap.remarks.rstrip('.')}." if gap.remarks else ""
    rank = f"{gap.rank:.2f}" if gap.rank >= 0.005 else "under 0.01"
    return Text.assemble(
        f"{gap.kind}, {rank}\n",
        (f"{gap.question}\n", "bold"),
        f"{gap.why}\nTo do: {gap.todo}{remarks}{place}\n",
    )
