"""The job book as a place: found, filtered, changed, opened, deleted for good; two windows on one book."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import date, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QFileDialog, QLineEdit, QPlainTextEdit

from fitdoctor.case import Case
from fitdoctor.desk.jobbook.carry import Carry
from fitdoctor.desk.jobbook.days import due_words, typed_day
from fitdoctor.desk.look import look_of
from fitdoctor.desk.window import PLACES
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import open_book
from fitdoctor.jobbook.job import Outcome
from fitdoctor.jobbook.opening import usual_place

if TYPE_CHECKING:
    from tests.desk.job_counter import Counter, MakeCounter

pytest_plugins = ["tests.desk.job_counter"]

DRESS, TROUSERS, JACKET = (
    "Blue crêpe dress, for the ghost",
    "Grey flannel trousers, for the miller",
    "Green tweed jacket, for the schoolmaster",
)
TUESDAY = date(2026, 12, 1)


def test_the_garment_in_hand_is_the_chosen_one_and_the_last_in_hand_comes_first(counter: Counter) -> None:
    assert counter.rows() == [DRESS, TROUSERS, JACKET]
    assert counter.place.id == counter.fitting.job.kept.id
    assert counter.said("jobs-title-chosen") == DRESS
    assert "1 h" in counter.said("jobs-says-time")


def test_words_filters_and_orders_narrow_the_list(counter: Counter) -> None:
    counter.write("jobs-find", "tweed")
    assert counter.rows() == [JACKET]
    assert counter.said("jobs-title-chosen") == DRESS, "the one looked at stays in sight"
    counter.write("jobs-find", "velvet")
    assert counter.rows() == []
    assert counter.said("jobs-said") == "Nothing under ‘velvet’."
    counter.find(QLineEdit, "jobs-find").clear()
    counter.pick("jobs-garment", "jacket")
    assert counter.rows() == [JACKET]
    counter.pick("jobs-garment", "")
    counter.pick("jobs-order", "wearer")
    assert counter.rows() == [DRESS, TROUSERS, JACKET]
    counter.press("jobs-which-closed")
    assert counter.rows() == []


def test_a_job_is_opened_where_one_left_off_by_mouse_and_by_keys(counter: Counter) -> None:
    other = counter.place.page.list.rows[2].job
    counter.click(f"jobs-row-{other}")
    assert counter.said("jobs-title-chosen") == JACKET
    counter.press("jobs-open")
    assert counter.window.place == "fit"
    assert counter.fitting.job.case.title == JACKET
    number = [place for place, _ in PLACES].index("job-book") + 1
    counter.keys(Qt.Key(Qt.Key.Key_0.value + number), Qt.KeyboardModifier.ControlModifier)
    assert counter.window.place == "job-book"
    assert counter.focus() == f"jobs-row-{other}"
    counter.keys(Qt.Key.Key_Up)
    above = counter.said("jobs-title-chosen")
    assert above != JACKET
    counter.keys(Qt.Key.Key_Return)
    assert counter.fitting.job.case.title == above


def test_in_a_narrow_window_a_press_shows_the_job_in_place_of_the_list(at_the_counter: MakeCounter) -> None:
    counter = at_the_counter(look_of(dark=False, percent=200))
    row = counter.place.page.list.rows[1].job
    counter.click(f"jobs-row-{row}")
    assert counter.said("jobs-title-chosen") == TROUSERS
    assert counter.there("jobs-list") is None
    assert counter.focus() == "jobs-to-list"
    counter.keys(Qt.Key.Key_Escape)
    assert counter.focus() == f"jobs-row-{row}"
    counter.keys(Qt.Key.Key_Return)
    assert counter.there("jobs-open") is not None


def test_the_state_is_changed_noted_in_the_history_and_undone(counter: Counter) -> None:
    counter.pick("jobs-stands", "basted")
    states = [counter.chosen.state]
    assert [reading.note for reading in counter.book.history.of(counter.place.id)] == ["basted"]
    assert counter.said("message-words") == f"{DRESS}: basted."
    counter.press("message-button")
    assert [*states, counter.chosen.state] == ["basted", "looked-at"]


def test_what_is_written_down_is_kept_as_it_is_typed(counter: Counter) -> None:
    counter.press("jobs-change")
    assert counter.focus() == "jobs-title"
    counter.write("jobs-title", "Blue dress")
    counter.write("jobs-wearer", "T 417")
    counter.write("jobs-due-day", "+7")
    counter.find(QPlainTextEdit, "jobs-notes").setPlainText("Two fittings.")
    job = counter.chosen
    assert (job.case.title, job.case.wearer, job.case.notes) == ("Blue dress", "T 417", "Two fittings.")
    assert job.due == date.today() + timedelta(days=7)
    assert counter.fitting.job.case.title == "Blue dress", "the garment in hand is the same garment"
    counter.press("jobs-change-done")
    assert counter.said("jobs-title-chosen") == "Blue dress"
    assert "due" in counter.said("jobs-days")


def test_a_name_and_what_is_no_day_are_said_beside_the_field_and_not_kept(counter: Counter) -> None:
    before = counter.chosen
    counter.press("jobs-change")
    counter.write("jobs-wearer", "Griselda")
    assert "more than initials" in counter.said("jobs-wearer-wrong")
    assert counter.chosen.case.wearer == ""
    counter.write("jobs-due-day", "soonish")
    assert "is not a day yet" in counter.said("jobs-due-day-wrong")
    assert counter.chosen.due == before.due


def test_the_arrows_go_a_day_on_and_back(counter: Counter) -> None:
    counter.press("jobs-change")
    counter.find(QLineEdit, "jobs-due-day").setFocus()
    counter.keys(Qt.Key.Key_Up)
    counter.keys(Qt.Key.Key_Up)
    counter.keys(Qt.Key.Key_Down)
    assert counter.chosen.due == date.today() + timedelta(days=1)


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("", None),
        ("today", TUESDAY),
        ("Thursday", date(2026, 12, 3)),
        ("tue", date(2026, 12, 8)),
        ("3 Dec", date(2026, 12, 3)),
        ("3. 2.", date(2027, 2, 3)),
        ("+10", date(2026, 12, 11)),
        ("2027-01-31", date(2027, 1, 31)),
        ("29 Feb 2028", date(2028, 2, 29)),
    ],
)
def test_a_day_is_read_as_people_write_it(text: str, day: date | None) -> None:
    assert typed_day(text, TUESDAY) == day


@pytest.mark.parametrize("text", ["31 Feb", "2026-13-01", "32", "x", "29 Feb 2027"])
def test_what_is_no_day_is_refused(text: str) -> None:
    with pytest.raises(FitdoctorError, match="not a day yet"):
        typed_day(text, TUESDAY)


def test_a_due_day_is_said_by_how_far_it_is() -> None:
    said = [due_words(TUESDAY + timedelta(days=days), TUESDAY) for days in (-2, -1, 0, 1, 2, 20, 60)]
    assert said == ["2 days late", "1 day late", "due today", "due tomorrow", "due Thursday", "due 21 Dec", "due 30 Jan 2027"]
    assert due_words(None, TUESDAY) == "no due day"


def test_photos_are_copied_in_and_shown_and_one_is_told_what_they_may_hold(
    counter: Counter, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    picture = QImage(300, 200, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.darkCyan)
    picture.save(str(tmp_path / "back.png"))
    (tmp_path / "odd.heic").write_bytes(b"of a kind that is not known here")
    files = [str(tmp_path / "back.png"), str(tmp_path / "odd.heic"), str(tmp_path / "none.txt")]
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_: (files, ""))
    counter.press("jobs-photos-add")
    assert len(counter.book.photos.of(counter.place.id)) == 2
    assert "no photo" in counter.said("message-words")
    assert counter.there("jobs-photo-1") is not None
    assert counter.there("jobs-photo-2") is not None
    assert "where and when" in counter.said("jobs-photos-told")


def test_deleting_for_good_asks_back_once_and_takes_another_garment_in_hand(counter: Counter) -> None:
    gone = counter.place.id
    counter.press("jobs-delete")
    assert DRESS in counter.said("jobs-ask-back-words")
    assert counter.focus() == "jobs-ask-back-keep"
    counter.press("jobs-ask-back-keep")
    assert counter.chosen.id == gone
    counter.press("jobs-delete")
    counter.press("jobs-ask-back-delete")
    assert counter.rows() == [TROUSERS, JACKET]
    assert counter.fitting.job.kept.id == ""
    assert DRESS not in counter.said("message-words")


def test_two_windows_on_one_book_follow_each_other(counter: Counter, at_the_counter: MakeCounter) -> None:
    other = at_the_counter()
    other.place.choose(counter.place.id)
    other.press("jobs-change")
    other.write("jobs-title", "Renamed over there")
    counter.place.look_again()
    counter.settle()
    assert "Renamed over there" in counter.rows()
    assert counter.fitting.job.case.title == "Renamed over there"
    counter.fitting.job.note("shoulders-too-wide")
    other.place.look_again()
    assert other.fitting.job.case == counter.fitting.job.case


def test_a_garment_deleted_in_another_window_is_put_away_here_too(counter: Counter, at_the_counter: MakeCounter) -> None:
    mine = counter.fitting.job.kept.id
    other = at_the_counter()
    other.book.delete(mine)
    counter.place.look_again()
    counter.settle()
    assert counter.rows() == [TROUSERS, JACKET]
    assert counter.fitting.job.case.garment == ""
    assert "deleted for good in another window" in counter.said("message-words")
    counter.fitting.job.choose_garment("skirt")
    assert len(counter.book.learning.jobs()) == 0
    assert counter.fitting.job.kept.id not in ("", mine)


def test_a_name_is_refused_on_the_garments_page_too(counter: Counter) -> None:
    counter.press("jobs-open")
    counter.fitting.job.go_to("garment")
    counter.settle()
    counter.write("garment-wearer", "Griselda")
    assert "more than initials" in counter.said("garment-no-name")
    assert counter.fitting.job.case.wearer == ""
    counter.write("garment-wearer", "G. R.")
    assert counter.there("garment-no-name") is None
    assert counter.fitting.job.case.wearer == "G. R."


def test_more_jobs_than_are_looked_over_wait_behind_a_link(counter: Counter) -> None:
    first = counter.chosen
    for _ in range(45):
        counter.book.close_job(counter.book.add(first.case), Outcome(right=()))
    counter.place.refresh()
    assert len(counter.rows()) == 40
    counter.press("jobs-more")
    assert len(counter.rows()) == 48
    assert counter.there("jobs-more") is None


def test_jobs_are_written_out_and_brought_in_whole_or_not_at_all(counter: Counter, tmp_path: Path) -> None:
    out = tmp_path / "jobs.json"
    carry = counter.place.findChild(Carry)
    assert isinstance(carry, Carry)
    carry.write_out(out)
    carry.write_out(tmp_path / "jobs.csv")
    assert DRESS in (tmp_path / "jobs.csv").read_text(encoding="utf-8-sig")
    counter.book.delete(counter.place.id)
    carry.bring_in(out)
    assert sorted(counter.rows()) == sorted([DRESS, TROUSERS, JACKET])
    assert counter.said("message-words") == "1 job brought in."
    out.write_text(out.read_text().replace('"looked-at"', '"lost"'))
    carry.bring_in(out)
    assert "Nothing was brought in." in counter.said("message-words")
    assert len(counter.rows()) == 3


def test_a_book_that_cannot_be_opened_is_said_with_a_way_out(at_the_counter: MakeCounter) -> None:
    usual_place().parent.mkdir(parents=True)
    usual_place().write_bytes(b"not a book at all" * 100)
    counter = at_the_counter()
    assert "is damaged" in counter.said("message-words")
    counter.fitting.job.choose_garment("skirt")
    counter.press("message-button")
    counter.settle()
    assert counter.place.shelf.trouble is None
    with open_book() as book:
        assert book.job(counter.fitting.job.kept.id).case.garment == "skirt"


def test_a_book_that_another_program_holds_can_be_opened_again_and_what_came_meanwhile_is_in_it(at_the_counter: MakeCounter) -> None:
    with open_book() as book:
        book.add(Case(garment="dress", title="Kept before"))
    whole = usual_place().read_bytes()
    with closing(sqlite3.connect(usual_place())) as newer:
        newer.execute("PRAGMA user_version = 99")
    counter = at_the_counter()
    assert "newer version" in counter.said("message-words")
    counter.fitting.job.choose_garment("skirt")
    counter.fitting.job.name("Kept meanwhile")
    counter.press("message-button")
    assert "newer version" in counter.said("message-words"), "nothing has changed yet"
    for part in usual_place().parent.glob("jobs.db-*"):
        part.unlink()
    usual_place().write_bytes(whole)
    counter.press("message-button")
    assert sorted(counter.rows()) == ["Kept before", "Kept meanwhile"]
    assert counter.fitting.job.case.title == "Kept meanwhile"
