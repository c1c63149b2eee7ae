"""The garment in hand: every change is kept, can be undone, and is worked out anew."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest
from pytestqt.qtbot import QtBot

from fitdoctor.case import Case
from fitdoctor.desk.first import first_kept, kept_from_file
from fitdoctor.desk.job import Job
from fitdoctor.desk.shelf import Kept, Shelf
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import open_book
from fitdoctor.jobbook.trouble import ChangedElsewhere
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import demo_files
from fitdoctor.shop import Shop

TROUSERS = 1


@pytest.fixture
def job(qapp: object, knowledge: Knowledge, tmp_path: Path) -> Iterator[Job]:
    del qapp
    with open_book(tmp_path / "jobs.db") as book:
        yield Job(knowledge, Shop(), Shelf(book), kept_from_file(knowledge, demo_files()[TROUSERS]))


def again(job: Job) -> Kept:
    """What a new start of the program would find."""
    with open_book(job.shelf.opened().file.path) as book:
        return first_kept(job.knowledge, Shelf(book))


def test_a_change_is_on_disk_before_anything_else_happens(job: Job) -> None:
    job.note("seat-cups-below")
    assert again(job).case == job.case


def test_undo_and_redo_go_through_every_change(job: Job) -> None:
    states = [job.case]
    job.state("cloth", "leather")
    states.append(job.case)
    job.answer("clear-when-pinned-level", "no")
    states.append(job.case)
    job.measure("tuck-at-centre-back", 12.7)
    states.append(job.case)
    for before in reversed(states[:-1]):
        job.undo()
        assert job.case == before
    job.undo()
    assert job.case == states[0], "there is nothing before the first"
    for after in states[1:]:
        job.redo()
        assert job.case == after
    assert job.assessment is not None
    assert job.assessment.case == job.case


def test_typing_is_undone_as_one_change(job: Job) -> None:
    before = job.case.title
    for text in ("G", "Gr", "Grey"):
        job.name(text)
    job.undo()
    assert job.case.title == before


def test_a_new_change_closes_the_way_forward(job: Job) -> None:
    job.name("One")
    job.undo()
    job.name_wearer("Z.")
    job.redo()
    assert job.case.title != "One"


def test_what_cannot_be_used_yet_is_kept_too(job: Job) -> None:
    job.draft("measure-hip-excess", "25.4")
    assert again(job).drafts == {"measure-hip-excess": "25.4"}
    job.measure("hip-excess", 25.4)
    assert again(job).drafts == {}


def test_another_kind_of_garment_leaves_out_what_does_not_hold_for_it(job: Job) -> None:
    job.choose_garment("dress")
    assert "waistband" not in job.case.facts
    assert "level-folds-under-back-band" not in job.case.seen
    job.undo()
    assert "level-folds-under-back-band" in job.case.seen


def test_not_known_is_remembered_as_an_answer(job: Job) -> None:
    job.state("cloth", "not-known")
    assert "cloth" not in job.case.facts
    assert "cloth" in again(job).aside
    job.state("cloth", "wool")
    assert "cloth" not in job.kept.aside


def test_a_look_has_one_answer_at_a_time(job: Job) -> None:
    symptom = "seat-hangs-empty"
    for answer, lists in (("no", "not_seen"), ("not-known", "unsure"), ("yes", "seen")):
        job.answer_look(symptom, answer)
        assert symptom in getattr(job.case, lists)
        assert sum(symptom in ids for ids in (job.case.seen, job.case.not_seen, job.case.unsure)) == 1
    job.answer_look(symptom, "")
    assert symptom not in job.case.seen


def test_the_sheet_is_no_longer_written_once_something_changes(job: Job) -> None:
    job.sheet_written()
    assert job.kept.written
    job.name_wearer("Q.")
    assert not job.kept.written


def test_a_full_disk_is_said_and_loses_nothing(job: Job, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(_shelf: Shelf, _kept: Kept) -> Kept:
        raise FitdoctorError("The garment could not be kept: the disk is full.", "What you entered is still here.")

    monkeypatch.setattr(Shelf, "keep", full)
    with qtbot.waitSignal(job.failed) as failed:
        job.name("Still here")
    assert "disk is full" in str(failed.args[0])
    assert job.case.title == "Still here"


def test_the_demo_is_put_into_the_book_once_with_each_garment_at_another_step(knowledge: Knowledge, tmp_path: Path) -> None:
    with open_book(tmp_path / "jobs.db") as book:
        shelf = Shelf(book)
        first = first_kept(knowledge, shelf)
        kept = [shelf.take(id_) for id_ in shelf.at_hand()]
        assert len(kept) == 3
        assert len({one.step for one in kept}) == 3
        assert first_kept(knowledge, shelf) == first
        assert len(shelf.at_hand()) == 3
        for id_ in shelf.at_hand():
            book.delete(id_)
        assert first_kept(knowledge, shelf).case.garment == "", "who deleted the demo does not want it back"


def test_a_case_file_that_names_no_garment_says_what_to_do(knowledge: Knowledge, tmp_path: Path) -> None:
    file = tmp_path / "case.yaml"
    file.write_text("garment: hat\n")
    with pytest.raises(FitdoctorError, match="hat"):
        kept_from_file(knowledge, file)


def test_the_book_refuses_a_name_as_wearer(job: Job, qtbot: QtBot) -> None:
    job.name_wearer("Q. R.")
    with qtbot.waitSignal(job.failed) as failed:
        job.name_wearer("Quentin")
    assert "more than initials" in str(failed.args[0])
    assert again(job).case.wearer == "Q. R."


def test_undoing_the_choice_of_a_first_garment_leaves_one_job(job: Job) -> None:
    job.open(Kept(case=Case(garment="")))
    job.choose_garment("dress")
    job.undo()
    assert job.case.garment == ""
    job.choose_garment("skirt")
    assert [job.shelf.take(id_).case.garment for id_ in job.shelf.at_hand()] == ["skirt"]


def test_what_was_thought_is_noted_when_a_garment_is_put_down_and_when_the_sheet_is_written(job: Job) -> None:
    job.note("seat-cups-below")
    mine = job.kept.id
    job.sheet_written()
    job.put_down("nothing is new on this occasion")
    job.look_over("front", True)
    job.open(Kept(case=Case(garment="dress")))
    history = job.shelf.opened().history.of(mine)
    assert [reading.note for reading in history] == ["when the sheet was written", ""]
    assert history[-1].case.seen[-1] == "seat-cups-below"


def test_what_another_window_changed_is_kept_and_taken_in(job: Job) -> None:
    job.name("Grey flannel")
    with open_book(job.shelf.opened().file.path) as other:
        there = other.job(job.kept.id)
        other.change(there, msgspec.structs.replace(there, case=msgspec.structs.replace(there.case, notes="From over there")))
    job.answer("clear-when-pinned-level", "no")
    assert job.case.notes == "From over there"
    assert job.case.title == "Grey flannel"
    assert again(job).case == job.case


def test_a_clash_with_another_window_is_said_and_its_value_can_be_taken(job: Job, qtbot: QtBot) -> None:
    job.name("Grey flannel")
    with open_book(job.shelf.opened().file.path) as other:
        there = other.job(job.kept.id)
        other.change(there, msgspec.structs.replace(there, case=msgspec.structs.replace(there.case, title="Theirs")))
    with qtbot.waitSignal(job.failed) as failed:
        job.name("Mine")
    assert isinstance(failed.args[0], ChangedElsewhere)
    assert job.case.title == "Mine", "what was typed stays in sight"
    job.look_again()
    assert job.case.title == "Theirs"
    job.undo()
    assert job.case.title == "Theirs", "undo does not go behind what came from another window"
