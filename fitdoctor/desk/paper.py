"""The job sheet on paper: as HTML with its pictures in it, as PDF, as pages to look at before printing."""

from __future__ import annotations

import base64
import os
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QLocale, QMarginsF, QRectF, QSizeF
from PySide6.QtGui import (
    QGuiApplication,
    QImage,
    QImageWriter,
    QPagedPaintDevice,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
    QTextDocument,
)
from PySide6.QtWidgets import QApplication

from fitdoctor.amounts.marks import Mark
from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.desk.background import Turns, in_one_go
from fitdoctor.desk.call_out import draw_call_out, spread
from fitdoctor.desk.look import look_of
from fitdoctor.desk.painter import LIGHT
from fitdoctor.desk.parts.mark_diagram import diagram_image
from fitdoctor.desk.pictures import Pictures
from fitdoctor.desk.type import load_faces
from fitdoctor.figure.after import after_scene, sewn_anew
from fitdoctor.figure.choose import figure_of, symptom_drawing
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.marks import mark_place, mark_shapes
from fitdoctor.figure.reach import anchor, fitted
from fitdoctor.figure.shapes import Shape
from fitdoctor.knowledge.entries import Symptom, View
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.sheet import Sheet, as_html, letter_of, write_sheet
from fitdoctor.units import MM_PER_INCH

FIGURE, AFTER = (440, 560), (440, 440)
MARGIN_MM = 14.0
DOTS_AN_INCH = 96.0
PRINT_DOTS = 300
BALL_EM = 22.0
DIAGRAM_DPR = 3.0


def sheet_html(knowledge: Knowledge, assessment: Assessment) -> bytes:
    """The job sheet as one HTML file with its pictures in it."""
    _running()
    return as_html(write_sheet(knowledge, assessment), sheet_pictures(knowledge, assessment)).encode()


def sheet_pdf(knowledge: Knowledge, assessment: Assessment, sheet: Sheet | None = None, pictures: Mapping[str, str] | None = None) -> bytes:
    """The job sheet as PDF on the paper that is usual where the user lives."""
    _running()
    store = QByteArray()
    buffer = QBuffer(store)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setPageLayout(page_layout())
    writer.setResolution(PRINT_DOTS)
    writer.setTitle(assessment.case.title or knowledge.garment(assessment.case.garment).title)
    writer.setCreator("fitdoctor")
    print_sheet(sheet or write_sheet(knowledge, assessment), pictures or sheet_pictures(knowledge, assessment), writer)
    buffer.close()
    return bytes(store.data())


def print_sheet(sheet: Sheet, pictures: Mapping[str, str], device: QPagedPaintDevice) -> None:
    """Print a sheet on a printer or into a PDF."""
    document(sheet, pictures).print_(device)


def document(sheet: Sheet, pictures: Mapping[str, str]) -> QTextDocument:
    """The sheet as a document that can be printed."""
    text = QTextDocument()
    text.setDocumentMargin(0)
    text.setMetaInformation(QTextDocument.MetaInformation.CssMedia, "print")
    text.setHtml(as_html(sheet, pictures))
    return text


def page_layout() -> QPageLayout:
    """Letter where lengths are American, else A4, with the sheet's margins."""
    american = QLocale().measurementSystem() == QLocale.MeasurementSystem.ImperialUSSystem
    size = QPageSize(QPageSize.PageSizeId.Letter if american else QPageSize.PageSizeId.A4)
    margins = QMarginsF(MARGIN_MM, MARGIN_MM, MARGIN_MM, MARGIN_MM)
    return QPageLayout(size, QPageLayout.Orientation.Portrait, margins, QPageLayout.Unit.Millimeter)


def page_images(sheet: Sheet, pictures: Mapping[str, str], width: int, dpr: float = 1.0) -> list[QImage]:
    """Every page as it will print, as a picture of so many logical pixels across."""
    paper = page_layout().pageSize().size(QPageSize.Unit.Millimeter)
    dots_a_mm = DOTS_AN_INCH / MM_PER_INCH
    inner = QSizeF((paper.width() - 2 * MARGIN_MM) * dots_a_mm, (paper.height() - 2 * MARGIN_MM) * dots_a_mm)
    text = document(sheet, pictures)
    text.setPageSize(inner)
    scale = width * dpr / (paper.width() * dots_a_mm)
    size = (round(width * dpr), round(width * dpr * paper.height() / paper.width()))
    pages = []
    for number in range(text.pageCount()):
        image = QImage(*size, QImage.Format.Format_RGB32)
        image.fill(0xFFFFFFFF)
        painter = QPainter(image)
        painter.scale(scale, scale)
        painter.translate(MARGIN_MM * dots_a_mm, MARGIN_MM * dots_a_mm - number * inner.height())
        text.drawContents(painter, QRectF(0, number * inner.height(), inner.width(), inner.height()))
        painter.end()
        image.setDevicePixelRatio(dpr)
        pages.append(image)
    return pages


# ---- pictures


def sheet_pictures(knowledge: Knowledge, assessment: Assessment) -> dict[str, str]:
    """The pictures of the sheet as data addresses: the figure with what shows, the same after the work, and each mark."""
    made: dict[str, str] = in_one_go(pictures_by_turns(knowledge, assessment))
    return made


