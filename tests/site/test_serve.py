"""The server answers this machine alone."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from http.client import HTTPConnection
from pathlib import Path

import pytest

from auctorum.site.serve import server


@pytest.fixture
def port(tmp_path: Path) -> Iterator[int]:
    (tmp_path / "site" / "names").mkdir(parents=True)
    (tmp_path / "site" / "index.html").write_text("<p>hello", encoding="utf-8")
    (tmp_path / "secret.txt").write_text("secret", encoding="utf-8")
    with server(tmp_path / "site", 0) as running:
        assert running.server_address[0] == "127.0.0.1"
        thread = threading.Thread(target=running.serve_forever)
        thread.start()
        yield running.server_port
        running.shutdown()
        thread.join()


@pytest.mark.parametrize(
    ("path", "host", "status"),
    [
        pytest.param("/", "", 200, id="first-page"),
        pytest.param("/index.html", "localhost", 200, id="localhost"),
        pytest.param("/", "evil.example", 403, id="foreign-host"),
        pytest.param("/../secret.txt", "", 404, id="above"),
        pytest.param("/%2e%2e/secret.txt", "", 404, id="above-in-disguise"),
        pytest.param("/names/", "", 404, id="no-listing"),
    ],
)
def test_answers(port: int, path: str, host: str, status: int) -> None:
    connection = HTTPConnection("127.0.0.1", port, timeout=5)
    connection.putrequest("GET", path, skip_host=True)
    connection.putheader("Host", f"{host or '127.0.0.1'}:{port}")
    connection.endheaders()
    answer = connection.getresponse()
    body = answer.read()
    connection.close()
    assert answer.status == status
    assert b"secret" not in body
