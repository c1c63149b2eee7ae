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

_FIRST_OF_A_KIND, _FIRST_OF_ONE_KIND = 4, 40


class Found(QWidget):
    """Emits the page wanted. The rows are one stop of the Tab key."""

    wanted = Signal(object)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.rows: list[FoundRow] = []
        self._hits: tuple[Hit, ...] = ()
        self._whole: set[str] = set()
        self._at = -1
        self._column = Rows("look-up-found")
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._column)

    def show_hits(self, hits: Sequence[Hit]) -> None:
        """Show these in place of those before; none is in hand yet."""
        self._hits, self._whole = tuple(hits), set()
        self._show()

    def _show(self) -> None:
        groups: dict[str, list[Hit]] = defaultdict(list)
        for hit in self._hits:
            groups[hit.kind].append(hit)
        shown: list[QWidget] = []
        self.rows, self._at = [], -1
        first = _FIRST_OF_A_KIND if len(groups) > 1 else _FIRST_OF_ONE_KIND
        for kind, hits in groups.items():
            head = Words(self.look, f"{tr(KIND_TITLES[kind])}  {len(hits)}", "small", "ink-2", f"look-up-kind-{kind}")
            shown.append(_below(head, 12 if shown else 0))
            some = hits if kind in self._whole or len(hits) <= first + 1 else hits[:first]
            shown += [self._row(hit) for hit in some]
            if len(some) < len(hits):
                shown.append(_below(left(self._more(kind, len(hits) - len(some))), 2))
        self._group = ControlGroup(self.rows)
        self._column.show_rows(shown)

    def _row(self, hit: Hit) -> FoundRow:
        row = FoundRow(self.look, (hit.kind, hit.id), hit.title)
        row.clicked.connect(lambda _on=False: self.wanted.emit(row.key))
        self.rows.append(row)
        return row

    def _more(self, kind: str, hidden: int) -> Link:
        more = Link(self.look, count(hidden, "Show 1 more", "Show {number} more"), f"look-up-more-{kind}")
        more.clicked.connect(lambda _on=False: self._show_whole(kind))
        return more

    def _show_whole(self, kind: str) -> None:
        here = self.current()
        self._whole.add(kind)
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
