"""The `auctorum` command: finds the module of each command when it is asked for, and keeps tracebacks from people."""

from __future__ import annotations

import importlib
import os
import sys

import click

from auctorum.problems import AuctorumError

# name -> module below auctorum.cli and its command; what each needs is imported inside it, so that --help is quick
COMMANDS = {
    "check": "check:check",
    "history": "history:history",
    "diagnosis": "diagnosis:diagnosis",
    "match": "match:match",
    "build": "build:build",
    "serve": "serve:serve",
    "export": "export:export",
    "new": "new:new",
}


class Commands(click.Group):
    """A group whose commands are imported when they are first needed."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        module, attribute = COMMANDS[cmd_name].split(":")
        command = getattr(importlib.import_module(f"auctorum.cli.{module}"), attribute)
        assert isinstance(command, click.Command)
        return command

    def invoke(self, ctx: click.Context) -> object:
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


if __name__ == "__main__":
    sys.exit(main())
