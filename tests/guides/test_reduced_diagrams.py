"""Reduced diagrams: here, this much, this way."""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.marks import Length, Mark
from fitdoctor.guides import as_picture, diagram
from fitdoctor.guides.diagram import HIGH, WIDE
from fitdoctor.units import format_length


def marks(name: str, mm: float = 20.0) -> tuple[Mark, ...]:
    calculator = CALCULATORS[name]
    return calculator.work_out({need: Length(mm) for need in calculator.needs}, {}).marks


@pytest.mark.parametrize("name", sorted(CALCULATORS))
def test_every_mark_fits_its_picture(name: str) -> None:
    for mark in marks(name):
        drawn = diagram(mark)
        for x, y in (*drawn.old, *drawn.new):
            assert -1e-6 <= x <= WIDE + 1e-6
            assert -1e-6 <= y <= HIGH + 1e-6


@given(st.floats(0.5, 60))
def test_an_amount_can_be_seen_however_small(mm: float) -> None:
    drawn = diagram(marks("waist-crescent", mm)[0])
    assert drawn.arrow is not None
    assert math.dist(*drawn.arrow) > 3
    assert drawn.larger >= 1


def test_labels_carry_the_amounts_in_mm() -> None:
    assert [round(label.mm, 3) for label in diagram(marks("waist-crescent")[0]).labels] == [20, 10, 0]


def test_an_even_amount_is_said_once() -> None:
    assert [label.mm for label in diagram(marks("balance")[0]).labels] == [20]


def test_a_mark_without_lines_has_an_empty_diagram() -> None:
    drawn = diagram(Mark("buttons", "level with its hole", "mark", 10.0, 10.0, "in all"))
    assert drawn.old == ()
    assert drawn.arrow is None


def test_a_turned_sleeve_has_its_arrow_along_the_seam() -> None:
    on_cap, on_body = map(diagram, marks("sleeve-pitch"))
    assert on_cap.arrow is not None
    assert on_body.arrow is not None
    assert on_cap.arrow[1][0] < on_cap.arrow[0][0]
    assert on_body.arrow[1][0] > on_body.arrow[0][0]


def test_the_ends_are_named() -> None:
    assert [name for _, name, _ in diagram(marks("waist-crescent")[0]).ends] == ["centre back", "side seam"]


def test_a_picture_writes_lengths_as_the_shop_does() -> None:
    picture = as_picture(diagram(marks("waist-crescent", 19.05)[0]), format_length)
    words = [element.text for element in ElementTree.fromstring(picture) if element.tag.endswith("text")]
    assert "3/4 in" in words
    assert "centre back" in words
