"""Worked amounts of published sources; each test names its own. Lengths in inches unless said otherwise."""

from __future__ import annotations

import math

import pytest

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.marks import Calculation, Length
from fitdoctor.units import MM_PER_INCH


def work_out(name: str, options: dict[str, str] | None = None, **inches: float) -> Calculation:
    inputs = {key.replace("_", "-"): Length(value * MM_PER_INCH) for key, value in inches.items()}
    return CALCULATORS[name].work_out(inputs, options or {})


def inches(length: Length | float) -> float:
    return (length.mm if isinstance(length, Length) else length) / MM_PER_INCH


@pytest.mark.parametrize(("take", "total", "side"), [("in", 1, 1 / 2), ("out", 2, 1), ("in", 3 / 4, 3 / 8), ("in", 4, 2), ("in", 3, 1.5)])
def test_half_of_the_whole_is_marked_on_each_side_of_centre_back(take: str, total: float, side: float) -> None:
    # Men's trousers in 1 in and out 2 in: two teaching pages on the back trouser seam; jeans 3/4 in: a denim page; skirt 4 in at centre
    # back only: a sewing page on skirt waists; jeans 3 in with marks 1 1/2 in each side (derived).
    calculation = work_out("centre-back-seam", {"take": take, "blend": "crotch"}, total=total)
    assert inches(calculation.each) == pytest.approx(side)
    assert inches(calculation.marks[0].stations[0][1]) == pytest.approx(side)
    assert calculation.marks[0].stations[-1][1] == 0


def test_the_new_line_runs_parallel_through_the_waistband() -> None:
    # A teaching page on taking in the back trouser seam: parallel through the band, blending at the crotch curve.
    mark = work_out("centre-back-seam", {"blend": "crotch"}, total=1, length=11).marks[0]
    assert mark.stations[0][1] == pytest.approx(math.dist(mark.old[2], mark.new[2]), abs=0.01)


def test_an_outlet_of_one_and_three_eighths_gives_two_inches() -> None:
    # A book page on letting out the waist: an edge may give what it has less 3/8 in that stays; 1 3/8 in gives 2 in in all (derived).
    assert inches(work_out("centre-back-seam", {"take": "out"}, total=2).effects["per-side"]) + 3 / 8 == pytest.approx(1 + 3 / 8)


def test_four_inches_at_the_side_seams_are_one_inch_on_each_layer() -> None:
    # A sewing page on skirt waists: 4 in in all, 2 in a side seam, 1 in from the fold.
    assert inches(work_out("side-seams", {"shape": "tapered"}, total=4, length=12).effects["per-edge"]) == pytest.approx(1)


def test_a_skirt_loose_an_inch_is_taken_in_straight_down() -> None:
    # A university extension leaflet: half an inch a side seam, so a quarter inside the old line on each layer.
    calculation = work_out("side-seams", {"shape": "even"}, total=1)
    assert inches(calculation.effects["per-edge"]) == pytest.approx(1 / 4)
    assert inches(calculation.effects["hip-change"]) == pytest.approx(1)


def test_two_inches_over_four_pleats() -> None:
    # A sewing page on pleated skirts: 2/4 = 1/2 in a pleat, 1/4 in on each side of it.
    effects = work_out("share-seams", {"seams": "pleat pleat pleat pleat"}, total=2).effects
    assert (inches(effects["per-seam"]), inches(effects["per-layer"])) == pytest.approx((1 / 2, 1 / 4))


def test_an_elastic_waist_in_two_back_darts() -> None:
    # A sewing page on elastic waists: 7 / 2 / 2 = 1.75 in fold depth.
    assert inches(work_out("dart-intake", {"darts": "2"}, total=7, length=7).effects["per-side"]) == pytest.approx(1.75)


def test_gathers_replaced_by_two_tucks() -> None:
    # A sewing page on tucks: 2 in in two tucks, 1 in each, pinched 1/2 in on each side of its middle.
    effects = work_out("dart-intake", {"darts": "2"}, total=2).effects
    assert (inches(effects["intake-change"]), inches(effects["per-side"])) == pytest.approx((1, 1 / 2))


def test_a_hem_round_of_seventeen_inches_parts_into_front_and_back() -> None:
    # A trouser drafting page: front (17 - 1) / 4 = 4 in on each side of the crease, back (17 + 1) / 4 = 4 1/2 in.
    effects = work_out("leg-taper", total=1, hem_girth=17).effects
    assert (inches(effects["front-half"]), inches(effects["back-half"])) == pytest.approx((4, 4.5))
    assert 2 * inches(effects["front-half"]) + 2 * inches(effects["back-half"]) == pytest.approx(17)


def test_a_cuff_needs_three_times_its_depth() -> None:
    # A book page on trouser cuffs: add 4 1/2 in below the finished line for a cuff of 1 1/2 in; marks at 1 1/2 and 3 in from the edge.
    calculation = work_out("trouser-hem", {"finish": "cuff"}, finished_inseam=30, cuff_depth=1.5)
    lines = [inches(mark.stations[0][1]) for mark in calculation.marks]
    assert inches(calculation.effects["cloth-needed"]) == pytest.approx(4.5)
    assert [lines[-1] - line for line in lines] == pytest.approx([4.5, 3, 1.5, 0])


