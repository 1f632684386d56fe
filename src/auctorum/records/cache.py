"""Parsed files kept as JSON between runs, keyed by content and by the version of the reader.

One file for one knowledge base, in the user's cache folder; safe to delete. Only files without a problem
are kept, as the plain data that validation takes, so a cache can't hide a problem. Anything in it that is
not as expected is passed over and made anew.
"""

from __future__ import annotations

import hashlib
import json
import os
from functools import cache
from pathlib import Path
from typing import Any

from pydantic_core import from_json

from auctorum.records.schema import PLACE_KEY


@cache
def reader_version() -> str:
    """A digest of the modules that decide what parsed data looks like."""
    digest = hashlib.sha256()
    for module in ("fields.py", "literature.py", "settings.py", "dates.py", "yamltext.py", "cache.py"):
        digest.update((Path(__file__).parent / module).read_bytes())
    return digest.hexdigest()


def cache_file(kb: Path) -> Path | None:
    """Where the parsed files of the knowledge base at `kb` are kept; None where the user has no home folder."""
    said = Path(os.environ.get("XDG_CACHE_HOME", ""))
    try:
        base = said if said.is_absolute() else Path.home() / ".cache"
    except RuntimeError:
        return None
    key = hashlib.sha256(str(kb.resolve()).encode()).hexdigest()[:32]
    return Path(base) / "auctorum" / f"{key}.json"


def content_key(content: bytes) -> str:
    """The key under which parsed data is kept."""
    return hashlib.sha256(content).hexdigest()


def load(path: Path) -> dict[str, Any]:
    """Content key -> data; empty where there is no cache, or one that is corrupt or of another reader."""
    try:
        found = from_json(path.read_bytes())
        if found["version"] != reader_version() or not isinstance(found["files"], dict):
            return {}
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return {}
    files: dict[str, Any] = found["files"]
    return files


def flatten(data: Any) -> Any:
    """Data with places as [line, column], ready for JSON."""
    if isinstance(data, dict):
        return {key: [value.line, value.column] if key == PLACE_KEY else flatten(value) for key, value in data.items()}
    return [flatten(item) for item in data] if isinstance(data, list) else data


def dump(files: dict[str, Any]) -> str:
    """The text of a cache file."""
    return json.dumps({"version": reader_version(), "files": files}, ensure_ascii=False, separators=(",", ":"))
