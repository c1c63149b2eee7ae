"""A small PDF writer: exact vector lines, standard type, one page after the other. Points are 1/72 in."""

from __future__ import annotations

import math
import zlib
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from fitdoctor.guides.shapes import DASH_MM, GREY, WIDTH_MM, Box, Fill, Line, Shape, Text, text_width
from fitdoctor.units import MM_PER_INCH

POINTS_PER_MM = 72 / MM_PER_INCH


@dataclass(frozen=True)
class Page:
    """One page in mm: its size, what is drawn on it, and what is drawn only inside the box `within`."""

    width: float
    height: float
    shapes: tuple[Shape, ...] = ()
    clipped: tuple[Shape, ...] = ()
    within: Box | None = None


def write_pdf(pages: Sequence[Page], title: str) -> bytes:
    """The pages as a PDF file, to be printed at 100 %."""
    objects = [b"<< /Type /Catalog /Pages 2 0 R /ViewerPreferences << /PrintScaling /None >> >>", b"", *map(_font, _FONTS)]
    objects.append(b"<< /Title " + _string(title) + b" >>")
    information = len(objects)
    kids: list[int] = []
    for page in pages:
        content = zlib.compress("\n".join(_content(page)).encode("cp1252", "replace"))
        objects.append(b"<< /Length %d /Filter /FlateDecode >>\nstream\n" % len(content) + content + b"\nendstream")
        objects.append(_page(page, len(objects)))
        kids.append(len(objects))
    objects[1] = b"<< /Type /Pages /Count %d /Kids [%s] >>" % (len(kids), b" ".join(b"%d 0 R" % kid for kid in kids))
    return _file(objects, information)


_FONTS = ("Helvetica", "Helvetica-Bold")


def _font(name: str) -> bytes:
    return f"<< /Type /Font /Subtype /Type1 /BaseFont /{name} /Encoding /WinAnsiEncoding >>".encode()


def _page(page: Page, content: int) -> bytes:
    size = f"{page.width * POINTS_PER_MM:.4f} {page.height * POINTS_PER_MM:.4f}"
    fonts = " ".join(f"/F{n} {n + 2} 0 R" for n in range(1, len(_FONTS) + 1))
    text = f"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 {size}] /Resources << /Font << {fonts} >> >> /Contents {content} 0 R >>"
    return text.encode()


def _file(objects: Sequence[bytes], information: int) -> bytes:
    out = bytearray(b"%PDF-1.6\n%\xe2\xe3\xcf\xd3\n")
    places: list[int] = []
    for number, body in enumerate(objects, 1):
        places.append(len(out))
        out += b"%d 0 obj\n" % number + body + b"\nendobj\n"
    table = len(out)
    out += b"xref\n0 %d\n0000000000 65535 f \n" % (len(objects) + 1)
    out += b"".join(b"%010d 00000 n \n" % place for place in places)
    out += b"trailer\n<< /Size %d /Root 1 0 R /Info %d 0 R >>\nstartxref\n%d\n%%%%EOF\n" % (len(objects) + 1, information, table)
    return bytes(out)


def _content(page: Page) -> Iterator[str]:
    yield "1 J 1 j"
    if page.within:
        x0, y0, x1, y1 = page.within
        corner, size = _xy((x0, y1), page), f"{(x1 - x0) * POINTS_PER_MM:.3f} {(y1 - y0) * POINTS_PER_MM:.3f}"
        yield f"q {corner} {size} re W n"
        yield from _drawn(page.clipped, page)
        yield "Q"
    yield from _drawn(page.shapes, page)


def _drawn(shapes: Iterable[Shape], page: Page) -> Iterator[str]:
    for shape in shapes:
        match shape:
            case Line():
                yield from _line(shape, page)
            case Fill():
                yield f"{shape.grey:.2f} g {_path(shape.points, page)} f"
            case Text():
                yield _text(shape, page)


def _line(line: Line, page: Page) -> Iterator[str]:
    dash = " ".join(f"{mm * POINTS_PER_MM:.3f}" for mm in DASH_MM.get(line.weight, ()))
    yield f"{GREY.get(line.weight, 0):.2f} G {WIDTH_MM[line.weight] * POINTS_PER_MM:.4f} w [{dash}] 0 d"
    yield f"{_path(line.points, page)} S"


def _path(points: Sequence[tuple[float, float]], page: Page) -> str:
    return " ".join(f"{_xy(point, page)} {'l' if n else 'm'}" for n, point in enumerate(points))


def _xy(point: tuple[float, float], page: Page) -> str:
    """Points of PDF run upward from the lower left corner."""
    return f"{point[0] * POINTS_PER_MM:.3f} {(page.height - point[1]) * POINTS_PER_MM:.3f}"


def _text(text: Text, page: Page) -> str:
    back = text_width(text.words, text.size) * {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor]
    turn = math.radians(text.degrees)
    cos, sin = math.cos(turn), math.sin(turn)
    start = _xy((text.at[0] - back * cos, text.at[1] - back * sin), page)
    words = _string(text.words).decode("cp1252")
    size = text.size * POINTS_PER_MM
    return f"0 g BT /F{2 if text.bold else 1} {size:.3f} Tf {cos:.5f} {-sin:.5f} {sin:.5f} {cos:.5f} {start} Tm {words} Tj ET"


def _string(words: str) -> bytes:
    plain = words.replace("−", "–").replace("″", '"').replace("′", "'")
    for sign in "\\()":
        plain = plain.replace(sign, f"\\{sign}")
    return b"(" + plain.encode("cp1252", "replace") + b")"
