"""The amounts that were really used, mark by mark, beside those that were worked out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.jobbook.typed_row import TypedRow
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Rule, SectionHead, Words
from fitdoctor.desk.words import tr, upper_first
from fitdoctor.jobbook.reading import MarkThen
from fitdoctor.sheet import TAKE_WORDS
from fitdoctor.shop import Shop
from fitdoctor.units import parse_length


class AmountsUsed(Rows):
    """Emits the mark and the amount used in all, mm; None where it is taken back."""

    used = Signal(str, object)

    def __init__(self, look: Look, shop: Shop, marks: Sequence[MarkThen], known: Mapping[str, float]) -> None:
        super().__init__("jobs-used")
        self.look, self.shop = look, shop
        self.typed: dict[str, TypedRow] = {}
        self._marks = tuple(marks)
        as_marked = Link(look, tr("All as marked") if marks else "", "jobs-used-as-marked")
        as_marked.clicked.connect(self.take_all)
        rows: list[QWidget] = [SectionHead(look, tr("Amounts used"), as_marked)]
        for mark in marks:
            rows += [self._row(mark, known.get(mark.id)), Rule(look)]
        if not marks:
            rows.append(Words(look, tr("Nothing was marked on the cloth."), "reading", name="jobs-used-none"))
        self.show_rows(rows)

    def _row(self, mark: MarkThen, used_mm: float | None) -> TypedRow:
        words = f"{upper_first(mark.where)}: {TAKE_WORDS.get(mark.take, mark.take)}"
        field = Field(self.look, f"jobs-used-{mark.id}", tr("Used in all, {where}", where=mark.where), "", self.shop.unit)
        marked = tr("marked, in all: {length}", length=self.shop.length(mark.total_mm))
        row = TypedRow(self.look, words, marked, field, lambda text: parse_length(text, self.shop.unit))
        if used_mm is not None:
            row.show_text(self._text(used_mm))
        row.typed.connect(lambda value: self.used.emit(mark.id, value))
        self.typed[mark.id] = row
        return row

    def _text(self, mm: float) -> str:
        return self.shop.length(mm).rsplit(" ", 1)[0]

    def take_all(self) -> None:
        """Every amount was used as it was marked."""
        for mark in self._marks:
            self.typed[mark.id].show_text(self._text(mark.total_mm))
            self.used.emit(mark.id, mark.total_mm)
