"""`fitdoctor practise` as a teacher uses it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fitdoctor.cli import main
from fitdoctor.practice.keeping import open_record
from tests.practice.test_progress import an_answer


def said(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["practise", *words]) == 0
    return capsys.readouterr().out


def test_a_set_is_printed_the_same_each_time(capsys: pytest.CaptureFixture[str]) -> None:
    asked = ("--set", "trousers back", "--seed", "7", "--count", "3")
    page = said(capsys, *asked)
    assert page.startswith("Set ‘trousers back moderate’, seed 7, 3 exercises. Code ")
    assert "1. Name the lines" in page
    assert said(capsys, *asked) == page


def test_the_teachers_page_has_the_same_code_and_the_answers(capsys: pytest.CaptureFixture[str]) -> None:
    asked = ("--set", "skirt lines", "--seed", "spring", "--count", "2")
    page, teachers = said(capsys, *asked), said(capsys, *asked, "--answers")
    assert page.splitlines()[0] == teachers.splitlines()[0]
    assert "\n = " in teachers
    assert "\n = " not in page


def test_the_set_as_json_has_a_format(capsys: pytest.CaptureFixture[str]) -> None:
    plain = json.loads(said(capsys, "--set", "skirt lines", "--count", "2", "--json"))
    assert (plain["format"], len(plain["exercises"])) == (1, 2)


def test_a_word_that_is_not_known_ends_with_one_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["practise", "--set", "trouserz"]) == 1
    assert "did you mean ‘trousers’" in capsys.readouterr().err


def test_a_count_out_of_bounds_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["practise", "--count", "0"]) == 1
    assert "Ask for 1 to 200." in capsys.readouterr().err


def test_the_results_are_written_as_a_table(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["practise", "--results", str(tmp_path / "out.csv")]) == 1
    assert "No exercise was answered yet." in capsys.readouterr().err
    open_record().with_answer(an_answer())
    assert said(capsys, "--results", str(tmp_path / "out.csv")) == f"1 answers written to {tmp_path / 'out.csv'}.\n"
    assert "symptom:x" in (tmp_path / "out.csv").read_text(encoding="utf-8-sig")
