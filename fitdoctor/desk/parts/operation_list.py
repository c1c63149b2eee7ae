"""The work in order: stages, operations with boxes to tick, try-ons between double rules where the work halts on purpose."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.signs import paint_sign
from fitdoctor.desk.parts.text import Rule, SectionHead
from fitdoctor.desk.parts.tick_box import BOX, paint_box
from fitdoctor.desk.tokens import ROW_BAR
from fitdoctor.desk.words import tr, upper_first

BOX_LEFT, SEAM_EM, MINUTES_EM, WIDE_EM = 8.0, 9.0, 2.6, 34


@dataclass(frozen=True)
class Step:
    """One operation as it is shown."""

    id: str
    number: int
    text: str
    seam: str
    minutes: str
    try_on: bool
    care: str = ""


@dataclass(frozen=True)
class Stage:
    """A stage with its operations and the minutes they take."""

    title: str
    minutes: str
    steps: tuple[Step, ...]


class StepRow(Control):
    """One operation: the box ticks it off, the rest takes it in hand. Space ticks, Enter takes in hand."""

    ticked = Signal(str, bool)
    takenInHand = Signal(str)

    def __init__(self, look: Look, step: Step, done: bool, in_hand: bool, name: str) -> None:
        super().__init__(look, name)
        self.step, self.done = step, done
        self.setCheckable(True)
        self.setChecked(in_hand)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        kind = tr("Try on") if step.try_on else str(step.number)
        state = tr("done") if done else tr("not done")
        seam = tr("opens {seam}", seam=step.seam) if step.seam else ""
        parts = (kind, plain(step.text), seam, tr("{n} minutes", n=step.minutes), state, step.care)
        self.setAccessibleName(", ".join(part for part in parts if part))

    def _indent(self) -> float:
        return BOX_LEFT + self.look.px(BOX) + 12 + self.look.px(1.7)

    def _text(self) -> Paragraph:
        if not self.step.try_on:
            return Paragraph(self.look, self.step.text, "row")
        rest = self.step.text.removeprefix("Try on").lstrip(".;: ")
        return Paragraph(self.look, f"**{tr('Try on.')}** {upper_first(rest)}", "row")

    def _wide(self, width: int) -> bool:
        return width > self.look.px(WIDE_EM)

    def _text_width(self, width: int) -> float:
        seam = self.look.px(SEAM_EM) + 12 if self._wide(width) and not self.step.try_on else 0.0
        return max(1.0, width - self._indent() - seam - self.look.px(MINUTES_EM) - 12)

    def _below(self, width: int) -> list[tuple[Paragraph, str]]:
        rows = [(self.step.care, "care")]
        if not self._wide(width) and self.step.seam:
            rows.insert(0, (tr("Opens: {seam}", seam=self.step.seam), "ink-2"))
        return [(Paragraph(self.look, text, "small"), tone) for text, tone in rows if text]

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        wide = self._text_width(width)
        high = self._text().height(wide) + sum(part.height(wide) for part, _ in self._below(width))
        if self._wide(width) and self.step.seam and not self.step.try_on:
            high = max(high, Paragraph(self.look, self.step.seam, "small").height(self.look.px(SEAM_EM)))
        return max(self.look.grown(44 if not self.step.try_on else 50), ceil(high + (14 if not self.step.try_on else 24)))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(30), self.look.grown(44))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(16), self.look.grown(44))

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.height() < self.heightForWidth(self.width())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        inside = self.rect().contains(event.position().toPoint())
        self.setDown(False)
        if event.button() != Qt.MouseButton.LeftButton or not inside:
            return
        if event.position().x() < self._indent() - self.look.px(1.7):
            self.ticked.emit(self.step.id, not self.done)
        else:
            self.takenInHand.emit(self.step.id)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space:
            self.ticked.emit(self.step.id, not self.done)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.takenInHand.emit(self.step.id)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_ground(painter)
        look, width = self.look, self.width()
        wide, text = self._text_width(width), self._text()
        high = text.height(wide) + sum(part.height(wide) for part, _ in self._below(width))
        top = (self.height() - high) / 2
        self._paint_left(painter, top)
        tone = look.colour("ink-2" if self.done else "ink")
        text.paint(painter, QRectF(self._indent(), top, wide, 999), tone)
        y = top + text.height(wide)
        for part, colour in self._below(width):
            part.paint(painter, QRectF(self._indent(), y, wide, 999), look.colour(colour))
            y += part.height(wide)
        if self._wide(width) and self.step.seam and not self.step.try_on:
            seam = Paragraph(look, self.step.seam, "small")
            drop = text.base_line() - seam.base_line()
            left = width - look.px(MINUTES_EM) - look.px(SEAM_EM) - 12
            seam.paint(painter, QRectF(left, top + drop, look.px(SEAM_EM), 999), look.colour("ink-2"))
        box = QRectF(width - look.px(MINUTES_EM) - 10, top, look.px(MINUTES_EM), 99)
        Paragraph(look, self.step.minutes, "row").paint(painter, box, tone, Qt.AlignmentFlag.AlignRight)
        self.paint_ring(painter)
        painter.end()

    def _paint_ground(self, painter: QPainter) -> None:
        look = self.look
        if self.isChecked():
            painter.fillRect(self.rect(), look.colour("thread-tint"))
            painter.fillRect(0, 0, ROW_BAR, self.height(), look.colour("thread"))
        elif self.step.try_on or self.hovered:
            painter.fillRect(self.rect(), look.colour("paper-2"))
        if self.step.try_on:
            painter.setPen(QPen(look.colour("ink"), 1.5))
            for y in (1.0, 4.5, self.height() - 4.5, self.height() - 1.0):
                painter.drawLine(QRectF(0, y, self.width(), 0).topLeft(), QRectF(0, y, self.width(), 0).topRight())

    def _paint_left(self, painter: QPainter, top: float) -> None:
        look, size, line = self.look, self.look.px(BOX), self.look.line("row")
        box = QRectF(BOX_LEFT, top + (line - size) / 2, size, size)
        paint_box(painter, look, box, self.done)
        if self.step.try_on:
            wide = look.px(1.7)
            paint_sign(painter, "hanger", QRectF(box.right() + 6, top + (line - wide) / 2, wide, wide), look.colour("ink"))
            return
        number = Paragraph(look, str(self.step.number), "order")
        drop = self._text().base_line() - number.base_line()
        number.paint(painter, QRectF(box.right() + 14, top + drop, look.px(2), 99), look.colour("ink-2" if self.done else "ink"))


class _Heads(QWidget):
    """The heads of the columns."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.setFixedHeight(ceil(look.line("small")) + 2)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, width = self.look, self.width()
        ink, minutes = look.colour("ink-2"), look.px(MINUTES_EM)
        Paragraph(look, tr("Done"), "small").paint(painter, QRectF(BOX_LEFT, 0, 99, 40), ink)
        if width > look.px(WIDE_EM):
            left = width - minutes - look.px(SEAM_EM) - 12
            Paragraph(look, tr("Seam opened"), "small").paint(painter, QRectF(left, 0, look.px(SEAM_EM), 40), ink)
        box = QRectF(width - minutes - 10, 0, minutes, 40)
        Paragraph(look, tr("Min."), "small").paint(painter, box, ink, Qt.AlignmentFlag.AlignRight)
        painter.end()


