"""Make kb/specimens.csv: measured plants of the invented Cremnocentron survey.

    python examples/make_specimens.py          # writes kb/specimens.csv
    python examples/make_specimens.py FILE     # writes FILE

Every figure is drawn, none is typed by hand, and the same seed gives the same bytes. Nothing here is real.

The model, step by step:

- **Site.** A site holds a mixture of kinds (`SITES`) and has an effect of its own on size: two cliffs of one
  variety never have the same mean.
- **Kind.** A kind has a mean and a spread for each character of the mature plant (`KINDS`). They overlap on purpose:
  spurs of var. robustum reach 28 mm, those of var. longum begin at 19 mm, and `between` stands for the plants
  of mixed cliffs that nobody can place.
- **Plant.** A vigour shared by all parts of one plant makes large leaves go with long spurs.
- **Stage.** In bud a spur has a third to three quarters of its length, and is greener. Colour and hairiness are
  places on a spectrum (0 = first state), so that neighbours in the spectrum blur.
- **Observer.** M. Sallow reads a caliper to half a millimetre; J. Petrane reads a ruler, half of the time in
  twentieths of an inch, and a trace too long. One calls the long-spurred plant a variety, the other a species. Both
  name plants by what they measured, not by what the plant is, and leave some without a name.
- **Instrument.** The column `spur length ± [mm]` states the error of each: two spreads beyond its bias.
- **Gaps.** Each cell is left empty now and then; seeds are ripe on few plants.

Only uniform numbers are drawn from numpy's generator; the normal ones are made from them here, since the
stream of numpy's own normal numbers may change between its versions.
"""

from __future__ import annotations

import csv
import io
import math
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import NormalDist

import numpy as np

SEED = 1889_107  # year and page of the contested name
TARGET = Path(__file__).resolve().parent.parent / "kb" / "specimens.csv"
MM_PER_INCH = 25.4

