"""A shop's settings: kept whole, and a bad value falls back with a note."""

from __future__ import annotations

from pathlib import Path

import pytest

from fitdoctor.shop import Shop, load_shop, save_shop


def test_settings_come_back_as_they_were_kept(tmp_path: Path) -> None:
    shop = Shop(unit="cm", finest=8, rate_per_hour=24.0, currency="€", text_percent=150, theme="dark")
    save_shop(shop, tmp_path / "shop.json")
    assert load_shop(tmp_path / "shop.json") == (shop, ())


def test_no_settings_are_no_error(tmp_path: Path) -> None:
    assert load_shop(tmp_path / "none.json") == (Shop(), ())


@pytest.mark.parametrize("bad", ['{"unit": "ell"}', '{"finest": 7}', '{"rate_per_hour": "much"}', '{"text_percent": "big"}'])
def test_a_bad_value_falls_back_with_a_note(tmp_path: Path, bad: str) -> None:
    file = tmp_path / "shop.json"
    file.write_text(bad)
    shop, notes = load_shop(file)
    assert shop == Shop()
    assert len(notes) == 1
    assert str(file) in notes[0]


def test_a_broken_file_falls_back_with_a_note_and_is_left_alone(tmp_path: Path) -> None:
    file = tmp_path / "shop.json"
    file.write_text("{")
    assert load_shop(file)[0] == Shop()
    assert file.read_text() == "{"


def test_the_good_values_beside_a_bad_one_are_kept(tmp_path: Path) -> None:
    file = tmp_path / "shop.json"
    file.write_text('{"unit": "cm", "theme": "pink", "text_percent": 900}')
    shop, notes = load_shop(file)
    assert (shop.unit, shop.theme, shop.text_percent) == ("cm", "system", 200)
    assert len(notes) == 1


def test_an_hour_costs_its_rate_and_no_rate_costs_nothing() -> None:
    assert Shop(rate_per_hour=30, currency="£").money(90) == "£45.00"
    assert Shop().money(90) == ""
