"""The `auctorum` command: finds the module of each command when it is asked for, and keeps tracebacks from people."""

from __future__ import annotations

import importlib
import io
import os
import sys

import click

from auctorum.problems import AuctorumError

# name -> module below auctorum.cli, and the line for --help; a module is imported when its command is used
COMMANDS = {
    "check": ("check", "List every problem of the knowledge base."),
    "history": ("history", "How a name moved, and who holds which view."),
    "synonymy": ("synonymy", "The names of a taxon, block by block, as a monograph prints them."),
    "correct-name": ("correct_name", "What a taxon must be called under a view, and why."),
    "compare": ("compare", "What tells taxa apart, or what changes from one work's view to another's."),
    "diagnosis": ("diagnosis", "What authors say of a taxon, and where they differ."),
    "determine": ("determine", "What a plant is, how sure that is, and on whose authority."),
    "key": ("key", "A key to chosen taxa, and how often it errs."),
    "field-sheet": ("field_sheet", "A data sheet to print and fill in outdoors, that reads back."),
    "criterion": ("criterion", "Propose a working criterion for a taxon, and try it."),
    "verify-labels": ("verify_labels", "Whether labels are spelt right, and whether their plants fit them."),
    "survey": ("survey", "How many plants of a taxon, at each site, by whose definition."),
    "gaps": ("gaps", "What nobody has said or measured yet, ranked by what an answer would change."),
    "transcribe": ("transcribe", "Draft trait statements from a printed description."),
    "match": ("match", "Which name a misspelt label means."),
    "build": ("build", "Build the static site."),
    "serve": ("serve", "Show a built site on this machine."),
    "export": ("export", "Write it out in an open format."),
    "new": ("new", "Start a knowledge base or a file of it."),
}


class Commands(click.Group):
    """A group whose commands are imported when they are first needed."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of that name, its module imported now; None if there is none."""
        if cmd_name not in COMMANDS:
            return None
        module, _ = COMMANDS[cmd_name]
        command = getattr(importlib.import_module(f"auctorum.cli.{module}"), cmd_name.replace("-", "_"))
        assert isinstance(command, click.Command)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """The list of commands from the table, so that --help imports none of them."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, line) for name, (_, line) in COMMANDS.items()])

    def invoke(self, ctx: click.Context) -> object:
        """Run the command; what goes wrong is said in words, and ends with exit code 1."""
        try:
            return super().invoke(ctx)
        except AuctorumError as error:
            click.echo(f"auctorum: {error} ({error.remedy})", err=True)
            ctx.exit(1)
        except (click.ClickException, click.exceptions.Exit, click.Abort, KeyboardInterrupt, BrokenPipeError):
            raise
        except OSError as error:
            where = f"{error.filename}: " if error.filename else ""
            click.echo(f"auctorum: {where}{error.strerror or error}", err=True)
            ctx.exit(1)
        except Exception as error:
            if os.environ.get("AUCTORUM_TRACEBACK"):
                raise
            fault = f"{type(error).__name__}: {error}"
            click.echo(f"auctorum: a fault of the program, not yours: {fault}", err=True)
            click.echo(
                "Please report it with the command you gave; AUCTORUM_TRACEBACK=1 shows where it arose.", err=True
            )
            ctx.exit(1)


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="auctorum")
def main() -> None:
    """What each author wrote about a plant name: its ranks, its traits, and the label in front of you.

    A knowledge base is a folder of YAML and CSV files (--kb, default `kb`).
    Exit codes: 0 done, 1 problems or nothing found, 2 the command was misused.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):  # letters that a terminal lacks are written out
            stream.reconfigure(errors="backslashreplace")


if __name__ == "__main__":
    sys.exit(main())
