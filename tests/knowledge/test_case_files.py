"""Case files: what a person writes, held against the knowledge; and back to text without a loss."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fitdoctor.case import Case, Measured
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import case_of, read_case_file, read_knowledge, write_case_file

Plain = dict[str, dict[str, dict[str, Any]]]


@pytest.fixture
def skirts(small: Plain, written: Callable[[Plain], Path]) -> Knowledge:
    small["symptoms"]["pulls"]["formerly"] = ["strains"]
    return read_knowledge([written(small)])


@pytest.fixture
def read(skirts: Knowledge, tmp_path: Path) -> Callable[[str], tuple[Case, list[str]]]:
    """Reads a case from text; problems as ‘line: text’."""

    def read_text(text: str) -> tuple[Case, list[str]]:
        file = tmp_path / "case.yaml"
        file.write_text(text, encoding="utf-8", newline="")
        case, problems = read_case_file(file, skirts)
        assert all(problem.file == file for problem in problems)
        return case, [f"{problem.line}: {problem.text}" for problem in problems]

    return read_text


def test_a_whole_case_is_read(read: Callable[[str], tuple[Case, list[str]]]) -> None:
    case, problems = read("""
garment: skirt
title: Blue skirt
wearer: A. B.
facts: {lining: lined}
seen: folds
looked: [back, side]
not_seen: [strains]
answers: {pin: yes}
measured:
  tuck: {depth: 3/8 in, give: 1/16 in}
  girth: {length: 100 cm, give: 5 mm}
  seam-cloth: 1/2 in
treat: [too-long]
methods: {too-long: lower-waist}
past_limits: [no-needle-holes]
notes: |
  Wants it by noon.
""")
    assert problems == []
    assert case == Case(
        garment="skirt",
        title="Blue skirt",
        wearer="A. B.",
        facts={"lining": "lined"},
        seen=("folds",),
        looked=("back", "side"),
        not_seen=("pulls",),
        answers={"pin": "yes"},
        measured={"tuck": Measured(19.05, 3.175), "girth": Measured(1000.0, 5.0), "seam-cloth": Measured(12.7)},
        treat=("too-long",),
        methods={"too-long": "lower-waist"},
        past_limits=("no-needle-holes",),
        notes="Wants it by noon.\n",
    )


def test_every_unknown_id_is_reported_with_its_line_and_a_guess(read: Callable[[str], tuple[Case, list[str]]]) -> None:
    case, problems = read("""garment: skrit
facts: {linning: lined, lining: silk}
seen:
  - fold
  - pulls
answers: {pin: maybe, pn: yes}
measured:
  tuk: 1 in
  tuck: 3/4
  girth: {depth: 1 in}
  seam-cloth: long
methods: {too-long: lower-wast}
""")
    assert problems == [
        "1: there is no garment ‘skrit’ (did you mean ‘skirt’?)",
        "2: there is no feature ‘linning’ (did you mean ‘lining’?)",
        "2: ‘lining’ is none of none, lined: ‘silk’",
        "4: there is no symptom ‘fold’ (did you mean ‘folds’?)",
        "6: the answer to ‘pin’ is yes, no or not-known, not ‘maybe’",
        "6: there is no check ‘pn’ (did you mean ‘pin’?)",
        "8: there is no measurement ‘tuk’ (did you mean ‘tuck’?)",
        "9: tuck: ‘3/4’ needs a unit: mm, cm or in.",
        "10: girth: Only a pinned fold has a depth. Write its length.",
        "11: seam-cloth: ‘long’ needs a unit: mm, cm or in.",
        "12: there is no method ‘lower-wast’ (did you mean ‘lower-waist’?)",
    ]
    assert case == Case(garment="", seen=("pulls",))


def test_a_fact_that_is_not_known_is_left_out(read: Callable[[str], tuple[Case, list[str]]]) -> None:
    assert read("garment: skirt\nfacts: {lining: not-known}\nanswers: {pin: not-known}\n") == (
        Case(garment="skirt", answers={"pin": "not-known"}),
        [],
    )


def test_unknown_keys_and_views_are_reported_together(read: Callable[[str], tuple[Case, list[str]]]) -> None:
    _, problems = read("garment: skirt\nsean: [folds]\nlooked: [behind]\n")
    assert problems == ["2: there is no field ‘sean’ (did you mean ‘seen’?)", "3: looked.1: ‘behind’ is none of front, back, side"]


def test_a_solved_case_is_read_as_a_case(skirts: Knowledge) -> None:
    place = skirts.places[("cases", "a-skirt")]
    case, problems = read_case_file(place.file, skirts)
    assert problems == []
    assert case == case_of(skirts.cases["a-skirt"])
    assert case.measured == {"tuck": Measured(19.05, 1.5875)}


def test_a_file_that_is_not_there_is_a_problem_and_not_a_crash(skirts: Knowledge, tmp_path: Path) -> None:
    case, problems = read_case_file(tmp_path / "none.yaml", skirts)
    assert case == Case(garment="")
    assert "cannot be read" in problems[0].text


def test_a_solved_case_with_an_unreadable_length_is_a_known_error(skirts: Knowledge) -> None:
    with pytest.raises(FitdoctorError, match="not a length"):
        case_of(msgspec.structs.replace(skirts.cases["a-skirt"], measured={"tuck": "much in"}))


WORDS = st.text(st.characters(codec="utf-8"), max_size=40)
LENGTHS = st.builds(Measured, st.floats(-9e3, 9e3), st.none() | st.floats(0, 1e3))


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    title=WORDS,
    notes=WORDS,
    measured=st.dictionaries(st.sampled_from(["tuck", "girth", "seam-cloth"]), LENGTHS),
    seen=st.lists(st.sampled_from(["folds", "pulls"]), unique=True).map(tuple),
)
def test_what_is_written_is_read_again_to_the_last_digit(
    read: Callable[[str], tuple[Case, list[str]]], title: str, notes: str, measured: dict[str, Measured], seen: tuple[str, ...]
) -> None:
    case = Case(garment="skirt", title=title, notes=notes, measured=measured, seen=seen, looked=("back",), answers={"pin": "no"})
    assert read(write_case_file(case)) == (case, [])
