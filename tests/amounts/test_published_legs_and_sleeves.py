"""More worked amounts of published sources: pieces set in, hems, legs, sleeves; each test names its own. Lengths in inches."""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest

from fitdoctor.amounts import pieces
from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.curves import polyline_length
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.amounts.work_out import work_out_amounts
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import read_case_file
from fitdoctor.units import MM_PER_INCH


def work_out(name: str, options: dict[str, str] | None = None, **inches: float) -> Calculation:
    inputs = {key.replace("_", "-"): Length(value * MM_PER_INCH) for key, value in inches.items()}
    return CALCULATORS[name].work_out(inputs, options or {})


def inches(length: Length | float) -> float:
    return (length.mm if isinstance(length, Length) else length) / MM_PER_INCH


def offset_at(mark: Mark, way_mm: float) -> float:
    """Offset on one layer, in inches, at a way along the old seam."""
    nearest = min(zip(mark.old, mark.new, strict=True), key=lambda pair: abs(pair[0][1] - way_mm))
    return inches(math.dist(*nearest))


def test_a_piece_set_into_a_band_is_an_inch_wider_than_what_it_gives() -> None:
    # A sewing page on jeans: waist 30 in, band 28 in; the piece is cut 30 - 28 + 1 = 3 in wide, 1/2 in of it seam at either side.
    assert inches(work_out("set-in-piece", total=30 - 28).effects["cut-width"]) == pytest.approx(3)


def test_another_drafter_parts_a_hem_of_eighteen_inches_by_three_quarters() -> None:
    # A drafting page of women's trousers: front = hem / 2 - 0.75 in, back = hem / 2 + 0.75 in, so 8 1/4 and 9 3/4 in for 18 in.
    effects = work_out("leg-taper", total=1, hem_girth=18, front_less=1.5).effects
    assert (2 * inches(effects["front-half"]), 2 * inches(effects["back-half"])) == pytest.approx((8.25, 9.75))


def test_a_cuff_by_the_drafting_formula_is_cut_a_quarter_shorter() -> None:
    # A drafting book of trousers: 3 x 1 1/2 - 1/4 = 4 1/4 in; the folds stay where they are.
    calculation = work_out("trouser-hem", {"finish": "cuff"}, finished_inseam=30, cuff_depth=1.5, inside_less=0.25)
    assert inches(calculation.effects["cloth-needed"]) == pytest.approx(4.25)
    assert [inches(mark.stations[0][1]) for mark in calculation.marks] == pytest.approx([0, 1.5, 3, 4.25])


def test_a_hem_cut_off_to_be_joined_again_keeps_three_eighths() -> None:
    # A sewing page on jeans: cut 3/8 in above the stitching of the old hem and join it again.
    assert inches(work_out("hem-take-up", total=2).effects["join-seam"]) == pytest.approx(3 / 8)


def test_a_crotch_pinned_half_an_inch_deep_loses_an_inch(knowledge: Knowledge, tmp_path: Path) -> None:
    # A sewing page on trousers too wide in the fork: 1/2 in pinned is 1 in removed.
    file = tmp_path / "pinned.yaml"
    file.write_text("garment: slacks\nmeasured: {crotch-pinch: {depth: 1/2 in}}\n", encoding="utf-8")
    case, problems = read_case_file(file, knowledge)
    (worked,) = work_out_amounts(knowledge, case, [knowledge.methods["take-in-crotch-and-inseam"]])
    assert not problems
    assert worked.calculation is not None
    assert inches(worked.calculation.total) == pytest.approx(1)
    assert inches(worked.calculation.each) == pytest.approx(1 / 2)


