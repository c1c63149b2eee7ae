"""A page of the handbook on paper."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape
from typing import TYPE_CHECKING

from PySide6.QtCore import QUrl
from PySide6.QtGui import QImage, QTextDocument
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QWidget

from fitdoctor.desk.figure_tones import LIGHT
from fitdoctor.desk.handbook.article import STEPS
from fitdoctor.desk.handbook.kinds import over_title
from fitdoctor.desk.handbook.plates import plate_of
from fitdoctor.desk.job import Job, drawn
from fitdoctor.desk.paper import page_layout
from fitdoctor.desk.type import load_faces
from fitdoctor.desk.words import tr

if TYPE_CHECKING:
    from fitdoctor.handbook import Page, Section

_PLATE = "plate"
PLATE_SIZE = (416, 320)
"Pixels at 96 dots an inch."


def ask_and_print(window: QWidget, job: Job, page: Page) -> None:
    """Print a page through the system's dialog."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setPageLayout(page_layout())
    dialog = QPrintDialog(printer, window)
    dialog.setObjectName("look-up-print-dialog")
    dialog.accepted.connect(lambda: print_on(printer, job, page))
    QDialog.open(dialog)


def print_on(printer: QPrinter, job: Job, page: Page) -> None:
    """Print a page with its picture."""
    entry = job.knowledge.kind(page.kind)[page.id] if page.kind != "sources" else None
    found = plate_of(job.knowledge, entry, job.case.garment) if entry else None
    plate = drawn(job, found[0], LIGHT)(PLATE_SIZE, 3.0) if found else None
    page_document(page, over_title(job.knowledge, (page.kind, page.id)), plate).print_(printer)


def page_document(page: Page, over: str, plate: QImage | None) -> QTextDocument:
    """The page as a document that can be printed."""
    faces = load_faces()
    document = QTextDocument()
    document.setDocumentMargin(0)
    document.setDefaultStyleSheet(
        f"body {{ font-family: '{faces.serif}'; font-size: 11pt; color: black; }}"
        f" h2, .note {{ font-family: '{faces.sans}'; }} h2 {{ font-size: 11pt; margin-top: 12pt; }} .note {{ font-size: 9.5pt; }}"
    )
    if plate is not None:
        document.addResource(QTextDocument.ResourceType.ImageResource.value, QUrl(_PLATE), plate)
    document.setHtml(f"<body>{''.join(_parts(page, over, plate is not None))}</body>")
    document.setMetaInformation(QTextDocument.MetaInformation.DocumentTitle, page.title)
    return document


def _parts(page: Page, over: str, with_plate: bool) -> Iterator[str]:
    yield f"<p class='note'>{escape(over)}</p><h1>{escape(page.title)}</h1>"
    if with_plate:
        yield f"<p><img src='{_PLATE}' width='{PLATE_SIZE[0]}' height='{PLATE_SIZE[1]}'></p>"
    for section in page.sections:
        yield from _section(section)
    for matter in page.opposed:
        yield f"<h2>{escape(matter.matter)}</h2>"
        cells = (f"<td width='50%'><b>{escape(said.title)}</b><br>{escape(said.says)}</td>" for said in matter.said)
        two = list(cells)
        rows = (f"<tr>{''.join(two[at : at + 2])}</tr>" for at in range(0, len(two), 2))
        yield f"<table width='100%' cellpadding='4'>{''.join(rows)}</table>"
    for group in page.links:
        yield f"<h2>{escape(group.heading)}</h2><p>{escape('; '.join(dict.fromkeys(link.title for link in group.links)))}.</p>"
    if page.used_in:
        yield f"<h2>{escape(tr('Used in these cases'))}</h2><p>{escape('; '.join(case.title for case in page.used_in))}.</p>"
    if page.sources:
        yield "<h2>Sources</h2><ol class='note'>"
        yield from (f"<li>{escape('. '.join(part for part in (source.line, source.note) if part))}</li>" for source in page.sources)
        yield "</ol>"


def _section(section: Section) -> Iterator[str]:
    yield f"<h2>{escape(section.heading)}</h2>"
    lines = [re.sub(r"^\d+\. ", "", line) for line in section.lines]
    if section.heading in STEPS:
        yield "<ol>" + "".join(f"<li>{escape(line)}</li>" for line in lines) + "</ol>"
    else:
        yield from (f"<p>{escape(line)}</p>" for line in lines)
