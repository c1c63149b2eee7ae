"""What is changed in the job book from the window: one job at a time, each change kept at once and named so that it can be undone."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any, cast

import msgspec
from PySide6.QtCore import QObject

from fitdoctor.case import Case
from fitdoctor.desk.jobbook.lines import title_of
from fitdoctor.desk.jobbook.place import PLACE, JobBookPlace
from fitdoctor.desk.shelf import Kept
from fitdoctor.desk.words import and_list, count, tr
from fitdoctor.jobbook.job import STATE_WORDS, State
from fitdoctor.jobbook.job import Job as BookJob

replace = msgspec.structs.replace
_OF_THE_CASE = ("title", "wearer", "notes")


class Changes(QObject):
    """Listens to the page and writes into the book."""

    def __init__(self, place: JobBookPlace) -> None:
        super().__init__(place)
        self.place, self.window, self.job = place, place.window, place.job
        self.window.undoWanted.connect(self._undo_if_open)
        self.window.fills.append(self.fill)
        self.fill()

    def fill(self) -> None:
        """Listen to the page that is in the window now."""
        page = self.place.page
        page.one.wanted.connect(self._do)
        page.one.stateWanted.connect(self.set_state)
        page.form.changed.connect(self.set_field)
        page.photosWanted.connect(self.add_photos)
        page.ask.meant.connect(self.delete)

    def _do(self, want: str) -> None:
        acts = {"open": self.place.open_job, "change": lambda: self.place.page.change(True), "delete": self.ask_back}
        if want in acts:
            acts[want]()

    def _chosen(self) -> BookJob:
        return self.place.book.job(self.place.id)

    def _write(self, before: BookJob, after: BookJob, said: str = "") -> None:
        """Keep a change, show it, and say it where it is worth an undo."""
        self.place.book.change(before, after)
        self.show_changed()
        if said:
            self.window.message.say(said, error=False, button=tr("Undo"), act=self.undo)

    def show_changed(self) -> None:
        """Show what was changed, in the garment in hand too."""
        if self.place.id == self.job.kept.id:
            self.job.look_again()
        self.place.refresh()

    # ---- one job

    def set_state(self, state: str) -> None:
        """How far the work is; what is thought at that moment is noted."""
        with self.place.said():
            before = self._chosen()
            words = tr(STATE_WORDS[cast(State, state)])
            said = tr("{title}: {state}.", title=title_of(self.job.knowledge, before), state=words)
            self._write(before, replace(before, state=state), said)
            self.note(self._chosen(), words)

    def note(self, job: BookJob, occasion: str) -> None:
        """Note what is thought of a job now."""
        assessment = self.place.assessed(job)
        if assessment:
            self.place.shelf.note(job.id, assessment, occasion)

    def set_field(self, name: str, value: Any) -> None:
        """Something that is written down: title, wearer, notes, brought or due."""
        with self.place.said():
            before = self._chosen()
            if name in _OF_THE_CASE:
                case: Case = replace(before.case, **{name: value})
                self._write(before, replace(before, case=case))
            else:
                self._write(before, replace(before, **{name: value}))

    def undo(self) -> None:
        """Take back the last change of the chosen job."""
        with self.place.said():
            self.place.book.undo(self._chosen())
            self.job.look_again()
            self.place.refresh()

    def _undo_if_open(self) -> None:
        if self.window.place == PLACE:
            self.undo()

    # ---- photos

    def add_photos(self, paths: Sequence[Path]) -> None:
        """Copy photos into the book."""
        for path in paths:
            with self.place.said():
                self.place.book.add_photo(self.place.id, path)
        self.place.refresh()

    # ---- for good

    def ask_back(self) -> None:
        """Ask whether it is meant."""
        with self.place.said():
            chosen = self.place.chosen()
            readings = count(len(chosen.readings), "1 reading", "{number} readings")
            parts = [readings, count(len(chosen.photos), "1 photo", "{number} photos")]
            title = title_of(self.job.knowledge, chosen.job)
            self.place.page.ask.ask(
                tr("Delete ‘{title}’ for good, with {parts}? It cannot be taken back.", title=title, parts=and_list(parts))
            )

    def delete(self) -> None:
        """Delete the chosen job for good."""
        with self.place.said():
            self.place.book.delete(self.place.id)
            if self.place.id == self.job.kept.id:
                self.job.open(Kept(case=Case(garment="")), noted=False)
            self.job.look_again()
            self.place.id = ""
            self.place.refresh()
            self.window.message.say(tr("Deleted for good."), error=False)