def pictures_by_turns(knowledge: Knowledge, assessment: Assessment) -> Turns:
    """The same, one picture after another."""
    makers = list(_makers(knowledge, assessment, Pictures(knowledge.figures)))
    made: dict[str, str] = {}
    for number, (name, make) in enumerate(makers, 1):
        image = make()
        if image is not None:
            made[name] = _address(image)
        yield number, len(makers)
    return made


def _makers(knowledge: Knowledge, assessment: Assessment, pictures: Pictures) -> Iterator[tuple[str, Callable[[], QImage | None]]]:
    yield "figure", partial(_figure, knowledge, assessment, pictures)
    if assessment.methods:
        yield "after", partial(_after, knowledge, assessment, pictures)
    marks = [mark for worked in assessment.amounts if worked.calculation for mark in worked.calculation.marks]
    for number, mark in enumerate(marks):
        letter = letter_of(number)
        if len(mark.old) > 1:
            yield f"diagram-{letter}", partial(diagram_image, look_of(dark=False), assessment.shop, mark, DIAGRAM_DPR)
        if mark.stations:
            yield f"mark-{letter}", partial(_mark, knowledge, assessment.case, mark, pictures)


def _figure(knowledge: Knowledge, assessment: Assessment, pictures: Pictures) -> QImage | None:
    """The side on which most shows, with numbered call-outs."""
    case = assessment.case
    seen = [(n, knowledge.symptoms[s]) for n, s in enumerate(case.seen, 1) if s in knowledge.symptoms]
    view = _view([symptom for _, symptom in seen])
    figure = figure_of(knowledge, case.garment, view)
    if figure is None:
        return None
    drawn = [(n, symptom_drawing(knowledge, s, case.garment)) for n, s in seen if s.view == view]
    numbered = [(n, drawing) for n, drawing in drawn if drawing is not None]
    scene = Scene(figure, tuple(drawing for _, drawing in numbered), facts={"garment": case.garment, **case.facts})
    image = QImage(pictures.picture(scene, FIGURE, 1.0, LIGHT))
    x, y, wide, _ = fitted(figure.box, FIGURE[0] / FIGURE[1])
    scale = FIGURE[0] / wide
    points = sorted(((n, anchor(drawing)) for n, drawing in numbered), key=lambda entry: entry[1][1])
    heights = spread([(at[1] - y) * scale for _, at in points], BALL_EM * 2.2, BALL_EM, FIGURE[1] - BALL_EM)
    painter = QPainter(image)
    for (number, at), height in zip(points, heights, strict=True):
        draw_call_out(painter, LIGHT, str(number), (FIGURE[0] - BALL_EM, height), ((at[0] - x) * scale, (at[1] - y) * scale), BALL_EM)
    painter.end()
    return image


def _after(knowledge: Knowledge, assessment: Assessment, pictures: Pictures) -> QImage | None:
    """The same side once the work is done: only what is not treated still shows; basted, what was moved."""
    case = assessment.case
    seen = [knowledge.symptoms[symptom] for symptom in case.seen if symptom in knowledge.symptoms]
    treated = [knowledge.causes[cause] for cause in assessment.treat]
    scene = after_scene(knowledge, case.garment, _view(seen), seen, treated, case.facts)
    if scene is None:
        return None
    marks = [mark for worked in assessment.amounts if worked.calculation for mark in worked.calculation.marks if mark.layer == "shell"]
    methods = [knowledge.methods[method] for method in assessment.methods]
    seams = sewn_anew(scene.figure, methods, [(mark.at, mark.stations, mark.take) for mark in marks])
    return pictures.picture(scene, AFTER, 1.0, LIGHT, None, seams)


def _view(seen: Sequence[Symptom]) -> View:
    """The side on which most shows."""
    views: list[View] = [symptom.view for symptom in seen] or ["back"]
    return max(views, key=views.count)


def _mark(knowledge: Knowledge, case: Case, mark: Mark, pictures: Pictures) -> QImage | None:
    """A mark where it lies on the figure; nothing where its seam is not drawn."""
    views = (figure_of(knowledge, case.garment, view) for view in ("back", "front", "side"))
    figure = next((f for f in views if f is not None and mark.at in f.seams), None)
    place = mark_place(figure, mark.at, mark.stations, mark.take) if figure else None
    if figure is None or place is None:
        return None
    shapes: tuple[Shape, ...] = mark_shapes(figure, mark.at, mark.stations, mark.take)
    box = (-360.0, place[1] - 110, 720.0, 220.0)
    scene = Scene(figure, facts={"garment": case.garment, **case.facts})
    return pictures.picture(scene, (720, 220), 1.0, LIGHT, box, shapes)


def _address(image: QImage) -> str:
    store = QByteArray()
    buffer = QBuffer(store)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(image)
    return "data:image/png;base64," + base64.b64encode(bytes(store.data())).decode()


def _running() -> None:
    """A Qt application to draw with, also where there is no display; and the faces of the program."""
    if QGuiApplication.instance() is None:
        if sys.platform.startswith("linux") and not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
            os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
        _kept.append(QApplication(["fitdoctor"]))
    load_faces()


_kept: list[QApplication] = []
