"""A stand-in from the standard block that changes anything in a result is named in it, with what to measure instead."""

from __future__ import annotations

import pytest

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.carry import from_block, stand_ins
from fitdoctor.amounts.marks import Calculation, Length

WAYS: dict[str, tuple[dict[str, str], ...]] = {
    "centre-back-seam": ({"blend": "crotch"}, {"blend": "straight"}, {"blend": "middle"}, {"blend": "hem"}),
    "share-seams": ({"shape": "waist"}, {"shape": "tapered"}, {"shape": "held"}),
    "side-seams": ({"shape": "tapered"}, {"shape": "flared"}, {}),
    "plain": ({"shape": "waist"}, {"shape": "flared"}),
    "hem-let-down": ({"finish": "plain"}, {"finish": "faced"}, {"finish": "false"}),
    "trouser-hem": ({"finish": "plain"}, {"finish": "cuff"}, {"finish": "faced"}),
    "sleeve-length": ({"take": "lengthen"}, {"take": "shorten", "vent": "buttons"}, {"take": "shorten-at-cap"}),
    "shoulder-wedge": ({}, {"armhole": "lowered"}, {"end": "neck"}),
    "armhole-move": ({}, {"place": "front"}, {"place": "shoulder"}),
    "waist-crescent": ({}, {"most": "side"}, {"most": "all"}),
    "waist-hip-shaping": ({}, {"darts": "none"}),
    "dart-repoint": ({"move": "shorten"}, {"move": "aside"}),
    "back-neck-darts": ({"darts": "2"}, {"darts": "4"}),
}
# What the one who works decides on; nobody can measure it.
CUSTOMS = {
    *("step", "stop", "seam", "join-seam", "facing-seam", "new-hem", "inside-less", "front-less", "apart", "parts", "edge-slope"),
    *("button-from-edge", "button-spacing"),
}
INSTEAD = {"length": "seat-seam", "half-hem": "hem-girth"}
CASES = [(name, way) for name in sorted(CALCULATORS) for way in WAYS.get(name, ({},))]


def inputs(name: str, **sizes: float) -> dict[str, Length]:
    calculator = CALCULATORS[name]
    measured = {input_: Length(20.0) for input_ in (*calculator.needs, *calculator.optional) if not input_.startswith(("limit", "left"))}
    measured |= {"knee-girth": Length(480.0), "hem-girth": Length(400.0)} if "knee-girth" in measured else {}
    return {**measured, **{size: Length(mm) for size, mm in calculator.block.items()}, **{size: Length(mm) for size, mm in sizes.items()}}


def numbers(calculation: Calculation) -> list[float]:
    """Everything measured out in a result; how long a seam is drawn that moves evenly does not matter."""
    lengths = [calculation.total, calculation.each, *calculation.effects.values()]
    uneven = [mark for mark in calculation.marks if len({round(offset, 6) for _, offset in mark.stations}) > 1 or mark.along_mm]
    offsets = [offset for mark in calculation.marks for _, offset in mark.stations]
    return [*(length.mm for length in lengths), *offsets, *(way for mark in uneven for way, _ in mark.stations)]


def said(calculation: Calculation) -> str:
    return " ".join(length.assumed for length in (calculation.total, calculation.each, *calculation.effects.values()))


def without(name: str, size: str) -> dict[str, Length]:
    """Nothing measured that tells this size, the other measurement that does so included."""
    return {input_: length for input_, length in inputs(name).items() if input_ not in (size, INSTEAD.get(size))}


@pytest.mark.parametrize(("name", "way"), CASES)
def test_whatever_a_stand_in_changes_says_what_to_measure(name: str, way: dict[str, str]) -> None:
    calculator = CALCULATORS[name]
    usual = numbers(calculator.work_out(inputs(name), way))
    for size, mm in calculator.block.items():
        if size in CUSTOMS:
            continue
        larger = numbers(calculator.work_out(inputs(name, **{size: mm * 1.1 + 1}), way))
        if larger == pytest.approx(usual) and len(larger) == len(usual):
            continue
        missing = calculator.work_out(without(name, size), way)
        assert "from a standard block: measure the " in said(missing), size
        assert said(missing).count("for the exact figure") >= 1


@pytest.mark.parametrize(("name", "way"), CASES)
def test_where_everything_is_measured_nothing_is_assumed(name: str, way: dict[str, str]) -> None:
    assert said(CALCULATORS[name].work_out(inputs(name), way)).strip() == ""


def test_several_stand_ins_are_named_in_one_sentence() -> None:
    three = [from_block(10.0, name) for name in ("the slant of the hem", "the cuff depth", "the slant of the hem", "the half hem")]
    assert stand_ins(*three) == "from a standard block: measure the slant of the hem, the cuff depth and the half hem for the exact figure"
    assert stand_ins(Length(3.0)) == ""
    assert stand_ins(Length(1.0, 0.0, stand_ins(*three[:2])), three[3]) == stand_ins(*three)
