"""Looking back in the job book: what was thought when, photos, figures, and what the closed jobs teach."""

from __future__ import annotations

import struct
import zlib
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QImage

from fitdoctor.case import Case
from fitdoctor.desk.jobbook.photos import read_picture
from fitdoctor.desk.jobbook.plots import Plot
from fitdoctor.desk.jobbook.reading_row import ReadingRow
from fitdoctor.desk.jobbook.readings import compared
from fitdoctor.desk.jobbook.views import Views
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.jobbook.job import Job, Outcome
from fitdoctor.jobbook.overlay import export_overlay
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop
from tests.jobbook.jobs_at_hand import a_reading

if TYPE_CHECKING:
    from tests.desk.job_counter import Counter

pytest_plugins = ["tests.desk.job_counter"]


def in_the_table(counter: Counter) -> list[str]:
    table = counter.there("history-table")
    assert table is not None
    return [words.said() for words in table.findChildren(Words)]


def read_twice(counter: Counter) -> None:
    """The garment in hand is read, measured anew and read again."""
    job = counter.fitting.job
    job.put_down("first look")
    job.measure(next(iter(job.case.measured)), 25.4)
    job.put_down("at the try-on")
    counter.place.refresh()
    counter.settle()


# ---- history


def test_the_last_reading_stands_beside_the_one_before_with_what_changed(counter: Counter) -> None:
    read_twice(counter)
    counter.press("jobs-history")
    table = in_the_table(counter)
    assert "**1 in**" in table
    assert "Measured" in table
    assert not any("Fact" in said for said in table)
    rows = [w.objectName() for w in counter.window.findChildren(ReadingRow) if w.isVisible()]
    assert rows == ["history-reading-1", "history-reading-0"], "the last comes first"


def test_any_two_readings_can_stand_side_by_side(counter: Counter) -> None:
    read_twice(counter)
    job = counter.fitting.job
    job.answer(next(iter(job.case.answers)), "no")
    job.put_down("after the second try-on")
    counter.place.refresh()
    counter.settle()
    counter.press("jobs-history")
    assert "**1 in**" not in in_the_table(counter)
    counter.pick("history-against", "0")
    assert "**1 in**" in in_the_table(counter)
    counter.press("history-whole")
    assert "Known of the garment" in in_the_table(counter)
    counter.press("history-reading-0")
    assert counter.said("history-title") == "What was thought when"


def test_the_history_is_gone_through_by_the_keyboard(counter: Counter) -> None:
    read_twice(counter)
    counter.tab_to("jobs-history")
    counter.keys(Qt.Key.Key_Return)
    assert counter.focus() == "history-reading-1"
    counter.keys(Qt.Key.Key_Down)
    counter.keys(Qt.Key.Key_Return)
    assert counter.find(TickBox, "history-whole").isVisible()
    counter.keys(Qt.Key.Key_Escape)
    assert counter.focus() == f"jobs-row-{counter.place.id}"


def test_readings_are_said_in_the_words_of_the_handbook_and_the_shops_own_lengths(knowledge: Knowledge) -> None:
    case = Case(garment="trousers", answers={"clear-when-pinned-level": "yes"}, looked=("back",))
    before = a_reading(Job(case=case), chances={"back-longer-than-wearer": 0.3})
    after = a_reading(Job(case=msgspec.structs.replace(case, answers={"clear-when-pinned-level": "no"})), chances={"gone-since": 0.99})
    lines = {(line.part, line.what): line for line in compared(knowledge, Shop(unit="cm"), before, after)}
    title = knowledge.checks["clear-when-pinned-level"].title.rstrip(".")
    assert (lines["Checks", title].before, lines["Checks", title].after) == ("yes", "no")
    assert lines["Checks", title].changed
    assert lines["Causes", "Cause gone-since"].before == "–", "a cause that is no longer known keeps the title it had"
    assert lines["Marks", "At centre back"].before == "lower, in all 1.9 cm"
    assert not lines["Marks", "At centre back"].changed


# ---- photos


