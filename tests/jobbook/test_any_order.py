"""Add, change, take back, close, delete, open again in any order, from two windows, against a plain mapping."""

from __future__ import annotations

import shutil
import tempfile
from datetime import date
from pathlib import Path

import msgspec
import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import Bundle, RuleBasedStateMachine, consumes, initialize, invariant, rule

from fitdoctor.case import Case
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import JobBook, open_book
from fitdoctor.jobbook.finding import find
from fitdoctor.jobbook.job import STATES, Job, Outcome, State

replace = msgspec.structs.replace
STAMPS = ("id", "revision", "reached", "added", "changed")
WINDOWS = st.integers(0, 1)
NOTES = st.text(st.characters(codec="utf-8"), max_size=12)


def substance(job: Job) -> Job:
    """A job without what the book sets itself."""
    plain = Job(case=job.case)
    return replace(job, **{name: getattr(plain, name) for name in STAMPS}, outcome=job.outcome and replace(job.outcome, closed=None))


class BookMachine(RuleBasedStateMachine):
    """The model: job -> what it was after each change that can be taken back, the present last."""

    ids = Bundle("ids")

    @initialize()
    def begin(self) -> None:
        self.folder = Path(tempfile.mkdtemp())
        self.windows = [self.opened(), self.opened()]
        self.model: dict[str, list[Job]] = {}

    def opened(self) -> JobBook:
        book = open_book(self.folder / "jobs.db")
        # Flushing to the disk is what a test of the logic can do without.
        book.file.connection.execute("PRAGMA synchronous = OFF")
        return book

    @rule(target=ids, window=WINDOWS, notes=NOTES)
    def add(self, window: int, notes: str) -> str:
        job = self.windows[window].add(Job(case=Case(garment="skirt", notes=notes), brought=date(2024, 5, 31)))
        self.model[job.id] = [substance(job)]
        return job.id

    @rule(id_=ids, window=WINDOWS, notes=NOTES, state=st.sampled_from(STATES))
    def change(self, id_: str, window: int, notes: str, state: State) -> None:
        job = self.windows[window].job(id_)
        kept = self.windows[window].change(job, replace(job, state=state, case=replace(job.case, notes=notes)))
        assert substance(kept) == replace(self.model[id_][-1], state=state, case=replace(job.case, notes=notes))
        self.take_over(id_, kept)

    @rule(id_=ids, notes=NOTES, day=st.dates())
    def change_in_both_windows(self, id_: str, notes: str, day: date) -> None:
        job = self.windows[0].job(id_)
        self.take_over(id_, self.windows[1].change(job, replace(job, due=day)))
        kept = self.windows[0].change(job, replace(job, case=replace(job.case, notes=notes)))
        assert (kept.due, kept.case.notes) == (day, notes)
        self.take_over(id_, kept)

    @rule(id_=ids, window=WINDOWS, right=st.lists(st.sampled_from(["long", "flat"]), unique=True))
    def close(self, id_: str, window: int, right: list[str]) -> None:
        kept = self.windows[window].close_job(self.windows[window].job(id_), Outcome(right=tuple(right)))
        self.model[id_].append(substance(kept))

    @rule(id_=ids, window=WINDOWS)
    def undo(self, id_: str, window: int) -> None:
        job = self.windows[window].job(id_)
        if len(self.model[id_]) == 1:
            with pytest.raises(FitdoctorError):
                self.windows[window].undo(job)
            return
        self.model[id_].pop()
        assert substance(self.windows[window].undo(job)) == self.model[id_][-1]

    @rule(id_=consumes(ids), window=WINDOWS)
    def delete(self, id_: str, window: int) -> None:
        self.windows[window].delete(id_)
        del self.model[id_]

    @rule(window=WINDOWS)
    def open_again(self, window: int) -> None:
        self.windows[window].file.close()
        self.windows[window] = self.opened()

    @invariant()
    def both_windows_show_what_is_expected(self) -> None:
        for book in self.windows:
            found = {line.id: substance(book.job(line.id)) for line in find(book.file)}
            assert found == {id_: jobs[-1] for id_, jobs in self.model.items()}

    def teardown(self) -> None:
        for book in self.windows:
            book.file.close()
        shutil.rmtree(self.folder)

    def take_over(self, id_: str, kept: Job) -> None:
        """A change that changes nothing is no change."""
        if substance(kept) != self.model[id_][-1]:
            self.model[id_].append(substance(kept))


TestBookInAnyOrder = BookMachine.TestCase
BookMachine.TestCase.settings = settings(max_examples=40, stateful_step_count=25, deadline=None)
