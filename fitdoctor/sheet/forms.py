"""A job sheet as HTML, with its fractions set, and as plain text."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from importlib.resources import files

import jinja2

from fitdoctor.sheet.words import Sheet

_TAG_OR_TEXT = re.compile(r"<[^>]*>|[^<]+")
_FRACTION = re.compile(r"(?:(\d+) )?\b(\d{1,2})/(2|4|8|16|32|64)\b")


def as_html(sheet: Sheet, pictures: Mapping[str, str] | None = None) -> str:
    """The sheet as one HTML page.

    Args:
        pictures: name -> address of a picture (a data address, or a name the printer knows), with `figure` first.
    """
    return _set_fractions(_template("sheet.html.jinja").render(sheet=sheet, pictures=pictures or {}))


def as_text(sheet: Sheet) -> str:
    """The sheet as plain text."""
    return _template("sheet.txt.jinja").render(sheet=sheet)


def _set_fractions(page: str) -> str:
    """Fractions of an inch as the trade writes them, in what is read; the head and attributes stay plain."""
    head, opening, body = page.partition("<body>")
    parts = (part if part.startswith("<") else _FRACTION.sub(_set, part) for part in _TAG_OR_TEXT.findall(body))
    return head + opening + "".join(parts)


def _set(found: re.Match[str]) -> str:
    whole, numerator, denominator = found.groups()
    return f"{whole or ''}<sup>{numerator}</sup>⁄<sub>{denominator}</sub>"


@cache
def _template(name: str) -> jinja2.Template:
    return jinja2.Environment(
        loader=jinja2.FileSystemLoader(str(files("fitdoctor.sheet"))),
        autoescape=jinja2.select_autoescape(("html.jinja",)),
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
    ).get_template(name)