def jpeg_lying(path: Path, orientation: int) -> None:
    """A photo 60 wide and 30 high, its left half red, marked as its camera was held."""
    image = QImage(60, 30, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    for x in range(30):
        for y in range(30):
            image.setPixelColor(x, y, QColor("red"))
    image.save(str(path), "JPG", 95)  # type: ignore[call-overload]
    plain = path.read_bytes()
    # Exif 2.3: a TIFF header and one directory with the tag 0x0112, orientation.
    tiff = b"II*\x00" + struct.pack("<IH", 8, 1) + struct.pack("<HHIHH", 0x0112, 3, 1, orientation, 0) + struct.pack("<I", 0)
    exif = b"Exif\x00\x00" + tiff
    path.write_bytes(plain[:2] + b"\xff\xe1" + struct.pack(">H", len(exif) + 2) + exif + plain[2:])


def test_a_photo_is_shown_upright_as_its_camera_was_held(qapp: object, tmp_path: Path) -> None:
    del qapp
    jpeg_lying(tmp_path / "turned.jpg", 6)
    image = read_picture(tmp_path / "turned.jpg", QSize(1000, 1000))
    assert (image.width(), image.height()) == (30, 60)
    assert image.pixelColor(15, 10).red() > 200
    assert image.pixelColor(15, 10).green() < 80, "what lay at the left is at the top"
    assert image.pixelColor(15, 50).green() > 200
    small = read_picture(tmp_path / "turned.jpg", QSize(20, 20))
    assert (small.width(), small.height()) == (10, 20)


def test_what_is_no_picture_is_an_empty_image(qapp: object, tmp_path: Path) -> None:
    del qapp
    (tmp_path / "odd.heic").write_bytes(zlib.compress(b"nothing"))
    assert read_picture(tmp_path / "odd.heic", QSize(100, 100)).isNull()


def test_a_photo_is_shown_large_and_taken_out_for_good_when_it_is_meant(counter: Counter, tmp_path: Path) -> None:
    jpeg_lying(tmp_path / "back.jpg", 1)
    photo = counter.book.add_photo(counter.place.id, tmp_path / "back.jpg")
    counter.place.refresh()
    counter.settle()
    counter.press("jobs-photo-1")
    assert counter.there("photo-large") is not None
    counter.press("photo-delete")
    counter.press("jobs-ask-back-keep")
    assert counter.book.photos.of(counter.place.id) == (photo,)
    counter.press("photo-delete")
    counter.press("jobs-ask-back-delete")
    assert counter.book.photos.of(counter.place.id) == ()
    assert not counter.book.photos.path(photo).exists()
    assert counter.there("jobs-photo-1") is None


def test_a_photo_that_cannot_be_shown_says_so_and_is_kept(counter: Counter, tmp_path: Path) -> None:
    (tmp_path / "odd.heic").write_bytes(b"of a kind that is not known here")
    counter.book.add_photo(counter.place.id, tmp_path / "odd.heic")
    counter.place.refresh()
    counter.settle()
    counter.press("jobs-photo-1")
    assert "cannot be shown" in counter.said("photo-not-shown")


# ---- figures and learning


def close_some(counter: Counter, number: int = 12) -> None:
    """Closed jobs, each read first; every third turned out otherwise."""
    first = counter.chosen
    assessment = counter.place.assessed(first)
    assert assessment is not None
    for each in range(number):
        job = counter.book.add(first.case)
        counter.place.shelf.note(job.id, assessment)
        right = assessment.treat if each % 3 else ()
        counter.book.close_job(job, Outcome(right=right, minutes=40 + 5 * each))
    counter.fitting.job.look_again()
    counter.place.refresh()
    counter.settle()


def test_figures_wait_for_the_first_closed_job(counter: Counter) -> None:
    counter.press("jobs-figures")
    assert "none is closed yet" in counter.said("figures-none")
    assert counter.there("figures-reset") is None


def test_the_figures_are_painted_and_said(counter: Counter) -> None:
    close_some(counter)
    counter.press("jobs-figures")
    assert counter.said("figures-lead") == "From 12 closed jobs."
    for name, says in (
        ("figures-calibration", "came true 67%"),
        ("figures-brier", f"{datetime.now():%Y-%m}"),
        ("figures-log-score", "Log score"),
        ("figures-estimates", "Minutes of 12 jobs"),
    ):
        plot: Plot = counter.find(Plot, name)
        assert says in plot.accessibleName()
        ground = counter.window.look.colour("paper").rgb()
        image = plot.grab().toImage()
        inked = sum(image.pixel(x, y) != ground for x in range(0, image.width(), 3) for y in range(0, image.height(), 3))
        assert inked > 100, name
    assert counter.there("figures-alterations") is not None


def test_learning_is_switched_off_reset_and_restored(counter: Counter) -> None:
    close_some(counter)
    job = counter.fitting.job
    assert job.learned is not None
    counter.press("jobs-figures")
    counter.press("figures-learning-on")
    assert job.learned is None
    counter.press("figures-learning-on")
    assert job.learned is not None
    counter.press("figures-reset")
    assert job.learned is None
    assert counter.said("message-words") == "12 jobs teach no more."
    assert counter.there("figures-reset") is None
    counter.press("figures-restore")
    assert job.learned is not None
    assert len(counter.book.learning.jobs()) == 12


def test_what_was_learned_is_written_out_as_a_folder_that_lies_over_the_handbook(counter: Counter, tmp_path: Path) -> None:
    close_some(counter, 30)
    counter.press("jobs-figures")
    views = counter.place.findChild(Views)
    assert isinstance(views, Views)
    views.write_overlay(tmp_path / "learned")
    written = sorted(path.name for path in (tmp_path / "learned").rglob("*.yaml"))
    know = counter.fitting.job.knowledge
    wanted = export_overlay(know, counter.book.learning.learned(know), {}, tmp_path / "again")
    assert written == sorted(f"{id_}.yaml" for _, id_ in wanted)
    views.write_overlay(tmp_path / "learned")
    assert "is not empty" in counter.said("message-words")
