"""The type: faces that come with the program, one scale of sizes, and the size at which the small letters are read at arm's length."""

from __future__ import annotations

import importlib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from PySide6.QtGui import QFont, QFontDatabase, QFontMetricsF

Face = Literal["sans", "serif"]

SMALL_LETTERS_PX = 8.4
"Least height of the small letters at 100 % and 96 dots an inch."
_PACKAGES = {"sans": "font_source_sans_pro", "serif": "font_source_serif_pro"}
_CUTS = ("", "Bold", "Semibold", "It", "BoldIt")
_FALLBACK = {"sans": "DejaVu Sans", "serif": "DejaVu Serif"}


@dataclass(frozen=True)
class Cut:
    """One size of the scale: a multiple of the em, a face, a weight, and the height of a line as a multiple of the size."""

    em: float
    face: Face = "sans"
    bold: bool = False
    italic: bool = False
    leading: float = 1.35


SCALE: dict[str, Cut] = {
    "small": Cut(0.88),
    "small-bold": Cut(0.88, bold=True),
    "body": Cut(1.0),
    "row": Cut(1.0, leading=1.3),
    "bold": Cut(1.0, bold=True, leading=1.3),
    "reading": Cut(1.03, "serif", leading=1.5),
    "lead": Cut(1.06, "serif", leading=1.4),
    "name": Cut(1.18, "serif", bold=True, italic=True, leading=1.2),
    "step": Cut(0.94, bold=True, leading=1.3),
    "step-number": Cut(1.12, "serif", bold=True, leading=1.2),
    "order": Cut(1.0, "serif", bold=True, leading=1.3),
    "number": Cut(1.29, bold=True, leading=1.2),
    "section-title": Cut(1.29, "serif", bold=True, leading=1.25),
    "question": Cut(1.47, "serif", bold=True, leading=1.25),
    "verdict": Cut(1.59, "serif", bold=True, leading=1.2),
    "entry": Cut(1.65, bold=True, leading=1.2),
    "rack-number": Cut(1.29, "serif", bold=True, leading=1.2),
    "rack-answer": Cut(1.35, bold=True, leading=1.25),
    "rack-question": Cut(2.12, "serif", bold=True, leading=1.18),
    "page-title": Cut(1.76, "serif", bold=True, leading=1.2),
}
"Every size of text in the window."


@dataclass(frozen=True)
class Faces:
    """The two families in use, and the body size in pixels at 100 %."""

    sans: str
    serif: str
    body_px: int


@cache
def load_faces() -> Faces:
    """The faces of the program; where their files are missing, those of the system. Needs a running Qt application."""
    families = {face: _family(face) for face in ("sans", "serif")}
    return faces_of(families["sans"], families["serif"])


def faces_of(sans: str, serif: str) -> Faces:
    """Two families with the body size at which their small letters are tall enough."""
    return Faces(sans, serif, next((px for px in range(12, 24) if _small_letters(sans, px) >= SMALL_LETTERS_PX), 17))


def _small_letters(family: str, px: int) -> float:
    return QFontMetricsF(_font(family, px, bold=False, italic=False)).xHeight()


def _family(face: str) -> str:
    try:
        files: Mapping[str, str] = importlib.import_module(_PACKAGES[face]).font_files_ttf
    except (ImportError, AttributeError):
        return _FALLBACK[face]
    stem = "SourceSansPro" if face == "sans" else "SourceSerifPro"
    loaded = [QFontDatabase.addApplicationFont(files[stem + cut]) for cut in _CUTS if stem + cut in files]
    found = [name for number in loaded if number >= 0 for name in QFontDatabase.applicationFontFamilies(number)]
    return found[0] if found else _FALLBACK[face]


@cache
def font_of(faces: Faces, em: float, role: str) -> QFont:
    """The font of a size of the scale; em is the body size in pixels."""
    cut = SCALE[role]
    family = faces.sans if cut.face == "sans" else faces.serif
    return _font(family, max(1, round(em * cut.em)), cut.bold, cut.italic)


def _font(family: str, px: int, bold: bool, italic: bool) -> QFont:
    font = QFont(family)
    font.setPixelSize(px)
    font.setBold(bold)
    font.setItalic(italic)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font
