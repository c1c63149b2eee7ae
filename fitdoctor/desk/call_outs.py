"""The call-outs beside a figure: one under another at its right edge, in the order of the places they mean."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtWidgets import QGraphicsScene

from fitdoctor.desk.call_out import EM, CallOut, CallOutText, ball_radius, spread
from fitdoctor.desk.figure_tones import FigureTones

GAP = 6.0


class CallOuts:
    """Keeps the items of the scene; `chosen` is told the entry of one that is clicked."""

    def __init__(self, content: QGraphicsScene, tones: FigureTones, chosen: Callable[[str], None]) -> None:
        self._content, self._tones, self._chosen = content, tones, chosen
        self._em = EM
        self.items: list[CallOut] = []

    def show(self, texts: Sequence[CallOutText]) -> None:
        """Put these in place of those before."""
        for item in self.items:
            self._content.removeItem(item)
        ordered = sorted(texts, key=lambda text: text.at[1])
        self.items = [CallOut(text, self._tones, self._chosen, self._em) for text in ordered]
        for item in self.items:
            self._content.addItem(item)

    def dress(self, tones: FigureTones, em: float) -> None:
        """Show the same in other colours or another size of text."""
        self._tones, self._em = tones, em
        self.show([item.text for item in self.items])

    def room_px(self) -> float:
        """Pixels they need at the right edge."""
        return 2 * ball_radius(self._em) + GAP + 2 if self.items else 0.0

    def place(self, seen: QRectF, scale: float) -> None:
        """Stand them at the right edge of what is in sight (mm), clear of one another."""
        radius = ball_radius(self._em)
        edge = (radius + GAP - 2) / scale
        heights = spread([item.text.at[1] for item in self.items], (2 * radius + GAP) / scale, seen.top() + edge, seen.bottom() - edge)
        for item, height in zip(self.items, heights, strict=True):
            item.place(QPointF(seen.right() - (radius + GAP) / scale, height), scale)
