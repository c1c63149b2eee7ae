"""What was found, grouped by kind, the best group first; one of the finds is in hand."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.handbook.found_row import FoundRow
from fitdoctor.desk.handbook.kinds import KIND_TITLES, Key
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.control import ControlGroup, bring_into_sight
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import count, tr
from fitdoctor.knowledge.search import Hit

_FIRST_OF_A_KIND = 4


class Found(QWidget):
    """Emits the page wanted. The rows are one stop of the Tab key."""

    wanted = Signal(object)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.rows: list[FoundRow] = []
        self._hits: tuple[Hit, ...] = ()
        self._all = False
        self._at = -1
        self._column = Rows("look-up-found")
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._column)

    def show_hits(self, hits: Sequence[Hit]) -> None:
        """Show these in place of those before; none is in hand yet."""
        self._hits, self._all = tuple(hits), False
        self._show()

    def _show(self) -> None:
        groups: dict[str, list[Hit]] = defaultdict(list)
        for hit in self._hits:
            groups[hit.kind].append(hit)
        shown: list[QWidget] = []
        self.rows, self._at = [], -1
        for kind, hits in groups.items():
            head = Words(self.look, tr(KIND_TITLES[kind]), "small", "ink-2", f"look-up-kind-{kind}")
            head.setContentsMargins(0, 0, 0, 0)
            shown += [_below(head, 12 if shown else 0)]
            for hit in hits if self._all else hits[:_FIRST_OF_A_KIND]:
                row = FoundRow(self.look, (hit.kind, hit.id), hit.title)
                row.clicked.connect(lambda _on=False, key=row.key: self.wanted.emit(key))
                self.rows.append(row)
                shown.append(row)
        self._group = ControlGroup(self.rows)
        left_out = len(self._hits) - len(self.rows)
        if left_out:
            more = Link(self.look, count(left_out, "Show 1 more find", "Show {number} more finds"), "look-up-more")
            more.clicked.connect(self._show_all)
            shown.append(_below(left(more), 10))
        self._column.show_rows(shown)

    def _show_all(self) -> None:
        here = self.current()
        self._all = True
        self._show()
        self.mark(here)

    def step(self, by: int) -> None:
        """Take the next find in hand, or the one before."""
        if self.rows:
            at = 0 if self._at < 0 else max(0, min(len(self.rows) - 1, self._at + by))
            self._take(at)
            bring_into_sight(self.rows[at])

    def current(self) -> Key | None:
        """The find in hand."""
        return self.rows[self._at].key if self._at >= 0 else None

    def first(self) -> Key | None:
        """The best find."""
        return self.rows[0].key if self.rows else None

    def mark(self, key: Key | None) -> None:
        """Show which of the finds is open."""
        self._take(next((at for at, row in enumerate(self.rows) if row.key == key), -1))

    def _take(self, at: int) -> None:
        self._at = at
        for number, row in enumerate(self.rows):
            row.show_current(number == at)


def _below(widget: QWidget, room: int) -> QWidget:
    """The widget with room above it, and indented like the titles."""
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(12, room, 0, 2)
    column.addWidget(widget)
    return holder
