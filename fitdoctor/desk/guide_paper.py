"""Marking guides on paper: each sheet as a picture to look at first, and on a printer at its true size."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QMarginsF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QPageLayout, QPageSize, QPainter, QPen, QPolygonF
from PySide6.QtPrintSupport import QPrinter

from fitdoctor.desk.background import Turns
from fitdoctor.guides import Page, Paper
from fitdoctor.guides.shapes import DASH_MM, GREY, WIDTH_MM, Fill, Line, Shape, Text
from fitdoctor.units import MM_PER_INCH

TYPE_PX = 64
LEAST_PX = 0.7
"Thinner lines would be lost in a small picture."
_PAGES: dict[Paper, QPageSize.PageSizeId] = {"A4": QPageSize.PageSizeId.A4, "Letter": QPageSize.PageSizeId.Letter}


def sheet_image(page: Page, wide: int, dpr: float) -> QImage:
    """A sheet as it will print, so many logical pixels across."""
    scale = wide * dpr / page.width
    image = QImage(round(wide * dpr), round(page.height * scale), QImage.Format.Format_RGB32)
    image.fill(0xFFFFFFFF)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint_sheet(painter, page, scale)
    painter.end()
    image.setDevicePixelRatio(dpr)
    return image


def paper_layout(page: Page, paper: Paper) -> QPageLayout:
    """The whole sheet of paper, upright or lying as the page lies."""
    lying = page.width > page.height
    turned = QPageLayout.Orientation.Landscape if lying else QPageLayout.Orientation.Portrait
    return QPageLayout(QPageSize(_PAGES[paper]), turned, QMarginsF())


def print_by_turns(sheets: Sequence[Page], paper: Paper, printer: QPrinter) -> Turns:
    """Every sheet on a page of its own, a mm as long as a mm, wherever the printer's margins lie. Stopped, the printing is called off."""
    printer.setFullPage(True)
    printer.setPageLayout(paper_layout(sheets[0], paper))
    painter = QPainter(printer)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    try:
        for number, page in enumerate(sheets):
            if number:
                printer.setPageLayout(paper_layout(page, paper))
                printer.newPage()
            paint_sheet(painter, page, printer.resolution() / MM_PER_INCH)
            yield number + 1, len(sheets)
    except GeneratorExit:
        printer.abort()
        painter.end()
        if printer.outputFileName():
            Path(printer.outputFileName()).unlink(missing_ok=True)
        raise
    painter.end()


def paint_sheet(painter: QPainter, page: Page, scale: float) -> None:
    """A sheet from the painter's origin, `scale` of its pixels to a mm."""
    painter.save()
    painter.scale(scale, scale)
    if page.within:
        left, top, right, bottom = page.within
        painter.save()
        painter.setClipRect(QRectF(left, top, right - left, bottom - top))
        _paint(painter, page.clipped, scale)
        painter.restore()
    _paint(painter, page.shapes, scale)
    painter.restore()


def _paint(painter: QPainter, shapes: Sequence[Shape], scale: float) -> None:
    for shape in shapes:
        match shape:
            case Line():
                _line(painter, shape, scale)
            case Fill():
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(_grey(shape.grey))
                painter.drawPolygon(_polygon(shape.points))
            case Text():
                _text(painter, shape)


def _line(painter: QPainter, line: Line, scale: float) -> None:
    width = max(WIDTH_MM[line.weight], LEAST_PX / scale)
    pen = QPen(_grey(GREY.get(line.weight, 0.0)), width)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap if line.weight in DASH_MM else Qt.PenCapStyle.RoundCap)
    if line.weight in DASH_MM:
        pen.setDashPattern([mm / width for mm in DASH_MM[line.weight]])
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen)
    painter.drawPolyline(_polygon(line.points))


def _text(painter: QPainter, text: Text) -> None:
    """Words from their foot; set large and scaled down, so that their width holds at every size."""
    font = QFont("Helvetica")
    font.setStyleHint(QFont.StyleHint.SansSerif)
    font.setPixelSize(TYPE_PX)
    font.setBold(text.bold)
    wide = QFontMetricsF(font).horizontalAdvance(text.words)
    painter.save()
    painter.translate(*text.at)
    painter.rotate(text.degrees)
    painter.scale(text.size / TYPE_PX, text.size / TYPE_PX)
    painter.setFont(font)
    painter.setPen(_grey(0.0))
    painter.drawText(QPointF({"start": 0.0, "middle": -wide / 2, "end": -wide}[text.anchor], 0), text.words)
    painter.restore()


def _polygon(points: Sequence[tuple[float, float]]) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in points])


def _grey(grey: float) -> QColor:
    return QColor.fromRgbF(grey, grey, grey)
