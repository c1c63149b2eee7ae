"""The step tape: seven lengths of a tape measure, each with how it stands: sewn, basted or not begun."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMenu, QSizePolicy, QStackedLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.control import Control, ControlGroup, paint_edge
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.parts.text import OneLine
from fitdoctor.desk.step_names import StepState
from fitdoctor.desk.tokens import HAIR, MARGIN, THREAD_LINE
from fitdoctor.desk.words import tr

HIGH = 82
_PAD = 12
LAST = 7


class StepButton(Control):
    """One length of the tape."""

    def __init__(self, look: Look, number: int, state: StepState) -> None:
        super().__init__(look, f"tape-step-{state.id}")
        self.number, self.state = number, state
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.show_state(state)

    def show_state(self, state: StepState) -> None:
        """Show how the step stands."""
        self.state = state
        thread = {"sewn": tr("settled"), "basted": tr("something open"), "none": tr("not begun")}[state.thread]
        self.setAccessibleName(
            tr("Step {number} of 7, {title}, {stands}, {thread}", number=self.number, title=state.title, stands=state.stands, thread=thread)
        )
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(9), self.look.grown(HIGH))

    def minimumSizeHint(self) -> QSize:
        return QSize(40, self.look.grown(HIGH))

    def least_width(self) -> float:
        """The room its two lines need."""
        return max(self._title().natural_width() + self._indent(), self._stands().natural_width()) + 2 * _PAD - 4

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.width() < self.least_width()

    def _title(self) -> Paragraph:
        return Paragraph(self.look, self.state.title, "step")

    def _stands(self) -> Paragraph:
        return Paragraph(self.look, self.state.stands, "small")

    def _indent(self) -> float:
        return self.look.px(1.05)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, wide, high, on = self.look, self.width(), self.height(), self.isChecked()
        painter.fillRect(self.rect(), look.colour("paper" if on else "paper-2"))
        if on:
            painter.fillRect(0, 0, wide, 4, look.colour("ink"))
        painter.setPen(QPen(look.colour("edge"), HAIR))
        painter.drawLine(QPointF(0.75, 0), QPointF(0.75, high))
        if self.number == LAST:
            painter.drawLine(QPointF(wide - 0.75, 0), QPointF(wide - 0.75, high))
        self._paint_words(painter, on)
        self._paint_thread(painter, high - look.grown(14))
        if not on:
            painter.setPen(QPen(look.colour("edge"), 1))
            for nth in range(1, 8):
                x = round(wide * nth / 8) + 0.5
                painter.drawLine(QPointF(x, high - 7), QPointF(x, high))
        self.paint_ring(painter, QRectF(2, 5, wide - 3, high - 7))
        painter.end()
        if not on:
            paint_edge(self, look, below=True)

    def _paint_words(self, painter: QPainter, on: bool) -> None:
        look = self.look
        tone = look.colour("ink" if on or self.hovered else "ink-2")
        number, title, stands = Paragraph(look, str(self.number), "step-number"), self._title(), self._stands()
        base = look.grown(10) + title.base_line()
        number.paint(painter, QRectF(_PAD, base - number.base_line(), 99, 40), tone)
        title.paint(painter, QRectF(_PAD + self._indent(), base - title.base_line(), 999, 40), tone)
        stands.paint(painter, QRectF(_PAD, base + look.line("small") * 0.98 - stands.base_line(), 999, 40), look.colour("ink-2"))

    def _paint_thread(self, painter: QPainter, y: float) -> None:
        if self.state.thread == "none":
            return
        pen = QPen(self.look.colour("ink-2"), THREAD_LINE)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        if self.state.thread == "basted":
            pen.setDashPattern([2.2, 1.4])
        painter.setPen(pen)
        painter.drawLine(QPointF(_PAD, y), QPointF(self.width() - _PAD, y))


class StepTape(QWidget):
    """The tape; where it does not fit, one line that says where one is, and all steps as a menu."""

    stepWanted = Signal(str)

    def __init__(self, look: Look, steps: Sequence[StepState]) -> None:
        super().__init__()
        self.look, self.steps = look, list(steps)
        self.setObjectName("tape")
        self.setAutoFillBackground(True)
        self.setAccessibleName(tr("The seven steps"))
        self.buttons = [StepButton(look, number, state) for number, state in enumerate(steps, 1)]
        self.group = ControlGroup(self.buttons, exclusive=True)
        for button in self.buttons:
            button.clicked.connect(lambda _on=False, who=button: self._press(who))
        self._where = OneLine(look, "", "bold", name="tape-where")
        self._stands = OneLine(look, "", "small", "ink-2", "tape-stands")
        self._all = Button(look, tr("All steps"), "tape-all")
        self._all.clicked.connect(self.show_menu)
        self._long, self._short = self._long_tape(), self._short_tape()
        self._stack = QStackedLayout(self)
        self._stack.setSizeConstraint(QStackedLayout.SizeConstraint.SetNoConstraint)
        self._stack.addWidget(self._long)
        self._stack.addWidget(self._short)
        self._chosen = steps[0].id

    def _long_tape(self) -> QWidget:
        tape = QWidget()
        row = QHBoxLayout(tape)
        row.setContentsMargins(MARGIN, 0, MARGIN, 0)
        row.setSpacing(0)
        for button in self.buttons:
            row.addWidget(button, 1)
        return tape

    def _short_tape(self) -> QWidget:
        line = QWidget()
        row = QHBoxLayout(line)
        row.setContentsMargins(MARGIN, 8, MARGIN, 8)
        row.setSpacing(20)
        row.addWidget(self._where)
        row.addWidget(self._stands)
        row.addStretch(1)
        row.addWidget(self._all)
        return line

    def _press(self, button: StepButton) -> None:
        button.setChecked(True)
        self.stepWanted.emit(button.state.id)

    def show_steps(self, steps: Sequence[StepState], chosen: str) -> None:
        """Show how each step stands, and which is open."""
        self.steps, self._chosen = list(steps), chosen
        for button, state in zip(self.buttons, steps, strict=True):
            button.show_state(state)
            button.setChecked(state.id == chosen)
        self.group.rest()
        number, state = next((n, s) for n, s in enumerate(steps, 1) if s.id == chosen)
        self._where.say(tr("{number} of 7  {title}", number=number, title=state.title))
        self._stands.say(state.stands)
        self.fold(self.width())

    def chosen(self) -> str:
        """The step that is open."""
        return self._chosen

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fold(event.size().width())

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        paint_edge(self, self.look, below=True)

    def fold(self, width: int) -> None:
        """Choose the long tape or the short line for a width."""
        each = (width - 2 * MARGIN) / len(self.buttons)
        short = any(button.least_width() > each for button in self.buttons)
        self._stack.setCurrentWidget(self._short if short else self._long)
        self.setFixedHeight(max(self.look.target() + 16, 60) if short else self.look.grown(HIGH))

    def show_menu(self) -> None:
        """All steps as a menu."""
        menu = QMenu(self)
        menu.setObjectName("tape-menu")
        for number, state in enumerate(self.steps, 1):
            action = menu.addAction(f"{number}  {state.title}" + (f": {state.stands}" if state.stands else ""))
            action.triggered.connect(lambda _on=False, step=state.id: self.stepWanted.emit(step))
        menu.popup(self._all.mapToGlobal(self._all.rect().bottomLeft()))
