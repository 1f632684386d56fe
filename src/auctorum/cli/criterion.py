"""`auctorum criterion`"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import check_works, echo_json, find_name, json_option, kb_option, load_quietly, sec_option
from auctorum.corpus.cautions import cautions_of
from auctorum.problems import AuctorumError

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus
    from auctorum.determination.criteria.kept import Kept
    from auctorum.determination.criteria.proposal_model import Proposal

_REMARK = "Proposed from the records; read the note, and put in whose definition it becomes."


@click.command()
@click.argument("taxon")
@click.option(
    "--against", multiple=True, metavar="TAXON", help="Part it from this taxon; may be given again. "
    "[default: the taxa that the latest work places beside it]",
)  # fmt: skip
@click.option("--character", metavar="NAME", help="Decide by this character.  [default: the one that does best]")
@sec_option
@click.option("--yaml", "as_file", is_flag=True, help="Print the proposal as a file for criteria/ and nothing else.")
@kb_option
@json_option
def criterion(
    taxon: str,
    against: tuple[str, ...],
    character: str | None,
    sec: tuple[str, ...],
    as_file: bool,
    kb: Path,
    as_json: bool,
) -> None:
    """Propose a working criterion for TAXON: what decides, what supports, and how far to trust it.

    One measurement decides: from what authors state, the character and the threshold that part TAXON best from those
    beside it. Few authors, and characters that are hard to see, weigh less. Shown with it are who keeps to the
    threshold, how many of the named plants of the knowledge base lie on its wrong side, and its weak points. Criteria
    for TAXON that the knowledge base keeps already stand beside it, tried in the same way.

    Exit code 1 if no threshold parts TAXON from the others.
    """
    from auctorum.corpus.resolve import find_taxon

    if as_file and as_json:
        raise click.UsageError("give --yaml or --json, not both")
    corpus = load_quietly(kb).corpus
    check_works(corpus, sec)
    meant, *others = (find_taxon(corpus, find_name(corpus, said).id).id for said in (taxon, *against))
    kept = [] if as_file else _kept(corpus, meant, sec)
    made = _proposal(corpus, meant, others, character, sec, kept)
    if as_file:
        assert made is not None
        from auctorum.records.criterion_text import as_yaml

        click.echo(as_yaml(made.criterion, remark=_REMARK), nl=False)
    elif as_json:
        echo_json(_data(corpus, meant, made, kept))
    else:
        _show(corpus, meant, made, kept)


def _proposal(
    corpus: Corpus, taxon: str, others: Sequence[str], character: str | None, sec: tuple[str, ...], kept: Sequence[Kept]
) -> Proposal | None:
    """The proposal; None, with the reason on standard error, where there is none and something else to show."""
    from auctorum.circumscription.key.beside import NoSisters
    from auctorum.determination.criteria.proposal import propose
    from auctorum.determination.criteria.proposal_threshold import NoThreshold

    try:
        return propose(corpus, taxon, against=others, character=character, works=sec or None)
    except (NoSisters, NoThreshold) as error:
        if not kept:
            raise
        click.echo(f"Nothing is proposed: {error} ({error.remedy})", err=True)
        return None


def _kept(corpus: Corpus, taxon: str, sec: tuple[str, ...]) -> list[Kept]:
    """The criteria of the knowledge base for the taxon, tried; one that cannot be used is said on standard error."""
    from auctorum.circumscription.plants import plants
    from auctorum.determination.criteria.kept import criteria_for, tried

    several, found = plants(corpus), []
    for one in criteria_for(corpus, taxon):
        try:
            found.append(tried(corpus, one, several, sec or None))
        except AuctorumError as error:
            click.echo(f"The criterion `{one.id}` cannot be used: {error} ({error.remedy})", err=True)
    return found


def _data(corpus: Corpus, taxon: str, made: Proposal | None, kept: Sequence[Kept]) -> dict[str, object]:
    from auctorum.determination.criteria.proposal_words import proposal_data, tally_data

    return {
        "taxon": taxon,
        "proposal": None if made is None else proposal_data(corpus, made),
        "kept": [
            {
                "id": one.criterion.id,
                "title": one.criterion.title,
                "character": one.limit.character,
                "stage": one.limit.stage,
                "at_least" if one.limit.at_least else "at_most": float(one.limit.value),
                "printed": one.limit.printed,
                "expected_error": None if one.stand is None else one.stand.error,
                "plants": [tally_data(each, fitting=each.taxon == one.taxon) for each in one.tallies],
            }
            for one in kept
        ],
        "cautions": list(cautions_of(corpus)),
    }


def _show(corpus: Corpus, taxon: str, made: Proposal | None, kept: Sequence[Kept]) -> None:
    from rich.text import Text

    from auctorum.cli.layout import console, heading, italic, numbered

    out, entry = console(), corpus.names[corpus.taxa[taxon].current]
    title = Text("A working criterion for ").append_text(italic(entry.name)).append(corpus.taxa[taxon].sense.suffix)
    out.print(heading(title))
    for part in (*(_proposed(corpus, made) if made is not None else ()), *_kept_parts(corpus, kept)):
        out.print(part)
    out.print(heading("\nBefore you go out to measure"))
    out.print(numbered(cautions_of(corpus)))


def _proposed(corpus: Corpus, made: Proposal) -> Iterator[object]:
    from auctorum.cli.layout import heading, numbered, table
    from auctorum.determination.criteria.proposal_words import accounts, bounds, on_plants, rule, short, support_rows

    names = short(corpus, made)
    yield heading("\nProposed from the records")
    yield rule(corpus, made)
    if made.criterion.supporting:
        yield "It is supported by:"
        yield table(("character", "speaks for it", "weight"), support_rows(made), right=(2,))
    yield heading("\nWhat authors state")
    yield "\n".join(accounts(corpus, made))
    if made.said:
        yield ""
        yield table(("work", names[made.taxon], names[made.worst.sister], "limit"), bounds(corpus, made))
    yield heading("\nWhat the named plants show")
    yield "\n".join(on_plants(corpus, made))
    if made.weak:
        yield heading("\nWeak points")
        yield numbered(made.weak)


def _kept_parts(corpus: Corpus, kept: Sequence[Kept]) -> Iterator[object]:
    from auctorum.circumscription.separation_names import short_names
    from auctorum.cli.layout import heading, table
    from auctorum.determination.criteria.proposal_words import kept_words
    from auctorum.determination.criteria.words import title_of

    for one in kept:
        names = short_names(corpus, tuple(each.taxon for each in one.tallies))
        yield heading(f"\nIn the knowledge base: {title_of(one.criterion)}")
        yield kept_words(corpus, one)
        rows = [
            (names[each.taxon], *map(str, (each.fits, each.does_not_fit, each.borderline, each.insufficient)),
             str(each.conflicts), ", ".join(each.named_by))
            for each in one.tallies
        ]  # fmt: skip
        headings = ("plants named as", "fits", "does not fit", "borderline", "insufficient", "in conflict", "by")
        yield table(headings, rows, right=tuple(range(1, 6)))
