"""The rack on the command line, and several garments side by side."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fitdoctor.case import Case
from fitdoctor.cli import DONE, INPUT_HAS_PROBLEMS, main
from fitdoctor.errors import FitdoctorError
from fitdoctor.rack.answer import rack_answer
from fitdoctor.rack.command import racks_of
from fitdoctor.rack.comparison import compare
from fitdoctor.rack.text import comparison_text, rack_text
from tests.rack.small_rack import small_knowledge

ALL_ROUND = ("front", "back", "side")


@pytest.fixture
def case_file(tmp_path: Path) -> Path:
    file = tmp_path / "case.yaml"
    file.write_text("garment: slacks\ntitle: Grey slacks\nseen: [level-folds-under-back-band]\nlooked: [back, front, side]\n")
    return file


def test_the_answer_names_the_garment_the_sum_and_the_decision(case_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rack", str(case_file), "--price", "20", "--worth", "60", "--rate", "15"]) == DONE
    said = capsys.readouterr().out
    assert said.startswith("Grey slacks: ")
    assert "price 20.00 + work " in said


def test_the_answer_for_machines_keeps_its_shape(case_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rack", str(case_file), "--price", "20", "--worth", "60", "--json"]) == DONE
    found = json.loads(capsys.readouterr().out)
    assert found["format"] == 1
    assert {"garment", "decision", "reason", "sum", "fits", "minutes", "only_if", "at_home", "other_size", "next"} <= set(found)
    assert set(found["sum"]) == {"price", "work", "risk", "total", "worth", "gain", "worst"}


@pytest.mark.parametrize("money", [[], ["--price", "5"], ["--price", "nan", "--worth", "5"], ["--price", "1", "2", "3", "--worth", "5"]])
def test_money_that_is_missing_or_no_money_is_a_known_error(case_file: Path, money: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rack", str(case_file), str(case_file), *money]) == INPUT_HAS_PROBLEMS
    assert "Traceback" not in capsys.readouterr().err


def test_no_case_is_a_known_error() -> None:
    with pytest.raises(FitdoctorError, match="No case"):
        racks_of([], [1], [2], 0)


def test_one_price_serves_all_garments() -> None:
    racks = racks_of([Case(garment="skirt"), Case(garment="skirt")], [5], [10, 20], 3)
    assert [(rack.price, rack.worth, rack.rate_per_hour) for rack in racks] == [(5, 10, 3), (5, 20, 3)]


def test_side_by_side_what_to_buy_comes_first_then_by_gain() -> None:
    knowledge = small_knowledge()
    dear = rack_answer(knowledge, Case(garment="skirt", title="Dear", looked=ALL_ROUND), 150, 100)
    fair = rack_answer(knowledge, Case(garment="skirt", title="Fair", looked=ALL_ROUND), 30, 100)
    cheap = rack_answer(knowledge, Case(garment="skirt", title="Cheap", looked=ALL_ROUND), 10, 100)
    rows = compare([dear, fair, cheap])
    assert [row.title for row in rows] == ["Cheap", "Fair", "Dear"]
    assert [row.decision for row in rows] == ["BUY", "BUY", "LEAVE_IT"]
    assert comparison_text(rows).splitlines()[1].startswith("Cheap")


def test_can_t_tell_always_stands_among_the_answers() -> None:
    said = rack_text(rack_answer(small_knowledge(), Case(garment="skirt", seen=("strain",), looked=ALL_ROUND), 10, 100))
    assert said.splitlines()[-1].endswith("Can't tell")
