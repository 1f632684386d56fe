"""`auctorum new`: a knowledge base, a literature file, the JSON Schema."""

from __future__ import annotations

import json
from pathlib import Path

import click

from auctorum.cli.common import kb_option

SCHEMAS = {
    "literature": "Literature",
    "kb": "Settings",
    "characters": "Characters",
    "criterion": "Criterion",
    "site-row": "Site",
    "specimen-row": "Specimen",
    "measurement-row": "MeasurementOrFact",
    "label-row": "Label",
}


@click.group()
def new() -> None:
    """Start a knowledge base or a file of it, with the fields to fill in; nothing that exists is overwritten."""


@new.command("kb")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--title", default="", help="Title of the knowledge base; the folder's name if not given.")
def new_kb(folder: Path, title: str) -> None:
    """Start a knowledge base in FOLDER: settings, a vocabulary, a criterion, and tables with their columns."""
    from auctorum.records.forms import knowledge_base

    if folder.exists() and not folder.is_dir():
        raise click.BadParameter(f"{folder} is a file; name a folder, a new or an empty one", param_hint="FOLDER")
    files = knowledge_base(title or folder.resolve().name)
    _write({folder / name: text for name, text in files.items()})
    click.echo(f'Next: auctorum new literature orrin-1911 --kb "{folder}", and auctorum check --kb "{folder}"')


@new.command("literature")
@click.argument("work")
@kb_option
def new_literature(work: str, kb: Path) -> None:
    """Start the literature file of the publication WORK, an id such as orrin-1911."""
    import re

    from auctorum.records.fields import ID_PATTERN
    from auctorum.records.forms import literature

    if not re.fullmatch(ID_PATTERN, work):
        raise click.BadParameter("an id has lower-case letters, digits and single hyphens: orrin-1911")
    _write({kb / "literature" / f"{work}.yaml": literature(work)})


@new.command("schema")
@click.argument("record", type=click.Choice(list(SCHEMAS)), default="literature")
def new_schema(record: str) -> None:
    """Print the JSON Schema of a RECORD for your editor (literature if none is named)."""
    from auctorum.records import schema
    from auctorum.records.faults import json_schema

    click.echo(json.dumps(json_schema(getattr(schema, SCHEMAS[record])), ensure_ascii=False, indent=2))


def _write(files: dict[Path, str]) -> None:
    from auctorum.records.write import write_text

    there = [path for path in files if path.exists()]
    if there:
        raise click.UsageError(f"nothing was written, for there is already: {', '.join(map(str, there))}")
    for path, text in files.items():
        write_text(path, text)
        click.echo(f"wrote {path}")
