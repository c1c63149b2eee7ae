"""Setting a paragraph: words into lines, **bold** within them, lengths kept whole with their fractions set in type."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.fraction import Fraction

_FRACTION = re.compile(r"(?<![\d/.])(?:(\d+)[ \u00a0])?(\d{1,2})/(2|3|4|8|16|32|64)(?![\d/])")
_KEPT = re.compile(r"(?<=\d) (?=\d{1,2}/\d)|(?<=[\d/]) (?=(?:in|cm|mm|min|h)\b)|(?<=\bh) (?=\d)|(?<=\bin all) (?=\d)")
_BOLD_OF = {"small": "small-bold", "body": "bold", "row": "bold"}


@dataclass(frozen=True)
class Piece:
    """A stretch of one font: text, or a fraction."""

    text: str
    role: str
    fraction: Fraction | None = None


@dataclass(frozen=True)
class Word:
    """What stays together on a line."""

    pieces: tuple[Piece, ...]
    width: float
    space: float
    ends_line: bool = False


@dataclass(frozen=True)
class Line:
    words: tuple[Word, ...]
    width: float


@dataclass(frozen=True)
class Paragraph:
    """A text in one size of the scale, ready to be broken into lines of any width."""

    look: Look
    text: str
    role: str

    @property
    def words(self) -> tuple[Word, ...]:
        """The words in order."""
        return _words(self.look, self.text, self.role)

    def natural_width(self) -> float:
        """Its width on one line, or that of its longest line where it has breaks of its own."""
        return max((line.width for line in self.lines(1e6)), default=0.0)

    def least_width(self) -> float:
        """The width of its widest word."""
        return max((word.width for word in self.words), default=0.0)

    def lines(self, width: float) -> tuple[Line, ...]:
        """The lines at a width in pixels."""
        return _lines(self.look, self.text, self.role, width)

    def height(self, width: float) -> float:
        """The height at a width, pixels."""
        return len(self.lines(width)) * self.look.line(self.role)

    def paint(self, painter: QPainter, box: QRectF, colour: QColor, align: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignLeft) -> None:
        """Paint it from the top of a box, broken at its width."""
        metrics, high = self.look.metrics(self.role), self.look.line(self.role)
        base = box.top() + (high - metrics.height()) / 2 + metrics.ascent()
        for line in self.lines(box.width()):
            slack = box.width() - line.width
            start = {Qt.AlignmentFlag.AlignRight: slack, Qt.AlignmentFlag.AlignHCenter: slack / 2}.get(align, 0.0)
            _paint_line(painter, self.look, line, QPointF(box.left() + start, base), colour)
            base += high

    def base_line(self) -> float:
        """How far below the top the first line stands."""
        metrics = self.look.metrics(self.role)
        return (self.look.line(self.role) - metrics.height()) / 2 + metrics.ascent()


def plain(text: str) -> str:
    """The text without its marks for bold, as it is spoken."""
    return text.replace("**", "")


@lru_cache(maxsize=4096)
def _words(look: Look, text: str, role: str) -> tuple[Word, ...]:
    words: list[Word] = []
    rows = _KEPT.sub("\u00a0", text).split("\n")
    bold = False
    for row in rows:
        for part in row.split(" "):
            pieces: list[Piece] = []
            for nth, stretch in enumerate(part.split("**")):
                bold = not bold if nth else bold
                pieces += _pieces(stretch, _BOLD_OF.get(role, role) if bold else role)
            words.append(_word(look, pieces, role))
        words[-1] = Word(words[-1].pieces, words[-1].width, 0.0, ends_line=True)
    return tuple(words)


def _pieces(text: str, role: str) -> Iterator[Piece]:
    done = 0
    for found in _FRACTION.finditer(text):
        before = text[done : found.start()] + (found[1] or "")
        if before:
            yield Piece(before, role)
        yield Piece("", role, Fraction(found[2], found[3]))
        done = found.end()
    if text[done:]:
        yield Piece(text[done:], role)


def _word(look: Look, pieces: list[Piece], role: str) -> Word:
    width = sum(_width(look, piece) for piece in pieces)
    return Word(tuple(pieces), width, look.metrics(role).horizontalAdvance(" "))


def _width(look: Look, piece: Piece) -> float:
    if piece.fraction:
        return piece.fraction.width(look.font(piece.role))
    return float(look.metrics(piece.role).horizontalAdvance(piece.text))


@lru_cache(maxsize=8192)
def _lines(look: Look, text: str, role: str, width: float) -> tuple[Line, ...]:
    lines: list[Line] = []
    taken: list[Word] = []
    used = 0.0
    for word in _words(look, text, role):
        if taken and used + taken[-1].space + word.width > width + 0.01:
            lines.append(Line(tuple(taken), used))
            taken, used = [], 0.0
        used += (taken[-1].space if taken else 0.0) + word.width
        taken.append(word)
        if word.ends_line:
            lines.append(Line(tuple(taken), used))
            taken, used = [], 0.0
    return tuple(lines)


def _paint_line(painter: QPainter, look: Look, line: Line, at: QPointF, colour: QColor) -> None:
    x = at.x()
    for word in line.words:
        for piece in word.pieces:
            font = look.font(piece.role)
            if piece.fraction:
                piece.fraction.paint(painter, font, QPointF(x, at.y()), colour)
            else:
                painter.setFont(font)
                painter.setPen(colour)
                painter.drawText(QPointF(x, at.y()), piece.text)
            x += _width(look, piece)
        x += word.space

