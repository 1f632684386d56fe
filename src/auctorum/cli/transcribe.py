"""`auctorum transcribe`"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import click

from auctorum.cli.common import json_option, kb_option
from auctorum.problems import AuctorumError

INPUT = Path("-")


@click.command()
@click.argument(
    "paths",
    nargs=-1,
    metavar="[FILE|FOLDER]...",
    type=click.Path(exists=True, allow_dash=True, path_type=Path),
)
@click.option(
    "--into",
    type=click.Path(path_type=Path),
    help="Literature file that the statements are added to, new or existing; for several texts, its folder.",
)
@click.option(
    "--taxon", default="", metavar="NAME", help="The taxon described; needed unless the file treats only one."
)
@click.option("--page", default="", help="Page of the statements.")
@click.option("--review", is_flag=True, help="Decide on each reading that is not sure: accept, choose, correct, skip.")
@click.option(
    "--sure",
    default=0.9,
    show_default=True,
    type=click.FloatRange(0, 1),
    help="Confidence from which a reading is kept unseen.",
)
@click.option(
    "--line", type=click.Choice(["english", "paris"]), help="Lines, inches and feet of the work.  [default: english]"
)
@click.option("--signs", metavar="KEY", help='The work\'s key to signs, such as "\'=in \\"=line".')
@click.option(
    "--add-characters", "new_characters", is_flag=True, help="Add characters and states that characters.yaml lacks."
)
@click.option("--yaml", "as_yaml", is_flag=True, help="Show what characters.yaml lacks as YAML, ready to paste.")
@click.option("--all", "everything", is_flag=True, help="Show also a long text, and what was passed over as no trait.")
@kb_option
@json_option
@click.pass_context
def transcribe(
    ctx: click.Context,
    paths: tuple[Path, ...],
    into: Path | None,
    taxon: str,
    page: str,
    review: bool,
    sure: float,
    line: str | None,
    signs: str | None,
    new_characters: bool,
    as_yaml: bool,
    everything: bool,
    kb: Path,
    as_json: bool,
) -> None:
    """Draft trait statements from printed descriptions: each with its words, its character, and how sure it is.

    Reads each FILE, the .txt files of each FOLDER, or what is typed or piped in (-). What was not understood is
    listed, never guessed. With --into the sure statements go into a literature file, where nothing that stands there
    is changed; --review decides on the others. Exit code 1 if nothing could be read, or a text or file was at fault.
    """
    sources, batch = _sources(paths)
    if taxon and not into:
        raise click.UsageError("--taxon says whose treatment the statements go to: give --into, too")
    if review:
        _check_review(batch or as_json)
    from auctorum.cli.transcribe_run import Asked, before_writing, one, several, vocabulary_in
    from auctorum.cli.transcribe_taxon import check_taxon
    from auctorum.cli.transcribe_tell import tell

    key = _signs(signs)
    with before_writing():
        check_taxon(taxon, kb)
        vocabulary = vocabulary_in(kb)
    asked = Asked(kb, into, taxon, page, review, sure, line, key, new_characters, everything, as_yaml, as_json)
    done = several(sources, vocabulary, asked) if batch else [one(sources[0], vocabulary, asked)]
    tell(done, asked, batch=batch)
    read = any(one.transcript and one.transcript.drafts for one in done)
    ctx.exit(0 if read and not any(one.fault for one in done) else 1)


def _signs(said: str | None) -> Mapping[str, str] | None:
    from auctorum.characters.units import unit_named
    from auctorum.cli.transcribe_kept import signs_from

    if said is None:
        return None
    try:
        found = signs_from(said)
        for unit in found.values():
            unit_named(unit)
    except AuctorumError as error:
        raise click.BadParameter(f"{error} ({error.remedy})", param_hint="--signs") from None
    except ValueError as error:
        raise click.BadParameter(f"“{error}” is no sign=unit, such as '=ft", param_hint="--signs") from None
    return found


def _sources(paths: tuple[Path, ...]) -> tuple[list[Path], bool]:
    """The texts to read, each once, and whether they are a batch; standard input where nothing is named."""
    found: list[Path] = []
    for path in paths:
        inside = sorted(path.glob("*.txt")) if path != INPUT and path.is_dir() else [path]
        if not inside:
            raise click.UsageError(f"no .txt file in {path}")
        found += inside
    found = list(dict.fromkeys(found)) or [INPUT]
    return found, len(found) > 1 or any(path != INPUT and path.is_dir() for path in paths)


def _check_review(unfit: bool) -> None:
    """Misuse of --review."""
    from auctorum.cli.transcribe_review import on_terminal

    if unfit:
        raise click.UsageError("--review asks about one text at a time, without --json")
    if not on_terminal():
        raise click.UsageError("--review asks its questions on a terminal, and this is none; give the text as a FILE")
