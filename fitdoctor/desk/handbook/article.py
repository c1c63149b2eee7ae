"""The page of an entry: title, the sentence one came for, text under heads, what is set side by side, and the ways to take it along."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.handbook.file_line import FileLine
from fitdoctor.desk.handbook.kinds import over_title
from fitdoctor.desk.handbook.side_by_side import Opposed
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.words import tr, upper_first

if TYPE_CHECKING:
    from fitdoctor.handbook import Page, Section

STEPS = ("How", "Step by step")
_LEADS = ("What it looks like", "Why", "The question", "What the work needs", "Why it is right")
_BRIEF = 48
_NUMBER = re.compile(r"^\d+\. ")


class Article(Rows):
    """Emits the entry wanted, and that the page is to be printed."""

    wanted = Signal(object)
    printWanted = Signal()

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__("look-up-page")
        self.look, self.job = look, job

    def show_page(self, page: Page, wide: bool) -> None:
        """Set a page; `wide` where two things fit side by side."""
        rows: list[QWidget] = [
            Words(self.look, over_title(self.job.knowledge, (page.kind, page.id)), "small", "ink-2", "look-up-over"),
            Words(self.look, page.title, "page-title", name="look-up-title"),
        ]
        lead, rest = self._lead(page)
        if lead:
            rows.append(_below(Words(self.look, lead, "reading", name="look-up-lead"), 8))
        for before, section in zip((None, *rest), rest, strict=False):
            follows = before is not None and _is_brief(before)
            rows += [self._brief(section, follows)] if _is_brief(section) else list(self._section(section))
        for number, matter in enumerate(page.opposed):
            side = Opposed(self.look, self.job, page, matter, number, wide)
            side.wanted.connect(self.wanted.emit)
            rows.append(_below(side, 22))
        print_it = Button(self.look, tr("Print this page"), "look-up-print")
        print_it.clicked.connect(self.printWanted.emit)
        rows.append(_below(left(print_it), 26))
        where = FileLine(self.look, "look-up-file")
        where.show_place(self.job.knowledge, (page.kind, page.id))
        rows.append(_below(where, 18))
        self.show_rows(rows)

    def _lead(self, page: Page) -> tuple[str, tuple[Section, ...]]:
        first = page.sections[0] if page.sections else None
        if first and first.heading in _LEADS and len(first.lines) == 1:
            return first.lines[0], page.sections[1:]
        return "", page.sections

    def _brief(self, section: Section, follows: bool) -> QWidget:
        """What is said in a few words needs no head of its own."""
        text = f"**{tr(section.heading)}:** {upper_first(section.lines[0])}"
        return _below(Words(self.look, text), 6 if follows else 14)

    def _section(self, section: Section) -> Iterator[QWidget]:
        yield _below(SectionHead(self.look, tr(section.heading)), 18)
        steps = section.heading in STEPS and len(section.lines) > 1
        for number, line in enumerate(section.lines, 1):
            text = upper_first(_NUMBER.sub("", line))
            row = (
                _step(self.look, number, text)
                if steps
                else _address(self.look, line)
                if "://" in line
                else Words(self.look, text, "reading")
            )
            yield _below(row, 8 if number == 1 else 4)


def _is_brief(section: Section) -> bool:
    return len(section.lines) == 1 and len(section.lines[0]) <= _BRIEF


def _address(look: Look, address: str) -> Words:
    """An address, broken after its strokes so that it widens no column."""
    rows = [""]
    for part in re.findall(r"[^/]*/+|[^/]+", address):
        if rows[-1] and len(rows[-1] + part) > _BRIEF:
            rows.append("")
        rows[-1] += part
    return Words(look, "\n".join(rows), "small", "ink-2")


def _step(look: Look, number: int, text: str) -> QWidget:
    row = QWidget()
    line = QHBoxLayout(row)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(0)
    figure = Words(look, str(number), "order")
    figure.setFixedWidth(look.px(1.6))
    line.addWidget(figure, 0, Qt.AlignmentFlag.AlignTop)
    line.addWidget(Words(look, text), 1)
    return row


def _below(widget: QWidget, room: int) -> QWidget:
    """The widget with room above it."""
    holder = Rows()
    holder.show_rows([widget])
    holder.setContentsMargins(0, room, 0, 0)
    return holder
