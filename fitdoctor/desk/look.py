"""How the window looks just now: theme, faces and size of text in one frozen value that every part is built with."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from PySide6.QtGui import QColor, QFont, QFontMetricsF

from fitdoctor.desk import figure_tones
from fitdoctor.desk.figure_tones import FigureTones
from fitdoctor.desk.tokens import DARK, DARK_HIGH, LIGHT, LIGHT_HIGH, TARGET, Tokens
from fitdoctor.desk.type import SCALE, Faces, font_of, load_faces

THREE_COLUMNS, TWO_COLUMNS = 66.0, 48.0
"Widths in em from which a page stands in three columns, in two."


@dataclass(frozen=True)
class Look:
    """What painters and layouts read. A change of theme or size is another look, and the window is built anew from it.

    Attributes:
        percent: size of the text.
        still: nothing moves; what would is there at once.
    """

    tokens: Tokens
    faces: Faces
    percent: int = 100
    still: bool = False

    @property
    def em(self) -> float:
        """The body size of the text, pixels."""
        return self.faces.body_px * self.percent / 100

    @property
    def tones(self) -> FigureTones:
        """The colours of drawn figures in this theme."""
        tones = figure_tones.DARK if self.dark else figure_tones.LIGHT
        return figure_tones.in_high_contrast(tones, self.tokens.thread) if self.tokens.high_contrast else tones

    @property
    def dark(self) -> bool:
        """Whether the ground is dark."""
        return self.tokens.name == "dark"

    def px(self, em: float) -> int:
        """A length in em as pixels: for widths and heights that hold text."""
        return round(self.em * em)

    def grown(self, px: float) -> int:
        """A length given at 100 % as it is at this size of text."""
        return round(px * self.percent / 100)

    def target(self) -> int:
        """Least height of what can be pressed."""
        return self.grown(TARGET)

    def colour(self, name: str) -> QColor:
        """A colour of the theme."""
        return QColor(self.tokens.colour(name))

    def font(self, role: str) -> QFont:
        """The font of a size of the scale."""
        return font_of(self.faces, self.em, role)

    def metrics(self, role: str) -> QFontMetricsF:
        """The measures of a size of the scale."""
        return _metrics(self.faces, self.em, role)

    def line(self, role: str) -> float:
        """The height of one line of a size of the scale, pixels."""
        cut = SCALE[role]
        return max(self.em * cut.em * cut.leading, self.metrics(role).height())

    def columns(self, width_px: int) -> int:
        """How many columns a page of this width has."""
        wide = width_px / self.em
        return 3 if wide >= THREE_COLUMNS else 2 if wide >= TWO_COLUMNS else 1


@cache
def _metrics(faces: Faces, em: float, role: str) -> QFontMetricsF:
    return QFontMetricsF(font_of(faces, em, role))


def look_of(dark: bool, percent: int = 100, faces: Faces | None = None, high_contrast: bool = False, still: bool = False) -> Look:
    """The look of a theme at a size of text. Needs a running Qt application."""
    light_or_dark = (LIGHT_HIGH, DARK_HIGH) if high_contrast else (LIGHT, DARK)
    return Look(light_or_dark[dark], faces or load_faces(), percent, still)
