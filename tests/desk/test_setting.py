"""Paragraphs: every word is set, none is wider than its line, lengths stay whole."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.parts.setting import Line, Paragraph, plain

pytestmark = pytest.mark.usefixtures("qapp")


@pytest.fixture(scope="module")
def look(qapp: object) -> Look:
    del qapp
    return look_of(dark=False)


def words_of(line: Line) -> list[str]:
    return ["".join(f"{p.fraction.numerator}/{p.fraction.denominator}" if p.fraction else p.text for p in w.pieces) for w in line.words]


def test_a_length_is_not_parted_from_its_unit_nor_from_its_fraction(look: Look) -> None:
    text = Paragraph(look, "Take in each side 1 9/16 in, in all 3 1/8 in.", "body")
    together = [word for line in text.lines(60) for word in words_of(line)]
    assert "19/16\u00a0in," in together
    assert "all\u00a031/8\u00a0in." in together


def test_a_fraction_is_set_in_type_and_a_date_is_not(look: Look) -> None:
    pieces = [p for w in Paragraph(look, "3/4 in on 24/7 and 2026/11", "body").words for p in w.pieces]
    assert [(p.fraction.numerator, p.fraction.denominator) for p in pieces if p.fraction] == [("3", "4")]


def test_bold_is_wider_and_leaves_no_mark(look: Look) -> None:
    assert Paragraph(look, "**Strongly:**", "body").natural_width() > Paragraph(look, "Strongly:", "body").natural_width()
    assert plain("**Strongly:** folds") == "Strongly: folds"


def test_breaks_of_its_own_are_kept(look: Look) -> None:
    assert len(Paragraph(look, "One.\nTwo.", "question").lines(1000)) == 2


@given(
    words=st.lists(st.text(alphabet="abcdefgh", min_size=1, max_size=12), min_size=1, max_size=30),
    width=st.floats(min_value=20, max_value=800),
)
def test_every_word_is_set_in_order_and_lines_keep_to_the_width(words: list[str], width: float) -> None:
    look = look_of(dark=False)
    text = Paragraph(look, " ".join(words), "body")
    lines = text.lines(width)
    assert [word for line in lines for word in words_of(line)] == words
    assert all(line.width <= width + 0.1 or len(line.words) == 1 for line in lines)
    assert text.height(width) == pytest.approx(len(lines) * look.line("body"))


@given(st.floats(min_value=60, max_value=400), st.floats(min_value=1, max_value=300))
def test_more_room_never_makes_a_text_higher(width: float, more: float) -> None:
    said = "Lower the back waist seam 1 1/8 in at centre back, running out to nothing at the side seams."
    text = Paragraph(look_of(dark=False), said, "row")
    assert text.height(width + more) <= text.height(width)
