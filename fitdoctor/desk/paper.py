"""The job sheet on paper: its pictures painted, its page set for a browser, a PDF or a printer."""

from __future__ import annotations

import base64
import os
from collections.abc import Mapping

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QRectF, QSize, QSizeF, Qt, QUrl
from PySide6.QtGui import (
    QFont,
    QGuiApplication,
    QImage,
    QImageWriter,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
    QTextDocument,
)
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QApplication

from fitdoctor.assess import Assessment
from fitdoctor.desk import figure_tones
from fitdoctor.desk.call_out import ball_radius, draw_call_out, spread
from fitdoctor.desk.pictures import Pictures
from fitdoctor.desk.type import load_faces
from fitdoctor.figure.choose import figure_of, symptom_drawing
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.diagrams import after_diagram
from fitdoctor.figure.marks import mark_place
from fitdoctor.figure.reach import anchor, fitted
from fitdoctor.knowledge.entries import View
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.sheet import as_html, letter_of, write_sheet

FIGURE_PX, MARK_PX = QSize(440, 620), QSize(760, 260)
_MARGIN_MM, _FOOT_MM = 14.0, 8.0
_DOTS_AN_INCH = 150
_TONES = figure_tones.LIGHT


def sheet_html(knowledge: Knowledge, assessment: Assessment) -> bytes:
    """The job sheet as one HTML file with its pictures inside."""
    pictures = {
        name: f"data:image/png;base64,{base64.b64encode(_png(image)).decode()}" for name, image in _pictures(knowledge, assessment).items()
    }
    return as_html(write_sheet(knowledge, assessment), pictures).encode()


def sheet_pdf(knowledge: Knowledge, assessment: Assessment) -> bytes:
    """The job sheet as a PDF, A4."""
    document = sheet_document(knowledge, assessment)
    made = QBuffer()
    made.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(made)
    writer.setTitle(f"Job sheet: {assessment.case.title or assessment.case.garment}")
    writer.setCreator("fitdoctor")
    writer.setResolution(_DOTS_AN_INCH)
    print_document(document, writer)
    made.close()
    return bytes(made.data().data())


def print_document(document: QTextDocument, device: QPdfWriter | QPrinter) -> None:
    """Put the sheet on a printer's or a PDF's pages, A4 upright, each with its number at the foot."""
    device.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
    device.setPageOrientation(QPageLayout.Orientation.Portrait)
    device.setPageMargins(QMarginsF(*[_MARGIN_MM] * 4), QPageLayout.Unit.Millimeter)
    sheet = document.clone()
    sheet.documentLayout().setPaintDevice(device)
    foot = device.logicalDpiY() * _FOOT_MM / 25.0
    page = QSizeF(device.width(), device.height() - foot)
    sheet.setPageSize(page)
    painter = QPainter(device)
    for number in range(sheet.pageCount()):
        if number:
            device.newPage()
        painter.save()
        painter.translate(0, -number * page.height())
        sheet.drawContents(painter, QRectF(0, number * page.height(), page.width(), page.height()))
        painter.restore()
        painter.setFont(sheet.defaultFont())
        where = QRectF(0, page.height(), page.width(), foot)
        painter.drawText(where, int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom), f"{number + 1} / {sheet.pageCount()}")
    painter.end()


def sheet_document(knowledge: Knowledge, assessment: Assessment) -> QTextDocument:
    """The sheet ready for a page; its pictures are resources of the document."""
    _need_application()
    faces = load_faces()
    images = _pictures(knowledge, assessment)
    document = QTextDocument()
    document.setDocumentMargin(0)
    font = QFont(faces.sans)
    font.setPointSizeF(10)
    document.setDefaultFont(font)
    for name, image in images.items():
        document.addResource(QTextDocument.ResourceType.ImageResource, QUrl(f"picture:{name}"), image)
    html = as_html(write_sheet(knowledge, assessment), {name: f"picture:{name}" for name in images})
    document.setHtml(html.replace('"Source Sans Pro"', f'"{faces.sans}"').replace('"Source Serif Pro"', f'"{faces.serif}"'))
    return document


