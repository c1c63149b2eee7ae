"""A shop's settings: kept whole, and a bad value falls back with a note."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from fitdoctor.assess import assess
from fitdoctor.case import Case, Measured
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop, load_shop, save_shop


def test_settings_come_back_as_they_were_kept(tmp_path: Path) -> None:
    shop = Shop(unit="cm", finest=8, rate_per_hour=24.0, currency="€", text_percent=150, theme="dark")
    save_shop(shop, tmp_path / "shop.json")
    assert load_shop(tmp_path / "shop.json") == (shop, ())


def test_no_settings_are_no_error(tmp_path: Path) -> None:
    assert load_shop(tmp_path / "none.json") == (Shop(), ())


@pytest.mark.parametrize(
    "bad",
    [
        '{"unit": "ell"}',
        '{"finest": 7}',
        '{"rate_per_hour": "much"}',
        '{"rate_per_hour": -1}',
        '{"text_percent": "big"}',
        '{"minutes_percent": 0}',
        '{"stage_percent": {"waist": 9000}}',
        '{"hem_drop_mm": -3}',
        '{"high_contrast": "perhaps"}',
        '{"still": 1}',
    ],
)
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
    assert (shop.unit, shop.theme, shop.text_percent) == ("cm", "system", 100)
    assert len(notes) == 2


def test_an_hour_costs_its_rate_and_no_rate_costs_nothing() -> None:
    assert Shop(rate_per_hour=30, currency="£").money(90) == "£45.00"
    assert Shop().money(90) == ""


def test_own_minutes_are_a_share_of_the_printed_ones_by_stage_or_for_all_work() -> None:
    shop = Shop(minutes_percent=150, stage_percent={"waist": 80})
    assert shop.own_minutes((10, 20, 40), "seat") == (15, 30, 60)
    assert shop.own_minutes((10, 20, 40), "waist") == (8, 16, 32)
    assert Shop().own_minutes((10, 20, 40), "waist") == (10, 20, 40)


def test_a_trouser_hem_nobody_measured_drops_behind_as_the_shop_has_it(knowledge: Knowledge) -> None:
    case = Case(garment="trousers", treat=("leg-too-long",), methods={"leg-too-long": "hem-trousers-plain"})
    stood_in = {}
    for name, shop in (("block", Shop()), ("shop", Shop(hem_drop_mm=22.0))):
        measured = {"finished-inseam": Measured(736.0)}
        assessed = assess(knowledge, replace(case, measured=measured), shop)
        (worked,) = [w for w in assessed.amounts if w.calculator == "trouser-hem" and w.calculation]
        assert worked.calculation is not None
        stood_in[name] = worked.calculation.effects["slant"]
    assert stood_in["block"].mm == 12.7
    assert stood_in["shop"].mm == 22.0
    assert "shop" in stood_in["shop"].assumed
    assert set(Shop(hem_drop_mm=0.0).usual_lengths()) <= set(knowledge.measurements)
