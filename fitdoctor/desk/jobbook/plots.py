"""The plots of the page of figures, painted in ink and thread: axes with words, points with their numbers."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, sqrt

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.tokens import HAIR, THREAD_LINE
from fitdoctor.desk.words import tr
from fitdoctor.jobbook.figures import Bin, Estimate, Scores

_HIGH_EM, _DOT_EM = 17.0, 0.32
_LEAST_SPAN = 1e-9


class Plot(QWidget):
    """A box with an axis at its left and below; heirs paint into it. Values run from `low` to `high` upwards, 0 to 1 across.

    Args:
        says: what it shows, for those who cannot see it.
    """

    def __init__(self, look: Look, name: str, says: str, high_em: float = _HIGH_EM) -> None:
        super().__init__()
        self.look, self._high_em = look, high_em
        self.low, self.high = 0.0, 1.0
        self.setObjectName(name)
        self.setAccessibleName(says)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(22), self.look.px(self._high_em))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(14), self.look.px(self._high_em))

    # ---- the frame

    def box(self) -> QRectF:
        """The room between the axes, pixels."""
        line = self.look.line("small")
        left = self._left_words() + 10
        return QRectF(left, line * 0.7, max(1.0, self.width() - left - 2 * self.dot() - 4), max(1.0, self.height() - 2.9 * line))

    def _left_words(self) -> float:
        return max((self.look.metrics("small").horizontalAdvance(text) for _, text in self.ticks()), default=0.0)

    def dot(self) -> float:
        """Radius of a point, pixels."""
        return self.look.em * _DOT_EM

    def at(self, across: float, value: float) -> QPointF:
        """Where a value stands."""
        box = self.box()
        share = (value - self.low) / max(_LEAST_SPAN, self.high - self.low)
        return QPointF(box.left() + across * box.width(), box.bottom() - share * box.height())

    def ticks(self) -> Sequence[tuple[float, str]]:
        """Values named at the left."""
        return ()

    def below(self) -> Sequence[tuple[float, str]]:
        """Places named below: share of the width, words."""
        return ()

    def below_title(self) -> str:
        """What runs across."""
        return ""

    def draw(self, painter: QPainter) -> None:
        """Paint what is shown."""
        raise NotImplementedError

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box, ink = self.box(), self.look.colour("ink-2")
        painter.setFont(self.look.font("small"))
        for value, text in self.ticks():
            y = self.at(0, value).y()
            painter.setPen(QPen(self.look.colour("rule"), HAIR))
            painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
            painter.setPen(ink)
            where = QRectF(0, y - self.look.line("small") / 2, box.left() - 8, self.look.line("small"))
            painter.drawText(where, int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter), text)
        painter.setPen(QPen(self.look.colour("ink"), HAIR))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        painter.drawLine(box.topLeft(), box.bottomLeft())
        self._paint_below(painter, box)
        self.draw(painter)
        painter.end()

    def _paint_below(self, painter: QPainter, box: QRectF) -> None:
        line, metrics = self.look.line("small"), self.look.metrics("small")
        painter.setPen(self.look.colour("ink-2"))
        end = -1e9
        for across, text in self.below():
            wide = metrics.horizontalAdvance(text)
            left = min(max(0.0, box.left() + across * box.width() - wide / 2), self.width() - wide)
            if left > end + 8:
                painter.drawText(QPointF(left, box.bottom() + 0.95 * line), text)
                end = left + wide
        title = self.below_title()
        painter.drawText(QRectF(0, box.bottom() + 1.2 * line, box.right(), line), int(Qt.AlignmentFlag.AlignRight), title)

    def paint_dot(self, painter: QPainter, at: QPointF, radius: float, filled: bool = True) -> None:
        """A point; open where it lies outside what was foreseen."""
        painter.setPen(QPen(self.look.colour("thread"), 2))
        painter.setBrush(self.look.colour("thread" if filled else "paper"))
        painter.drawEllipse(at, radius, radius)


class CalibrationPlot(Plot):
    """What was said against what came true: on the slanting line it was said just right. Larger points stand for more causes."""

    def __init__(self, look: Look, bins: Sequence[Bin]) -> None:
        said = [tr("said {said:.0%}, came true {true:.0%} of {n}", said=b.said, true=b.came_true, n=b.causes) for b in bins]
        super().__init__(look, "figures-calibration", tr("Chances said, and how often they came true: {points}", points="; ".join(said)))
        self._bins = tuple(bins)

    def ticks(self) -> Sequence[tuple[float, str]]:
        return [(tenths / 10, tr("{n} in 10", n=tenths)) for tenths in (0, 2, 4, 6, 8, 10)]

    def below(self) -> Sequence[tuple[float, str]]:
        return self.ticks()

    def below_title(self) -> str:
        return tr("chance that was said")

    def draw(self, painter: QPainter) -> None:
        pen = QPen(self.look.colour("edge"), HAIR)
        pen.setDashPattern([4, 3])
        painter.setPen(pen)
        painter.drawLine(self.at(0, 0), self.at(1, 1))
        most = max((b.causes for b in self._bins), default=1)
        points = [self.at(b.said, b.came_true) for b in self._bins]
        painter.setPen(QPen(self.look.colour("thread"), HAIR))
        painter.drawPolyline(points)
        for b, point in zip(self._bins, points, strict=True):
            self.paint_dot(painter, point, self.dot() * (0.6 + 0.9 * sqrt(b.causes / most)))


class ScorePlot(Plot):
    """A score month by month; nearer to 0 is better."""

    def __init__(self, look: Look, months: Sequence[Scores], which: str, title: str) -> None:
        values = [getattr(month, which) for month in months]
        said = "; ".join(f"{month.from_day:%Y-%m}: {value:.2f}" for month, value in zip(months, values, strict=True))
        super().__init__(look, f"figures-{which.replace('_', '-')}", f"{title}: {said}", 10.0)
        self._months, self._values = tuple(months), values
        self.low, self.high = (min(0.0, *values), max(0.0, *values)) if values else (0.0, 1.0)
        reach = max(0.05, self.high - self.low)
        self.low, self.high = (self.low - 0.1 * reach, 0.0) if self.low < 0 else (0.0, self.high + 0.1 * reach)

    def ticks(self) -> Sequence[tuple[float, str]]:
        return [(value, f"{value:.2f}") for value in (0.0, (self.low + self.high) / 2, self.low if self.low < 0 else self.high)]

    def below(self) -> Sequence[tuple[float, str]]:
        return [(self._across(number), f"{month.from_day:%m.%Y}") for number, month in enumerate(self._months)]

    def _across(self, number: int) -> float:
        return number / (len(self._months) - 1) if len(self._months) > 1 else 0.5

    def draw(self, painter: QPainter) -> None:
        points = [self.at(self._across(number), value) for number, value in enumerate(self._values)]
        painter.setPen(QPen(self.look.colour("thread"), THREAD_LINE))
        painter.drawPolyline(points)
        for point in points:
            self.paint_dot(painter, point, self.dot())


class EstimatePlot(Plot):
    """A bar from best to worst for each job, a line at what was likely, a point at what was spent: open where it lies outside the bar."""

    def __init__(self, look: Look, jobs: Sequence[Estimate]) -> None:
        within = sum(job.within for job in jobs)
        says = tr("Minutes of {n} jobs: in {within} of them what was spent lies between best and worst.", n=len(jobs), within=within)
        super().__init__(look, "figures-estimates", says)
        self._jobs = tuple(jobs)
        self.high = max((max(job.high, job.spent) for job in jobs), default=60.0) * 1.05

    def ticks(self) -> Sequence[tuple[float, str]]:
        step = 30 * max(1, ceil(self.high / 150))
        return [(minutes, f"{minutes // 60}:{minutes % 60:02d}") for minutes in range(0, ceil(self.high), step)]

    def below_title(self) -> str:
        return tr("jobs in the order in which they were closed")

    def draw(self, painter: QPainter) -> None:
        room = self.box().width() / len(self._jobs)
        wide = min(self.look.px(1.1), max(2.0, room * 0.6))
        for number, job in enumerate(self._jobs):
            across = (number + 0.5) / len(self._jobs)
            top, bottom, likely = self.at(across, job.high), self.at(across, job.low), self.at(across, job.likely)
            painter.fillRect(QRectF(top.x() - wide / 2, top.y(), wide, bottom.y() - top.y()), self.look.colour("thread-tint"))
            painter.setPen(QPen(self.look.colour("edge"), HAIR))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(top.x() - wide / 2, top.y(), wide, bottom.y() - top.y()))
            painter.drawLine(QPointF(top.x() - wide / 2, likely.y()), QPointF(top.x() + wide / 2, likely.y()))
            self.paint_dot(painter, self.at(across, job.spent), min(self.dot(), wide / 2), job.within)
