"""The facts of a worked example of the Code -> records of a knowledge base.

The form of the examples is told at the top of data/icn-examples.yaml. What an example does not give is in order
there, so the records get it here: a Latin description, a type in one herbarium, a full reference to the basionym.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from auctorum.names.format import format_name
from auctorum.names.parse import parse_name

Facts = dict[str, Any]

ACTS = {
    "new-taxon": "new taxon",
    "new-combination": "new combination",
    "change-of-rank": "change of rank",
    "replacement-name": "replacement name",
    "usage": "usage",
}
RANKS = {"subforma": "subform", "nothospecies": "species", "nothogenus": "genus", "nothosubspecies": "subspecies"}
STANDINGS = {"legitimate": "legitimate", "illegitimate": "illegitimate", "not-valid": "not valid"}
HIGH = ("genus", "subgenus", "section", "subsection", "family", "subfamily", "tribe", "order", "subclass")
LOW = {"subspecies": "subsp.", "variety": "var.", "subforma": "subf."}
UNDATED = 1800  # an act without a year comes before every act that builds on it


def literature(given: Facts) -> tuple[list[dict[str, Any]], dict[str, str]]:
    """The publications of a case as YAML would hold them, and for each label of a name the id of its act."""
    names = {one["id"]: one for one in given.get("names", ())}
    years = _years(list(names.values()))
    works: dict[str, dict[str, Any]] = {}
    acts: dict[str, str] = {}
    for one in names.values():
        if one["act"] != "autonym" and not one.get("misapplied"):
            printed_in = names.get(one.get("published_with", ""), one)
            acts[one["id"]] = _enter(works, _work(printed_in, years), _act(one, names, given))
    for work, act in _decisions(names, given, years):
        _enter(works, work, act)
    return list(works.values()), acts


def _enter(works: dict[str, dict[str, Any]], work: dict[str, Any], act: dict[str, Any]) -> str:
    acts = works.setdefault(work["id"], {"work": work, "acts": []})["acts"]
    acts.append({key: value for key, value in act.items() if value is not None})
    return f"{work['id']}.{len(acts)}"


def _years(names: list[Facts]) -> dict[str, str]:
    """Date of every name. One without a year comes after what it builds on and before what builds on it."""
    dates = {one["id"]: str(one.get("date") or one.get("year") or "") for one in names}
    for _ in names:
        for one in names:
            for older in _built_on(one):
                if older in dates and not dates[older] and dates[one["id"]]:
                    dates[older] = str(int(dates[one["id"]][:4]) - 1)
    for one in names:
        before = [int(dates[older][:4]) + 1 for older in _built_on(one) if dates.get(older)]
        dates[one["id"]] = dates[one["id"]] or str(max([UNDATED, *before]))
    return dates


def _built_on(one: Facts) -> list[str]:
    """Labels of the names that must be older than this one."""
    keys = ("basionym", "replaced", "of", "same_taxon_as", "under", "established_by")
    listed = [*one.get("cited_synonyms", ()), *one.get("includes_type_of", ())]
    return [*(one[key] for key in keys if key in one), *listed]


def _work(one: Facts, years: dict[str, str]) -> dict[str, Any]:
    authors = one.get("publication_authors") or one.get("authors") or ["Anon."]
    date = years[one["id"]]
    key = re.sub("[^a-z0-9]+", "-", "".join(c if c.isascii() else f"{ord(c):x}" for c in " ".join(authors).lower()))
    id_ = f"{key}-{date}".strip("-").replace("--", "-")
    return {
        "id": id_[-80:].strip("-"),
        "type": "document",
        "author": [{"family": author, "literal": author} for author in authors],
        "issued": date,
        "title": "Acts of the example",
    }


def reference(id_: str, names: dict[str, Facts]) -> str:
    """A name of the case by its words, with authors where another of the case shares them."""
    one = names[id_]
    text = spelled(one)
    same = [other for other in names.values() if other["name"] == one["name"]]
    if len(same) > 1 and one["act"] != "autonym":
        people = one.get("authors") or one.get("publication_authors") or []
        shared = [other for other in same if (other.get("authors") or other.get("publication_authors")) == people]
        year = f" {one['year']}" if len(shared) > 1 and people and "year" in one else ""
        return f"{text} {team(people)}{year}".strip()
    return text


def team(people: list[str]) -> str:
    """Persons with `&` before the last."""
    *first, last = people or [""]
    return f"{', '.join(first)} & {last}" if first else last


def spelled(one: Facts) -> str:
    """The name of a case as records write it, with the sign of a hybrid where its rank says so."""
    name, rank = one["name"], one.get("rank")
    if one.get("epithet", "").islower() and rank is None and "." not in name:
        return f"{' '.join(name.split()[:2])} [unranked] {one['epithet']}"
    if one.get("genus") and one.get("epithet") and rank in (None, "unranked", "section", "subgenus", "subsection"):
        term = {"section": "sect.", "subgenus": "subg.", "subsection": "subsect."}.get(rank or "", "[unranked]")
        return f"{one['genus']} {term} {one['epithet']}"
    if one.get("epithet") and rank in LOW and not name.endswith(one["epithet"]):
        return f"{' '.join(name.split()[:2])} {LOW[rank]} {one['epithet']}"
    if rank == "nothogenus" and not name.startswith("×"):
        return f"×{name}"
    if one.get("genus_is_nothogenus") and not name.startswith("×"):
        return f"×{name}"
    if rank == "nothospecies" and "×" not in name:
        genus, _, epithet = name.partition(" ")
        return f"{genus} ×{epithet}"
    return name


def _act(one: Facts, names: dict[str, Facts], given: Facts) -> dict[str, Any]:
    def refer(key: str) -> str | None:
        return reference(one[key], names) if one.get(key) in names else None

    cites = [*one.get("includes_type_of", ()), *one.get("cited_synonyms", ())]
    return {
        "name": spelled(one),
        "act": ACTS[one["act"]],
        "rank": _rank(one),
        "authors": _authors(one),
        "ascribed-to": team(one["ascribed_to"]) if one.get("ascribed_to") and "authors" not in one else None,
        "contributed": one["act"] != "new-taxon" and "ascribed_to" in one,
        "described-by": team(one["diagnosis_by"]) if one.get("diagnosis_by") and "authors" not in one else None,
        "basionym": refer("basionym"),
        "replaces": refer("replaced"),
        "of": refer("of"),
        "same-taxon-as": refer("same_taxon_as"),
        "under": refer("under"),
        "basionym-reference": _basionym_reference(one),
        "cites": [reference(id_, names) for id_ in dict.fromkeys(cites) if id_ != one["id"]],
        "excludes": [reference(id_, names) for id_ in one.get("excludes_type_of", ())],
        "type": _type(one),
        "type-indicated": one.get("type_indicated", True),
        "description": _description(one),
        "accepted": _accepted(one),
        "offered-as": _offered(one),
        "epithet-linked": one.get("epithet_associated"),
        "typical": one.get("purports_to_be_typical"),
        "technical-term": one.get("coincides_with_latin_technical_term", False),
        "with-species": one.get("with_binary_species_name"),
        "monotypic": one.get("unispecific"),
        "parentage": one.get("formula"),
        "organism": one.get("group", "plant"),
        "fossil": one.get("fossil", False),
        "epithet": _epithet(one),
        "gender": one.get("gender_by_tradition") or one.get("gender_given_by_author"),
        "standing": STANDINGS.get(one.get("declared_status", "")),
    }


def _rank(one: Facts) -> str | None:
    """The rank as the record states it; None where the form of the name tells it."""
    rank = one.get("rank")
    return "unranked" if one.get("rank_indicated") is False else RANKS.get(rank, rank) if rank else None


def _authors(one: Facts) -> str | None:
    if "authors" not in one:
        return None
    people = list(one["authors"])
    others = people[-1:] == ["al."]
    own = f"{', '.join(people[:-1])} & al." if others else team(people)
    before = f"{team(one['ex'])} ex " if one.get("ex") else ""
    within = f" in {team(one['in'])}" if one.get("in") else ""
    parentheses = f"({team(one['paren_authors'])}) " if one.get("paren_authors") else ""
    return f"{parentheses}{before}{own}{within}"


def _basionym_reference(one: Facts) -> str | None:
    if one["act"] not in ("new-combination", "change-of-rank", "replacement-name"):
        return None
    given = one.get("basionym_reference")
    if given is None or given.get("full") or not given.get("missing"):  # errors do no harm (Art. 41.6)
        return "full"
    return "none" if given.get("missing") == ["all"] else "partial"


def _accepted(one: Facts) -> bool:
    return one.get("accepted_by_author") is not False and one.get("accepted_by_publication_author") is not False


def _offered(one: Facts) -> str | None:
    return "provisional" if one.get("provisional") else "synonym" if one.get("cited_only_as_synonym") else None


def _type(one: Facts) -> dict[str, Any] | None:
    takes_over = one.get("basionym") or one.get("replaced") or one.get("same_taxon_as")
    included = one.get("includes_type_of") or one.get("cited_synonyms")
    label = one.get("type")
    if one.get("type_indicated") is False or one.get("type_designated"):
        return None
    if label is None and (takes_over or included) and not one.get("excludes_type_of"):
        return None
    return {
        "kind": "name" if one.get("rank") in HIGH else "holotype",
        "specimen": label or f"type of {one['id']}",
        "herbarium": "X",
        "word": one.get("type_word", "holotypus"),
        "gatherings": one.get("type_gatherings", 1),
        "herbaria": one.get("type_herbaria_count", 1),
    }


def _description(one: Facts) -> dict[str, Any]:
    referred = one.get("reference_to_earlier_diagnosis") or one.get("has_diagnosis_by_reference")
    languages = ", ".join(one.get("description_languages", ["Latin"])).lower()
    if one.get("has_diagnosis") is False and not referred:
        return {"kind": "none"}
    if referred and not one.get("has_diagnosis"):
        full = one.get("full_direct_reference_to_earlier_description", True)
        return {"kind": "reference", "language": languages, "reference-full": full}
    return {"kind": "description", "language": languages}


def _epithet(one: Facts) -> dict[str, Any] | None:
    person = one.get("epithet_from_person") or {}
    found = {
        "kind": one.get("epithet_kind"),
        "noun": one.get("noun"),
        "person": person.get("name"),
        "sex": person.get("sex"),
        "number": person.get("number"),
        "form": person.get("form"),
        "intended": one.get("intended"),
        "parts-stand-alone": one.get("parts_stand_alone"),
        "symbol": one.get("transcribed_symbol"),
    }
    kept = {key: value for key, value in found.items() if value is not None}
    return kept or None


Decision = tuple[dict[str, Any], dict[str, Any]]


def _decisions(names: dict[str, Facts], given: Facts, years: dict[str, str]) -> Iterator[Decision]:
    """What others decide about the names later: conservation, rejection, choice, ruling, designation, completion."""
    for one in names.values():
        yield from _about(one, names, years)
    for group in given.get("ruled_confusable", ()):
        first, *others = group
        against = [reference(id_, names) for id_ in others]
        yield _later("ruling", "2000"), {"name": reference(first, names), "act": "ruled confusable", "against": against}
    choice = given.get("first_choice")
    if choice:
        passed = [reference(id_, names) for id_ in choice["united"] if id_ != choice["adopted"]]
        act = {"name": reference(choice["adopted"], names), "act": "first choice", "against": passed}
        yield _later("choice", str(choice["year"])), act
    for number, event in enumerate(given.get("events", ())):
        (first, *_rest) = names.values()
        yield (
            _later(f"event{number}", str(event["year"])),
            {
                "name": spelled(first),
                "act": "new taxon",
                "rank": RANKS.get(first.get("rank"), first.get("rank")),
                "accepted": event.get("name_accepted", True),
                "description": {"kind": "description", "language": "latin"},
                "type": _type(first),
            },
        )


def _about(one: Facts, names: dict[str, Facts], years: dict[str, str]) -> Iterator[Decision]:
    label = reference(one["id"], names)
    passed_over = [id_ for id_, other in names.items() if other.get("rejected_in_favour_of") == one["id"]]
    if one.get("conserved") or passed_over:
        listed = dict.fromkeys([*one.get("conserved_against", ()), *passed_over])
        against = [reference(id_, names) for id_ in listed]
        yield _later("committee", "2000"), {"name": label, "act": "conservation", "against": against}
    if one.get("later_conserved_with_type"):
        type_ = {"kind": "holotype", "specimen": one["later_conserved_with_type"], "herbarium": "X"}
        yield _later("committee", "2000"), {"name": label, "act": "conservation", "type": type_}
    if one.get("type_designated"):
        type_ = {"kind": "lectotype", "specimen": one.get("type", f"type of {one['id']}"), "herbarium": "X"}
        work = _later("designation", str(one["type_designated"]))
        yield work, {"name": label, "act": "type designation", "of": label, "type": type_}


def _later(who: str, date: str) -> dict[str, Any]:
    return {
        "id": f"{who}-{date}",
        "type": "document",
        "author": [{"family": who.title()}],
        "issued": date,
        "title": who,
    }


def bare(text: str) -> str:
    """The words of a name, without authors or signs that make no other name."""
    return format_name(parse_name(text), authors=False)


def citation_of(one: Facts) -> str:
    """The authors of a parent of a hybrid, as cited."""
    return _authors(one) or ""
