"""The worked numbers of the nine situations the program was first made for (common practice, no source); lengths in inches here."""

from __future__ import annotations

import pytest

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.units import MM_PER_INCH


def work_out(name: str, options: dict[str, str] | None = None, **inches: float) -> Calculation:
    """A calculation with its lengths given in inches; underscores stand for hyphens."""
    inputs = {key.replace("_", "-"): Length(value * MM_PER_INCH) for key, value in inches.items()}
    return CALCULATORS[name].work_out(inputs, options or {})


def inches(mm: float | Length) -> float:
    return (mm.mm if isinstance(mm, Length) else mm) / MM_PER_INCH


def at_share(mark: Mark, share: float) -> float:
    """Offset in inches at a share of the way; the share must be a station."""
    length = mark.stations[-1][0]
    return next(inches(offset) for way, offset in mark.stations if way == pytest.approx(share * length))


def test_the_waist_of_slacks_is_lowered_in_a_crescent() -> None:
    mark = work_out("waist-crescent", total=0.75, along=9).marks[0]
    assert mark.stations[-1][0] == pytest.approx(9 * MM_PER_INCH)
    assert [round(at_share(mark, share), 3) for share in (0, 0.25, 0.5, 0.75, 1)] == [0.75, 0.633, 0.375, 0.117, 0]


def test_the_back_inseam_of_mens_trousers_tapers_to_nothing_at_the_knee() -> None:
    mark = work_out("inseam-taper", total=0.625, length=14).marks[0]
    assert at_share(mark, 0) == pytest.approx(5 / 8)
    assert at_share(mark, 0.5) == pytest.approx(5 / 16, abs=1 / 16)
    assert at_share(mark, 1) == 0


def test_the_hip_excess_comes_off_both_back_panels_alike_at_the_hip() -> None:
    calculation = work_out("centre-back-seam", {"take": "in", "blend": "crotch", "full-to": "hip"}, total=1)
    assert inches(calculation.each) == pytest.approx(0.5)
    assert inches(calculation.effects["hip-change"]) == pytest.approx(1)


@pytest.mark.parametrize(("finish", "lines"), [("cuff", [0, 1.5, 3.0, 4.5]), ("plain", [0, 1.5])])
def test_hem_lines_are_spaced_by_the_depth(finish: str, lines: list[float]) -> None:
    calculation = work_out("trouser-hem", {"finish": finish}, finished_inseam=30, cuff_depth=1.5, hem_depth=1.5)
    assert [inches(mark.stations[0][1]) for mark in calculation.marks] == pytest.approx(lines)
    assert inches(calculation.effects["cloth-needed"]) == pytest.approx(lines[-1])


def test_the_hem_slants_half_an_inch_lower_at_the_back_unless_set() -> None:
    finished = work_out("trouser-hem", finished_inseam=30).marks[0]
    assert inches(finished.stations[-1][1] - finished.stations[0][1]) == pytest.approx(0.5)
    assert inches(work_out("trouser-hem", finished_inseam=30, slant=7 / 8).marks[0].new[-1][1]) == pytest.approx(7 / 8)


def test_cloth_for_a_cuff_is_there_or_short_by_the_difference() -> None:
    short = work_out("trouser-hem", {"finish": "cuff"}, finished_inseam=30, cuff_depth=1.5, cloth_below=3)
    enough = work_out("trouser-hem", {"finish": "cuff"}, finished_inseam=30, cuff_depth=1.5, cloth_below=6)
    assert inches(short.effects["cloth-short-by"]) == pytest.approx(1.5)
    assert inches(enough.effects["cloth-short-by"]) == 0


def test_the_shoulder_seams_give_up_what_the_dropped_neckline_gains() -> None:
    calculation = work_out("neck-drop", total=0.5, half_neck_width=3, back_neck_depth=7 / 8)
    neck, shoulder = calculation.marks
    assert (inches(neck.stations[0][1]), inches(neck.stations[-1][1])) == pytest.approx((0.5, 0))
    assert inches(calculation.effects["neckline-longer"]) == pytest.approx(0.2788, abs=5e-5)
    assert inches(shoulder.each_mm) == pytest.approx(0.2788, abs=5e-5)
    assert shoulder.stations[-1][1] == 0


