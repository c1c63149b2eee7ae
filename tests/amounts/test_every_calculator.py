"""What must hold for every calculator: nothing negative, give or take carried, units change nothing, nonsense refused."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.carry import at_least_zero, carry
from fitdoctor.amounts.marks import Calculation, Length
from fitdoctor.errors import FitdoctorError
from fitdoctor.units import format_length, parse_length

NAMES = sorted(CALCULATORS)
CONTRACT = (
    "waist-crescent centre-back-seam side-seams share-seams inseam-taper crotch-scoop waist-hip-shaping dart-intake dart-repoint "
    "back-neck-darts neck-drop shoulder-wedge shoulder-narrowed sleeve-pitch sleeve-length trouser-hem hem-let-down hem-take-up "
    "leg-taper skirt-hem-level lining-follows button-move balance plain armhole-move cap-move set-in-piece leg-swing dart-split neck-lower "
    "turn-up-flare"
)
TAPERS = (
    "waist-crescent inseam-taper shoulder-wedge neck-drop side-seams centre-back-seam leg-taper skirt-hem-level "
    "neck-lower dart-split"
)
LONGER_OUT = (
    "neck-drop crotch-scoop shoulder-narrowed dart-intake centre-back-seam trouser-hem lining-follows armhole-move "
    "cap-move leg-swing set-in-piece neck-lower"
)
IN_PROPORTION = (
    "waist-crescent inseam-taper side-seams share-seams centre-back-seam leg-swing armhole-move cap-move leg-taper neck-lower"
)
amounts = st.floats(0, 60)
few = settings(max_examples=25)


def inputs_of(name: str, mm: float, give: float = 0.0) -> dict[str, Length]:
    """The needed inputs at one length, and every optional one."""
    calculator = CALCULATORS[name]
    return {input_: Length(mm, give) for input_ in (*calculator.needs, *calculator.optional) if not input_.startswith("limit")}


def worked(name: str, mm: float, give: float = 0.0, **options: str) -> Calculation:
    return CALCULATORS[name].work_out(inputs_of(name, mm, give), options)


def test_every_calculator_of_the_knowledge_is_there() -> None:
    assert set(CONTRACT.split()) <= set(CALCULATORS)


@pytest.mark.parametrize("name", NAMES)
@few
@given(mm=amounts)
def test_nothing_is_negative(name: str, mm: float) -> None:
    calculation = worked(name, mm)
    lengths = [calculation.total, calculation.each, *calculation.effects.values()]
    assert all(length.mm >= -1e-9 and length.give_mm >= 0 for length in lengths)
    assert all(offset >= -1e-9 for mark in calculation.marks for _, offset in mark.stations)
    assert calculation.unplaced_mm >= 0


@pytest.mark.parametrize("name", NAMES)
@few
@given(mm=st.floats(1, 60))
def test_effects_are_those_promised(name: str, mm: float) -> None:
    assert set(worked(name, mm).effects) <= set(CALCULATORS[name].effects)


@pytest.mark.parametrize("name", NAMES)
@few
@given(mm=st.floats(1, 60))
def test_the_farthest_station_is_the_amount_and_the_lines_stand_that_far_apart(name: str, mm: float) -> None:
    for mark in worked(name, mm).marks:
        if len(mark.old) != len(mark.new) or mark.old == mark.new or name in ("dart-repoint", "neck-drop"):
            continue
        most = max(offset for _, offset in mark.stations)
        assert most == pytest.approx(mark.each_mm)
        assert max(map(math.dist, mark.old, mark.new)) == pytest.approx(most * mark.layer_share, abs=0.05)


@pytest.mark.parametrize("name", NAMES)
@few
@given(mm=st.floats(1, 60))
def test_stations_stand_in_order_with_both_ends(name: str, mm: float) -> None:
    for mark in worked(name, mm).marks:
        ways = [way for way, _ in mark.stations]
        assert len(ways) >= 2
        assert ways == sorted(ways)


@pytest.mark.parametrize("name", TAPERS.split())
@few
@given(mm=amounts)
def test_a_taper_ends_at_zero(name: str, mm: float) -> None:
    calculation = worked(name, mm, shape="tapered") if name == "side-seams" else worked(name, mm)
    for mark in calculation.marks:
        assert min(mark.stations[0][1], mark.stations[-1][1]) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("name", LONGER_OUT.split())
@few
@given(mm=st.floats(1, 50), more=st.floats(0.5, 20))
def test_longer_in_gives_longer_out(name: str, mm: float, more: float) -> None:
    less, greater = worked(name, mm), worked(name, mm + more)
    assert greater.total.mm >= less.total.mm
    for effect, length in less.effects.items():
        if effect in ("cloth-short-by", "cap-short-by", "split-needed", "front-half", "slant", "hem-flare"):
            continue
        assert greater.effects[effect].mm >= length.mm - 1e-9


@pytest.mark.parametrize("name", IN_PROPORTION.split())
@few
@given(mm=st.floats(1, 50))
def test_two_half_steps_equal_one_whole(name: str, mm: float) -> None:
    whole, half = worked(name, mm), worked(name, mm / 2)
    for one, two in zip(whole.marks, half.marks, strict=True):
        assert [offset for _, offset in one.stations] == pytest.approx([2 * offset for _, offset in two.stations])


@pytest.mark.parametrize("name", NAMES)
def test_give_or_take_is_carried(name: str) -> None:
    sizes = CALCULATORS[name].block
    exact = worked(name, 20.0)
    loose = CALCULATORS[name].work_out({**{size: Length(mm, 2.0) for size, mm in sizes.items()}, **inputs_of(name, 20.0, 2.0)}, {})
    assert exact.total.give_mm == 0
    assert loose.total.give_mm > 0
    assert all(mark.give_mm > 0 for mark in loose.marks)


@few
@given(st.floats(2, 40), st.floats(0.1, 1))
def test_first_order_give_covers_what_the_length_may_be(mm: float, give: float) -> None:
    formula = CALCULATORS["neck-drop"].work_out
    longer = formula({"total": Length(mm, give)}, {}).effects["neckline-longer"]
    most = formula({"total": Length(mm + give)}, {}).effects["neckline-longer"].mm
    assert abs(most - longer.mm) <= longer.give_mm * 1.2 + 1e-6


def test_carrying_adds_the_slopes() -> None:
    carried = carry(lambda a, b: 3 * a - b, Length(10, 1), Length(4, 0.5))
    assert (carried.mm, carried.give_mm) == pytest.approx((26, 3.5))


def test_what_lies_below_zero_is_cut_off_of_the_give_too() -> None:
    assert at_least_zero(Length(-5, 1)) == Length(0, 0)
    assert at_least_zero(Length(-1, 3)) == Length(0, 2)
    assert at_least_zero(Length(2, 1)) == Length(2, 1)


@pytest.mark.parametrize("name", NAMES)
def test_a_length_below_zero_is_refused(name: str) -> None:
    with pytest.raises(FitdoctorError):
        worked(name, -5.0)


@pytest.mark.parametrize("name", NAMES)
def test_an_unknown_word_is_refused(name: str) -> None:
    with pytest.raises(FitdoctorError):
        worked(name, 5.0, colour="blue")


def test_a_seam_without_length_is_refused() -> None:
    with pytest.raises(FitdoctorError):
        CALCULATORS["inseam-taper"].work_out({"total": Length(10), "length": Length(0)}, {})


@few
@given(st.integers(1, 48))
def test_units_change_nothing(sixteenths: int) -> None:
    typed_in_inches = parse_length(f"{sixteenths}/16 in")
    typed_in_mm = parse_length(f"{typed_in_inches} mm")
    one, two = worked("waist-crescent", typed_in_inches), worked("waist-crescent", typed_in_mm)
    assert [offset for _, offset in one.marks[0].stations] == pytest.approx([offset for _, offset in two.marks[0].stations])
    assert format_length(one.total.mm, "cm") == format_length(two.total.mm, "cm")


def test_left_and_right_are_one_mark_with_like_amounts() -> None:
    marks = worked("share-seams", 40.0, seams="centre-back-seam side-seam side-seam").marks
    assert [mark.at for mark in marks] == ["centre-back-seam", "side-seam"]
    assert [mark.total_mm for mark in marks] == pytest.approx([40 / 3, 80 / 3])


def test_a_leg_that_narrows_needs_a_flared_turn_up() -> None:
    inputs = {
        "finished-inseam": Length(760),
        "hem-depth": Length(40),
        "knee-girth": Length(480),
        "hem-girth": Length(400),
        "knee-to-hem": Length(400),
    }
    # By hand: 80 mm less over 400 mm is 1/5 mm a mm; 40 mm up, the leg is 8 mm wider all round.
    assert CALCULATORS["trouser-hem"].work_out(inputs, {}).effects["hem-flare"].mm == pytest.approx(8)
