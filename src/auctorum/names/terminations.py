"""Terminations of names above the genus, which tell their rank (ICN Art. 16-19, Shenzhen 2018, from memory)."""

from __future__ import annotations

# Rank to its termination and the article that asks for it.
_BY_RANK = {
    "subclass": ("idae", "16.3"),
    "order": ("ales", "17.1"),
    "suborder": ("ineae", "17.1"),
    "family": ("aceae", "18.4"),
    "subfamily": ("oideae", "19.7"),
    "tribe": ("eae", "19.7"),
    "subtribe": ("inae", "19.7"),
}
# Longest first: `-ineae` ends in `-eae`.
_LATIN = ("oideae", "aceae", "ineae", "idae", "ales", "inae", "eae")
# Names long used for families and one subfamily, which stand beside the regular ones (Art. 18.5, 19.8).
_OTHER_NAMES = frozenset(
    ("compositae", "cruciferae", "gramineae", "guttiferae", "labiatae", "leguminosae", "palmae", "umbelliferae",
     "papilionaceae", "papilionoideae")
)  # fmt: skip


def terminated(name: str, rank: str) -> tuple[str, str]:
    """The name with the Latin termination of its rank, and the article; ("", "") where there is nothing to change.

    A termination that is not Latin makes no valid name and is left alone, as is a rank without a rule.

    >>> terminated("Fictodisceae", "family"), terminated("Fictaceae", "family")
    (('Fictodiscaceae', '18.4'), ('', ''))
    """
    ending, article = _BY_RANK.get(rank, ("", ""))
    found = next((one for one in _LATIN if name.endswith(one)), "")
    if not ending or not found or found == ending or name.casefold() in _OTHER_NAMES:
        return "", ""
    return name.removesuffix(found) + ending, article
