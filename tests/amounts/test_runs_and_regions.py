"""How an amount runs along a seam, and properties of the calculators of one region."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator
from shapely import LineString

from fitdoctor.amounts import pieces
from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.curves import through
from fitdoctor.amounts.marks import Length, Mark
from fitdoctor.amounts.runs import SHAPES
from fitdoctor.errors import FitdoctorError

few = settings(max_examples=30)
lengths = st.floats(1, 50)


def marks_of(name: str, options: dict[str, str] | None = None, **mm: float) -> tuple[Mark, ...]:
    inputs = {key.replace("_", "-"): Length(value) for key, value in mm.items()}
    return CALCULATORS[name].work_out(inputs, options or {}).marks


def offsets(mark: Mark) -> list[float]:
    return [offset for _, offset in mark.stations]


@pytest.mark.parametrize(
    ("shape", "ends", "words"),
    [
        ("even", (1, 1), "from the armhole to the hem"),
        ("tapered", (1, 0), "at the armhole, running out to nothing at the hem"),
        ("flared", (0, 1), "at the hem, running out to nothing at the armhole"),
        ("waist", (0, 0), "at the bust, running out to nothing at the armhole and at the hem"),
        ("held", (0, 1), "from the bust to the hem, starting from nothing at the armhole"),
    ],
)
@pytest.mark.parametrize("name", ["share-seams", "side-seams", "plain", "set-in-piece"])
def test_the_words_of_a_mark_say_how_its_line_runs(name: str, shape: str, ends: tuple[float, float], words: str) -> None:
    options = {"shape": shape, "top": "at the armhole", "full-at": "at the bust", "foot": "at the hem"}
    (mark,) = marks_of(name, options, total=40)
    assert (mark.stations[0][1], mark.stations[-1][1]) == pytest.approx((ends[0] * mark.each_mm, ends[1] * mark.each_mm))
    assert max(offsets(mark)) == pytest.approx(mark.each_mm)
    if name != "plain" or shape != "even":
        assert words in mark.where
        assert mark.ends == ("armhole", "hem")


@few
@given(shape=st.sampled_from(SHAPES), total=lengths)
def test_left_and_right_take_alike_however_it_runs(shape: str, total: float) -> None:
    (mark,) = marks_of("share-seams", {"shape": shape}, total=total)
    assert mark.total_mm == pytest.approx(total)
    assert mark.each_mm * 4 == pytest.approx(total)


@few
@given(total=st.floats(1, 200), limit=st.floats(0, 40))
def test_side_seams_stop_at_their_limit_and_say_what_is_left(total: float, limit: float) -> None:
    calculation = CALCULATORS["side-seams"].work_out({"total": Length(total), "limit": Length(limit)}, {})
    assert calculation.marks[0].total_mm + calculation.unplaced_mm == pytest.approx(total)
    assert calculation.marks[0].total_mm <= 2 * limit + 1e-9


@few
@given(st.floats(0, 50), st.floats(0, 50), st.floats(0, 50), st.floats(0, 1))
def test_the_line_through_three_readings_agrees_with_scipy(first: float, middle: float, last: float, share: float) -> None:
    # scipy's monotone cubic (Fritsch and Carlson) has the same slope half way; ends are level here, since a hem goes on round the body.
    readings = (first, middle, last)
    slope = float(PchipInterpolator([0, 0.5, 1], readings).derivative()(0.5))
    step = 1e-6
    ours = (through(readings, 0.5 + step) - through(readings, 0.5 - step)) / (2 * step)
    assert ours == pytest.approx(slope, abs=1e-3)
    value = through(readings, share)
    beside = readings[:2] if share <= 0.5 else readings[1:]
    assert min(beside) - 1e-9 <= value <= max(beside) + 1e-9


@few
@given(st.lists(st.floats(200, 500), min_size=4, max_size=4))
def test_a_hem_levelled_by_readings_is_level(readings: list[float]) -> None:
    front, right, back, left = readings
    names = dict(zip(("floor_front", "floor_right", "floor_back", "floor_left"), readings, strict=True))
    marks = marks_of("skirt-hem-level", None, total=1, **names)
    sides = (right, left) if len(marks) == 2 else (right,)
    for mark, side in zip(marks, sides, strict=True):
        at = offsets(mark)
        for offset, reading in ((at[0], front), (at[len(at) // 2], side), (at[-1], back)):
            assert reading + offset == pytest.approx(max(readings))


@few
@given(total=lengths)
def test_a_cap_let_out_and_an_armhole_lowered_meet_the_old_seam_at_the_notches(total: float) -> None:
    (cap,) = marks_of("cap-move", total=total)
    (armhole,) = marks_of("armhole-move", total=total)
    assert (cap.stations[0][1], cap.stations[-1][1], armhole.stations[0][1]) == pytest.approx((0, 0, 0))
    assert max(offsets(cap)) == pytest.approx(total)
    assert armhole.stations[-1][1] == pytest.approx(total)


@few
@given(total=st.floats(1, 25), more=st.floats(0.5, 5), place=st.sampled_from(["underarm", "front", "front-and-underarm"]))
def test_a_deeper_armhole_is_longer(total: float, more: float, place: str) -> None:
    def change(mm: float) -> float:
        return CALCULATORS["armhole-move"].work_out({"total": Length(mm)}, {"place": place, "take": "cut"}).effects["armhole-change"].mm

    assert 0 <= change(total) <= change(total + more) + 1e-6 or place == "front"


@few
@given(shift=st.floats(1, 40), toward=st.sampled_from(["back", "front"]), round_=st.floats(350, 600))
def test_a_sleeve_turned_moves_every_notch_alike_and_by_its_degrees(shift: float, toward: str, round_: float) -> None:
    cap, body = marks_of("sleeve-pitch", {"toward": toward}, total=shift, armhole_length=round_)
    assert offsets(cap) == offsets(body) == [shift] * 3
    assert cap.along_mm == -body.along_mm
    assert f"{360 * shift / round_:.1f}°" in cap.where
    assert LineString(body.old).length == pytest.approx(round_, rel=1e-3)


@few
@given(half=st.floats(150, 320))
def test_an_armhole_is_as_long_as_it_was_measured(half: float) -> None:
    assert LineString(pieces.armhole_for(half)).length == pytest.approx(half, rel=2e-4)
    assert LineString(pieces.back_neck_for(half / 3)).length == pytest.approx(half / 3, rel=2e-4)


@few
@given(total=st.floats(1, 40))
def test_steps_of_a_scoop_grow_to_what_was_measured(total: float) -> None:
    depths = [mark.each_mm for mark in marks_of("crotch-scoop", total=total)]
    assert depths == sorted(depths)
    assert depths[-1] == pytest.approx(total)
    assert all(b - a <= 25.4 / 8 + 1e-6 for a, b in zip([0.0, *depths], depths, strict=False))


@few
@given(total=lengths)
def test_a_leg_swung_keeps_its_width(total: float) -> None:
    inner, outer = marks_of("leg-swing", total=total)
    moved = [(n[0] - o[0]) + (m[0] - p[0]) for o, n, p, m in zip(inner.old, inner.new, outer.old, outer.new, strict=True)]
    assert np.allclose(moved, 0, atol=0.05)


@few
@given(total=lengths, most=st.sampled_from(["centre", "side", "all"]))
def test_a_waist_lowered_at_side_and_at_centre_makes_one_lowered_all_round(total: float, most: str) -> None:
    (mark,) = marks_of("waist-crescent", {"most": most}, total=total)
    (other,) = marks_of("waist-crescent", {"most": {"centre": "side", "side": "centre", "all": "all"}[most]}, total=total)
    both = [a + b for a, b in zip(offsets(mark), offsets(other), strict=True)]
    assert both == pytest.approx([total * (2 if most == "all" else 1)] * len(both))


@few
@given(total=lengths, knee=st.floats(380, 560), hem=st.floats(300, 560))
def test_a_turn_up_is_as_wide_as_the_leg_it_lies_against(total: float, knee: float, hem: float) -> None:
    inputs = {"total": Length(total), "knee-girth": Length(knee), "hem-girth": Length(hem), "knee-to-hem": Length(430)}
    flare = CALCULATORS["turn-up-flare"].work_out(inputs, {}).effects["hem-flare"].mm
    above = hem + max(0.0, (knee - hem) / 430) * total
    assert hem + flare == pytest.approx(above)


@few
@given(total=st.floats(1, 60), number=st.sampled_from(["2", "4"]))
def test_neck_darts_close_to_the_facing_edge_and_start_on_the_neckline(total: float, number: str) -> None:
    calculation = CALCULATORS["back-neck-darts"].work_out({"total": Length(total), "half-shoulder": Length(90)}, {"darts": number})
    assert sum(mark.total_mm for mark in calculation.marks) == pytest.approx(total)
    assert 2 * calculation.effects["facing-edge"].mm == pytest.approx(180 - total)
    for mark in calculation.marks:
        assert LineString(mark.edge).distance(LineString(mark.old)) < 0.01
        assert math.dist(mark.new[0], mark.new[2]) == pytest.approx(mark.each_mm)


def test_a_shoulder_narrowed_by_more_than_its_seam_is_refused_with_what_to_do() -> None:
    with pytest.raises(FitdoctorError, match="More is to come off the shoulder"):
        marks_of("shoulder-narrowed", total=150, shoulder_length=127)
    with pytest.raises(FitdoctorError, match="The sleeve cap is higher"):
        marks_of("cap-move", total=10, armhole_length=200, cap_height=190)