def _need_application() -> None:
    """Painting text needs an application; the command line has none yet, and needs no screen for it."""
    if QGuiApplication.instance() is None:
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
        QApplication(["fitdoctor"])


def _pictures(knowledge: Knowledge, assessment: Assessment) -> Mapping[str, QImage]:
    """The garment with what shows, numbered; and each mark where it lies."""
    _need_application()
    load_faces()
    pictures = Pictures(knowledge.figures)
    found: dict[str, QImage] = {}
    figure = _figure_picture(knowledge, assessment, pictures)
    if figure is not None:
        found["figure"] = figure
    marks = [mark for worked in assessment.amounts if worked.calculation for mark in worked.calculation.marks]
    for number, mark in enumerate(marks):
        image = (
            _mark_picture(knowledge, assessment, pictures, letter_of(number), mark.at, mark.stations, mark.take)
            if mark.layer == "shell"
            else None
        )
        if image is not None:
            found[f"mark-{letter_of(number)}"] = image
    return found


def _figure_picture(knowledge: Knowledge, assessment: Assessment, pictures: Pictures) -> QImage | None:
    case = assessment.case
    seen = [(n, knowledge.symptoms[s]) for n, s in enumerate(case.seen, 1) if s in knowledge.symptoms]
    views: list[View] = [symptom.view for _, symptom in seen]
    view: View = max(views, key=views.count) if views else "front"
    figure = figure_of(knowledge, case.garment, view)
    if figure is None:
        return None
    drawn = [(n, symptom_drawing(knowledge, symptom, case.garment)) for n, symptom in seen if symptom.view == view]
    shown = [(number, drawing) for number, drawing in drawn if drawing is not None]
    scene = Scene(figure, tuple(drawing for _, drawing in shown), facts={"garment": case.garment, **case.facts})
    size = (FIGURE_PX.width(), FIGURE_PX.height())
    image = pictures.picture(scene, size, 1.0, _TONES).copy()
    places = [(str(number), anchor(drawing)) for number, drawing in shown]
    _call_out(image, places, fitted(figure.box, size[0] / size[1]))
    return image


def _mark_picture(
    knowledge: Knowledge,
    assessment: Assessment,
    pictures: Pictures,
    letter: str,
    at: str,
    stations: tuple[tuple[float, float], ...],
    take: str,
) -> QImage | None:
    """The seam with the mark on it; None where no figure of this garment draws that seam."""
    views: tuple[View, ...] = ("back", "front", "side")
    for view in views:
        figure = figure_of(knowledge, assessment.case.garment, view)
        place = mark_place(figure, at, stations, take) if figure else None
        if figure is None or place is None:
            continue
        diagram = after_diagram(knowledge, assessment.case.garment, view, [(at, stations, take)])
        if diagram is None:
            continue
        wide = figure.box[2]
        crop = fitted((figure.box[0], place[1] - wide * 0.2, wide, wide * 0.4), MARK_PX.width() / MARK_PX.height())
        image = pictures.picture(diagram.scene, (MARK_PX.width(), MARK_PX.height()), 1.0, _TONES, crop, diagram.overlay).copy()
        _call_out(image, [(letter, place)], crop)
        return image
    return None


def _call_out(image: QImage, places: list[tuple[str, tuple[float, float]]], box: tuple[float, float, float, float]) -> None:
    """Balls at the right edge with leaders to their places (mm within the box)."""
    x, y, wide, _ = box
    scale, radius = image.width() / wide, ball_radius(17.0)
    ordered = sorted(places, key=lambda place: place[1][1])
    heights = spread([(at[1] - y) * scale for _, at in ordered], 2 * radius + 6, radius + 6, image.height() - radius - 6)
    painter = QPainter(image)
    for (label, at), height in zip(ordered, heights, strict=True):
        draw_call_out(painter, _TONES, label, (image.width() - radius - 8, height), ((at[0] - x) * scale, (at[1] - y) * scale))
    painter.end()


def _png(image: QImage) -> bytes:
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(image)
    return bytes(held.data())
