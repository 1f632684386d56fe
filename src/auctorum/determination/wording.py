"""Open nomenclature: how sure a name is said to be."""

from __future__ import annotations

from itertools import pairwise
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from auctorum.determination.model import Wording
from auctorum.determination.normal import Floats
from auctorum.names.ranks import read_term
from auctorum.records.schema import Thresholds

MANY = 2  # characters outside all that is stated, from which the plant is near the taxon and not quite it
IN_ORDER = (Wording.INDET, Wording.AFF, Wording.CF, Wording.PLAIN)  # the surer, the later

Codes: TypeAlias = NDArray[np.intp]  # places in IN_ORDER


def codes(probabilities: Floats, misfits: Codes, thresholds: Thresholds) -> Codes:
    """For each plant the place in IN_ORDER of the wording for its likeliest candidate.

    By its probability, and by how many characters lie outside all that is stated of it: with one the name is not given
    plainly, with two or more the plant at most has affinity with it, however unlikely the other candidates are.
    """
    by_chance = sum(
        (probabilities >= least).astype(np.intp) for least in (thresholds.aff, thresholds.cf, thresholds.plain)
    )
    most = np.where(misfits >= MANY, 1, np.where(misfits > 0, 2, 3))
    return np.minimum(by_chance, most)


def wording(probability: float, misfits: int, thresholds: Thresholds) -> Wording:
    """The wording for the likeliest candidate of one plant."""
    return IN_ORDER[int(codes(np.array([probability]), np.array([misfits]), thresholds)[0])]


def qualified(name: str, said: Wording) -> str:
    """A name as open nomenclature writes it: the qualifier before the epithet that is in question.

    >>> qualified("Exemplum album var. longum", Wording.CF), qualified("Exemplum album", Wording.AFF)
    ('Exemplum album cf. var. longum', 'Exemplum aff. album')
    >>> qualified("Exemplum album Auctor f. s. lat.", Wording.CF), qualified("var. longum", Wording.CF)
    ('Exemplum cf. album Auctor f. s. lat.', 'cf. var. longum')
    >>> qualified("Exemplum album", Wording.INDET)
    'Exemplum indet.'
    """
    words = name.split(" ")
    if said is Wording.PLAIN:
        return name
    if said is Wording.INDET:
        return str(said) if read_term(words[0]) else f"{words[0]} {said}"
    terms = [place for place, (word, after) in enumerate(pairwise(words)) if read_term(word) and after.isalpha()
             and after.islower()]  # fmt: skip
    at = terms[-1] if terms else min(1, len(words) - 1)
    return " ".join([*words[:at], str(said), *words[at:]])
