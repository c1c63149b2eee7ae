"""An amount of money to type: what it is above, and below a sentence where it cannot be used."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.rack.money import Money
from fitdoctor.desk.words import tr


class AmountField(QWidget):
    """Emits what is typed. What cannot be used is said when the field is left or the garment taken, not while one types."""

    typed = Signal(str)

    def __init__(self, look: Look, name: str, title: str, money: Money, may_be_nothing: bool = True) -> None:
        super().__init__()
        self.money, self._may_be_nothing = money, may_be_nothing
        self.field = Field(look, f"rack-{name}", title, money.typed(0.0))
        self._wrong = Words(look, "", "small", "stop", f"rack-{name}-wrong")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(Words(look, title, "small", "ink-2"))
        column.addWidget(self.field)
        column.addWidget(self._wrong)
        column.addStretch(1)
        self.field.edit.textEdited.connect(self._type)
        self.field.edit.editingFinished.connect(self._leave)

    def _type(self, text: str) -> None:
        if self.field.wrong and self.money.read(text) is not None:
            self.refuse("")
        self.typed.emit(text)

    def _leave(self) -> None:
        text = self.field.edit.text()
        if text.strip() and self.money.read(text) is None:
            self.refuse("not-read")

    def show_text(self, text: str) -> None:
        """Show what is kept."""
        if self.field.edit.text() != text:
            self.field.edit.setText(text)
            self.refuse("")

    def refuse(self, why: str) -> None:
        """Say why it cannot be used; nothing: it can."""
        self._wrong.say(self._sentence(why))
        self.field.show_wrong(bool(why))
        self.field.edit.setAccessibleDescription(self._wrong.said())

    def _sentence(self, why: str) -> str:
        if why == "missing":
            gift = tr(" {nothing} is one too.", nothing=self.money.typed(0.0)) if self._may_be_nothing else ""
            return tr("An amount is wanted here.") + gift
        if why == "nothing":
            return tr("What is worth nothing is not worth looking at. Type what it would save you.")
        if not why:
            return ""
        typed = self.field.edit.text().strip()
        example = tr("Write it as {whole} or {parts}.", whole=self.money.typed(8.0), parts=self.money.typed(8.5))
        if typed.startswith(("-", "\u2212")):
            return tr("An amount cannot be below nothing. {example}", example=example)
        return tr("‘{typed}’ is not an amount yet. {example}", typed=typed, example=example)
