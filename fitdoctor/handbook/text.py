"""A page as plain text."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from fitdoctor.handbook.page import Page

_WIDTH = 96


def page_text(page: Page) -> str:
    """The page for a terminal or a printer."""
    return "\n".join(line for part in _parts(page) for line in part).rstrip()


def _parts(page: Page) -> Iterator[list[str]]:
    yield [page.title, "=" * len(page.title), f"{page.kind.rstrip('s')} {page.id}"]
    if page.also_called:
        yield [f"also called: {', '.join(page.also_called)}"]
    for section in page.sections:
        yield ["", section.heading, *(line for text in section.lines for line in _wrapped(text))]
    for matter in page.opposed:
        yield ["", f"Side by side: {matter.matter}"]
        yield [line for said in matter.said for line in _wrapped(f"{said.title} [{said.entry}]: {said.says}", "- ")]
    for group in page.links:
        yield ["", group.heading]
        yield [line for link in group.links for line in _wrapped(f"{link.title} [{link.id}]{_word(link.word)}", "- ")]
    if page.used_in:
        yield ["", "Used in these cases", *(line for case in page.used_in for line in _wrapped(f"{case.title} [{case.case}]", "- "))]
    if page.sources:
        yield ["", "Sources"]
        yield [line for s in page.sources for line in _wrapped(" ".join(part for part in (f"{s.line}.", s.note, s.address) if part), "- ")]


def _word(word: str) -> str:
    return f" ({word.replace('-', ' ')})" if word else ""


def _wrapped(text: str, mark: str = "") -> list[str]:
    return textwrap.wrap(text, _WIDTH, initial_indent=f"  {mark}", subsequent_indent="    ", break_long_words=False, break_on_hyphens=False)
