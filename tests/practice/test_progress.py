"""What the answers show, a trainee who learns, and the file they are kept in."""

from __future__ import annotations

import csv
import io
from datetime import UTC, datetime, timedelta
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.errors import FitdoctorError
from fitdoctor.practice.exercise import POINTS, Choice, Mark
from fitdoctor.practice.judging import judge, right_answer
from fitdoctor.practice.keeping import open_record, practice_file
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.progress import Answered, answered, confusions, curve, lines_known, matrix, title_of
from fitdoctor.practice.results import COLUMNS, results_csv, write_results
from fitdoctor.practice.schedule import Schedule
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.session import pair_exercise, scheduled_exercise
from tests.practice.practice_bench import the_bench

START = datetime(2024, 5, 31, 9, tzinfo=UTC)
BENCH = the_bench()


def an_answer(number: int = 0, mark: Mark = "right", **more: object) -> Answered:
    at = (START + timedelta(minutes=number)).isoformat()
    plain = {"at": at, "kind": "lines", "garment": "skirt", "skill": "symptom:x", "mark": mark, "view": "back", **more}
    return msgspec.convert(plain, Answered)


def trained(times: int, remembers: bool = True) -> list[Answered]:
    """A trainee who guesses what was never shown and remembers what was; or one who only guesses."""
    scope, lots = Scope("waistcoat", kinds=("lines",)), Lots("trainee")
    answers: list[Answered] = []
    shown: set[str] = set()
    for number in range(times):
        now = START + timedelta(hours=5 * number)
        exercise = scheduled_exercise(BENCH, scope, answers, now)
        assert exercise is not None
        (question,) = exercise.questions
        assert isinstance(question, Choice)
        right = right_answer(question)
        said = right if remembers and right in shown else lots.one(question.options).id
        shown.add(right)
        answers.append(answered(exercise, question, judge(question, said), question.option(said).text, now))
    return answers


def test_a_trainee_who_remembers_gets_better_and_the_curve_shows_it() -> None:
    answers = trained(60)
    points = curve(answers, over=15)
    assert points[-1].share > points[9].share
    assert points[-1].share > 0.9
    assert points[-1].answers == 60
    assert curve(trained(60, remembers=False), over=15)[-1].share < 0.6
    (known,) = [k for k in lines_known(answers, Schedule.of(answers).settled) if k.view == "back"]
    assert 0 < known.known <= known.met


def test_what_was_answered_wrong_is_asked_again_before_anything_new() -> None:
    answers = trained(8)
    due = Schedule.of(answers).due(START + timedelta(days=2))
    again = scheduled_exercise(BENCH, Scope("waistcoat", kinds=("lines",)), answers, START + timedelta(days=2))
    assert again is not None
    assert again.skill.key in due[:3]


def test_a_pair_can_be_practised_by_itself() -> None:
    pair = ("cupping-under-seat", "level-folds-under-back-band")
    for turn in range(4):
        exercise = pair_exercise(BENCH, Scope(), pair, turn)
        assert exercise is not None
        (question,) = exercise.questions
        assert isinstance(question, Choice)
        assert set(pair) <= {option.id for option in question.options}
        assert right_answer(question) in pair


@given(st.lists(st.sampled_from(["right", "part", "wrong"]), max_size=40), st.integers(1, 25))
def test_the_curve_is_the_mean_of_the_last_answers(marks: list[Mark], over: int) -> None:
    points = curve([an_answer(at, mark) for at, mark in enumerate(marks)], over)
    assert len(points) == len(marks)
    for at, point in enumerate(points):
        last = [POINTS[mark] for mark in marks[: at + 1][-over:]]
        assert point.share == pytest.approx(sum(last) / len(last))


