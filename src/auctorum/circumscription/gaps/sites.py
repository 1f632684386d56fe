"""Candidate sites that nobody has searched."""

from __future__ import annotations

from collections.abc import Iterator

from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import one_more
from auctorum.circumscription.phrases import counted
from auctorum.records.rows import Role, Site


def sites(ground: Ground) -> Iterator[Gap]:
    """One gap for each candidate site without a specimen; none where only some names are asked about.

    A site is called by its id: neither its locality nor its coordinates are told.
    """
    visited = {specimen.site for specimen in ground.corpus.specimens if specimen.site is not None}
    if not ground.everything:
        return
    for id_, site in ground.corpus.sites.items():
        if site.role is Role.CANDIDATE and id_ not in visited:
            yield _gap(id_, site, len(visited))


def _gap(id_: str, site: Site, visited: int) -> Gap:
    known = ", ".join(filter(None, (site.island, site.substrate, site.aspect and f"faces {site.aspect}")))
    return Gap(
        GapKind.SITE,
        one_more(1.0, visited),
        question=f"Site {id_}{f' ({known})' if known else ''}: what grows there?",
        why=f"It is a candidate, and no plant is recorded from it; plants are known from {counted(visited, 'site')}.",
        todo="Search it with the permits it needs, and add what you measure to specimens.csv.",
        sites=(id_,),
        place=site.place,
        in_field=True,
        remarks=site.locationRemarks,
    )
