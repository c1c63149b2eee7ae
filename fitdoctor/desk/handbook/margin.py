"""The margin of a page: its picture, its links both ways, its sources, the cases it is used in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.handbook.kinds import KIND_TITLES, Key
from fitdoctor.desk.handbook.plates import plates_of
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.plate import Plate
from fitdoctor.desk.words import count, tr
from fitdoctor.figure.diagrams import Diagram

if TYPE_CHECKING:
    from fitdoctor.handbook import Page, PageSource

PLATE_HIGH = 262
_FIRST = 6


class Margin(Rows):
    """Emits the entry wanted."""

    wanted = Signal(object)

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__("look-up-margin", 4)
        self.look, self.job = look, job
        self._whole: set[str] = set()

    def show_page(self, page: Page) -> None:
        """Show what belongs to a page, long lists cut short."""
        self._whole = set()
        self._show(page)

    def _show(self, page: Page) -> None:
        rows = list(self._plate(page))
        for group in page.links:
            seen = {(link.kind, link.id): link for link in reversed(group.links)}
            links = [self._link(key, link.title, link.word) for key, link in reversed(seen.items()) if key[0] in KIND_TITLES]
            rows += self._group(page, group.heading, links)
        rows += self._group(page, "Sources", [w for n, source in enumerate(page.sources, 1) for w in self._source(n, source)])
        rows += self._group(page, "Used in these cases", [self._link(("cases", case.case), case.title) for case in page.used_in])
        self.show_rows(rows)

    def _plate(self, page: Page) -> Iterator[QWidget]:
        entry = self.job.knowledge.kind(page.kind).get(page.id)
        if not entry or page.kind == "sources":
            return
        for number, (diagram, words) in enumerate(plates_of(self.job.knowledge, entry, self.job.case.garment)):
            yield from self._picture(page, diagram, words, number)

    def _picture(self, page: Page, diagram: Diagram, words: str, number: int) -> Iterator[QWidget]:
        plate = Plate(self.job.pictures, self.look.tones)
        plate.setObjectName(f"look-up-plate-{number + 1}" if number else "look-up-plate")
        plate.set_text_size(self.look.em)
        plate.setFixedHeight(PLATE_HIGH)
        plate.show_scene(diagram.scene, diagram.crop, diagram.overlay, says=words or page.title)
        yield plate
        if words:
            yield Words(self.look, words, "small")

    def _group(self, page: Page, heading: str, widgets: Sequence[QWidget]) -> list[QWidget]:
        if not widgets:
            return []
        head = SectionHead(self.look, tr(heading))
        head.setContentsMargins(0, 12, 0, 4)
        shown = widgets if heading in self._whole or len(widgets) <= _FIRST + 1 else widgets[:_FIRST]
        rows = [head, *(left(w) if isinstance(w, Link) else w for w in shown)]
        if len(shown) < len(widgets):
            hidden = len(widgets) - len(shown)
            more = Link(self.look, count(hidden, "Show 1 more", "Show {number} more"), f"look-up-more-{heading.lower().replace(' ', '-')}")
            more.clicked.connect(lambda _on=False: self._show_whole(page, heading))
            rows.append(left(more))
        return rows

    def _show_whole(self, page: Page, heading: str) -> None:
        self._whole.add(heading)
        self._show(page)

    def _link(self, key: Key, title: str, word: str = "") -> QWidget:
        link = Link(self.look, title, f"look-up-link-{key[1]}", "body")
        link.clicked.connect(lambda _on=False: self.wanted.emit(key))
        if not word:
            return link
        with_word = Rows()
        with_word.show_rows([left(link), Words(self.look, word.replace("-", " "), "small", "ink-2")])
        return with_word

    def _source(self, number: int, source: PageSource) -> Iterator[QWidget]:
        if source.id not in self.job.knowledge.sources:
            yield Words(self.look, f"**{number}** {source.line[:1].upper()}{source.line[1:]}", "small")
            return
        link = Link(self.look, f"{number} {source.line}", f"look-up-source-{source.id}", "small")
        link.clicked.connect(lambda _on=False: self.wanted.emit(("sources", source.id)))
        with_note = Rows()
        with_note.show_rows([left(link), *([Words(self.look, source.note, "small", "ink-2")] if source.note else [])])
        yield with_note