def test_confusions_are_counted_by_what_was_right_and_what_was_said() -> None:
    mixed = [an_answer(at, "wrong", confused=("a", "b")) for at in range(3)]
    mixed += [an_answer(9, "wrong", confused=("b", "a")), an_answer(10, "wrong", confused=("a", "c")), an_answer(11)]
    found = confusions(mixed)
    assert [(c.right, c.given, c.times) for c in found] == [("a", "b", 3), ("a", "c", 1), ("b", "a", 1)]
    table = matrix(found)
    assert table.ids == ("a", "b", "c")
    assert table.times == ((0, 3, 1), (1, 0, 0), (0, 0, 0))
    assert matrix(found, most=2).ids == ("a", "b")


def test_entries_in_a_confusion_have_their_titles() -> None:
    assert title_of(BENCH.knowledge, "leave-alone") == "Nothing"
    assert title_of(BENCH.knowledge, "cupping-under-seat").startswith("Folds sag")
    assert title_of(BENCH.knowledge, "no-such-entry") == "no-such-entry"


def test_an_answer_kept_is_there_again() -> None:
    record = open_record().with_answer(an_answer(1)).with_answer(an_answer(2, "wrong", confused=("a", "b")))
    assert open_record().answers == record.answers
    assert len(record.answers) == 2
    assert not list(practice_file().parent.glob("*.part"))


def test_two_windows_do_not_lose_each_others_answers() -> None:
    one, other = open_record(), open_record()
    one.with_answer(an_answer(1))
    both = other.with_answer(an_answer(2))
    assert [answer.when.minute for answer in both.answers] == [1, 2]
    assert open_record().answers == both.answers


@pytest.mark.parametrize("damage", [b"", b"{", b'{"format": 1, "answers": [{}]}', b"\xff\xfe"])
def test_a_damaged_file_is_set_aside_whole_with_one_sentence(damage: bytes) -> None:
    file = practice_file()
    file.parent.mkdir(parents=True)
    file.write_bytes(damage)
    record = open_record()
    assert record.answers == ()
    (aside,) = file.parent.glob("practice-damaged-*.json")
    assert aside.read_bytes() == damage
    assert record.note == f"The record of your answers was damaged; it is kept as {aside}, and a new one is begun."
    assert not file.exists()
    assert open_record().note == ""


def test_a_file_of_a_later_version_is_left_alone() -> None:
    file = practice_file()
    file.parent.mkdir(parents=True)
    file.write_bytes(b'{"format": 2, "answers": []}')
    with pytest.raises(FitdoctorError, match="later version"):
        open_record()
    assert file.read_bytes() == b'{"format": 2, "answers": []}'


def test_an_answer_that_cannot_be_kept_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    def full(path: Path, content: bytes) -> None:
        raise OSError(28, "No space left on device", str(path), content[:0])

    record = open_record().with_answer(an_answer(1))
    monkeypatch.setattr("fitdoctor.practice.keeping.write_whole", full)
    with pytest.raises(FitdoctorError, match="The answer could not be kept: No space left on device"):
        record.with_answer(an_answer(2))
    assert open_record().answers == record.answers


def test_the_results_read_back_as_they_were(tmp_path: Path) -> None:
    answers = [an_answer(1, answer="a, “b”\nc", right="=1+1"), an_answer(2, "part", confused=("a", "b"), set="trousers", seed="7")]
    write_results(answers, tmp_path / "out.csv")
    rows = list(csv.DictReader(io.StringIO((tmp_path / "out.csv").read_bytes().decode("utf-8-sig"), newline="")))
    assert tuple(rows[0]) == COLUMNS
    assert rows[0]["answer"] == "a, “b”\nc"
    assert rows[0]["right_answer"] == "'=1+1", "a spreadsheet does not work it out"
    assert (rows[1]["mark"], rows[1]["points"], rows[1]["mistaken_for"], rows[1]["set"], rows[1]["seed"]) == (
        "part",
        "0.5",
        "b",
        "trousers",
        "7",
    )
    assert results_csv([]).strip() == ",".join(COLUMNS)
