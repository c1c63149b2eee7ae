"""Verdicts: three-valued conditions, borderline inside the give or take, and which method is proposed."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.amounts.marks import Length
from fitdoctor.case import Case, Measured
from fitdoctor.knowledge.entries import (
    AppliesTo,
    ClothNeeded,
    Condition,
    Effect,
    Feature,
    FeatureValue,
    Garment,
    LengthMm,
    Measurement,
    Method,
    Operation,
    Seam,
    When,
)
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.verdict import MethodVerdict, best_method, judge, overall

OPEN = Operation(id="open", do="Open.", opens=("side-seam",), minutes=(1, 2, 3))
LET_OUT = Method(
    id="let-out",
    title="Let out the side seams",
    treats=("tight",),
    garments=("skirt",),
    stage="girth",
    operations=(OPEN,),
    cloth_needed=(
        ClothNeeded(seam="side-seam", measurement="allowance", amount="each", keep_mm=LengthMm(10), sources=("common-practice",)),
    ),
)
PUNCHED = When(fact="dart-ends", is_=("punched",))


def condition(effect: Effect, when: When | None = PUNCHED, **more: object) -> Condition:
    more.setdefault("applies_to", AppliesTo(methods=("let-out",)))
    return Condition(id=f"a-{effect}", title="t", effect=effect, needs="The darts are whole", when=when, because="Holes show.", **more)  # type: ignore[arg-type]


def knowledge_with(*conditions: Condition) -> Knowledge:
    allowance = Measurement(
        id="allowance",
        title="Allowance",
        how=("Look.",),
        of="garment",
        sense="length",
        usual_mm=(LengthMm(5), LengthMm(30)),
        possible_mm=(LengthMm(0), LengthMm(60)),
        tolerance_mm=LengthMm(1),
    )
    darts = Feature(id="dart-ends", title="Dart ends", ask="?", garments=("skirt",), values=(FeatureValue(id="punched", title="Punched"),))
    seams = Feature(id="seams", title="Seams", ask="?", garments=("skirt",), values=(FeatureValue(id="bare", title="Bare", no_cloth=True),))
    return Knowledge(
        garments={"skirt": Garment(id="skirt", title="Skirt", seams=(Seam(id="side-seam", title="side seams"),))},
        features={"dart-ends": darts, "seams": seams},
        measurements={"allowance": allowance},
        methods={"let-out": LET_OUT},
        conditions={c.id: c for c in conditions},
    )


ENOUGH = {"allowance": Measured(40.0)}
AMOUNTS: Mapping[str, Length] = {"each": Length(6.0), "total": Length(24.0)}


def verdict(
    *conditions: Condition, facts: dict[str, str] | None = None, measured: dict[str, Measured] | None = None, **more: object
) -> MethodVerdict:
    case = Case(garment="skirt", facts=facts or {}, measured=ENOUGH if measured is None else measured, **more)  # type: ignore[arg-type]
    return judge(knowledge_with(*conditions), case, "tight", LET_OUT, AMOUNTS)


@pytest.mark.parametrize(
    ("effect", "level"), [("forbids", "CANNOT"), ("limits", "CAN_WITHIN_LIMITS"), ("needs-care", "NEEDS_CARE"), ("adds-work", "CAN")]
)
def test_what_strikes_sets_the_verdict(effect: Effect, level: str) -> None:
    assert verdict(condition(effect), facts={"dart-ends": "punched"}).level == level


def test_a_stop_that_is_not_known_leaves_the_verdict_open_and_says_what_to_look_at() -> None:
    found = verdict(condition("forbids"))
    assert found.level == "NOT_KNOWN"
    assert found.conditions[0].missing == ("dart-ends",)


def test_a_stop_that_holds_for_all_work_does_not_hold_the_verdict_up_while_it_is_not_answered() -> None:
    everywhere = condition("forbids", applies_to=AppliesTo(all=True))
    assert verdict(everywhere).level == "CAN"
    assert verdict(everywhere, facts={"dart-ends": "punched"}).level == "CANNOT"


def test_a_care_that_always_holds_is_shown_and_does_not_lower_the_verdict() -> None:
    found = verdict(condition("needs-care", when=None))
    assert found.level == "CAN"
    assert found.conditions[-1].always or found.conditions[0].always


def test_the_first_stop_is_named_first() -> None:
    stop = condition("forbids")
    found = verdict(condition("limits", PUNCHED), stop, facts={"dart-ends": "punched"})
    assert found.because[0].entry == stop.id


@given(st.floats(0, 60))
def test_cloth_in_the_seam_decides_with_what_must_stay_and_the_give_or_take(there_mm: float) -> None:
    level = verdict(measured={"allowance": Measured(there_mm)}).level
    spare = there_mm - 6 - 10
    expected = "NOT_KNOWN" if 0 < abs(spare) < 1 else "CAN" if spare >= 0 else "CANNOT"
    assert level == expected


def test_a_limit_inside_the_give_or_take_is_too_close_to_call() -> None:
    found = verdict(measured={"allowance": Measured(16.4)})
    assert "Too close to call" in found.sentence


def test_cloth_not_looked_for_is_not_known() -> None:
    assert verdict(measured={}).level == "NOT_KNOWN"


def test_seams_that_are_known_to_hold_nothing_forbid_a_let_out_until_they_are_measured() -> None:
    bare = verdict(measured={}, facts={"seams": "bare"})
    assert bare.level == "CANNOT"
    assert "seams: bare" in bare.sentence
    assert verdict(facts={"seams": "bare"}).level == "CAN"


def test_what_the_fitter_goes_past_is_kept_with_the_condition() -> None:
    found = verdict(condition("limits"), facts={"dart-ends": "punched"}, past_limits=("a-limits",))
    assert any(state.passed for state in found.conditions)


def judged(method: str, level: str) -> MethodVerdict:
    return MethodVerdict(method, "tight", level, "", (), ())  # type: ignore[arg-type]


def test_what_can_be_done_is_proposed_before_what_cannot_whatever_its_rank() -> None:
    quick = Method(id="quick", title="q", treats=("tight",), garments=("skirt",), stage="girth", rank=1)
    sound = Method(id="sound", title="s", treats=("tight",), garments=("skirt",), stage="girth", rank=9)
    known = Knowledge(methods={"quick": quick, "sound": sound})
    best = best_method([judged("quick", "CANNOT"), judged("sound", "CAN")], known)
    assert best is not None
    assert best.method == "sound"


def test_the_whole_job_is_as_good_as_its_gravest_part() -> None:
    assert overall([judged("a", "CAN"), judged("b", "NEEDS_CARE"), judged("c", "CAN")]).level == "NEEDS_CARE"
    assert overall([]).level == "NOT_KNOWN"
