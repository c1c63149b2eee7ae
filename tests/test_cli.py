"""The command line: what it prints, how it fails, what it leaves alone."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fitdoctor.cli import INPUT_HAS_PROBLEMS, main


@pytest.fixture
def case_file(tmp_path: Path) -> Path:
    file = tmp_path / "case.yaml"
    file.write_text(
        "garment: slacks\nfacts: {waistband: set-on}\nseen: [level-folds-under-back-band]\nlooked: [back]\n"
        "answers: {clear-when-pinned-level: yes}\nmeasured: {tuck-at-centre-back: 3/4 in}\n"
    )
    return file


def test_an_assessment_for_machines_keeps_its_shape(case_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["assess", str(case_file), "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert set(found) == {"format", "garment", "causes", "next", "methods", "amounts", "verdict", "plan", "problems"}
    assert found["format"] == 1
    assert set(found["causes"][0]) == {"id", "title", "probability", "because"}
    assert set(found["next"][0]) == {"id", "kind", "ask", "minutes", "gain_bits"}
    assert {"method", "at", "layer", "take", "each_mm", "total_mm", "text", "stations"} <= set(found["amounts"][0])
    assert set(found["plan"]["operations"][0]) >= {"id", "text", "opens", "try_on", "minutes"}


COMMANDS = ("", "window", "check", "assess", "search", "show", "rack", "practise", "sheet", "guides", "evaluate", "shots", "demo", "jobs")


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_explains_itself(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as left:
        main([*([command] if command else []), "--help"])
    assert left.value.code == 0
    assert "usage: fitdoctor" in capsys.readouterr().out


def test_the_rack_says_which_amount_it_lacks(case_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rack", str(case_file)]) == INPUT_HAS_PROBLEMS
    assert "--price" in capsys.readouterr().err


def test_an_assessment_for_people_names_the_cause_and_the_mark(case_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["assess", str(case_file)]) == 0
    said = capsys.readouterr().out
    assert "The back is longer than the wearer" in said
    assert "3/4 in" in said


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("garment: slaks\n", "did you mean ‘slacks’"),
        ("garment: slacks\nseen: [level-folds-under-back-bend]\n", "level-folds-under-back-band"),
        ("garment: slacks\nmeasured: {tuck-at-centre-back: soon}\n", "needs a unit"),
        ("garment: slacks\nanswers: {clear-when-pinned-level: perhaps}\n", "perhaps"),
        ("garment: [slacks\n", "case.yaml:"),
        ("garment: !!python/object:os.system x\n", "tag"),
        ("", "empty"),
    ],
)
def test_a_bad_case_file_says_where_and_what(tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, says: str) -> None:
    file = tmp_path / "case.yaml"
    file.write_text(text)
    assert main(["assess", str(file)]) == INPUT_HAS_PROBLEMS
    said = capsys.readouterr().err
    assert "case.yaml:" in said
    assert says in said


def test_all_problems_of_a_case_file_come_in_one_run(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "case.yaml"
    file.write_text("garment: slacks\nseen: [no-such-sight, nor-this]\nmeasured: {no-such-length: 1 in}\n")
    assert main(["assess", str(file)]) == INPUT_HAS_PROBLEMS
    assert len(capsys.readouterr().err.strip().splitlines()) >= 3


def test_a_case_file_that_is_not_there_is_a_known_error(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["assess", "nowhere.yaml"]) == INPUT_HAS_PROBLEMS
    assert "nowhere.yaml" in capsys.readouterr().err


def test_wrong_use_exits_with_two() -> None:
    with pytest.raises(SystemExit) as caught:
        main(["assess"])
    assert caught.value.code == 2


def test_search_for_machines_is_best_first_and_filters_by_kind(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["search", "collar", "gaps", "on", "one", "side", "--kind", "symptoms", "--json"]) == 0
    hits = json.loads(capsys.readouterr().out)
    assert [h["score"] for h in hits] == sorted((h["score"] for h in hits), reverse=True)
    assert {h["kind"] for h in hits} == {"symptoms"}
    assert "collar-gaps-on-one-side" in [h["id"] for h in hits[:3]]


@pytest.mark.parametrize("ending", [".txt", ".html", ".pdf"])
def test_a_sheet_is_written_in_each_form(case_file: Path, tmp_path: Path, ending: str) -> None:
    target = tmp_path / f"sheet{ending}"
    assert main(["sheet", str(case_file), "-o", str(target)]) == 0
    assert target.stat().st_size > 1000


def test_a_sheet_in_an_unknown_form_is_refused_with_what_to_do(case_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", str(case_file), "-o", str(tmp_path / "sheet.doc")]) == INPUT_HAS_PROBLEMS
    assert "End the file's name in .html, .pdf or .txt." in capsys.readouterr().err


def test_a_sheet_that_cannot_be_written_says_so(case_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", str(case_file), "-o", str(tmp_path / "no" / "folder.txt")]) == INPUT_HAS_PROBLEMS
    assert "could not be written" in capsys.readouterr().err


def test_the_shipped_knowledge_has_no_problem(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["problems"] == []
    assert found["counts"]["symptoms"] >= 120


def test_broken_knowledge_reports_every_problem_in_one_run(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for kind in ("symptoms", "causes"):
        (tmp_path / kind).mkdir()
    (tmp_path / "scale.yaml").write_text("strength: {usually: 0.8}\nhow-common: {common: 0.1}\nleak: {leak: 0.01}\n")
    (tmp_path / "symptoms" / "one.yaml").write_text("id: one\ntitel: One\n")
    (tmp_path / "causes" / "two.yaml").write_text("id: two\ntitle: Two\nlies_in: moon\n")
    assert main(["check", str(tmp_path)]) == INPUT_HAS_PROBLEMS
    said = capsys.readouterr().err
    assert "one.yaml:2" in said
    assert "did you mean ‘title’" in said
    assert "two.yaml:3" in said


def test_the_evaluation_for_machines_reports_both_halves(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    kept = tmp_path / "before.json"
    assert main(["evaluate", "--json", "--save", str(kept)]) == 0
    found = json.loads(capsys.readouterr().out)
    for part in (found, found["held_back"]):
        assert {"cases", "first", "first_three", "verdicts", "amounts", "clean", "log_score", "brier", "checks_needed"} <= set(part)
    assert kept.exists()
