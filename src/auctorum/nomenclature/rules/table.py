"""The rules of valid publication in the order in which they are asked (ICN Art. 32-45).

The table is the documentation: each rule is one function whose docstring gives its article.
"""

from __future__ import annotations

from collections.abc import Callable

from auctorum.corpus.model import Act
from auctorum.nomenclature.inquiry import Inquiry
from auctorum.nomenclature.judgement import Ruling
from auctorum.nomenclature.rules import description, form, legitimacy, publication, reference, typification

Rule = Callable[[Inquiry, Act], Ruling | None]

VALIDITY: tuple[Rule, ...] = (
    form.standing_given_as_invalid,
    publication.effectively_published,
    publication.after_the_start,
    form.one_word,
    form.no_technical_term,
    form.no_eu_before_the_genus,
    form.no_tautonym,
    form.no_epithet_for_the_typical_part,
    form.no_repeated_epithet,
    form.no_formula_for_an_epithet,
    form.condensed_from_its_parents,
    publication.accepted_by_author,
    publication.accepted_where_completed,
    publication.placed_in_a_valid_name,
    publication.epithet_linked,
    reference.of_the_same_rank_group,
    reference.rests_on_a_name,
    reference.reference_is_full_and_direct,
    description.is_described,
    description.reference_is_full,
    description.in_latin,
    typification.type_indicated,
    typification.one_gathering,
    typification.specimen_for_type,
    typification.type_named_as_such,
    typification.in_one_herbarium,
    publication.rank_indicated,
)

# Rules of valid publication that ask for the legitimacy of the species or genus, and so come after it is judged.
VALIDITY_UNDER_A_NAME: tuple[Rule, ...] = (
    form.not_the_type_without_autonym,
    legitimacy.no_epithet_of_an_illegitimate_species,
)
