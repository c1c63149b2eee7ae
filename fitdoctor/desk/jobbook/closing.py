"""Closing a job and taking it up again: what is said is kept while one looks elsewhere, and a closed job teaches at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, cast

import msgspec
from PySide6.QtCore import QObject

from fitdoctor.desk.jobbook.changes import Changes
from fitdoctor.desk.jobbook.closing_page import ClosingPage, Draft, ToClose
from fitdoctor.desk.jobbook.lines import title_of
from fitdoctor.desk.jobbook.minutes import MinutesSpent
from fitdoctor.desk.jobbook.view import View
from fitdoctor.desk.words import tr
from fitdoctor.jobbook.job import Job as BookJob
from fitdoctor.jobbook.job import Outcome, Result
from fitdoctor.jobbook.lessons import OperationMinutes, minutes_by_operation

_MOST_CAUSES = 8


class Closing(QObject):
    """Listens to the page of the job book and shows its own."""

    def __init__(self, changes: Changes) -> None:
        super().__init__(changes)
        self.changes, self.place = changes, changes.place
        self._drafts: dict[str, Draft] = {}
        self.place.window.fills.append(self.fill)
        self.fill()

    def fill(self) -> None:
        """Listen to the page that is in the window now."""
        self.place.page.one.wanted.connect(self._do)

    def _do(self, want: str) -> None:
        acts = {"close": self.open_closing, "reopen": self.reopen, "minutes": self.open_minutes}
        if want in acts:
            acts[want]()

    # ---- closing

    def open_closing(self) -> None:
        """Show the page on which the chosen job is closed; what is thought of it now is noted first."""
        with self.place.said():
            self.changes.note(self._job(), tr("before closing"))
            self.place.show_view(self._closing_page)

    def _closing_page(self) -> View:
        id_ = self.place.id
        page = ClosingPage(self.place.window.look, self.place.job, self._to_close(), self._drafts.get(id_, Draft()))

        def drafted(name: str, value: Any) -> None:
            page.draft = self._drafts[id_] = replace(page.draft, **{name: value})

        page.drafted.connect(drafted)
        page.spent.connect(self.spend)
        page.closeWanted.connect(self.close_job)
        return page

    def _to_close(self) -> ToClose:
        chosen = self.place.chosen()
        last = chosen.readings[-1] if chosen.readings else None
        thought = [thought.cause for thought in last.thoughts] if last else []
        treat = last.treat if last else chosen.job.case.treat
        return ToClose(
            job=chosen.job,
            title=title_of(self.place.job.knowledge, chosen.job),
            causes=tuple(dict.fromkeys((*treat, *thought)))[:_MOST_CAUSES],
            operations=chosen.assessment.plan.operations if chosen.assessment else (),
            marks=last.marks if last else (),
            timed=self._timed(),
        )

    def close_job(self) -> None:
        """Close the chosen job as it was said."""
        draft = self._drafts[self.place.id]
        outcome = Outcome(
            right=draft.right, used_mm=draft.used_mm, minutes=draft.minutes, result=cast(Result, draft.result), note=draft.note
        )
        with self.place.said():
            job = self._job()
            self.place.book.close_job(job, outcome)
            del self._drafts[self.place.id]
            self._show(tr("{title} is closed, and teaches from now on.", title=title_of(self.place.job.knowledge, job)))

    def reopen(self) -> None:
        """Take the chosen job up again; it teaches no more."""
        with self.place.said():
            job = self._job()
            self.place.book.reopen(job)
            self._show(tr("{title} is open again, and teaches no more.", title=title_of(self.place.job.knowledge, job)))

    def _show(self, said: str) -> None:
        self.place.job.look_again()
        self.place.back()
        self.place.window.message.say(said, error=False, button=tr("Undo"), act=self.changes.undo)

    def _job(self) -> BookJob:
        return self.place.book.job(self.place.id)

    # ---- minutes

    def open_minutes(self) -> None:
        """Show the page on which minutes are written down."""
        with self.place.said():
            self.place.show_view(self._minutes_page)

    def _minutes_page(self) -> View:
        chosen = self.place.chosen()
        title = title_of(self.place.job.knowledge, chosen.job)
        page = View(self.place.window.look, self.place.job, "minutes", tr("Minutes spent"), title)
        operations = chosen.assessment.plan.operations if chosen.assessment else ()
        minutes = MinutesSpent(self.place.window.look, operations, chosen.job.minutes, self._timed())
        minutes.spent.connect(self.spend)
        page.lay((minutes, 1))
        return page

    def _timed(self) -> Mapping[str, OperationMinutes]:
        return minutes_by_operation(self.place.book.learning.jobs())

    def spend(self, operation: str, minutes: float | None) -> None:
        """Minutes spent on one operation of the chosen job."""
        with self.place.said():
            before = self._job()
            rest = {op: spent for op, spent in before.minutes.items() if op != operation}
            after = msgspec.structs.replace(before, minutes=rest if minutes is None else {**rest, operation: minutes})
            self.place.book.change(before, after)
