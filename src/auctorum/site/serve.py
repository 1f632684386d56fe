"""Show a finished site on this machine, and to nobody else."""

from __future__ import annotations

from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

LOOPBACK = "127.0.0.1"


class _Pages(SimpleHTTPRequestHandler):
    """Files of one folder: no listings, and only for requests that are addressed to this machine."""

    server_version = "auctorum"
    sys_version = ""

    def send_head(self) -> Any:
        # A foreign page may point its own host name at 127.0.0.1: such a request names that host.
        host = self.headers.get("Host", "").rpartition(":")[0] or self.headers.get("Host", "")
        if host not in (LOOPBACK, "localhost"):
            self.send_error(HTTPStatus.FORBIDDEN, "only for this machine")
            return None
        return super().send_head()

    def list_directory(self, path: Any) -> None:
        self.send_error(HTTPStatus.NOT_FOUND, "no such page")

    def log_message(self, format: str, *args: Any) -> None:
        """Say nothing: the terminal belongs to the command that serves."""


def server(folder: Path, port: int) -> ThreadingHTTPServer:
    """A server of `folder`, bound to 127.0.0.1 and not yet running; port 0 takes any free one.

    Raises OSError where the port is taken.
    """
    return ThreadingHTTPServer((LOOPBACK, port), partial(_Pages, directory=str(folder)))
