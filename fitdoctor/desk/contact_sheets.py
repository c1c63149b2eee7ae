"""Contact sheets: all pictures of a kind side by side, to be looked over."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QImage, QPainter

from fitdoctor.desk.painter import FigureTones
from fitdoctor.desk.pictures import Pictures
from fitdoctor.figure.after import after_diagram
from fitdoctor.figure.diagrams import Diagram, check_diagram, measure_diagram, why_diagram
from fitdoctor.knowledge.knowledge import Knowledge

SMALL = (300, 260)


def contact_sheet(
    knowledge: Knowledge, tones: FigureTones, columns: int = 6, size: tuple[int, int] = (315, 340), captions: bool = True
) -> QImage:
    """Every drawn symptom on the garments it shows on first, as one picture to be looked over."""
    pictures, cells = Pictures(knowledge.figures), []
    for symptom in sorted(knowledge.symptoms.values(), key=lambda entry: (entry.garments[0], entry.view, entry.zone, entry.id)):
        image = pictures.symptom(knowledge, symptom, symptom.garments[0], size, 1.0, tones)
        if image is not None:
            cells.append((image, symptom.short or symptom.title))
    return tiled(cells, columns, size, tones, captions)


def tiled(cells: Sequence[tuple[QImage, str]], columns: int, size: tuple[int, int], tones: FigureTones, captions: bool = True) -> QImage:
    """Pictures in rows with their captions below."""
    gap, line = 14, 40 if captions else 0
    wide, high = size
    rows = -(-len(cells) // columns) or 1
    sheet = QImage(gap + columns * (wide + gap), gap + rows * (high + line + gap), QImage.Format.Format_RGB32)
    sheet.fill(QColor(tones.colours["paper"]))
    painter = QPainter(sheet)
    font = QFont(tones.font)
    font.setPixelSize(15)
    painter.setFont(font)
    painter.setPen(tones.colour("text"))
    for i, (image, caption) in enumerate(cells):
        x, y = gap + (i % columns) * (wide + gap), gap + (i // columns) * (high + line + gap)
        painter.drawImage(x, y, image)
        if captions:
            painter.drawText(QRectF(x + 2, y + high + 4, wide - 4, line), int(Qt.TextFlag.TextWordWrap), caption)
    painter.end()
    return sheet


def explaining_sheets(knowledge: Knowledge, tones: FigureTones, columns: int = 6) -> Iterator[tuple[str, QImage]]:
    """(name, sheet) of the pictures that explain: why causes show, how checks and measurements are taken, the garment after the work."""
    pictures = Pictures(knowledge.figures)
    for name, diagrams in (("causes", _causes), ("checks", _checks), ("measurements", _measurements), ("after", _after)):
        drawn = [(diagram, title) for diagram, title in diagrams(knowledge) if diagram]
        cells = [(pictures.picture(d.scene, SMALL, 1.0, tones, d.crop, d.overlay), title) for d, title in drawn]
        yield name, tiled(cells, columns, SMALL, tones)


def _causes(knowledge: Knowledge) -> Iterator[tuple[Diagram | None, str]]:
    for cause in knowledge.causes.values():
        yield why_diagram(knowledge, cause, next(iter(cause.how_common), "")), cause.short or cause.title


def _checks(knowledge: Knowledge) -> Iterator[tuple[Diagram | None, str]]:
    for check in knowledge.checks.values():
        garments = [garment for drawing in check.draw for garment in drawing.garments] or list(check.garments)
        yield check_diagram(knowledge, check, garments[0]) if garments else None, check.title


def _measurements(knowledge: Knowledge) -> Iterator[tuple[Diagram | None, str]]:
    for entry in knowledge.measurements.values():
        yield measure_diagram(knowledge, entry, next(iter(entry.garments), "trousers")), entry.title


def _after(knowledge: Knowledge) -> Iterator[tuple[Diagram | None, str]]:
    for method in knowledge.methods.values():
        causes = [knowledge.causes[cause] for cause in method.treats if cause in knowledge.causes]
        fitting = ((c, g) for c in causes for g in method.garments if knowledge.suits(tuple(c.how_common), g))
        cause, garment = next(fitting, (None, ""))
        yield after_diagram(knowledge, cause, method, garment) if cause and method.kind == "alteration" else None, method.title
