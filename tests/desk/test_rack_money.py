"""Amounts of money are read and written by the buyer's locale."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QLocale

from fitdoctor.desk.rack.money import MOST, Money

BRITISH, GERMAN, SWISS, FRENCH, ARABIC = (Money(QLocale(name)) for name in ("en_GB", "de_DE", "de_CH", "fr_FR", "ar_EG"))
EVERYWHERE = [BRITISH, GERMAN, SWISS, FRENCH, ARABIC]


@pytest.mark.parametrize(
    ("money", "said"),
    [
        (BRITISH, "£1,234.50"),
        (GERMAN, "1.234,50\u00a0€"),
        (Money(QLocale("en_GB"), "€"), "€1,234.50"),
        (Money(QLocale.c()), "1234.50"),
        (Money(QLocale("ja_JP")), "￥1,234.50"),
    ],
)
def test_an_amount_is_written_as_the_locale_has_it_with_the_shops_own_sign(money: Money, said: str) -> None:
    assert money.say(1234.5) == said


def test_below_nothing_and_taken_off_have_a_minus_before_the_sign() -> None:
    assert BRITISH.say(-8) == "− £8.00"
    assert BRITISH.off(8) == "− £8.00"
    assert BRITISH.say(-0.001) == BRITISH.off(0.001) == "£0.00"


@pytest.mark.parametrize(
    ("money", "typed", "amount"),
    [
        (BRITISH, "8", 8.0),
        (BRITISH, " £8.50 ", 8.5),
        (BRITISH, "8,5", 8.5),
        (BRITISH, "1,234.50", 1234.5),
        (BRITISH, "0", 0.0),
        (GERMAN, "8,50 €", 8.5),
        (GERMAN, "8.5", 8.5),
        (GERMAN, "1.234,50", 1234.5),
        (SWISS, "1’234.50", 1234.5),
        (FRENCH, "1\u202f234,5", 1234.5),
        (ARABIC, "٣٫٥", 3.5),
    ],
)
def test_an_amount_is_read_with_point_or_comma_and_with_or_without_the_sign(money: Money, typed: str, amount: float) -> None:
    assert money.read(typed) == pytest.approx(amount)


@pytest.mark.parametrize("typed", ["", "-3", "eight", "1/2", "8.123", "1e3", "nan", "inf", "8 pounds", "9" * 12])
def test_what_is_no_amount_is_not_guessed_at(typed: str) -> None:
    assert BRITISH.read(typed) is None


@given(st.integers(0, int(MOST) * 100), st.sampled_from(EVERYWHERE))
def test_what_is_written_is_read_again(cents: int, money: Money) -> None:
    amount = cents / 100
    assert money.read(money.say(amount)) == pytest.approx(amount)
    assert money.read(money.typed(amount)) == pytest.approx(amount)


@given(st.text(max_size=12), st.sampled_from(EVERYWHERE))
def test_any_text_is_an_amount_from_nothing_up_or_none(text: str, money: Money) -> None:
    amount = money.read(text)
    assert amount is None or 0 <= amount <= MOST
