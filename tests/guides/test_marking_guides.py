"""Marking guides read back from the printed file: what is on the paper is what was worked out."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.amounts.work_out import WorkedAmount
from fitdoctor.guides import Guide, Paper, guide_svg, guides_for, guides_pdf
from fitdoctor.guides.lines import place, point_of
from fitdoctor.guides.pages import tiling
from fitdoctor.guides.paper import MARGIN_MM, OVERLAP_MM, SIZES_MM
from fitdoctor.guides.shapes import Text, box_of, text_width, wrapped
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop
from fitdoctor.units import MM_PER_INCH
from tests.guides.printed_page import MM_PER_POINT, WITHIN_MM, lines_of, read, strokes

JOBS: dict[str, tuple[str, dict[str, str], dict[str, float]]] = {
    "crescent": ("waist-crescent", {}, {"total": 0.75, "along": 9}),
    "inseam": ("inseam-taper", {}, {"total": 0.625, "length": 14}),
    "seat seam": ("centre-back-seam", {"blend": "crotch", "full-to": "hip"}, {"total": 1}),
    "crotch": ("crotch-scoop", {}, {"total": 0.25}),
    "neck": ("neck-drop", {}, {"total": 0.5, "half-neck-width": 3, "back-neck-depth": 0.875}),
    "wedge": ("shoulder-wedge", {}, {"total": 0.5, "shoulder-length": 5}),
    "armhole": ("shoulder-narrowed", {}, {"total": 0.5}),
    "cap": ("sleeve-length", {"take": "shorten-at-cap"}, {"total": 0.5}),
    "sides": ("side-seams", {"shape": "tapered", "take": "out"}, {"total": 1}),
    "leg": ("leg-taper", {}, {"total": 2}),
    "underarm": ("armhole-move", {"place": "underarm"}, {"total": 0.5}),
    "front armhole": ("armhole-move", {"place": "front", "take": "cut"}, {"total": 0.375}),
    "crown": ("cap-move", {}, {"total": 0.5}),
    "two darts of one": ("dart-split", {}, {"total": 1.5}),
    "piece": ("set-in-piece", {}, {"total": 2, "length": 6}),
    "floor": ("skirt-hem-level", {}, {"total": 1, "floor-front": 12, "floor-right": 12.5, "floor-back": 13, "floor-left": 12.5}),
    "held": ("share-seams", {"shape": "held", "take": "out"}, {"total": 1.5, "length": 9}),
    "waist all round": ("waist-crescent", {"most": "all"}, {"total": 0.75}),
}
def guides(knowledge: Knowledge, *jobs: str) -> tuple[Guide, ...]:
    worked = []
    for job in jobs:
        name, options, inches = JOBS[job]
        calculation = CALCULATORS[name].work_out({key: Length(value * MM_PER_INCH) for key, value in inches.items()}, options)
        worked.append(WorkedAmount("method", job, name, calculation))
    return guides_for(knowledge, worked, Shop())


def hem(knowledge: Knowledge) -> Guide:
    inches = {"finished-inseam": 30, "cuff-depth": 1.5, "slant": 0.5}
    inputs = {key: Length(value * MM_PER_INCH) for key, value in inches.items()}
    calculation = CALCULATORS["trouser-hem"].work_out(inputs, {"finish": "cuff"})
    (guide,) = guides_for(knowledge, [WorkedAmount("m", "hem", "trouser-hem", calculation)], Shop())
    return guide


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("job", [job for job in JOBS if job not in ("neck",)])
def test_distances_on_the_page_are_those_of_the_mark(knowledge: Knowledge, job: str, paper: Paper) -> None:
    for guide in guides(knowledge, job):
        mark = guide.marks[-1]
        reader = read(guides_pdf([guide], paper, "One guide"))
        (old,), (new,) = strokes(reader, 1, "old"), strokes(reader, 1, "new")
        for way, offset in mark.stations:
            at = place(mark.old, way)
            assert math.dist(point_of(old, at), point_of(new, at)) == pytest.approx(offset * mark.layer_share, abs=WITHIN_MM)
        length = sum(math.dist(a, b) for a, b in pairwise(old))
        assert length == pytest.approx(mark.stations[-1][0], abs=WITHIN_MM)


def test_the_dropped_neck_on_paper_is_as_deep_as_the_fold(knowledge: Knowledge) -> None:
    neck = guides(knowledge, "neck")[0]
    reader = read(guides_pdf([neck], "A4", "Neck"))
    (old,), (new,) = strokes(reader, 1, "old"), strokes(reader, 1, "new")
    assert new[0][1] - old[0][1] == pytest.approx(0.5 * MM_PER_INCH, abs=WITHIN_MM)
    assert new[-1] == pytest.approx(old[-1], abs=WITHIN_MM)
    gained = [sum(math.dist(a, b) for a, b in pairwise(line)) for line in (old, new)]
    # Quarter ellipses by scipy.special.ellipe: 0.2788 in longer.
    assert (gained[1] - gained[0]) / MM_PER_INCH == pytest.approx(0.2788, abs=WITHIN_MM / MM_PER_INCH)


def test_the_lines_of_a_cuff_stand_one_and_a_half_inches_apart_on_paper(knowledge: Knowledge) -> None:
    reader = read(guides_pdf([hem(knowledge)], "A4", "Cuff"))
    curves = strokes(reader, 1, "new") + strokes(reader, 1, "fold")
    heights = sorted({round(line[0][1], 2) for line in curves})
    steps = [b - a for a, b in pairwise(heights)]
    assert len(heights) == 4
    assert steps == pytest.approx([1.5 * MM_PER_INCH] * 3, abs=WITHIN_MM)
    assert all(line[-1][1] - line[0][1] == pytest.approx(0.5 * MM_PER_INCH, abs=WITHIN_MM) for line in curves)


def test_a_dart_on_paper_stands_open_by_its_intake(knowledge: Knowledge) -> None:
    inputs = {"total": Length(0.75 * MM_PER_INCH), "length": Length(3 * MM_PER_INCH)}
    worked = WorkedAmount("m", "dart", "back-neck-darts", CALCULATORS["back-neck-darts"].work_out(inputs, {}))
    reader = read(guides_pdf(guides_for(knowledge, [worked], Shop()), "A4", "Dart"))
    (legs,) = strokes(reader, 1, "new")
    assert math.dist(legs[0], legs[2]) == pytest.approx(3 / 8 * MM_PER_INCH, abs=WITHIN_MM)
    middle = ((legs[0][0] + legs[2][0]) / 2, (legs[0][1] + legs[2][1]) / 2)
    assert math.dist(middle, legs[1]) == pytest.approx(3 * MM_PER_INCH, abs=WITHIN_MM)


@pytest.mark.parametrize(("paper", "size"), [("A4", (210, 297)), ("Letter", (215.9, 279.4))])
def test_paper_has_its_size_and_no_printer_scales_it(knowledge: Knowledge, paper: Paper, size: tuple[float, float]) -> None:
    # A4: ISO 216, 210 × 297 mm. US Letter: 8 1/2 × 11 in (ANSI/ASME Y14.1).
    reader = read(guides_pdf(guides(knowledge, "crescent", "inseam"), paper, "Paper"))
    for page in reader.pages:
        sides = sorted(float(side) * MM_PER_POINT for side in (page.mediabox.width, page.mediabox.height))
        assert sides == pytest.approx(sorted(size), abs=WITHIN_MM)
    assert "/PrintScaling /None" in str(reader.root_object["/ViewerPreferences"]).replace("'", "").replace(":", "")


def test_the_test_squares_measure_a_hundred_millimetres_and_four_inches(knowledge: Knowledge) -> None:
    reader = read(guides_pdf(guides(knowledge, "crescent"), "A4", "Squares"))
    squares = [line.points for line in lines_of(reader, 0) if len(line.points) == 5 and math.dist(*line.points[:2]) > 90]
    sides = sorted(math.dist(a, b) for square in squares for a, b in pairwise(square))
    assert sides == pytest.approx([100] * 4 + [4 * MM_PER_INCH] * 4, abs=WITHIN_MM)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_crosses_of_neighbouring_sheets_fall_on_each_other(knowledge: Knowledge, paper: Paper) -> None:
    (guide,) = guides(knowledge, "inseam")
    tiles = tiling(guide, paper)
    assert tiles.rows * tiles.columns > 1
    reader = read(guides_pdf([guide], paper, "Crosses"))
    found = []
    for number, (column, row) in enumerate(tiles.pages(), 1):
        x, y = tiles.start(column, row)
        rings = [line.points for line in lines_of(reader, number) if len(line.points) == 25]
        centres = {(round(sum(p[0] for p in ring[:-1]) / 24, 2), round(sum(p[1] for p in ring[:-1]) / 24, 2)) for ring in rings}
        found.append({(cx - MARGIN_MM + x, cy - MARGIN_MM + y) for cx, cy in centres})
    first, second = sorted(found[0]), sorted(found[1])
    assert len(first) == 2
    assert [c for pair in first for c in pair] == pytest.approx([c for pair in second for c in pair], abs=WITHIN_MM)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("job", list(JOBS))
def test_the_sheets_cover_the_whole_guide_and_overlap(knowledge: Knowledge, job: str, paper: Paper) -> None:
    for guide in guides(knowledge, job):
        tiles = tiling(guide, paper)
        x0, y0, x1, y1 = box_of(guide.shapes)
        (left, top), (right, bottom) = tiles.start(0, 0), tiles.start(tiles.columns - 1, tiles.rows - 1)
        across, down = tiles.window
        assert left <= x0
        assert top <= y0
        assert right + across >= x1
        assert bottom + down >= y1
        assert tiles.start(1, 0)[0] - left == pytest.approx(across - OVERLAP_MM)
        assert {tiles.width, tiles.height} == set(SIZES_MM[paper])


def test_words_on_the_page_can_be_read_back(knowledge: Knowledge) -> None:
    reader = read(guides_pdf(guides(knowledge, "crescent"), "A4", "Slacks, ticket 12"))
    cover, first = (page.extract_text().replace("\u00a0", " ") for page in reader.pages[:2])
    assert "Slacks, ticket 12" in cover
    assert "100 %" in cover
    assert "Back waist seam: lower (shell)" in first
    assert "3/4 in · 1.9 cm" in first
    assert "centre back" in first
    assert "straight grain" in first


def test_the_letters_are_those_of_the_job_sheet(knowledge: Knowledge) -> None:
    assert [guide.letters for guide in guides(knowledge, "crescent", "neck", "wedge")] == ["A", "B", "C", "D"]


def test_what_comes_from_the_standard_block_is_said_on_the_guide(knowledge: Knowledge) -> None:
    (guide,) = guides(knowledge, "crotch")
    assert any("standard block" in text for text in guide.says)


def test_a_straight_seam_that_moves_evenly_needs_no_paper(knowledge: Knowledge) -> None:
    even = CALCULATORS["share-seams"].work_out({"total": Length(38.1)}, {})
    assert guides_for(knowledge, [WorkedAmount("m", "a", "share-seams", even)], Shop()) == ()


def test_the_lining_shares_the_guide_of_the_shell(knowledge: Knowledge) -> None:
    calculation = CALCULATORS["waist-crescent"].work_out({"total": Length(19)}, {})
    both = replace(calculation, marks=(*calculation.marks, replace(calculation.marks[0], layer="lining")))
    (guide,) = guides_for(knowledge, [WorkedAmount("m", "a", "waist-crescent", both)], Shop())
    assert "shell and lining" in guide.title


def test_a_guide_as_svg_is_at_full_size(knowledge: Knowledge) -> None:
    (guide,) = guides(knowledge, "crescent")
    root = ElementTree.fromstring(guide_svg(guide))
    width_mm = float(root.attrib["width"].removesuffix("mm"))
    assert width_mm == pytest.approx(float(root.attrib["viewBox"].split()[2]))
    lines = {
        element.attrib["stroke-width"]: [tuple(map(float, pair.split(","))) for pair in element.attrib["points"].split()]
        for element in root
        if element.tag.endswith("polyline") and len(element.attrib["points"].split()) > 10
    }
    assert math.dist(lines["0.25"][0], lines["0.7"][0]) == pytest.approx(0.75 * MM_PER_INCH, abs=WITHIN_MM)


def test_no_label_lies_on_another(knowledge: Knowledge) -> None:
    for guide in (*guides(knowledge, *JOBS), hem(knowledge)):
        boxes = [box_of((shape,)) for shape in guide.shapes if isinstance(shape, Text)]
        for n, a in enumerate(boxes):
            for b in boxes[n + 1 :]:
                apart = a[2] <= b[0] + 0.3 or b[2] <= a[0] + 0.3 or a[3] <= b[1] + 0.8 or b[3] <= a[1] + 0.8
                assert apart, (guide.letters, guide.title, a, b)


def test_words_are_wrapped_within_their_width() -> None:
    words = "Mark the new seam below the old one at centre back, in a gentle curve that runs out at the side seams."
    rows = wrapped(words, 3.4, 60)
    assert " ".join(rows) == words
    assert all(text_width(row, 3.4) <= 60 for row in rows)


def test_a_mark_without_lines_has_no_guide(knowledge: Knowledge) -> None:
    bare = Calculation((Mark("armhole-seam", "at every notch", "mark", 10.0, 10.0, "in all"),), Length(10), Length(10))
    assert guides_for(knowledge, [WorkedAmount("m", "a", "plain", bare)], Shop()) == ()


def test_every_calculator_can_be_printed(knowledge: Knowledge) -> None:
    worked = []
    for name, calculator in CALCULATORS.items():
        worked.append(WorkedAmount("m", name, name, calculator.work_out({need: Length(20.0) for need in calculator.needs}, {})))
    found = guides_for(knowledge, worked, Shop())
    reader = read(guides_pdf(found, "A4", "All"))
    assert len(reader.pages) == 1 + sum(tiling(guide, "A4").rows * tiling(guide, "A4").columns for guide in found)