COLOURS = ("green", "yellow-green", "cream", "ivory", "buff", "russet")
HAIRS = ("glabrous", "sparsely hairy", "pubescent", "villous", "woolly")
COLUMNS = (
    "occurrenceID", "organismID", "catalogNumber", "recordedBy", "eventDate", "locationID", "scientificName",
    "identifiedBy", "lifeStage", "degreeOfEstablishment", "measurementMethod", "occurrenceRemarks",
    "plant height [cm]", "leaf length [mm]", "leaf width [mm]", "leaf apex", "leaf tooth number",
    "leaf hairiness", "bracteoles", "flower number", "petal length [mm]", "spur length [mm]",
    "spur length [in]", "spur length ± [mm]", "spur colour", "seed surface",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Kind:
    """Mean and spread of the mature plant; `acute`, `bracteoles` and `netted` are shares of plants."""

    height: tuple[float, float]  # cm
    leaf: tuple[float, float]  # mm
    shape: float  # width of the leaf as a share of its length
    acute: float
    teeth: tuple[float, float]
    hairs: tuple[float, float]  # place in HAIRS
    bracteoles: float
    flowers: tuple[float, float]
    petal: tuple[float, float]  # mm
    spur: tuple[float, float]  # mm
    colour: tuple[float, float]  # place in COLOURS
    netted: float


KINDS = {
    "longum": Kind(
        height=(25, 5.5), leaf=(45, 7), shape=0.35, acute=0.93, teeth=(6, 1.2), hairs=(1.5, 0.6), bracteoles=0.06,
        flowers=(6.2, 1.6), petal=(17, 1.3), spur=(36, 7.5), colour=(2.6, 0.6), netted=0.93,
    ),
    "robustum": Kind(
        height=(32, 6), leaf=(58, 9), shape=0.43, acute=0.12, teeth=(9, 1.5), hairs=(2.4, 0.6), bracteoles=0.88,
        flowers=(5.4, 1.3), petal=(17.8, 1.4), spur=(19.8, 3), colour=(2.5, 0.7), netted=0.12,
    ),
    "between": Kind(
        height=(29, 5), leaf=(51, 8), shape=0.39, acute=0.5, teeth=(7.4, 1.4), hairs=(2, 0.6), bracteoles=0.45,
        flowers=(5.8, 1.5), petal=(17.4, 1.3), spur=(25, 2.6), colour=(2.6, 0.6), netted=0.5,
    ),
    "album": Kind(
        height=(14, 3.2), leaf=(28, 5), shape=0.41, acute=0.03, teeth=(4, 0.8), hairs=(0.3, 0.4), bracteoles=0.03,
        flowers=(2, 0.7), petal=(12, 1), spur=(11.3, 1.7), colour=(2.5, 0.6), netted=0.95,
    ),
    "luteolum": Kind(
        height=(16, 3.5), leaf=(24, 4), shape=0.4, acute=0.2, teeth=(4.4, 0.9), hairs=(0.2, 0.3), bracteoles=0.9,
        flowers=(3.4, 1), petal=(12.5, 1), spur=(12.6, 1.5), colour=(1.4, 0.6), netted=0,
    ),
}  # fmt: skip

# site: plants, then the share of each kind
SITES: dict[str, tuple[int, dict[str, float]]] = {
    "INV-S01": (22, {"longum": 0.96, "between": 0.04}),
    "INV-S02": (14, {"longum": 1.0}),
    "INV-S03": (20, {"longum": 0.6, "robustum": 0.28, "between": 0.12}),
    "INV-S04": (15, {"longum": 0.92, "between": 0.08}),
    "INV-S05": (18, {"longum": 0.52, "robustum": 0.36, "between": 0.12}),
    "INV-S06": (14, {"longum": 0.94, "between": 0.06}),
    "INV-S07": (18, {"robustum": 1.0}),
    "INV-S08": (14, {"robustum": 0.96, "album": 0.04}),
    "INV-S09": (14, {"robustum": 0.94, "between": 0.06}),
    "INV-S10": (13, {"robustum": 0.86, "longum": 0.1, "between": 0.04}),
    "INV-S11": (18, {"robustum": 0.56, "longum": 0.26, "between": 0.18}),
    "INV-S12": (10, {"album": 1.0}),
    "INV-S13": (11, {"album": 0.7, "robustum": 0.3}),
    "INV-S14": (8, {"luteolum": 1.0}),
    "INV-S15": (8, {"longum": 0.5, "robustum": 0.4, "album": 0.1}),
}
GARDEN = "INV-S15"
MISSING = 0.06  # share of cells left empty
YOUNG = 0.14  # share of plants met in bud
AGAIN = 0.5  # share of young plants that were met a second time, in flower
OBSERVERS = CAREFUL, _ = "M. Sallow", "J. Petrane"


@dataclass(frozen=True, slots=True)
class Instrument:
    """What an observer measures spurs with: spread of its error, how much too long it reads, and its step, in mm."""

    name: str
    error: float
    bias: float
    grain: float

    @property
    def half_width(self) -> str:
        """The error as the table states it: two spreads beyond the bias, which hold 19 readings of 20."""
        return f"{self.bias + 2 * self.error:.1f}"


INSTRUMENTS = {"M. Sallow": Instrument("caliper", 0.35, 0.0, 0.5), "J. Petrane": Instrument("ruler", 0.9, 0.3, 1.0)}


class Draw:
    """Random numbers, all made of uniform ones."""

    def __init__(self, seed: int) -> None:
        self._rng = np.random.default_rng(seed)

    def uniform(self, low: float = 0.0, high: float = 1.0) -> float:
        return low + (high - low) * float(self._rng.random())

    def normal(self, mean: float, spread: float) -> float:
        """Normal, cut at two and a half spreads, as an observer throws out what looks like a slip."""
        share = self.uniform(0.0062, 0.9938)
        return mean + spread * NormalDist().inv_cdf(share)

    def happens(self, share: float) -> bool:
        return self.uniform() < share

    def one_of(self, shares: dict[str, float]) -> str:
        left = self.uniform() * sum(shares.values())
        for name, share in shares.items():
            left -= share
            if left < 0:
                return name
        return name


@dataclass(frozen=True, slots=True)
class Plant:
    """A plant as it is; the observers see it with error."""

    kind: str
    vigour: float
    height: float
    leaf: float
    width: float
    acute: bool
    teeth: int
    hairs: float
    bracteoles: bool
    flowers: int
    petal: float
    spur: float  # when mature
    colour: float  # when mature
    seeds: str


def plant_of(draw: Draw, name: str, site_effect: float) -> Plant:
    """One plant of a kind: every part drawn round the kind's mean, moved by vigour and site."""
    kind = KINDS[name]
    vigour = draw.normal(0, 1)

    def size(pair: tuple[float, float], share: float = 0.55) -> float:
        mean, spread = pair
        apart = share * vigour + math.sqrt(1 - share**2) * draw.normal(0, 1)
        # nearly every author agrees on the lower bounds, so no plant is drawn far below its kind
        return mean + spread * (min(2.8, max(-2.0, apart)) + site_effect)

    leaf = size(kind.leaf)
    return Plant(
        kind=name,
        vigour=vigour,
        height=max(4.0, size(kind.height)),
        leaf=max(8.0, leaf),
        width=max(4.0, leaf * draw.normal(kind.shape, 0.04)),
        acute=draw.happens(kind.acute),
        teeth=max(2, round(size(kind.teeth, 0.3))),
        hairs=draw.normal(*kind.hairs),
        bracteoles=draw.happens(kind.bracteoles),
        flowers=max(1, round(size(kind.flowers, 0.4))),
        petal=max(6.0, size(kind.petal, 0.4)),
        spur=max(5.0, size(kind.spur, 0.45)),
        colour=draw.normal(*kind.colour),
        seeds=seeds_of(draw, name, kind),
    )


def seeds_of(draw: Draw, name: str, kind: Kind) -> str:
    """Surface of the seed coat."""
    netted = draw.happens(kind.netted)
    return "smooth" if name == "luteolum" else "reticulate" if netted else "tuberculate"


def state(place: float, states: Sequence[str]) -> str:
    """The state nearest to a place on a spectrum."""
    return states[min(len(states) - 1, max(0, round(place)))]


@dataclass(frozen=True, slots=True)
class Visit:
    """When and by whom a plant is seen; `growth` is the share of its mature spur that it has reached."""

    site: str
    observer: str
    date: str
    growth: float

    @property
    def young(self) -> bool:
        return self.growth < 1


def row_of(draw: Draw, plant: Plant, visit: Visit) -> dict[str, str]:
    """One line of the table, but for its id: the plant on one day, as one observer saw it."""
    column, text, spur = spur_of(draw, plant, visit)
    row = {
        "recordedBy": visit.observer,
        "eventDate": visit.date,
        "locationID": visit.site,
        "scientificName": name_of(draw, plant, visit, spur),
        "lifeStage": "young" if visit.young else "mature",
        "degreeOfEstablishment": "cultivated" if visit.site == GARDEN else "native",
        "measurementMethod": INSTRUMENTS[visit.observer].name,
        column: text,
        "spur length ± [mm]": INSTRUMENTS[visit.observer].half_width if text else "",
    }
    for title, seen in seen_of(draw, plant, visit).items():
        row[title] = "" if draw.happens(MISSING) else seen
    if row["scientificName"]:
        row["identifiedBy"] = visit.observer
    if visit.site == GARDEN and draw.happens(0.5):
        row["occurrenceRemarks"] = "Origin lost"
    return row


def name_of(draw: Draw, plant: Plant, visit: Visit, spur: float | None) -> str:
    """What the observer writes: by the spur as measured, empty where it can't be told."""
    if draw.happens(0.07):
        return ""
    if plant.kind == "luteolum":
        return "Cremnocentron luteolum"
    if plant.kind == "album":
        return "Cremnocentron album var. album"
    if visit.young or spur is None:
        return "" if draw.happens(0.6) else "Cremnocentron album"
    if 23 <= spur < 26 and draw.happens(0.5):
        return ""
    if spur < 25:
        return "Cremnocentron album var. robustum"
    return "Cremnocentron album var. longum" if visit.observer == CAREFUL else "Cremnocentron longum"


def spur_of(draw: Draw, plant: Plant, visit: Visit) -> tuple[str, str, float | None]:
    """Column, cell and length in mm of the spur as measured; an empty cell and None where it was not."""
    careful = visit.observer == CAREFUL
    with_ = INSTRUMENTS[visit.observer]
    spur = plant.spur * visit.growth + draw.normal(with_.bias, with_.error)
    inches = not careful and draw.happens(0.5)
    if draw.happens(MISSING / 2):
        return "spur length [mm]", "", None
    if inches:
        return "spur length [in]", f"{round(spur / MM_PER_INCH * 20) / 20:.2f}", spur
    return "spur length [mm]", f"{round(spur / with_.grain) * with_.grain:g}", spur


def seen_of(draw: Draw, plant: Plant, visit: Visit) -> dict[str, str]:
    """The other cells, seen with error, none left out yet."""
    colour = plant.colour - (2.2 if visit.young else 0.0) + draw.normal(0, 0.25)
    ripe = not visit.young and draw.happens(0.3)
    return {
        "plant height [cm]": f"{plant.height + draw.normal(0, 0.6):.0f}",
        "leaf length [mm]": f"{plant.leaf + draw.normal(0, 1):.0f}",
        "leaf width [mm]": f"{plant.width + draw.normal(0, 0.7):.0f}",
        "leaf apex": "acute" if plant.acute else state(plant.vigour / 3 + 0.3, ("obtuse", "rounded")),
        "leaf tooth number": str(plant.teeth),
        "leaf hairiness": state(plant.hairs + draw.normal(0, 0.25), HAIRS),
        "bracteoles": "present" if plant.bracteoles else "absent",
        "flower number": str(plant.flowers),
        "petal length [mm]": "" if visit.young else f"{plant.petal + draw.normal(0, 0.4):.1f}",
        "spur colour": state(colour, COLOURS),
        "seed surface": plant.seeds if ripe else "",
    }


def rows(seed: int = SEED) -> list[dict[str, str]]:
    """Every row of the table, site by site; a plant met twice has two rows and an organismID."""
    draw = Draw(seed)
    found: list[dict[str, str]] = []
    vouchers = twice = 0
    for index, (site, (plants, shares)) in enumerate(SITES.items()):
        effect = draw.normal(0, 0.25)
        for _ in range(plants):
            plant = plant_of(draw, draw.one_of(shares), effect)
            # both observers walked the mixed cliffs, one of them each other site
            who = draw.happens(0.5) if len(shares) > 2 else index % 2
            growth = draw.uniform(0.35, 0.75) if draw.happens(YOUNG) else 1.0
            visit = Visit(site, OBSERVERS[who], f"2023-10-{3 + index:02d}", growth)
            row = row_of(draw, plant, visit)
            found.append(row)
            if not visit.young and site != GARDEN and draw.happens(0.05):
                vouchers += 1
                row["catalogNumber"] = f"INV-TESN-{vouchers:03d}"
            if visit.young and draw.happens(AGAIN):
                twice += 1
                row["organismID"] = f"INV-P{twice:02d}"
                later = row_of(draw, plant, Visit(site, OBSERVERS[who], f"2023-11-{3 + index:02d}", 1.0))
                found.append(later | {"organismID": row["organismID"], "occurrenceRemarks": "In bud the month before"})
    return [{"occurrenceID": f"INV-{number:04d}"} | row for number, row in enumerate(found, 1)]


def table(seed: int = SEED) -> str:
    """The text of specimens.csv."""
    out = io.StringIO()
    writer = csv.DictWriter(out, COLUMNS, restval="", lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows(seed))
    return out.getvalue()


if __name__ == "__main__":
    target = Path(sys.argv[1]) if len(sys.argv) > 1 else TARGET
    target.write_text(table(), encoding="utf-8", newline="\n")
