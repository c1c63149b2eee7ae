"""The words of the window: every string goes through here to be translated, and lengths of time are said one way."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

CONTEXT = "desk"


def tr(text: str, **values: object) -> str:
    """A string in the reader's language, its {values} filled in."""
    said = QCoreApplication.translate(CONTEXT, text)
    return said.format(**values) if values else said


def count(number: int, one: str, many: str, **values: object) -> str:
    """‘1 thing noted’ or ‘2 things noted’: the text for one, or that for many with its {number}."""
    return tr(one if number == 1 else many, number=number, **values)


def minutes(value: float) -> str:
    """‘2 minutes’, ‘1 minute’, ‘half a minute’."""
    if value < 1:
        return tr("half a minute") if value >= 0.5 else tr("some seconds")
    return count(round(value), "{number} minute", "{number} minutes")


def lower_first(text: str) -> str:
    """A title within a sentence."""
    return text[:1].lower() + text[1:] if text[1:2].islower() or len(text) == 1 or text[1:2] == " " else text


def upper_first(text: str) -> str:
    """A phrase at the head of a line."""
    return text[:1].upper() + text[1:]


def and_list(items: list[str]) -> str:
    """‘a, b and c’."""
    if len(items) < 2:
        return "".join(items)
    return tr("{several} and {last}", several=", ".join(items[:-1]), last=items[-1])
