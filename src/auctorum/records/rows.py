"""Records of the tables: a site, a specimen, a seller's label; named by Darwin Core terms."""

from __future__ import annotations

from decimal import Decimal
from enum import StrEnum
from typing import Annotated

from pydantic import BeforeValidator, Field
from pydantic.dataclasses import dataclass

from auctorum.records.fields import CONFIG, RecordPlace, Words, place_field


class Role(StrEnum):
    """What a site is for the knowledge base."""

    KNOWN = "known"
    CANDIDATE = "candidate"


# A number as spreadsheets write it in many countries, with a comma.
Number = Annotated[Decimal, BeforeValidator(lambda said: said.replace(",", ".") if isinstance(said, str) else said)]


@dataclass(frozen=True, slots=True, config=CONFIG)
class Site:
    """A row of sites.csv; columns are Darwin Core's, but for aspect, substrate and role."""

    locationID: Annotated[Words, Field(description="Unique id of the site.")]
    locality: Annotated[str, Field(description="Name of the place.")] = ""
    island: Annotated[str, Field(description="Island.")] = ""
    decimalLatitude: Annotated[Number | None, Field(description="Latitude in degrees.", ge=-90, le=90)] = None
    decimalLongitude: Annotated[Number | None, Field(description="Longitude in degrees.", ge=-180, le=180)] = None
    minimumElevationInMeters: Annotated[Number | None, Field(description="Lowest elevation in m.")] = None
    maximumElevationInMeters: Annotated[Number | None, Field(description="Highest elevation in m.")] = None
    habitat: Annotated[str, Field(description="Habitat in words.")] = ""
    substrate: Annotated[str, Field(description="Rock or soil.")] = ""
    aspect: Annotated[str, Field(description="Direction the slope faces: N, NNE ... or degrees.")] = ""
    role: Annotated[Role, Field(description="`known` or `candidate` (not yet searched).")] = Role.KNOWN
    locationRemarks: Annotated[str, Field(description="Remarks; dangers and permits belong here.")] = ""
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Specimen:
    """A row of specimens.csv; columns are Darwin Core's, measurements are `character [unit]`."""

    occurrenceID: Annotated[Words, Field(description="Unique id of the record.")]
    organismID: Annotated[str, Field(description="The plant, where several rows measure one.")] = ""
    catalogNumber: Annotated[str, Field(description="Number in the herbarium.")] = ""
    recordedBy: Annotated[str, Field(description="Observer.")] = ""
    eventDate: Annotated[str, Field(description="Date (ISO 8601).")] = ""
    locationID: Annotated[str, Field(description="Site, by its id in sites.csv.")] = ""
    scientificName: Annotated[str, Field(description="Determination, if one was made.")] = ""
    identifiedBy: Annotated[str, Field(description="Who determined it.")] = ""
    lifeStage: Annotated[str, Field(description="Growth stage: young, mature ...")] = ""
    sex: Annotated[str, Field(description="female, male, hermaphrodite ...")] = ""
    degreeOfEstablishment: Annotated[str, Field(description="native, cultivated ...")] = ""
    occurrenceRemarks: Annotated[str, Field(description="Remarks.")] = ""
    measurements: Annotated[
        tuple[tuple[str, str, str, int], ...],
        Field(
            description="Columns `character [unit]`: character, unit, cell as typed, its column; empty cells left out."
        ),
    ] = ()
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Label:
    """A row of labels.csv: what a seller's label says, and what the plant shows."""

    occurrenceID: Annotated[Words, Field(description="Unique id of the label.")]
    verbatimIdentification: Annotated[Words, Field(description="The name as the label spells it.")]
    recordedBy: Annotated[str, Field(description="Who noted it.")] = ""
    eventDate: Annotated[str, Field(description="Date (ISO 8601).")] = ""
    seller: Annotated[str, Field(description="Who sold or showed the plant.")] = ""
    lifeStage: Annotated[str, Field(description="Growth stage: young, mature ...")] = ""
    occurrenceRemarks: Annotated[str, Field(description="Remarks.")] = ""
    measurements: Annotated[
        tuple[tuple[str, str, str, int], ...],
        Field(
            description="Columns `character [unit]`: character, unit, cell as typed, its column; empty cells left out."
        ),
    ] = ()
    place: RecordPlace = place_field()