class OperationList(QWidget):
    """Emits what is ticked off and what is taken in hand."""

    ticked = Signal(str, bool)
    takenInHand = Signal(str)

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.look = look
        self.setObjectName(name)
        self._rows = Rows()
        self.group = ControlGroup()
        self.keyed = False
        "Whether the last row taken in hand or ticked had the ring of the keyboard."
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._rows)

    def _take(self, row: StepRow) -> None:
        self.keyed = row.ringed
        self.takenInHand.emit(row.step.id)

    def _tick(self, row: StepRow, done: bool) -> None:
        self.keyed = row.ringed
        self.ticked.emit(row.step.id, done)

    def show_stages(self, stages: Sequence[Stage], done: Collection[str], in_hand: str) -> None:
        """Show the stages; what is done is ticked, what is in hand has a bar."""
        rows: list[QWidget] = [_Heads(self.look)]
        steps: list[StepRow] = []
        for number, stage in enumerate(stages):
            head = SectionHead(self.look, stage.title, stage.minutes)
            head.setContentsMargins(8, 12 if number else 0, 8, 0)
            rows.append(head)
            for step in stage.steps:
                row = StepRow(self.look, step, step.id in done, step.id == in_hand, f"{self.objectName()}-{step.id}")
                row.ticked.connect(lambda _id, on, who=row: self._tick(who, on))
                row.takenInHand.connect(lambda _id, who=row: self._take(who))
                steps.append(row)
                rows.append(row)
                if not step.try_on:
                    rows.append(Rule(self.look))
        self._rows.show_rows(rows)
        self.group = ControlGroup(steps)

    def step_rows(self) -> list[StepRow]:
        """The rows of operations, in order."""
        return [row for row in self._rows.rows() if isinstance(row, StepRow)]
