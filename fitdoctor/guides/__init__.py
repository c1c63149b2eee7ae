"""Marking guides at full size, to print and mark from, and reduced diagrams of the same marks."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from fitdoctor.errors import FitdoctorError
from fitdoctor.guides.cover import cover_page
from fitdoctor.guides.diagram import Diagram, DiagramLabel, as_picture, diagram
from fitdoctor.guides.guides import Guide, guides_for
from fitdoctor.guides.pages import counted, guide_pages
from fitdoctor.guides.paper import Paper
from fitdoctor.guides.pdf import Page, write_pdf
from fitdoctor.guides.svg import as_svg

Tell = Callable[[int, int], bool]
"""(sheets drawn, sheets in all) -> go on?"""


def guide_sheets(guides: Sequence[Guide], paper: Paper, title: str, tell: Tell | None = None) -> tuple[Page, ...]:
    """The sheets of paper in mm: a cover with test squares and page maps, then every guide on as many sheets as it needs.

    Args:
        tell: hears how many sheets of all are drawn, and says whether to go on.

    Raises:
        FitdoctorError: `tell` said stop.
    """
    numbered = counted(guides, paper)
    of = 1 + sum(tiles.columns * tiles.rows for _, tiles, _ in numbered)
    pages = [cover_page(numbered, paper, title)]
    for page in (page for guide, _, first in numbered for page in guide_pages(guide, paper, first, of)):
        pages.append(page)
        if tell and not tell(len(pages), of):
            raise FitdoctorError("Drawing the marking guides was stopped.", "Ask for them again.")
    return tuple(pages)


def guides_pdf(guides: Sequence[Guide], paper: Paper, title: str, tell: Tell | None = None) -> bytes:
    """The guides as a PDF to print at 100 %."""
    return write_pdf(guide_sheets(guides, paper, title, tell), f"Marking guides: {title}")


def guide_svg(guide: Guide) -> str:
    """One guide as SVG at full size."""
    return as_svg(guide.shapes)


__all__ = [
    "Diagram",
    "DiagramLabel",
    "Guide",
    "Page",
    "Paper",
    "as_picture",
    "diagram",
    "guide_sheets",
    "guide_svg",
    "guides_for",
    "guides_pdf",
]
