"""Lengths in and out. Conversions are checked against pint, a general-purpose unit library."""

from __future__ import annotations

import math
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.errors import FitdoctorError
from fitdoctor.units import format_length, parse_length, speak_length, step_mm, typeset_length

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry(cache_folder=None)


@pytest.mark.parametrize(
    ("typed", "mm"),
    [
        ("1 1/2 in", 38.1),
        ("1-1/2 in", 38.1),
        ("1½", 38.1),
        ('3/4"', 19.05),
        ("1.5", 38.1),
        ("38 mm", 38.0),
        ("3,8 cm", 38.0),
        ("0", 0.0),
        ("-1/2 in", -12.7),
        ("  2 inches ", 50.8),
    ],
)
def test_a_length_is_read_as_people_write_it(typed: str, mm: float) -> None:
    assert parse_length(typed) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize("typed", ["", "1 1/", "abc", "1/0", "1 2", "12 ft", "1e3", "nan", "½½", "1//2", "--1"])
def test_what_is_not_a_length_says_how_to_write_one(typed: str) -> None:
    with pytest.raises(FitdoctorError) as caught:
        parse_length(typed)
    assert "Write it as 1 1/2, 1.5 or 38 mm." in str(caught.value)


@given(st.integers(0, 400), st.integers(0, 15))
def test_sixteenths_of_an_inch_agree_with_pint_and_come_back_as_written(whole: int, sixteenths: int) -> None:
    inches = Fraction(whole) + Fraction(sixteenths, 16)
    mm = parse_length(f"{whole} {sixteenths}/16 in")
    assert math.isclose(mm, REGISTRY.Quantity(float(inches), "inch").to("millimetre").magnitude, abs_tol=1e-9)
    assert parse_length(format_length(mm)) == pytest.approx(mm, abs=1e-9)


@given(st.floats(-3000, 3000))
def test_a_length_shown_in_inches_is_never_off_by_more_than_half_a_step(mm: float) -> None:
    shown = parse_length(format_length(mm).replace("−", "-"))
    assert abs(shown - mm) <= step_mm("in") / 2 + 1e-9


@given(st.floats(0, 3000))
def test_a_length_shown_in_centimetres_is_never_off_by_more_than_half_a_millimetre(mm: float) -> None:
    assert abs(parse_length(format_length(mm, "cm")) - mm) <= 0.5 + 1e-9


def test_a_fraction_is_reduced_and_split_for_setting_in_type() -> None:
    shown = typeset_length(parse_length("1 8/16 in"))
    assert (shown.whole, shown.numerator, shown.denominator, shown.unit) == ("1", 1, 2, "in")


def test_nothing_is_shown_as_minus_nothing() -> None:
    assert format_length(-0.01) == "0 in"
    assert format_length(-0.01, "cm") == "0 cm"


def test_a_length_is_spoken_in_words() -> None:
    assert speak_length(parse_length("1 9/16 in")) == "1 and 9 over 16 inches"
    assert speak_length(25.4) == "1 inch"
