"""A length to type: read as it is typed, set in type when one is done, one step up or down by buttons and keys."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.field import Edit, Field
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.shop import Shop
from fitdoctor.units import parse_length, step_mm

HIGH, WIDE = 56, 10.4
_UP = (Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Up)
_DOWN = (Qt.Key.Key_Minus, Qt.Key.Key_Down)


class LengthEdit(Edit):
    """Shows the fraction set in type while nobody types in it."""

    stepped = Signal(int, bool)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, large = Qt.Key(event.key()), bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if key in _UP:
            self.stepped.emit(1, large and key != Qt.Key.Key_Plus)
        elif key in _DOWN or event.text() == "_":
            self.stepped.emit(-1, large)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.hasFocus() or not self.text():
            super().paintEvent(event)
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        set_in_type = Paragraph(self.look, self.text(), "entry")
        high = set_in_type.height(1e6)
        set_in_type.paint(painter, QRectF(2, (self.height() - high) / 2, 1e5, high), self.look.colour("ink"))
        painter.end()


class LengthField(QWidget):
    """Emits the length in mm as soon as it can be read, and the text that cannot."""

    lengthTyped = Signal(float)
    notRead = Signal(str)
    cleared = Signal()

    def __init__(self, look: Look, shop: Shop, name: str, says: str) -> None:
        super().__init__()
        self.look, self.shop = look, shop
        self.mm: float | None = None
        self.field = _EntryField(look, name, says, shop)
        self.field.edit.textEdited.connect(self._read)
        self.edit = self.field.edit
        if isinstance(self.edit, LengthEdit):
            self.edit.stepped.connect(self.step)
        self.less = Button(look, "", f"{name}-less", sign="minus")
        self.more = Button(look, "", f"{name}-more", sign="plus")
        self.less.setAccessibleName(tr("{what}, one step less", what=says))
        self.more.setAccessibleName(tr("{what}, one step more", what=says))
        self.less.clicked.connect(lambda: self.step(-1))
        self.more.clicked.connect(lambda: self.step(1))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(12)
        for widget in (self.field, self.less, self.more):
            widget.setFixedHeight(look.grown(HIGH))
            row.addWidget(widget)
        self.field.setFixedWidth(look.px(WIDE))
        self.setFocusProxy(self.edit)

    def show_length(self, mm: float | None) -> None:
        """Show a length in the shop's unit; what is being typed is left as it is."""
        self.mm = mm
        if not self.edit.hasFocus() or self.edit.text() == "":
            self._write()
        self.field.show_wrong(False)

    def restore(self, text: str) -> None:
        """Show what was typed before and could not be used yet, as it was typed."""
        if text == self.edit.text():
            return
        self.edit.setText(text)
        self.mm = _length_of(text, self.shop)
        self.field.show_wrong(self.mm is None)

    def _write(self) -> None:
        text = self.shop.length(self.mm).rsplit(" ", 1)[0] if self.mm is not None else ""
        self.edit.setText(text)

    def step(self, by: int, large: bool = False) -> None:
        """One step of the shop's step up or down; large is one inch or centimetre."""
        step = step_mm(self.shop.unit, self.shop.finest)
        if large:
            step = step_mm("in", 1) if self.shop.unit == "in" else step_mm("cm") * 10
        now = round((self.mm or 0.0) / step) if not large else (self.mm or 0.0) / step
        self.mm = max(0.0, (now + by) * step)
        self._write()
        self.field.show_wrong(False)
        self.lengthTyped.emit(self.mm)

    def _read(self, text: str) -> None:
        if not text.strip():
            self.mm = None
            self.field.show_wrong(False)
            self.cleared.emit()
            return
        self.mm = _length_of(text, self.shop)
        self.field.show_wrong(self.mm is None)
        if self.mm is None:
            self.notRead.emit(text)
        else:
            self.lengthTyped.emit(self.mm)


def _length_of(text: str, shop: Shop) -> float | None:
    try:
        return parse_length(text, shop.unit)
    except FitdoctorError:
        return None


class _EntryField(Field):
    def __init__(self, look: Look, name: str, says: str, shop: Shop) -> None:
        super().__init__(look, name, says, remark=shop.unit)
        self.edit.setFont(look.font("entry"))
        self.edit.focusChanged.connect(self.edit.update)

    def _make_edit(self) -> Edit:
        return LengthEdit(self.look)

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(WIDE), self.look.grown(HIGH))
