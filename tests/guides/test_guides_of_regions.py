"""Guides of single regions read back from the printed file: sleeves turned, crotches scooped, legs, turn-ups, fans of darts."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.curves import run_out
from fitdoctor.amounts.marks import Length
from fitdoctor.amounts.work_out import WorkedAmount
from fitdoctor.guides import guides_for, guides_pdf
from fitdoctor.guides.draft import stations_every
from fitdoctor.guides.lettering import Ruler
from fitdoctor.guides.pages import tiling
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop
from fitdoctor.units import MM_PER_INCH, UnitSystem
from tests.guides.printed_page import WITHIN_MM, fills, lines_of, nearest, read, strokes


def test_the_notches_of_a_turned_sleeve_stand_the_shift_apart_along_the_cap(knowledge: Knowledge) -> None:
    shift, sizes = 0.75 * MM_PER_INCH, {"armhole-length": Length(430), "cap-height": Length(140)}
    worked = WorkedAmount("m", "turn", "sleeve-pitch", CALCULATORS["sleeve-pitch"].work_out({"total": Length(shift), **sizes}, {}))
    cap, body = guides_for(knowledge, [worked], Shop())
    reader = read(guides_pdf([cap, body], "A4", "Turned"))
    (seam,) = [line for line in strokes(reader, 1, "old") if len(line) > 20]
    tips = [line.points[0] for line in lines_of(reader, 1) if len(line.points) == 4]
    filled = [path[0] for path in fills(reader, 1) if len(path) == 3 and nearest(seam, path[0])[1] < WITHIN_MM]
    assert len(tips) == len(filled) == 3
    for old, new in zip(sorted(tips), sorted(filled), strict=True):
        assert nearest(seam, old)[0] - nearest(seam, new)[0] == pytest.approx(shift, abs=WITHIN_MM)


def test_the_turned_sleeve_moves_the_other_way_on_the_body() -> None:
    cap, body = CALCULATORS["sleeve-pitch"].work_out({"total": Length(19)}, {"toward": "back"}).marks
    assert (cap.along_mm, body.along_mm) == (-19, 19)
    assert (cap.ends[0], body.ends[0]) == ("back underarm", "back underarm")


def test_the_steps_of_a_scooped_crotch_lie_an_eighth_apart_on_one_guide(knowledge: Knowledge) -> None:
    worked = WorkedAmount("m", "scoop", "crotch-scoop", CALCULATORS["crotch-scoop"].work_out({"total": Length(3 / 8 * MM_PER_INCH)}, {}))
    (guide,) = guides_for(knowledge, [worked], Shop())
    reader = read(guides_pdf([guide], "A4", "Scoop"))
    (old,), steps, (new,) = (strokes(reader, 1, weight) for weight in ("old", "step", "new"))
    depths = [max(math.dist(a, b) for a, b in zip(old, line, strict=True)) for line in (*steps, new)]
    assert depths == pytest.approx([MM_PER_INCH / 8, MM_PER_INCH / 4, 3 / 8 * MM_PER_INCH], abs=WITHIN_MM)


def test_each_leg_has_a_guide_of_its_own_where_the_legs_differ(knowledge: Knowledge) -> None:
    inputs = {"finished-inseam": Length(760), "left-inseam": Length(768), "hem-depth": Length(38), "slant": Length(12.7)}
    worked = WorkedAmount("m", "hem", "trouser-hem", CALCULATORS["trouser-hem"].work_out(inputs, {}))
    right, left = guides_for(knowledge, [worked], Shop())
    assert ("right leg" in right.title, "left leg" in left.title) == (True, True)
    assert (right.letters, left.letters) == ("A–B", "C–D")
    assert (right.marks[0].total_mm, left.marks[0].total_mm) == (760, 768)


def test_the_turn_up_of_a_tapered_leg_widens_on_paper_by_a_quarter_of_the_flare(knowledge: Knowledge) -> None:
    inputs = {key: Length(mm) for key, mm in {"total": 40, "knee-girth": 480, "hem-girth": 400, "knee-to-hem": 400}.items()}
    worked = WorkedAmount("m", "flare", "turn-up-flare", CALCULATORS["turn-up-flare"].work_out(inputs, {}))
    reader = read(guides_pdf(guides_for(knowledge, [worked], Shop()), "A4", "Flare"))
    (old,), (new,) = strokes(reader, 1, "old"), strokes(reader, 1, "new")
    # By hand: 80 mm less over 400 mm of leg, so 8 mm over 40 mm, 2 mm on each of four edges.
    assert math.dist(old[-1], new[-1]) == pytest.approx(2, abs=WITHIN_MM)
    assert math.dist(old[0], new[0]) == pytest.approx(0, abs=WITHIN_MM)


def test_darts_in_a_fan_stand_open_on_the_neckline(knowledge: Knowledge) -> None:
    inputs = {"total": Length(24), "length": Length(75), "half-shoulder": Length(84)}
    worked = WorkedAmount("m", "dart", "back-neck-darts", CALCULATORS["back-neck-darts"].work_out(inputs, {"darts": "4"}))
    (guide,) = guides_for(knowledge, [worked], Shop())
    reader = read(guides_pdf([guide], "A4", "Fan"))
    (neck,), legs = strokes(reader, 1, "old"), strokes(reader, 1, "new")
    for share, (left, point, right) in zip((1 / 3, 2 / 3), legs, strict=True):
        middle = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)
        assert math.dist(left, right) == pytest.approx(6, abs=WITHIN_MM)
        assert math.dist(middle, point) == pytest.approx(75, abs=WITHIN_MM)
        assert nearest(neck, middle) == pytest.approx((84 * share, 0), abs=WITHIN_MM)


@pytest.mark.parametrize(("unit", "apart"), [("in", MM_PER_INCH), ("cm", 20.0)])
def test_stations_stand_every_inch_or_every_two_centimetres(unit: UnitSystem, apart: float) -> None:
    mark = CALCULATORS["inseam-taper"].work_out({"total": Length(16), "length": Length(350)}, {}).marks[0]
    ways = [way for way, _ in stations_every(mark, Ruler(unit).every_mm)]
    assert [b - a for a, b in pairwise(ways[:-1])] == pytest.approx([apart] * (len(ways) - 2), abs=1e-6)
    assert ways[-1] == pytest.approx(350, abs=0.1)
    assert all(offset == pytest.approx(16 * run_out(way / ways[-1]), abs=WITHIN_MM) for way, offset in stations_every(mark, apart))


def test_seams_of_one_curve_share_a_guide(knowledge: Knowledge) -> None:
    worked = WorkedAmount("m", "leg", "leg-taper", CALCULATORS["leg-taper"].work_out({"total": Length(50)}, {}))
    (guide,) = guides_for(knowledge, [worked], Shop())
    assert guide.letters == "A–B"
    assert "Inseams and side seams" in guide.title


def test_the_heading_takes_no_sheet_of_its_own(knowledge: Knowledge) -> None:
    seam = CALCULATORS["centre-back-seam"].work_out({"total": Length(25.4)}, {"blend": "crotch", "full-to": "hip"})
    (guide,) = guides_for(knowledge, [WorkedAmount("m", "seat", "centre-back-seam", seam)], Shop())
    tiles = tiling(guide, "A4")
    assert (tiles.rows, tiles.columns) == (1, 1)
