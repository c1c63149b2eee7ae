"""A window killed at any moment: what was shown as saved is in the book, what was shown as deleted is not, and the book opens."""

from __future__ import annotations

import os
import random
import select
import signal
import sys
import time
from pathlib import Path

import msgspec
import pytest

from fitdoctor.jobbook.finding import find
from fitdoctor.jobbook.job import Job
from tests.jobbook.jobs_at_hand import a_book, a_case, a_photo

BOOKS, TRIES_A_BOOK = 20, 10
LONGEST_SECONDS = 0.03
replace = msgspec.structs.replace

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="kill -9 is of other systems")


def work_until_killed(folder: Path, photo: Path, says: int) -> None:
    """Add, change and delete jobs for ever; say each thing once the book has said that it is kept."""
    book = a_book(folder)
    number = 0
    while True:
        number += 1
        job = book.add(a_case(title=f"Coat {number}"))
        os.write(says, f"added {job.id}\n".encode())
        book.add_photo(job.id, photo)
        os.write(says, f"photographed {job.id}\n".encode())
        for change in range(1, 4):
            job = book.change(job, replace(job, case=replace(job.case, notes=f"{change} " + "a long note " * 400)))
            os.write(says, f"changed {job.id} {change}\n".encode())
        if number % 3 == 0:
            book.delete(job.id)
            os.write(says, f"deleted {job.id}\n".encode())


def killed_somewhere(folder: Path, photo: Path, seconds: float, wait_for: int) -> list[list[str]]:
    """What a window said before it was killed, so many seconds after it had said a number of things (0: after it began to open)."""
    hears, says = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            work_until_killed(folder, photo, says)
        finally:
            os._exit(1)
    os.close(says)
    heard = b""
    while heard.count(b"\n") < wait_for:
        heard += listened(hears)
    end = time.monotonic() + seconds
    while (left := end - time.monotonic()) > 0 and select.select([hears], [], [], left)[0]:
        heard += listened(hears)
    os.kill(child, signal.SIGKILL)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == -signal.SIGKILL
    while said := os.read(hears, 65536):
        heard += said
    os.close(hears)
    return [line.split() for line in heard.decode().splitlines()]


def listened(hears: int) -> bytes:
    said = os.read(hears, 65536)
    assert said, "the window ended by itself"
    return said


def test_nothing_shown_as_saved_is_lost_when_a_window_is_killed_in_two_hundred_random_places(tmp_path: Path) -> None:
    rng = random.Random(9)
    photo = a_photo(tmp_path, content=bytes(range(256)) * 100)
    for book in range(BOOKS):
        kept: dict[str, int] = {}
        for number in range(TRIES_A_BOOK):
            wait_for = 0 if number % 3 == 0 else rng.randrange(1, 8)
            said = killed_somewhere(tmp_path / f"book-{book}", photo, rng.uniform(0, LONGEST_SECONDS), wait_for)
            kept = what_is_kept(tmp_path / f"book-{book}", photo, kept, said)


def what_is_kept(home: Path, photo: Path, before: dict[str, int], said: list[list[str]]) -> dict[str, int]:
    """Hold the book against what was said; job -> its last change, now."""
    promised = before | {id_: int(change[0]) if change else 0 for _, id_, *change in said}
    deleted = {id_ for what, id_, *_ in said if what == "deleted"}
    with a_book(home) as book:
        found = {line.id: last_change(book.job(line.id)) for line in find(book.file)}
        assert deleted.isdisjoint(found)
        # The deletion of the last job may be kept and not yet be said.
        assert promised.keys() - found.keys() - deleted <= {id_ for _, id_, *_ in said[-1:]}
        assert all(found[id_] >= change for id_, change in promised.items() if id_ in found)
        assert all(book.photos.of(id_) for what, id_, *_ in said if what == "photographed" and id_ in found)
        for id_ in found:
            assert all(book.photos.content(p) == photo.read_bytes() for p in book.photos.of(id_))
    return found


def last_change(job: Job) -> int:
    return int(job.case.notes.split()[0]) if job.case.notes else 0
