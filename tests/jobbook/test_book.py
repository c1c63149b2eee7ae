"""Jobs in the book: added, changed, taken back, closed, deleted for good."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import msgspec
import pytest

from fitdoctor.case import Case, Measured
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import MOST_EARLIER, open_book
from fitdoctor.jobbook.finding import find
from fitdoctor.jobbook.job import Job, Outcome, check_wearer, minutes_spent
from fitdoctor.jobbook.opening import usual_place
from fitdoctor.jobbook.reading import side_by_side
from tests.jobbook.jobs_at_hand import PHOTO, Clock, a_book, a_case, a_photo, a_reading, all_bytes

replace = msgspec.structs.replace


def test_a_job_is_found_again_as_it_was_put_in(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(Job(case=a_case(), due=date(2024, 6, 7), minutes={"lower-waist.mark": 8.0}))
        assert (job.revision, job.state, job.brought) == (1, "looked-at", date(2024, 5, 31))
    with a_book(tmp_path) as book:
        assert book.job(job.id) == job


def test_the_usual_place_is_the_users_own_data_folder(folders_of_its_own: Path) -> None:
    assert folders_of_its_own in usual_place().parents
    with open_book() as book:
        book.add(a_case())
    assert usual_place().exists()


def test_a_change_keeps_when_each_state_was_first_reached(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        marked = book.change(job, replace(job, state="marked"))
        again = book.change(marked, replace(marked, state="looked-at"))
        assert again.reached["looked-at"] == job.reached["looked-at"] < again.reached["marked"]
        assert again.revision == 3


def test_a_change_that_changes_nothing_is_no_change(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        assert book.change(job, job) == job
        with pytest.raises(FitdoctorError, match="no change of this job to take back"):
            book.undo(job)


def test_changes_are_taken_back_one_by_one(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        once = book.change(job, replace(job, state="marked"))
        twice = book.change(once, replace(once, due=date(2024, 6, 1)))
        back = book.undo(twice)
        assert (back.state, back.due, back.revision) == ("marked", None, 4)
        back = book.undo(back)
        assert replace(back, revision=1, changed=job.changed) == job


def test_the_oldest_changes_can_no_longer_be_taken_back(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        for number in range(MOST_EARLIER + 5):
            job = book.change(job, replace(job, minutes={"lower-waist.mark": number + 1.0}))
        for _ in range(MOST_EARLIER):
            job = book.undo(job)
        assert job.minutes == {"lower-waist.mark": 5.0}
        with pytest.raises(FitdoctorError, match="no change"):
            book.undo(job)


def test_two_windows_that_change_different_fields_keep_both(tmp_path: Path) -> None:
    with a_book(tmp_path) as one, a_book(tmp_path) as other:
        job = one.add(a_case())
        number = other.state_of_the_file()
        one.change(job, replace(job, state="marked", case=replace(job.case, answers={"pin": "yes", "pad": "no"})))
        assert other.state_of_the_file() != number
        measured = {**job.case.measured, "waist": Measured(820.0)}
        joined = other.change(job, replace(job, due=date(2024, 6, 1), case=replace(job.case, answers={}, measured=measured)))
        assert (joined.state, joined.due, joined.revision) == ("marked", date(2024, 6, 1), 3)
        assert joined.case.answers == {"pad": "no"}
        assert joined.case.measured == measured
        assert one.job(job.id) == joined


def test_two_windows_that_change_the_same_field_are_told_and_nothing_is_lost(tmp_path: Path) -> None:
    with a_book(tmp_path) as one, a_book(tmp_path) as other:
        job = one.add(a_case())
        kept = one.change(job, replace(job, case=replace(job.case, notes="Press first.")))
        with pytest.raises(FitdoctorError, match="changed in another window meanwhile: case notes") as caught:
            other.change(job, replace(job, state="marked", case=replace(job.case, notes="Wash first.")))
        assert caught.value.hint
        assert other.job(job.id) == kept


def test_the_same_change_in_two_windows_is_one(tmp_path: Path) -> None:
    with a_book(tmp_path) as one, a_book(tmp_path) as other:
        job = one.add(a_case())
        kept = one.change(job, replace(job, state="marked"))
        assert other.change(job, replace(job, state="marked")) == kept


def test_what_another_window_deleted_cannot_be_changed(tmp_path: Path) -> None:
    with a_book(tmp_path) as one, a_book(tmp_path) as other:
        job = one.add(a_case())
        other.delete(job.id)
        with pytest.raises(FitdoctorError, match="not in the book"):
            one.change(job, replace(job, state="marked"))
        with pytest.raises(FitdoctorError, match="not in the book"):
            one.history.note(job.id, a_reading(job))


def test_taking_back_does_not_take_another_windows_change(tmp_path: Path) -> None:
    with a_book(tmp_path) as one, a_book(tmp_path) as other:
        job = one.add(a_case())
        mine = one.change(job, replace(job, state="marked"))
        other.change(mine, replace(mine, due=date(2024, 6, 1)))
        with pytest.raises(FitdoctorError, match="another window"):
            one.undo(mine)


@pytest.mark.parametrize("wearer", ["", "AB", "A. B.", "a.b.", "A.B.C.", "É. Ç.", "#1042", "T-1042", "No 7", "AB 12/3", "J-P. S."])
def test_initials_and_ticket_numbers_pass(wearer: str) -> None:
    check_wearer(wearer)


@pytest.mark.parametrize("wearer", ["Anna", "A. Schneider", "anna@example1.org", "0170 1234567", "Mrs. B. of Number 12, Long Lane"])
def test_a_name_an_address_or_a_telephone_number_is_refused(wearer: str, tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        with pytest.raises(FitdoctorError, match="more than initials"):
            book.add(a_case(wearer=wearer))
        with pytest.raises(FitdoctorError, match="initials or a ticket number only"):
            book.change(job, replace(job, case=replace(job.case, wearer=wearer)))
        assert len(find(book.file)) == 1


def test_closing_and_opening_again(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(Job(case=a_case(), minutes={"lower-waist.mark": 8.0, "lower-waist.close": 22.0}))
        assert minutes_spent(job) == 30.0
        closed = book.close_job(job, Outcome(right=("long",), used_mm={"lower-waist.back-waist-seam": 16.0}, minutes=55.0))
        assert closed.state == "done"
        assert closed.outcome is not None
        assert closed.outcome.closed is not None
        assert minutes_spent(closed) == 55.0
        opened = book.reopen(closed)
        assert (opened.outcome, opened.state) == (None, "tried-on")


def test_a_deleted_job_is_nowhere_any_more(tmp_path: Path) -> None:
    (home := tmp_path / "book").mkdir()
    with a_book(home) as book:
        other = book.add(a_case(title="Brown coat", wearer="C. D."))
        job = book.add(replace(a_case(title="Singular velvet jacket"), notes="by the seaside"))
        job = book.change(job, replace(job, case=replace(job.case, notes="in the mountains")))
        book.history.note(job.id, a_reading(job, note="after a thunderstorm"))
        book.add_photo(job.id, a_photo(tmp_path))
        book.close_job(job, Outcome(note="worn to the opera"))
        book.delete(job.id)
        with pytest.raises(FitdoctorError, match="not in the book"):
            book.delete(job.id)
        for path, content in all_bytes(home):
            for trace in (b"velvet", b"seaside", b"mountains", b"thunderstorm", b"opera", job.id.encode(), PHOTO):
                assert trace not in content, f"{trace!r} is still in {path}"
        assert book.job(other.id) == other


def test_a_photo_is_copied_in_by_its_hash_and_once(tmp_path: Path) -> None:
    (home := tmp_path / "book").mkdir()
    with a_book(home) as book:
        one, other = book.add(a_case()), book.add(a_case(title="Brown coat"))
        source = a_photo(tmp_path)
        photo = book.add_photo(one.id, source)
        book.add_photo(one.id, source)
        book.add_photo(other.id, a_photo(tmp_path, "same picture.jpg"))
        source.unlink()
        assert [p.name for p in book.photos.of(one.id)] == ["back.jpg"]
        assert book.photos.content(photo) == PHOTO
        assert len(list(book.photos.folder.iterdir())) == 1
        book.remove_photo(one.id, photo)
        assert book.photos.content(book.photos.of(other.id)[0]) == PHOTO
        book.delete(other.id)
        assert list(book.photos.folder.iterdir()) == []


def test_a_file_that_is_no_photo_is_refused(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        for name, said in (("notes.txt", "is no photo"), ("missing.png", "cannot be read")):
            with pytest.raises(FitdoctorError, match=said):
                book.add_photo(job.id, tmp_path / name)
        with pytest.raises(FitdoctorError, match="not in the book"):
            book.add_photo("no-such-job", a_photo(tmp_path))


def test_what_a_killed_window_left_in_the_photo_folder_is_swept_and_nothing_else(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        photo = book.add_photo(job.id, a_photo(tmp_path))
        folder = book.photos.folder
    stranger = folder / "readme.txt"
    for path in (folder / f"{'0' * 64}.jpg", folder / f"{photo.sha256}.jpg.part", stranger):
        path.write_bytes(b"left over")
    with a_book(tmp_path) as book:
        assert set(folder.iterdir()) == {book.photos.path(photo), stranger}


def test_readings_tell_what_was_thought_when(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        clock = Clock()
        job = book.add(a_case())
        first = a_reading(job, clock())
        assert book.history.note(job.id, first)
        assert not book.history.note(job.id, replace(first, at=clock()))
        tried = replace(job.case, answers={"pin": "no"}, seen=(*job.case.seen, "bag"))
        second = replace(a_reading(job, clock(), {"flat": 0.9}, "after the first try-on", "tried-on"), case=tried)
        assert book.history.note(job.id, second)
        assert book.history.of(job.id) == (first, second)
    changed = {(line.part, line.what): (line.before, line.after) for line in side_by_side(first, second) if line.changed}
    assert changed == {
        ("answer", "pin"): ("yes", "no"),
        ("seen", "bag"): ("", "seen"),
        ("cause", "long"): ("75%", ""),
        ("cause", "flat"): ("25%", "90%"),
    }
    parts = [line.part for line in side_by_side(first, second)]
    assert parts == sorted(parts, key=parts.index)


def test_a_case_alone_makes_a_job(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        assert book.add(Case(garment="skirt")).case == Case(garment="skirt")
