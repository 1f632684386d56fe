"""Where each page stands, and which addresses may be linked to.

Every path is relative to the root of the site, with forward slashes, and made of lower-case letters,
digits, hyphens and one ending: it is the same on every file system and cannot leave the folder.
"""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections.abc import Iterable
from pathlib import PurePosixPath
from urllib.parse import quote

from auctorum.site.errors import UnsafePath

LONGEST_SLUG = 100
_UNFIT = re.compile(r"[^a-z0-9]+")
_SAFE = re.compile(r"(?:[a-z0-9]+(?:-[a-z0-9]+)*/)*[a-z0-9]+(?:-[a-z0-9]+)*\.(?:html|css|js|svg|txt)")
_RESERVED = {"con", "prn", "aux", "nul", *(f"{port}{digit}" for port in ("com", "lpt") for digit in range(1, 10))}
_MAIL = re.compile(r"mailto:[^\s<>\"']+@[^\s<>\"']+", re.IGNORECASE)
_DOI = re.compile(r"10\.\d{4,9}/\S+")


def slug(text: str) -> str:
    """`text` as a file name without ending: ASCII letters, digits and single hyphens, never empty.

    >>> slug("Cremnocentron album var. longum"), slug("../../etc"), slug("ŽŽ"), slug("con")
    ('cremnocentron-album-var-longum', 'etc', 'zz', 'con-page')
    """
    folded = unicodedata.normalize("NFKD", text.replace("×", "x").replace("ß", "ss")).casefold()
    plain = _UNFIT.sub("-", folded.encode("ascii", "ignore").decode()).strip("-")
    if not plain:
        return f"x-{_digest(text)}"
    if plain in _RESERVED or plain == "index":  # names that a system or the list page keeps for itself
        return f"{plain}-page"
    return plain if len(plain) <= LONGEST_SLUG else f"{plain[:LONGEST_SLUG].rstrip('-')}-{_digest(text)}"


def slugs(texts: Iterable[str]) -> dict[str, str]:
    """A slug of its own for each of `texts`; two that would share one are told apart by a digest.

    >>> slugs(["Vané", "Vane"]) == {"Vane": "vane", "Vané": f"vane-{_digest('Vané')}"}
    True
    """
    taken: dict[str, str] = {}
    found: dict[str, str] = {}
    for text in sorted(set(texts)):
        own = slug(text)
        if own in taken:
            own = f"{own}-{_digest(text)}"
        taken[own] = text
        found[text] = own
    return found


def checked(path: str) -> str:
    """`path` unchanged, if it is a path that a page of the site may have; else raises UnsafePath."""
    if not _SAFE.fullmatch(path) or ".." in PurePosixPath(path).parts:
        raise UnsafePath(path)
    return path


def root_of(path: str) -> str:
    """What leads from the page at `path` back to the root of the site.

    >>> root_of("index.html"), root_of("names/a.html")
    ('', '../')
    """
    return "../" * path.count("/")


def safe_link(address: str) -> str:
    """`address` if a page may link to it (http, https, mailto, or a DOI, with its resolver); else nothing.

    >>> safe_link("https://example.org/a"), safe_link("10.1000/x1"), safe_link("javascript:alert(1)")
    ('https://example.org/a', 'https://doi.org/10.1000/x1', '')
    """
    given = address.strip()
    doi = given[4:].strip() if given[:4].lower() == "doi:" else given
    if _DOI.fullmatch(doi):
        return "https://doi.org/" + quote(doi, safe="/:;().-_")
    if given[:8].lower().startswith(("http://", "https://")) and not re.search(r"[\s<>\"'`\\]", given):
        return given
    return given if _MAIL.fullmatch(given) else ""


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:8]
