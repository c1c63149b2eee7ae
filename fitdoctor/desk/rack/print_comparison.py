"""The comparison on paper."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from html import escape
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QDate, QIODevice, QLocale
from PySide6.QtGui import QPageLayout, QPdfWriter, QTextDocument
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QFileDialog, QWidget

from fitdoctor.desk.paper import DOTS_AN_INCH, PRINT_DOTS, page_layout
from fitdoctor.desk.rack.money import Money
from fitdoctor.desk.rack.said import DECISIONS, comparison_lines
from fitdoctor.desk.taken_along import write_all
from fitdoctor.desk.type import load_faces
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.rack.answer import RackAnswer

POINTS_AN_INCH = 72
ACROSS = 3
"So many garments stand beside one another on a page."


def ask_and_print(window: QWidget, answers: Sequence[RackAnswer], money: Money) -> None:
    """Print through the system's dialog."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setPageLayout(page_layout())
    dialog = QPrintDialog(printer, window)
    dialog.setObjectName("rack-print-dialog")
    dialog.accepted.connect(lambda: comparison_document(answers, money).print_(printer))
    QDialog.open(dialog)


def ask_and_save(window: QWidget, answers: Sequence[RackAnswer], money: Money, failed: Callable[[Exception], None]) -> None:
    """Write a PDF where the system's dialog says."""
    dialog = QFileDialog(window, tr("Save as PDF"), f"{tr('comparison')}.pdf", "PDF (*.pdf)")
    dialog.setObjectName("rack-pdf-dialog")
    dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
    dialog.setDefaultSuffix("pdf")

    def write(name: str) -> None:
        try:
            write_all({Path(name): comparison_pdf(answers, money)})
        except FitdoctorError as error:
            failed(error)

    dialog.fileSelected.connect(write)
    QDialog.open(dialog)


def comparison_pdf(answers: Sequence[RackAnswer], money: Money) -> bytes:
    """The comparison as PDF on the paper that is usual where the user lives."""
    store = QByteArray()
    buffer = QBuffer(store)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setPageLayout(page_layout())
    writer.setResolution(PRINT_DOTS)
    writer.setTitle(tr("Side by side"))
    writer.setCreator("fitdoctor")
    comparison_document(answers, money).print_(writer)
    buffer.close()
    return bytes(store.data())


def comparison_document(answers: Sequence[RackAnswer], money: Money) -> QTextDocument:
    """The garments side by side as a document that can be printed."""
    faces = load_faces()
    document = QTextDocument()
    document.setDocumentMargin(0)
    document.setPageSize(page_layout().paintRect(QPageLayout.Unit.Point).size() * DOTS_AN_INCH / POINTS_AN_INCH)
    document.setDefaultStyleSheet(
        f"body {{ font-family: '{faces.serif}'; font-size: 10pt; color: black; }} h1 {{ font-size: 17pt; }} h2 {{ font-size: 12pt; }}"
        f" .figures {{ font-family: '{faces.sans}'; font-size: 9.5pt; white-space: nowrap; }}"
        " .decision { font-size: 14pt; font-weight: bold; }"
    )
    groups = (answers[at : at + ACROSS] for at in range(0, len(answers), ACROSS))
    tables = "".join(f"<table width='100%' cellpadding='6'><tr>{''.join(_cells(group, money))}</tr></table>" for group in groups)
    day = money.locale.toString(QDate.currentDate(), QLocale.FormatType.LongFormat)
    document.setHtml(f"<body><h1>{escape(tr('Side by side'))}</h1><p class='figures'>{escape(day)}</p>{tables}</body>")
    document.setMetaInformation(QTextDocument.MetaInformation.DocumentTitle, tr("Side by side"))
    return document


def _cells(group: Sequence[RackAnswer], money: Money) -> Iterator[str]:
    for answer in group:
        yield f"<td width='{100 // ACROSS}%' valign='top'>{''.join(_garment(answer, money))}</td>"


def _garment(answer: RackAnswer, money: Money) -> Iterator[str]:
    yield f"<h2>{escape(answer.title)}</h2><p class='decision'>{escape(tr(DECISIONS[answer.decision]))}</p>"
    yield "<table class='figures' width='100%'>"
    for line in comparison_lines(money, answer):
        title, amount = escape(line.title), escape(line.amount)
        if line.adds_up:
            title, amount = f"<b>{title}</b>", f"<b>{amount}</b>"
        yield f"<tr><td>{title}</td><td align='right'>{amount}</td></tr>"
    yield f"</table><p>{escape(answer.reason.text)}</p>"
    yield from (f"<p>{escape(tr('Only if: {needs}.', needs=state.needs.rstrip('.')))}</p>" for state in answer.only_if)
    if answer.at_home and answer.decision in ("BUY", "BUY_IF"):
        yield f"<p>{escape(tr('At home, before cutting: {check}', check=answer.at_home))}</p>"
    yield from (f"<p>{escape(reason.text)}</p>" for reason in answer.other_size)
    if answer.cautions:
        never = "; ".join(caution.title.rstrip(".") for caution in answer.cautions)
        yield f"<p>{escape(tr('Never altered, for safety: {kinds}.', kinds=never))}</p>"