def test_a_leg_comes_in_half_an_inch_at_the_knee_for_five_eighths_at_the_bottom() -> None:
    # A cutter's book of 1892 on the open leg: 5/8 in at the bottom on the double, about 1/2 in at the knee, from the fork.
    calculation = work_out("leg-swing", total=5 / 8, length=30, crotch_to_knee=13)
    inner, outer = calculation.marks
    assert (inner.take, outer.take) == ("out", "in")
    assert 2 * offset_at(inner, 30 * MM_PER_INCH) == pytest.approx(5 / 8, abs=1e-3)
    assert 2 * offset_at(inner, 13 * MM_PER_INCH) == pytest.approx(1 / 2, abs=0.01)
    assert offset_at(inner, 0) == pytest.approx(0, abs=1e-6)
    assert 2 * inches(calculation.effects["knee-shift"]) == pytest.approx(1 / 2)


def test_tape_for_a_two_inch_let_down_is_an_inch_and_three_quarters_wide() -> None:
    # A sewing page on letting hems down: a ready-made 2 in hem is faced with tape 1 3/4 in wide.
    effects = work_out("hem-let-down", {"finish": "faced"}, total=2, hem_depth=2).effects
    assert inches(effects["facing-width"]) == pytest.approx(1.75)


def test_one_wide_dart_becomes_two_that_stand_two_inches_apart() -> None:
    # A sewing book on small waists: split one dart into two, finished 2 in apart.
    calculation = work_out("dart-split", total=1.5, length=5)
    assert inches(calculation.each) == pytest.approx(0.75)
    assert inches(calculation.effects["apart"]) == pytest.approx(2)


def test_a_crotch_stops_at_a_centimetre() -> None:
    # A buyer's guide: a crotch may be lowered by 1 cm.
    assert work_out("crotch-scoop", total=3 / 8).effects["past-the-stop"].mm == 0
    assert work_out("crotch-scoop", total=1 / 2).effects["past-the-stop"].mm == pytest.approx(12.7 - 10)


def test_a_shoulder_narrowed_by_a_quarter_asks_as_much_of_the_sleeve() -> None:
    # A cutter's book of 1878 on coats (upper body notes, geometry 8): a shoulder narrower by 1/4 in, a sleeve longer by 1/4 in.
    assert inches(work_out("shoulder-narrowed", total=1 / 4).effects["sleeve-must-gain"]) == pytest.approx(1 / 4)


def test_the_narrowed_armhole_begins_on_the_shoulder_seam_and_is_longer_by_what_is_said() -> None:
    # Geometry (upper body notes, 18a): s sin a on each half. The drawn curve agrees to a sixteenth of an inch.
    calculation = work_out("shoulder-narrowed", total=1 / 2)
    (mark,) = calculation.marks
    slope = math.degrees(math.atan2(mark.old[0][1] - mark.new[0][1], mark.old[0][0] - mark.new[0][0]))
    assert slope == pytest.approx(22.5, abs=0.1)
    drawn = polyline_length(np.array(mark.new)) - polyline_length(np.array(mark.old))
    assert 2 * inches(drawn) == pytest.approx(inches(calculation.effects["armhole-longer"]), abs=1 / 16)


def test_an_inch_moved_to_the_two_nearest_seams_is_half_an_inch_in_each() -> None:
    # A cutters' journal (upper body notes, geometry 19): an inch moves evenly to the two nearest seams where the side seam stays straight.
    effects = work_out("share-seams", {"seams": "side-back-seam side-back-seam"}, total=1).effects
    assert inches(effects["per-seam"]) == pytest.approx(1 / 2)


def test_a_lower_cap_goes_with_a_wider_sleeve() -> None:
    # A drafting page (upper body notes, geometry 15): a cap of 6 in made 4 1/4 in when the sleeve was spread for the upper arm.
    high, low = (pieces.cap_part_mm(9 * MM_PER_INCH, height * MM_PER_INCH) for height in (6, 4.25))
    assert low > high


def test_a_collar_seat_is_twice_the_half_neckline() -> None:
    # Quarter ellipse of half width 3 in and depth 7/8 in: 3.2769 in by scipy.special.ellipe, so 6.5538 in round the back.
    assert inches(work_out("neck-drop", total=1 / 2, half_neck_width=3, back_neck_depth=7 / 8).effects["collar-seat"]) == pytest.approx(
        6.5538, abs=1e-4
    )
