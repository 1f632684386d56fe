"""Frozen records as the files spell them; no file, no YAML.

Keys in files are kebab-case, bibliographic keys are CSL's, dates are EDTF. Every record keeps the
`place` it was read from, left out of equality so that equal records from two files are equal.
"""

from __future__ import annotations

from pydantic.dataclasses import dataclass

from auctorum.records.acts import (
    Act,
    ActKind,
    DescriptionKind,
    DescriptionRecord,
    EpithetRecord,
    GivenStanding,
    OfferedAs,
    Organism,
    TypeKind,
    TypeRecord,
)
from auctorum.records.fields import CONFIG, PLACE_KEY, Person
from auctorum.records.literature import (
    Basis,
    Conventions,
    Literature,
    StatementRecord,
    Status,
    TreatmentRecord,
    Work,
)
from auctorum.records.rows import Label, MeasurementOrFact, Site, Specimen
from auctorum.records.settings import (
    CharacterRecord,
    Characters,
    Criterion,
    Decisive,
    Settings,
    StateRecord,
    Supporting,
    Thresholds,
)

__all__ = [
    "PLACE_KEY",
    "Act",
    "ActKind",
    "Basis",
    "CharacterRecord",
    "Characters",
    "Conventions",
    "Criterion",
    "Decisive",
    "DescriptionKind",
    "DescriptionRecord",
    "EpithetRecord",
    "GivenStanding",
    "Label",
    "Literature",
    "MeasurementOrFact",
    "OfferedAs",
    "Organism",
    "Person",
    "Records",
    "Settings",
    "Site",
    "Specimen",
    "StateRecord",
    "StatementRecord",
    "Status",
    "Supporting",
    "Thresholds",
    "TreatmentRecord",
    "TypeKind",
    "TypeRecord",
    "Work",
]


@dataclass(frozen=True, slots=True, config=CONFIG)
class Records:
    """Every record of a knowledge base, as read."""

    settings: Settings
    characters: Characters
    literature: tuple[Literature, ...] = ()
    criteria: tuple[Criterion, ...] = ()
    sites: tuple[Site, ...] = ()
    specimens: tuple[Specimen, ...] = ()
    labels: tuple[Label, ...] = ()
    measurements: tuple[MeasurementOrFact, ...] = ()
