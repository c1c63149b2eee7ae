"""The job sheet: one page for the work table, as plain values first, then as HTML or plain text."""

from fitdoctor.sheet.forms import as_html, as_text
from fitdoctor.sheet.words import (
    TAKE_WORDS,
    Sheet,
    SheetMark,
    duration,
    how_much,
    in_minutes,
    letter_of,
    sheet_marks,
    way_words,
    write_sheet,
)

__all__ = [
    "TAKE_WORDS",
    "Sheet",
    "SheetMark",
    "as_html",
    "as_text",
    "duration",
    "how_much",
    "in_minutes",
    "letter_of",
    "sheet_marks",
    "way_words",
    "write_sheet",
]
