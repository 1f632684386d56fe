"""What can go wrong when a site is written.

AuctorumError
└── UnusableOutput
    └── UnsafePath
"""

from __future__ import annotations

from auctorum.problems import AuctorumError


class UnusableOutput(AuctorumError):
    """A folder that a site must not be written to."""

    remedy = "give a new or an empty folder, or one that holds nothing but an earlier build"

    def __init__(self, folder: str, why: str) -> None:
        super().__init__(folder, why)
        self.folder, self.why = folder, why

    def __str__(self) -> str:
        return f"cannot write the site to {self.folder}: {self.why}"


class UnsafePath(UnusableOutput):
    """A path of a page that would leave the folder of the site."""

    remedy = "give the record an id of lower-case letters, digits and hyphens"

    def __init__(self, path: str) -> None:
        super().__init__(path, "the path would leave the folder")