def test_a_plain_hem_needs_its_own_depth() -> None:
    # A drafting book of trousers: no cuff, 2 in.
    assert inches(work_out("trouser-hem", {"finish": "plain"}, finished_inseam=30, hem_depth=2).effects["cloth-needed"]) == pytest.approx(2)


def test_jeans_shortened_above_their_own_hem_show_half_of_it_as_a_fold() -> None:
    # A sewing page on jeans: 2 in shorter, 1 in shows above the hem edge; 4 in, 2 in.
    assert inches(work_out("hem-take-up", total=2).effects["fold-shows"]) == pytest.approx(1)
    assert inches(work_out("hem-take-up", total=4).effects["fold-shows"]) == pytest.approx(2)


def test_the_shares_of_waist_shaping_add_up() -> None:
    # A skirt drafting page: hip 37, waist 29, so 8 in; a side curve 13 % = 1.04 each of four, front dart 0.64, back dart 1.28.
    calculation = work_out("waist-hip-shaping", {"darts": "both"}, total=8)
    each = {mark.at: inches(mark.each_mm) for mark in calculation.marks}
    assert each == pytest.approx({"side-seam": 1.04, "front-dart": 0.64, "back-dart": 1.28})
    assert sum(inches(mark.total_mm) for mark in calculation.marks) == pytest.approx(8)


def test_a_two_inch_hem_let_down_whole_leaves_nothing_to_turn() -> None:
    # A sewing page on letting hems down: faced with tape, because nothing is left; no cloth is lacking for the length itself.
    effects = work_out("hem-let-down", {"finish": "faced"}, total=2, hem_depth=2).effects
    assert (effects["hem-left"].mm, effects["cloth-short-by"].mm) == (0, 0)
    assert effects["hem-short-by"].mm > 0


def test_four_inches_spread_over_the_gores() -> None:
    # A dressmaking book of the 1910s: add 4 in, 2 in in each half, over the gore seams where the figure is fullest.
    seams = "gore-seam gore-seam gore-seam gore-seam"
    calculation = work_out("share-seams", {"seams": seams, "take": "out"}, total=4)
    assert inches(calculation.effects["per-seam"]) * 2 == pytest.approx(2)


def test_excess_over_seam_pairs_is_shared_per_edge() -> None:
    # Geometry of girth sharing (upper body notes, 19): E over n seam pairs is E / 2n per edge of a seam, two edges a seam.
    calculation = work_out("share-seams", {"seams": "side-seam side-seam back-dart back-dart"}, total=2)
    assert inches(calculation.effects["per-layer"]) == pytest.approx(2 / (2 * 4))


def test_centre_back_taken_in_shortens_neckline_and_collar_seat_by_twice() -> None:
    # Geometry (upper body notes, 17): a quarter inch on each half at neck level is half an inch of neckline.
    assert inches(work_out("centre-back-seam", {"blend": "straight"}, total=1 / 2).effects["per-side"]) == pytest.approx(1 / 4)


def test_a_wedge_of_half_an_inch_turns_a_five_inch_shoulder_by_five_point_seven_degrees() -> None:
    # Geometry (upper body notes, 18): atan(d / L) with d = 1/2 in, L = 5 in; the armhole is lowered by d.
    calculation = work_out("shoulder-wedge", {"end": "armhole"}, total=1 / 2, shoulder_length=5)
    assert inches(calculation.effects["armhole-change"]) == pytest.approx(1 / 2)
    (start, *_, end), (_, *_, moved) = calculation.marks[0].old, calculation.marks[0].new
    turned = math.degrees(math.atan2(moved[1] - start[1], moved[0] - start[0]) - math.atan2(end[1] - start[1], end[0] - start[0]))
    assert turned == pytest.approx(5.7, abs=0.05)
    assert any("5.7°" in reason.text for reason in calculation.because)


def test_each_armhole_half_gains_the_rise_of_the_shoulder_end() -> None:
    # Geometry with the shoulder slope of a cutter's draft of 1892, 22 1/2° (upper body notes, 18a and 20): 0.19 in each, 0.38 in all.
    drop = 5 * math.sin(math.radians(22.5))
    effects = work_out("shoulder-narrowed", total=1 / 2, shoulder_length=5, shoulder_slope_drop=drop).effects
    assert inches(effects["armhole-longer"]) / 2 == pytest.approx(0.19, abs=0.005)
    on_block = work_out("shoulder-narrowed", total=1 / 2).effects["armhole-longer"]
    assert inches(on_block) == pytest.approx(0.38, abs=0.005)
    assert "standard block" in on_block.assumed


def test_the_legs_of_a_dart_stand_apart_by_its_intake() -> None:
    # Dart geometry (upper body notes, 2): intake 2 cm on a leg of 13 cm stands at 8.8°.
    calculation = CALCULATORS["back-neck-darts"].work_out({"total": Length(40.0), "length": Length(130.0)}, {})
    left, point, right = calculation.marks[0].new
    assert math.dist(left, right) == pytest.approx(20)
    opening = math.degrees(2 * math.asin(math.dist(left, right) / 2 / math.dist(left, point)))
    assert opening == pytest.approx(8.8, abs=0.05)
