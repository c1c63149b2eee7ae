"""What every page has: a column that scrolls downwards, folding by its width in em, and showing the job anew after a change."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QScrollArea, QVBoxLayout, QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.rows import emptied
from fitdoctor.desk.parts.text import PageTitle
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.tokens import MARGIN

TOP = 20


class ScrollColumn(QScrollArea):
    """Scrolls downwards, never sideways."""

    def __init__(self, name: str, margin: int = MARGIN) -> None:
        super().__init__()
        self.setObjectName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.viewport().setAutoFillBackground(False)
        self.content = QWidget()
        self.column = QVBoxLayout(self.content)
        self.column.setContentsMargins(margin, TOP, margin, TOP)
        self.column.setSpacing(0)
        self.setWidget(self.content)
        self.content.setAutoFillBackground(False)  # setWidget turns it on

    def bring_up(self, widget: QWidget) -> None:
        """Scroll until a widget stands in the upper half."""
        self.ensureWidgetVisible(widget, 0, self.height() // 2)


class Page(QWidget):
    """One step. Heirs build their parts once, and fill them in `show_job`."""

    step = ""

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self.columns = 0
        self.setObjectName(f"page-{self.step}")
        lay_on(self, look, "paper")

    def stand(self, *widgets: QWidget, gap: int = 12) -> ScrollColumn:
        """Put the title, and below a gap the rest, into a column that scrolls and fills the page; the column."""
        scroll = ScrollColumn(f"{self.step}-scroll")
        title, *below = widgets
        scroll.column.addWidget(title)
        scroll.column.addSpacing(gap)
        for widget in below:
            scroll.column.addWidget(widget)
        scroll.column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scroll)
        return scroll

    def show_job(self) -> None:
        """Show the case as it is now."""
        raise NotImplementedError

    def arrange(self, columns: int) -> None:
        """Lay the page out in three columns, two, or one."""
        raise NotImplementedError

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the first question."""

    def open_at_top(self, reason: Qt.FocusReason) -> None:
        """Open at the top, with the focus on the first question; rows have their height only once they are laid out."""
        self.focus_first(reason)
        QTimer.singleShot(0, self._to_the_top)

    def _to_the_top(self) -> None:
        for scroll in self.findChildren(ScrollColumn):
            scroll.verticalScrollBar().setValue(0)

    def take_key(self, _text: str) -> bool:
        """Use a letter or figure typed outside any field; whether it meant something."""
        return False

    def summary(self) -> str:
        """What left the page in a narrow window, as a button in the foot says it; or nothing."""
        return ""

    def show_summary(self) -> None:
        """Bring what the summary stands for into sight."""

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fold(event.size().width())

    def fold(self, width: int) -> None:
        """Lay the page out for a width in pixels."""
        columns = self.look.columns(width)
        if columns != self.columns:
            self.columns = columns
            for title in self.findChildren(PageTitle):
                title.shrink(columns < 2)
            with self.focus_kept():
                self.arrange(columns)

    @contextmanager
    def focus_kept(self) -> Iterator[None]:
        """Rows that are built anew take the focus with them: give it back to what bears the same name."""
        before = self.window().focusWidget()
        here = before is not None and self.isAncestorOf(before)
        name = before.objectName() if before is not None and here else ""
        ringed = bool(getattr(before, "ringed", False))
        yield
        now = self.window().focusWidget()
        if not here or (now is not None and self.isAncestorOf(now)):
            return
        reason = Qt.FocusReason.TabFocusReason if ringed else Qt.FocusReason.OtherFocusReason
        again = next((w for w in self.findChildren(QWidget, name) if w.isVisibleTo(self)), None) if name else None
        if again is not None:
            again.setFocus(reason)
        else:
            self.focus_first(reason)


class Columns(QWidget):
    """Sections side by side or one under another, re-laid when the page folds."""

    def __init__(self, gap: int) -> None:
        super().__init__()
        self._gap = gap
        self.grid = QGridLayout(self)
        self.grid.setContentsMargins(0, 0, 0, 0)

    def lay(self, rows: Sequence[Sequence[tuple[QWidget, int]]]) -> None:
        """Rows of (section, share of the width); a row of one takes the whole width."""
        emptied(self.grid)
        most = max(len(row) for row in rows)
        self.grid.setHorizontalSpacing(self._gap)
        self.grid.setVerticalSpacing(24)
        for at in range(4):
            self.grid.setColumnStretch(at, 0)
            self.grid.setRowStretch(at, 0)
        for down, row in enumerate(rows):
            for across, (section, share) in enumerate(row):
                wide = most if len(row) == 1 else 1
                self.grid.addWidget(section, down, across, 1, wide, Qt.AlignmentFlag.AlignTop)
                if len(row) == most:
                    self.grid.setColumnStretch(across, share)
        self.grid.setRowStretch(len(rows), 1)


def section(*widgets: QWidget, gap: int = 12) -> QWidget:
    """Widgets one under another."""
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(gap)
    for widget in widgets:
        column.addWidget(widget)
    return holder