def test_each_of_two_back_darts_is_let_out_by_half() -> None:
    calculation = work_out("dart-intake", {"take": "out", "darts": "2"}, total=1, length=6)
    assert inches(calculation.effects["intake-change"]) == pytest.approx(0.5)
    assert inches(calculation.effects["per-side"]) == pytest.approx(0.25)


def test_two_back_neck_darts_share_the_surplus() -> None:
    calculation = work_out("back-neck-darts", total=0.75, length=3)
    assert inches(calculation.effects["per-dart"]) == pytest.approx(3 / 8)
    assert inches(calculation.effects["per-side"]) == pytest.approx(3 / 16)
    assert calculation.effects["split-needed"].mm == 0


def test_a_neck_dart_too_deep_for_its_length_is_to_be_split() -> None:
    assert work_out("back-neck-darts", total=3, length=3).effects["split-needed"].mm > 0
    assert work_out("back-neck-darts", {"darts": "4"}, total=3, length=3).effects["split-needed"].mm == 0


def test_neck_darts_stand_midway_between_centre_back_and_shoulder() -> None:
    assert inches(work_out("back-neck-darts", total=0.75, half_shoulder=7).effects["place-from-centre"]) == pytest.approx(3.5)


def test_a_narrowed_shoulder_makes_the_armhole_longer_than_a_smooth_cap_can_fill() -> None:
    effects = work_out("shoulder-narrowed", total=0.5, shoulder_length=5, shoulder_slope_drop=1.913, cap_can_give=0).effects
    assert inches(effects["armhole-longer"]) == pytest.approx(0.38, abs=0.005)
    assert inches(effects["cap-short-by"]) == pytest.approx(0.38, abs=0.005)


def test_a_gathered_cap_fills_the_longer_armhole() -> None:
    assert (
        work_out("shoulder-narrowed", total=0.5, shoulder_length=5, shoulder_slope_drop=1.913, cap_can_give=3).effects["cap-short-by"].mm
        == 0
    )


def test_whether_the_cap_fills_the_armhole_is_not_said_before_the_cap_is_measured() -> None:
    assert "cap-short-by" not in work_out("shoulder-narrowed", total=0.5).effects


def test_a_sleeve_let_down_an_inch_keeps_half_an_inch_of_hem() -> None:
    effects = work_out("sleeve-length", {"take": "lengthen"}, total=1, hem_depth=1.5).effects
    assert inches(effects["hem-left"]) == pytest.approx(0.5)
    assert effects["hem-short-by"].mm > 0
    assert effects["cloth-short-by"].mm == 0


def test_a_sleeve_cannot_be_let_down_further_than_its_hem_is_deep() -> None:
    assert inches(work_out("sleeve-length", {"take": "lengthen"}, total=1.75, hem_depth=1.5).effects["cloth-short-by"]) == pytest.approx(
        0.25
    )


@pytest.mark.parametrize(
    ("seams", "seam", "layer"),
    [("centre-back-seam side-seam side-seam", 1 / 2, 1 / 4), ("side-seam side-seam", 3 / 4, 3 / 8)],
)
def test_a_jacket_back_is_taken_in_by_equal_amounts(seams: str, seam: float, layer: float) -> None:
    calculation = work_out("share-seams", {"seams": seams, "take": "in"}, total=1.5)
    assert inches(calculation.effects["per-seam"]) == pytest.approx(seam)
    assert {round(inches(mark.each_mm), 6) for mark in calculation.marks} == {layer}
    assert inches(sum(mark.total_mm for mark in calculation.marks)) == pytest.approx(1.5)
    assert calculation.unplaced_mm == 0


def test_the_lining_follows_by_the_same_amounts() -> None:
    lining = CALCULATORS["lining-follows"].work_out({"total": Length(1.5 * MM_PER_INCH), "parts": Length(3)}, {})
    assert {mark.layer for mark in lining.marks} == {"lining"}
    assert inches(lining.each) == pytest.approx(0.25)
