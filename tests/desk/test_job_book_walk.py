"""An experienced fitter's way through the job book from a new garment to its deletion, once with the mouse, once by the keyboard alone."""

from __future__ import annotations

import json
from datetime import date, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QFileDialog, QLineEdit

from fitdoctor.desk.opening import open_shelf
from fitdoctor.desk.parts.text import Words

if TYPE_CHECKING:
    from tests.desk.job_counter import Counter

pytest_plugins = ["tests.desk.job_counter"]

CONTROL = Qt.KeyboardModifier.ControlModifier
SEEN = "level-folds-under-back-band"


@pytest.fixture
def files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The system's dialogs answer with files of this folder."""
    picture = QImage(40, 30, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.gray)
    picture.save(str(tmp_path / "back.png"))
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_: ([str(tmp_path / "back.png")], ""))
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "jobs.json"), ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(tmp_path / "jobs.json"), ""))
    return tmp_path


def shop_says(counter: Counter) -> str:
    return " ".join(w.said() for w in counter.window.findChildren(Words) if w.objectName().startswith("narrow-shop-") and w.isVisible())


def test_a_garment_from_the_counter_to_the_bin_with_the_mouse(counter: Counter, files: Path) -> None:
    counter.click("jobs-new")
    counter.press("garment-kind-slacks")
    counter.write("garment-name", "Slacks for the stranger")
    counter.write("garment-wearer", "T 12")
    counter.fitting.job.note(SEEN)
    counter.click("head-place-job-book")
    mine = counter.place.id
    assert counter.rows()[0] == "Slacks for the stranger"
    counter.pick("jobs-stands", "marked")
    counter.press("jobs-change")
    counter.write("jobs-due-day", "tomorrow")
    counter.press("jobs-change-done")
    counter.press("jobs-photos-add")
    assert counter.book.photos.of(mine)
    counter.press("jobs-close")
    cause = counter.fitting.job.assessment.diagnosis.causes[0].id  # type: ignore[union-attr]
    counter.press(f"closing-cause-{cause}")
    counter.press("closing-result-as-wanted")
    counter.press("closing-close")
    assert counter.chosen.state == "done"
    counter.press("jobs-open")
    counter.fitting.job.go_to("narrow")
    counter.settle()
    assert "your one job: 100 %" in shop_says(counter)
    counter.click("head-place-job-book")
    counter.press("jobs-figures")
    assert counter.said("figures-lead") == "From 1 closed job."
    counter.press("figures-back")
    counter.press("jobs-out-json")
    whole = json.loads((files / "jobs.json").read_text())
    assert len(whole["jobs"]) == 4
    assert sum(len(carried["photos"]) for carried in whole["jobs"]) == 1
    counter.place.choose(mine)
    counter.settle()
    counter.press("jobs-delete")
    counter.press("jobs-ask-back-delete")
    assert "Slacks for the stranger" not in counter.rows()
    counter.press("jobs-in")
    assert "Slacks for the stranger" in counter.rows()
    assert len(counter.book.photos.of(mine)) == 1


def by_keys_to_the_marked_garment(counter: Counter) -> None:
    """A new garment, its due day, its state and a photo, without the mouse."""
    counter.keys(Qt.Key.Key_N, CONTROL)
    while counter.focus() != "garment-kind-skirt":
        counter.keys(Qt.Key.Key_Right)
    counter.keys(Qt.Key.Key_Return)
    counter.tab_to("garment-name")
    counter.type_in("Skirt for the widow")
    counter.keys(Qt.Key.Key_Tab)
    counter.type_in("W.")
    counter.fitting.job.note(SEEN)
    counter.window.placeWanted.emit("job-book")
    counter.settle()
    mine = counter.place.id
    assert counter.focus() == f"jobs-row-{mine}"
    counter.tab_to("jobs-change")
    counter.keys(Qt.Key.Key_Return)
    counter.tab_to("jobs-due-day")
    counter.type_in("+3")
    assert counter.chosen.due == date.today() + timedelta(days=3)
    counter.keys(Qt.Key.Key_Escape)
    assert counter.focus() == "jobs-change"
    counter.tab_to("jobs-stands")
    counter.keys(Qt.Key.Key_Return)
    counter.menu_keys("jobs-stands", Qt.Key.Key_Down, Qt.Key.Key_Return)
    assert counter.chosen.state == "marked"
    counter.tab_to("jobs-photos-add")
    counter.keys(Qt.Key.Key_Return)
    assert counter.book.photos.of(mine)


def test_a_garment_from_the_counter_to_the_bin_by_the_keyboard_alone(counter: Counter, files: Path) -> None:
    by_keys_to_the_marked_garment(counter)
    counter.tab_to("jobs-close")
    counter.keys(Qt.Key.Key_Return)
    counter.keys(Qt.Key.Key_Space)
    counter.tab_to("closing-result-as-wanted")
    counter.keys(Qt.Key.Key_Return)
    counter.tab_to("closing-close")
    counter.keys(Qt.Key.Key_Return)
    assert counter.chosen.outcome is not None
    assert counter.fitting.job.learned is not None
    counter.tab_to("jobs-out-json")
    counter.keys(Qt.Key.Key_Return)
    assert (files / "jobs.json").exists()
    counter.tab_to("jobs-delete")
    counter.keys(Qt.Key.Key_Return)
    assert counter.focus() == "jobs-ask-back-keep"
    counter.tab_to("jobs-ask-back-delete")
    counter.keys(Qt.Key.Key_Return)
    assert "Skirt for the widow" not in counter.rows()
    assert counter.fitting.job.learned is None, "what a deleted job taught is gone with it"


def test_what_was_written_down_is_there_after_a_new_start(counter: Counter) -> None:
    counter.press("jobs-change")
    counter.write("jobs-due-day", "2031-02-03")
    counter.find(QLineEdit, "jobs-title").setFocus()
    counter.type_in("!")
    mine = counter.place.id
    counter.window.close()
    job = open_shelf().opened().job(mine)
    assert job.due == date(2031, 2, 3)
    assert job.case.title.endswith("!")
    assert open_shelf().opened().history.of(mine), "closing the window notes what was thought of the garment in hand"
