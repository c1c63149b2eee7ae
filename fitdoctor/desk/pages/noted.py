"""The column of what was noted: the lines, own words, and what they are easily mistaken for."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.said import place_of
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.note_list import NoteList, NoteRow
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import Rule, SectionHead, Words
from fitdoctor.desk.shelf import SEEN, own_words
from fitdoctor.desk.words import tr
from fitdoctor.knowledge.entries import MistakenFor, Symptom

BAR = 3


class NotedColumn(QWidget):
    """Emits a line dropped, a line pointed at, and two lines to be set side by side with how they are told apart."""

    dropped = Signal(str)
    pointed = Signal(str)
    comparingWanted = Signal(str, str, str)

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self.setObjectName("shows-noted-column")
        self._head = SectionHead(look, tr("Noted"), " ")
        self._list = NoteList(look, "shows-noted")
        self._list.dropped.connect(self.dropped.emit)
        self._list.pointed.connect(self.pointed.emit)
        self._nothing = Words(look, tr("Nothing yet."), "small", "ink-2")
        self._own = Rows("shows-own")
        self._mistaken = _Mistaken(look)
        self._mistaken.compare.connect(self.comparingWanted.emit)
        none_fits = tr("None of these? Write what you see. It is kept with the job and counts as seen, not explained.")
        self._ask = Words(look, none_fits, "small")
        self._field = Field(look, "shows-own-words", tr("What you see, in your own words"), tr("In your own words"))
        self._field.edit.returnPressed.connect(self._write)
        self._field.edit.textEdited.connect(lambda text: job.draft("shows-own-words", text))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for widget, gap in (
            (self._head, 0),
            (self._nothing, 10),
            (self._list, 0),
            (self._own, 0),
            (self._mistaken, 16),
            (self._ask, 20),
            (self._field, 6),
        ):
            column.addSpacing(gap)
            column.addWidget(widget)
        column.addStretch(1)

    def show_job(self) -> None:
        """Show what is noted now."""
        know, case = self.job.knowledge, self.job.case
        seen = [know.symptoms[s] for s in case.seen if s in know.symptoms]
        self._head.say(tr("Noted"), tr("{number} so far", number=len(seen)) if seen else "")
        own = own_words(case.notes)
        self._nothing.setVisible(not seen and not own)
        self._list.setVisible(bool(seen))
        self._list.show_notes([self._row(number, symptom) for number, symptom in enumerate(seen, 1)])
        self._own.show_rows([row for at, line in enumerate(own) for row in (self._own_row(at, line), Rule(self.look))])
        self._mistaken.show_pair(*self._easily_mistaken(seen))
        if not self._field.edit.hasFocus():
            self._field.edit.setText(self.job.kept.drafts.get("shows-own-words", ""))

    def _row(self, number: int, symptom: Symptom) -> NoteRow:
        job, tones = self.job, self.look.tones
        return NoteRow(
            entry=symptom.id,
            number=str(number),
            title=symptom.short or symptom.title,
            where=place_of(job.knowledge, symptom, job.case.garment),
            picture=lambda size, dpr: job.pictures.symptom(job.knowledge, symptom, job.case.garment, size, dpr, tones, job.case.facts),
            says=symptom.look,
        )

    def _own_row(self, at: int, line: str) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 8, 0, 6)
        column.setSpacing(0)
        column.addWidget(Words(self.look, f"‘{line}’", "body"))
        drop = Link(self.look, tr("Not this after all"), f"shows-own-drop-{at}")
        drop.setAccessibleName(tr("Not this after all: {title}", title=line))
        drop.clicked.connect(lambda: self._take_back(at))
        column.addWidget(left(drop))
        return holder

    def _write(self) -> None:
        text = self._field.edit.text().strip()
        if text:
            self._field.edit.clear()
            self.job.draft("shows-own-words", "")
            self.job.write_notes("\n".join(part for part in (self.job.case.notes, SEEN + text) if part))

    def _take_back(self, at: int) -> None:
        gone = SEEN + own_words(self.job.case.notes)[at]
        self.job.write_notes("\n".join(line for line in self.job.case.notes.splitlines() if line != gone))

    def _easily_mistaken(self, seen: list[Symptom]) -> tuple[Symptom | None, MistakenFor | None]:
        """The last noted line that another of this garment's lines is mistaken for."""
        know, garment = self.job.knowledge, self.job.case.garment
        for symptom in reversed(seen):
            for other in symptom.mistaken_for:
                entry = know.symptoms.get(other.symptom)
                if entry and other.symptom not in self.job.case.seen and know.suits(entry.garments, garment):
                    return symptom, other
        return None, None


class _Mistaken(QWidget):
    """A note with a care bar."""

    compare = Signal(str, str, str)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self._pair: tuple[str, str, str] | None = None
        self._words = Words(look, "", "small", name="shows-mistaken")
        self._link = Link(look, tr("Show the two side by side"), "shows-compare")
        self._link.clicked.connect(lambda: self.compare.emit(*self._pair) if self._pair else None)
        column = QVBoxLayout(self)
        column.setContentsMargins(BAR + 12, 10, 0, 2)
        column.setSpacing(3)
        column.addWidget(Words(look, tr("Easily mistaken"), "bold"))
        column.addWidget(self._words)
        column.addWidget(left(self._link))

    def show_pair(self, symptom: Symptom | None, other: MistakenFor | None) -> None:
        """Show how a noted line is told from another, or nothing."""
        self.setVisible(symptom is not None and other is not None)
        if symptom and other:
            self._pair = (symptom.id, other.symptom, other.tell_apart)
            self._words.say(other.tell_apart)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(0, 0, BAR, self.height(), self.look.colour("care"))
        painter.end()
