"""The book's file: upgraded with a copy kept, refused when newer, damaged or foreign; full, locked and read-only disks."""

from __future__ import annotations

import os
import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import msgspec
import pytest

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import JobBook, open_book
from fitdoctor.jobbook.finding import find
from fitdoctor.jobbook.opening import copies, open_file, set_aside
from fitdoctor.jobbook.shape import STEPS
from tests.jobbook.jobs_at_hand import FIRST_DAY, a_book, a_case, a_photo, all_bytes

NEXT = (*STEPS, ("ALTER TABLE job ADD COLUMN shelf TEXT", "CREATE INDEX job_shelf ON job (shelf)"))
FAILING = (*STEPS, ("ALTER TABLE job ADD COLUMN shelf TEXT", "UPDATE job SET id = NULL, revision = NULL"))
NOBODY = 65534


def kept_bytes(folder: Path) -> dict[Path, bytes]:
    """All that holds something; the index of the log is made anew by whoever reads."""
    return {path: content for path, content in all_bytes(folder) if content and not path.name.endswith("-shm")}


def book_at(path: Path) -> Path:
    return path / "jobs.db"


def test_an_older_book_is_brought_up_and_a_copy_is_kept(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
    with open_book(book_at(tmp_path), steps=NEXT) as book:
        assert book.job(job.id) == job
    (copy,) = copies(book_at(tmp_path))
    with open_book(copy) as old:
        assert old.job(job.id) == job
    with open_book(book_at(tmp_path), steps=NEXT) as book, book.file.looking() as connection:
        assert connection.execute("SELECT shelf FROM job").fetchall() == [(None,)]


def test_an_upgrade_that_fails_leaves_the_book_as_it_was(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
    with pytest.raises(sqlite3.IntegrityError):
        open_file(book_at(tmp_path), FAILING)
    with a_book(tmp_path) as book:
        assert book.job(job.id) == job


def test_a_newer_book_is_refused_in_one_sentence_and_left_alone(tmp_path: Path) -> None:
    with open_book(book_at(tmp_path), steps=NEXT) as book:
        book.add(a_case())
    before = kept_bytes(tmp_path)
    with pytest.raises(FitdoctorError, match=r"written by a newer version of this program \(its shape is 3, known here is 2\)\.") as caught:
        a_book(tmp_path)
    assert caught.value.text.count(". ") == 0
    assert "\n" not in str(caught.value)
    assert kept_bytes(tmp_path) == before


def test_a_job_deleted_for_good_is_gone_from_the_kept_copy_too(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case(title="Singular velvet jacket"))
        other = book.add(a_case())
    with open_book(book_at(tmp_path), steps=NEXT) as book:
        book.delete(job.id)
    assert copies(book_at(tmp_path))
    assert not [path for path, content in all_bytes(tmp_path) if b"velvet" in content]
    with open_book(copies(book_at(tmp_path))[0]) as old:
        assert [line.id for line in find(old.file)] == [other.id]


@pytest.mark.parametrize("place", ["head", "middle", "cut short", "text"])
def test_a_damaged_book_is_refused_in_one_sentence_and_kept(tmp_path: Path, place: str) -> None:
    with a_book(tmp_path) as book:
        for number in range(60):
            book.add(a_case(title=f"Coat {number} {'of good cloth ' * 20}"))
    damage(book_at(tmp_path), place)
    before = kept_bytes(tmp_path)
    with pytest.raises(FitdoctorError, match="is damaged") as caught:
        a_book(tmp_path)
    assert "Set it aside" in caught.value.hint
    assert kept_bytes(tmp_path) == before
    aside = set_aside(book_at(tmp_path), FIRST_DAY)
    assert aside.read_bytes() == before[book_at(tmp_path)]
    with a_book(tmp_path) as book:
        assert find(book.file) == ()


def damage(path: Path, place: str) -> None:
    content = bytearray(path.read_bytes())
    if place == "text":
        content = bytearray(b"Dear diary, today a coat came in. " * 50)
    elif place == "cut short":
        del content[len(content) // 2 :]
    else:
        at = 0 if place == "head" else len(content) // 2
        content[at : at + 6000] = b"\xa5" * 6000
    path.write_bytes(content)


def test_another_programs_file_is_no_job_book(tmp_path: Path) -> None:
    with closing(sqlite3.connect(book_at(tmp_path))) as connection:
        connection.execute("CREATE TABLE recipe (title TEXT)")
    before = book_at(tmp_path).read_bytes()
    with pytest.raises(FitdoctorError, match="is not a job book"):
        a_book(tmp_path)
    assert book_at(tmp_path).read_bytes() == before


def test_a_book_begun_and_never_written_is_begun_again(tmp_path: Path) -> None:
    # What is left when a window is killed between making the file and making its tables.
    with closing(sqlite3.connect(book_at(tmp_path))) as connection:
        connection.execute("PRAGMA journal_mode = WAL")
    with a_book(tmp_path) as book:
        assert find(book.file) == ()


def test_the_log_of_a_killed_window_is_read(tmp_path: Path) -> None:
    book = a_book(tmp_path)
    job = book.add(a_case())
    (killed := tmp_path / "killed").mkdir()
    for ending in ("", "-wal"):
        shutil.copy(f"{book_at(tmp_path)}{ending}", f"{book_at(killed)}{ending}")
    with a_book(killed) as found:
        assert found.job(job.id) == job


def test_a_book_that_another_window_is_writing_says_so(tmp_path: Path) -> None:
    with a_book(tmp_path) as one, open_book(book_at(tmp_path), patience_seconds=0) as other:
        with one.file.writing(), pytest.raises(FitdoctorError, match="being written by another window") as caught:
            other.add(a_case())
        assert "do it again" in caught.value.hint
        assert other.add(a_case()).revision == 1


def test_a_full_disk_keeps_what_was_there_and_says_what_to_do(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        # SQLite's own bound on the size of the file gives the same error as a disk without room.
        book.file.connection.execute("PRAGMA max_page_count = 1")
        with pytest.raises(FitdoctorError, match="The disk is full") as caught:
            book.add(msgspec.structs.replace(a_case(), notes="long story " * 5000))
        assert "Make room" in caught.value.hint
        assert [line.id for line in find(book.file)] == [job.id]
        book.file.connection.execute("PRAGMA max_page_count = 1000000")
        assert book.change(job, msgspec.structs.replace(job, state="marked")).revision == 2


@pytest.fixture
def anothers_folder() -> Iterator[Path]:
    """A folder that may be entered and not written, looked at by someone without special rights."""
    folder = Path(tempfile.mkdtemp())
    with a_book(folder) as book:
        book.add(a_case())
    book_at(folder).chmod(0o444)
    folder.chmod(0o555)
    privileged = os.geteuid() == 0
    if privileged:
        os.seteuid(NOBODY)
    try:
        yield folder
    finally:
        if privileged:
            os.seteuid(0)
        folder.chmod(0o755)
        shutil.rmtree(folder)


@pytest.mark.skipif(not hasattr(os, "seteuid"), reason="rights are kept otherwise on this system")
def test_a_read_only_place_says_what_to_do(anothers_folder: Path) -> None:
    for place in (book_at(anothers_folder), anothers_folder / "new" / "jobs.db", anothers_folder / "other.db"):
        with pytest.raises(FitdoctorError, match="cannot be opened for writing") as caught:
            open_book(place)
        assert "Allow writing" in caught.value.hint


def test_a_place_inside_a_file_says_what_to_do(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder")
    with pytest.raises(FitdoctorError, match="cannot be opened for writing"):
        open_book(tmp_path / "file" / "jobs.db")
    with pytest.raises(FitdoctorError, match="cannot be opened for writing"):
        open_book(tmp_path)


def test_a_photo_folder_that_takes_no_file_refuses_the_photo_and_keeps_the_job(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        job = book.add(a_case())
        book.photos.folder.write_text("a file is in the way")
        with pytest.raises(FitdoctorError, match="could not be copied") as caught:
            book.add_photo(job.id, a_photo(tmp_path))
        assert str(book.photos.folder) in caught.value.hint
        assert book.photos.of(job.id) == ()
        assert book.job(job.id) == job


def test_a_change_that_fails_on_the_way_leaves_nothing(tmp_path: Path) -> None:
    class PowerCut(BaseException):
        pass

    def delete_everything_and_fail(book: JobBook) -> None:
        with book.file.writing() as connection:
            connection.execute("DELETE FROM job")
            raise PowerCut

    with a_book(tmp_path) as book:
        job = book.add(a_case())
        with pytest.raises(PowerCut):
            delete_everything_and_fail(book)
        assert book.job(job.id) == job


def test_a_safe_book_has_a_log_flushes_it_and_overwrites_what_is_deleted(tmp_path: Path) -> None:
    with a_book(tmp_path) as book, book.file.looking() as connection:
        found = {name: connection.execute(f"PRAGMA {name}").fetchone()[0] for name in ("journal_mode", "synchronous", "secure_delete")}
    assert found == {"journal_mode": "wal", "synchronous": 2, "secure_delete": 1}
