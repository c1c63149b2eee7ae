"""The page Settings: what the shop has set, each held at once; the foot says what was set last and takes it back."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Columns, ScrollColumn, section
from fitdoctor.desk.parts.foot import PageFoot
from fitdoctor.desk.parts.text import PageTitle
from fitdoctor.desk.settings.folders import Folders
from fitdoctor.desk.settings.group import Group
from fitdoctor.desk.settings.lengths import Lengths
from fitdoctor.desk.settings.minutes import OwnMinutes
from fitdoctor.desk.settings.money import Money
from fitdoctor.desk.settings.screen import Screen
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.words import tr
from fitdoctor.shop import Shop

_GUTTER, _BETWEEN = 48, 36


class SettingsPage(QWidget):
    """Emits what is wanted; shows how the shop is set."""

    wanted = Signal(object, str, str)
    undone = Signal()
    left = Signal()

    def __init__(self, look: Look, shop: Shop) -> None:
        super().__init__()
        self.look, self.columns = look, 0
        self.setObjectName("page-settings")
        lay_on(self, look, "paper")
        self.groups: tuple[Group, ...] = (Lengths(look, shop), Money(look), OwnMinutes(look), Screen(look), Folders(look))
        for group in self.groups:
            group.wanted.connect(self.wanted.emit)
        self._title = PageTitle(look, tr("Settings"), "settings-title")
        self._title.remark(tr("Each holds at once and is kept on this computer."))
        self._work, self._rest = section(*self.groups[:3], gap=_BETWEEN), section(*self.groups[3:], gap=_BETWEEN)
        self._columns = Columns(_GUTTER)
        self._scroll = ScrollColumn("settings-scroll")
        self._scroll.column.addWidget(self._title)
        self._scroll.column.addSpacing(14)
        self._scroll.column.addWidget(self._columns)
        self._scroll.column.addStretch(1)
        self.foot = PageFoot(look)
        self.foot.setObjectName("settings-foot")
        lay_on(self.foot, look, "table")
        self.foot.undo.connect(self.undone.emit)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self._scroll, 1)
        whole.addWidget(self.foot)
        self.foot.show_turns("", "")
        self.foot.show_summary("")
        self._fold(1)

    def show_shop(self, shop: Shop, said: str) -> None:
        """Show how the shop is set, and what was set last; nothing where nothing can be taken back."""
        for group in self.groups:
            group.show_shop(shop)
        self.foot.show_kept(f"{said}.", bool(said))
        self.foot.setVisible(bool(said))

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the first setting."""
        first = next(w for w in self.findChildren(QWidget) if w.focusPolicy() & Qt.FocusPolicy.TabFocus and w.isVisibleTo(self))
        first.setFocus(reason)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fold(min(2, self.look.columns(event.size().width())))

    def _fold(self, columns: int) -> None:
        if columns != self.columns:
            self.columns = columns
            self._title.shrink(columns < 2)
            self._columns.lay([[(self._work, 1), (self._rest, 1)]] if columns > 1 else [[(self._work, 1)], [(self._rest, 1)]])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
