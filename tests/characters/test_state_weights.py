from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from auctorum.characters.read import read_statement
from auctorum.characters.show import format_value
from auctorum.characters.states import WEIGHT, position, state_weights
from auctorum.characters.values import Modality, Share, States
from auctorum.characters.vocabulary import Character, Kind, State

NAMES = ("linear", "lanceolate", "ovate", "orbicular")
SHAPE = Character("leaf shape", "leaf", "shape", Kind.ORDERED, states=tuple(State(name) for name in NAMES))
PRESENCE = Character("bracts", "bract", "presence", Kind.PRESENCE)

shares = st.builds(
    lambda ends, modality: Share(ends[0], ends[1] if ends[0] != ends[1] else None, modality),
    st.tuples(st.sampled_from(NAMES), st.sampled_from(NAMES)),
    st.sampled_from(Modality),
)
values = st.lists(shares, min_size=1, max_size=4, unique=True).map(lambda several: States(tuple(several)))


def test_modalities_weigh_in_order() -> None:
    weights = [WEIGHT[modality] for modality in Modality]
    assert weights == sorted(weights, reverse=True)
    assert (weights[0], weights[-1]) == (1, 0)


def test_a_span_spreads_over_the_states_between() -> None:
    assert state_weights(States((Share("linear", "ovate"),)), SHAPE) == dict.fromkeys(NAMES[:3], Fraction(1, 3))


def test_what_is_denied_leaves_the_others() -> None:
    assert state_weights(States((Share("linear", None, Modality.NEVER),)), SHAPE) == dict.fromkeys(
        NAMES[1:], Fraction(1, 3)
    )
    assert state_weights(States((Share("present", None, Modality.NEVER),)), PRESENCE) == {"absent": 1}


def test_usually_outweighs_sometimes_three_to_one() -> None:
    value = States((Share("ovate", None, Modality.USUALLY), Share("linear", None, Modality.SOMETIMES)))
    assert state_weights(value, SHAPE) == {"linear": Fraction(1, 4), "ovate": Fraction(3, 4)}


@given(values)
def test_weights_sum_to_one_in_vocabulary_order(value: States) -> None:
    weights = state_weights(value, SHAPE)
    assert not weights or sum(weights.values()) == 1
    assert list(weights) == [name for name in NAMES if name in weights]


@pytest.mark.parametrize(
    ("said", "place"),
    [
        (States((Share("lanceolate", "orbicular"),)), (1.0, 3.0)),
        (States((Share("orbicular", "ovate"),)), (2.0, 3.0)),
        (States((Share("ovate"), Share("linear", None, Modality.RARELY))), (2.0, 2.0)),
        (States((Share("ovate"), Share("linear", None, Modality.SOMETIMES))), (0.0, 2.0)),
        (States((Share("linear", None, Modality.RARELY),)), (0.0, 0.0)),
        (States((Share("linear", None, Modality.NEVER),)), (1.0, 3.0)),
    ],
)
def test_position_on_the_spectrum(said: States, place: tuple[float, float]) -> None:
    assert position(said, SHAPE) == place


def test_no_state_left_has_no_position() -> None:
    with pytest.raises(ValueError, match="no state of leaf shape is left"):
        position(States((Share("linear", "orbicular", Modality.NEVER),)), SHAPE)


@given(values)
def test_printed_states_read_back(value: States) -> None:
    (reading,) = read_statement(format_value(value), SHAPE)
    assert reading.value == value
