"""Names written out, as keys and as file names."""

from __future__ import annotations

import pytest

from auctorum.names.format import format_name, parts, slug, words
from auctorum.names.name import Name
from auctorum.names.parse import parse_name


@pytest.mark.parametrize(
    ("printed", "without_authors", "key", "file"),
    [
        (
            "Exemplum album (Orrin) Veldt", "Exemplum album", "Exemplum album", "exemplum-album",
        ),
        (
            "Exemplum album Orrin ssp. longum Veldt v. minus Marsh", "Exemplum album subsp. longum var. minus",
            "Exemplum album var. minus", "exemplum-album-var-minus",
        ),
        (
            "× Exemplum × album nothosubsp. longum", "×Exemplum ×album nothosubsp. longum",
            "Exemplum album subsp. longum", "exemplum-album-subsp-longum",
        ),
        (
            "Exemplum subg. Petraea sect. Calcaria", "Exemplum subg. Petraea sect. Calcaria",
            "Exemplum sect. Calcaria", "exemplum-sect-calcaria",
        ),
        (
            "Exemplum (sect. Calcaria) novæ-mülleri", "Exemplum (sect. Calcaria) novæ-mülleri",
            "Exemplum novæ-mülleri", "exemplum-novae-muelleri",
        ),
        (
            "Exemplum album Orrin var. album", "Exemplum album var. album",
            "Exemplum album var. album", "exemplum-album-var-album",
        ),
    ],
)  # fmt: skip
def test_forms_of_a_name(printed: str, without_authors: str, key: str, file: str) -> None:
    name = parse_name(printed)
    assert (format_name(name, authors=False), words(name), slug(name)) == (without_authors, key, file)


def test_runs_in_italics() -> None:
    assert parts(parse_name("Exemplum ×album Orrin var. longum (Veldt) Marsh")) == (
        ("Exemplum ", True), ("×", False), ("album", True), (" Orrin var. ", False), ("longum", True),
        (" (Veldt) Marsh", False),
    )  # fmt: skip


@pytest.mark.parametrize("genus", ["Con", "NUL", "日本", "..", "/etc/passwd", "Ω", "", "É"])
def test_a_slug_is_a_safe_file_name(genus: str) -> None:
    made = slug(Name(genus))
    assert made.strip("abcdefghijklmnopqrstuvwxyz0123456789-") == ""
    assert made and made not in ("con", "nul")


def test_slugs_of_unlike_letters_differ() -> None:
    assert len({slug(Name(genus)) for genus in ("日本", "Ω", "Ψ")}) == 3
