"""Closing a job in the window: what was right is asked, nothing is ready-made, and the program learns at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit

from fitdoctor.desk.jobbook.minutes import typed_minutes
from fitdoctor.desk.look import look_of
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.job import Outcome

if TYPE_CHECKING:
    from tests.desk.job_counter import Counter

pytest_plugins = ["tests.desk.job_counter"]


def likeliest(counter: Counter) -> str:
    assessment = counter.fitting.job.assessment
    assert assessment is not None
    return assessment.treat[0]


def test_nothing_is_ticked_and_what_lacks_is_said(counter: Counter) -> None:
    counter.press("jobs-close")
    ticks = [w for w in counter.window.findChildren(TickBox) if w.objectName().startswith("closing-cause-") and w.isVisible()]
    assert len(ticks) >= 2
    assert not any(tick.isChecked() for tick in ticks)
    counter.press("closing-close")
    assert "Tick what was right" in counter.said("closing-lacking")
    counter.press("closing-cause-none")
    assert "how it hangs" in counter.said("closing-lacking")
    assert counter.chosen.outcome is None


def test_a_job_is_closed_with_causes_result_amounts_minutes_and_a_note(counter: Counter) -> None:
    cause = likeliest(counter)
    counter.press("jobs-close")
    counter.press(f"closing-cause-{cause}")
    counter.press("closing-result-as-wanted")
    counter.press("jobs-used-as-marked")
    operation = counter.fitting.job.assessment.plan.operations[0].id  # type: ignore[union-attr]
    counter.write(f"jobs-minutes-{operation}", "1:10")
    counter.write("closing-minutes", "95")
    counter.find(QPlainTextEdit, "closing-note").setPlainText("The facing was stiffer than it looked.")
    counter.press("closing-close")
    outcome = counter.chosen.outcome
    assert outcome is not None
    assert (outcome.right, outcome.result, outcome.minutes) == ((cause,), "as-wanted", 95)
    assert outcome.note.startswith("The facing")
    marks = counter.book.history.of(counter.place.id)[-1].marks
    assert outcome.used_mm == {mark.id: mark.total_mm for mark in marks}
    assert counter.chosen.minutes == {operation: 70}
    assert counter.said("jobs-says-time").startswith("1 h 35 spent")
    assert counter.there("jobs-reopen") is not None


def test_what_cannot_be_read_is_said_beside_its_field(counter: Counter) -> None:
    counter.press("jobs-close")
    counter.write("closing-minutes", "an hour")
    assert "no number of minutes" in counter.said("closing-minutes-wrong")
    mark = counter.book.history.of(counter.place.id)[-1].marks[0].id
    counter.write(f"jobs-used-{mark}", "wide")
    assert "wide" in counter.said(f"jobs-used-{mark}-wrong")


def test_nothing_known_and_a_cause_exclude_each_other(counter: Counter) -> None:
    cause = likeliest(counter)
    counter.press("jobs-close")
    counter.press(f"closing-cause-{cause}")
    counter.press("closing-cause-none")
    assert not counter.find(TickBox, f"closing-cause-{cause}").isChecked()
    counter.press(f"closing-cause-{cause}")
    assert not counter.find(TickBox, "closing-cause-none").isChecked()


def test_a_cause_nobody_thought_of_can_be_named(counter: Counter) -> None:
    know = counter.fitting.job.knowledge
    counter.press("jobs-close")
    shown = {w.objectName() for w in counter.window.findChildren(TickBox) if w.isVisible()}
    other = next(id_ for id_ in know.causes_of(counter.chosen.case.garment) if f"closing-cause-{id_}" not in shown)
    counter.press("closing-all-causes")
    counter.press(f"closing-cause-{other}")
    counter.press("closing-result-better")
    counter.press("closing-close")
    assert counter.chosen.outcome is not None
    assert counter.chosen.outcome.right == (other,)


def test_what_was_said_stays_while_one_looks_elsewhere_and_when_the_text_grows(counter: Counter) -> None:
    counter.press("jobs-close")
    counter.press("closing-cause-none")
    counter.write("closing-minutes", "40")
    counter.window.rebuild(look_of(dark=True, percent=125))
    counter.settle()
    assert counter.find(TickBox, "closing-cause-none").isChecked()
    counter.window.placeWanted.emit("fit")
    counter.window.placeWanted.emit("job-book")
    assert counter.find(QLineEdit, "closing-minutes").text() == "40"
    counter.keys(Qt.Key.Key_Escape)
    assert counter.there("jobs-list") is not None


def test_closing_can_be_undone_and_a_job_can_be_taken_up_again(counter: Counter) -> None:
    counter.press("jobs-close")
    counter.press("closing-cause-none")
    counter.press("closing-result-no-better")
    counter.press("closing-close")
    assert counter.chosen.outcome is not None
    counter.press("message-button")
    assert counter.chosen.outcome is None
    counter.book.close_job(counter.chosen, Outcome(right=()))
    counter.place.refresh()
    counter.settle()
    counter.press("jobs-reopen")
    assert counter.chosen.outcome is None
    assert counter.fitting.job.learned is None


def test_what_closed_jobs_say_stands_beside_the_printed_word_and_moves_the_bars(counter: Counter) -> None:
    cause = likeliest(counter)
    assert counter.fitting.job.assessment is not None
    before = counter.fitting.job.assessment.diagnosis
    chance = next(c.probability for c in before.causes if c.id == cause)
    case = counter.chosen.case
    for number in range(23):
        counter.book.close_job(counter.book.add(case), Outcome(right=(cause,) if number % 4 else ()))
    counter.press("jobs-close")
    counter.press(f"closing-cause-{cause}")
    counter.press("closing-result-as-wanted")
    counter.press("closing-close")
    counter.press("jobs-open")
    counter.fitting.job.go_to("narrow")
    counter.settle()
    said = " ".join(w.said() for w in counter.window.findChildren(Words) if w.objectName().startswith(f"narrow-shop-{cause}"))
    assert "The book says" in said
    assert "your last 24 jobs: 75 %" in said
    assert counter.fitting.job.assessment is not None
    now = next(c.probability for c in counter.fitting.job.assessment.diagnosis.causes if c.id == cause)
    assert now != pytest.approx(chance, abs=0.005)
    counter.book.learning.switch(False)
    counter.fitting.job.look_again()
    counter.settle()
    assert not [w for w in counter.window.findChildren(Words) if w.objectName().startswith("narrow-shop-") and w.isVisible()]
    assert counter.fitting.job.assessment is not None
    off = next(c.probability for c in counter.fitting.job.assessment.diagnosis.causes if c.id == cause)
    assert off == pytest.approx(chance)


def test_minutes_are_written_down_while_the_job_is_open(counter: Counter) -> None:
    counter.press("jobs-minutes")
    operations = counter.fitting.job.assessment.plan.operations  # type: ignore[union-attr]
    counter.write(f"jobs-minutes-{operations[0].id}", "12")
    counter.write(f"jobs-minutes-{operations[1].id}", "8")
    assert counter.said("jobs-minutes-sum") == "20 min in all so far"
    counter.press("minutes-back")
    assert counter.said("jobs-says-time").startswith("20 min spent")


def test_what_operations_took_in_closed_jobs_stands_beside_the_printed_minutes(counter: Counter) -> None:
    assert counter.fitting.job.assessment is not None
    operation = counter.fitting.job.assessment.plan.operations[0]
    for minutes in (20.0, 30.0):
        job = counter.book.add(counter.chosen.case)
        counter.book.close_job(counter.book.change(job, msgspec.structs.replace(job, minutes={operation.id: minutes})), Outcome())
    counter.press("jobs-minutes")
    said = [w.said() for w in counter.window.findChildren(Words) if w.isVisible()]
    assert f"The book says {operation.minutes[1]:g}; your last 2 jobs: 25." in said


def test_a_job_is_closed_by_the_keyboard_alone(counter: Counter) -> None:
    counter.tab_to("jobs-close")
    counter.keys(Qt.Key.Key_Return)
    cause = likeliest(counter)
    assert counter.focus() == f"closing-cause-{cause}"
    counter.keys(Qt.Key.Key_Space)
    counter.tab_to("closing-result-as-wanted")
    counter.keys(Qt.Key.Key_Right)
    counter.keys(Qt.Key.Key_Return)
    counter.tab_to("closing-close")
    counter.keys(Qt.Key.Key_Return)
    assert counter.chosen.outcome is not None
    assert counter.chosen.outcome.right == (cause,)
    assert counter.chosen.outcome.result == "better"
    assert counter.focus() == f"jobs-row-{counter.place.id}"


@pytest.mark.parametrize(("text", "minutes"), [("25", 25.0), ("1:10", 70.0), ("7,5", 7.5), (" 0 ", 0.0)])
def test_minutes_are_read_as_people_write_them(text: str, minutes: float) -> None:
    assert typed_minutes(text) == minutes


@pytest.mark.parametrize("text", ["-5", "x", "1:2:3", "99999", "nan", "inf"])
def test_what_are_no_minutes_is_refused(text: str) -> None:
    with pytest.raises(FitdoctorError, match="no number of minutes"):
        typed_minutes(text)
