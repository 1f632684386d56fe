"""The spelling of a name as the Code has it, beside that which its act prints (ICN Art. 60-62)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from auctorum.corpus.model import Act
from auctorum.names.gender import Gender, GenusGender, gender_of
from auctorum.names.name import Name
from auctorum.names.orthography import Origin, Spelling, corrected_name
from auctorum.names.parse import parse_name
from auctorum.names.ranks import GENUS
from auctorum.problems import AuctorumError
from auctorum.records.schema import EpithetRecord


def recorded_genders(acts: Iterable[Act]) -> dict[str, Gender]:
    """Genus -> the gender that an act of it records."""
    return {act.printed.genus: act.record.gender for act in acts if act.record.gender and act.rank == GENUS.name}


def gender(genus: str, recorded: Mapping[str, Gender]) -> GenusGender | None:
    """The gender of a genus: as recorded, else as tradition and its ending tell (ICN Art. 62)."""
    return gender_of(genus, tradition=recorded.get(genus))


def spelling(act: Act, recorded: Mapping[str, Gender]) -> Spelling:
    """The name of an act as it has to be spelled, with the corrections and their articles.

    What the record does not tell of the epithet (`epithet:`) is left as printed.
    """
    found = gender(act.printed.genus, recorded)
    rank = act.rank if not (act.printed.species or act.printed.divisions) else ""
    origin = _origin(act.record.epithet, fossil=act.record.fossil)
    return corrected_name(act.printed, origin, found.gender if found else None, rank if rank != "unranked" else "")


def spelled(act: Act, recorded: Mapping[str, Gender]) -> Name:
    """The name of an act in its correct spelling; as printed where nothing is to be changed."""
    made = spelling(act, recorded)
    if not made.changes:
        return act.printed
    try:
        return parse_name(made.word).bare
    except AuctorumError:
        return act.printed


def _origin(record: EpithetRecord | None, *, fossil: bool) -> Origin:
    if record is None:
        return Origin(fossil=fossil)
    return Origin(
        kind=record.kind,
        noun=record.noun,
        declension=record.declension,
        person=record.person,
        sex=record.sex,
        number=record.number,
        form=record.form,
        place=record.place_name,
        intended=record.intended,
        parts_stand_alone=record.parts_stand_alone,
        first_genitive=record.first_genitive,
        transcription=record.symbol,
        interchanged=record.interchanged,
        fossil=fossil,
    )
