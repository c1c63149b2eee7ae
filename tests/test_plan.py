"""The order of work: seams opened once, tops before hems, no circles, minutes that add up."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import Method, Operation, Stage
from fitdoctor.plan import STAGES, Plan, make_plan, method_minutes, total_minutes
from fitdoctor.shop import Shop


def method(name: str, stage: Stage, *operations: Operation) -> Method:
    return Method(id=name, title=name, treats=("x",), garments=("trousers",), stage=stage, operations=operations)


def step(name: str, **more: object) -> Operation:
    return Operation(id=name, do=f"Do {name}.", minutes=(1, 2, 3), **more)  # type: ignore[arg-type]


INSEAM = method(
    "inseam",
    "seat",
    step("open-crotch", opens=("crotch-seam", "inseam")),
    step("mark"),
    step("baste-and-try", try_on=True),
    step("sew", closes=("inseam",)),
    step("sew-crotch", closes=("crotch-seam",)),
)
CENTRE_BACK = method(
    "centre-back",
    "seat",
    step("open-back", opens=("crotch-seam", "centre-back-seam")),
    step("mark"),
    step("baste-and-try", try_on=True),
    step("sew", closes=("centre-back-seam", "crotch-seam")),
)
HEM = method("hem", "length", step("open-hem", opens=("hem",)), step("mark"), step("try", try_on=True), step("sew", closes=("hem",)))
COLLAR = method("collar", "neck", step("open", opens=("collar-seam",)), step("try", try_on=True), step("sew", closes=("collar-seam",)))


def plan_of(*methods: Method, unlined: bool = False) -> Plan:
    return make_plan(methods, lambda _, text: text, unlined)


def test_a_seam_that_two_methods_need_is_opened_and_closed_once() -> None:
    plan = plan_of(INSEAM, CENTRE_BACK)
    for seam in ("crotch-seam", "inseam", "centre-back-seam"):
        assert sum(seam in op.opens for op in plan.operations) == 1
        assert sum(seam in op.closes for op in plan.operations) == 1


def test_a_shared_seam_is_closed_after_everything_that_needs_it_open() -> None:
    plan = plan_of(INSEAM, CENTRE_BACK)
    closed = next(n for n, op in enumerate(plan.operations) if "crotch-seam" in op.closes)
    marks = [n for n, op in enumerate(plan.operations) if op.id.endswith(".mark")]
    assert len(marks) == 2
    assert all(n < closed for n in marks)


def test_nothing_is_lost_when_operations_are_joined() -> None:
    said = " ".join(op.text for op in plan_of(INSEAM, CENTRE_BACK).operations)
    for operation in (*INSEAM.operations, *CENTRE_BACK.operations):
        assert operation.do in said


def test_hems_come_last_and_the_collar_before_them_whatever_the_order_given() -> None:
    one, other = plan_of(HEM, INSEAM, COLLAR), plan_of(COLLAR, HEM, INSEAM)
    stages = [op.stage for op in one.operations]
    assert stages == sorted(stages, key=STAGES.index)
    assert [op.id for op in one.operations] == [op.id for op in other.operations]


def test_two_try_ons_with_nothing_between_them_are_one() -> None:
    operations = plan_of(INSEAM, CENTRE_BACK).operations
    assert not any(a.try_on and b.try_on for a, b in itertools.pairwise(operations))
    assert any(op.try_on and len(op.for_methods) == 2 for op in operations)


def test_what_only_a_lining_needs_is_left_out_of_an_unlined_garment() -> None:
    lined = method("waist", "waist", step("open"), step("lining", needs_lining=True, layer="lining"), step("sew"))
    assert [op.id for op in plan_of(lined, unlined=True).operations] == ["waist.open", "waist.sew"]
    assert len(plan_of(lined).operations) == 3


def test_operations_in_a_circle_are_refused_by_name() -> None:
    circle = method("circle", "seat", step("one", after=("two",)), step("two", after=("one",)))
    with pytest.raises(FitdoctorError, match="circle"):
        plan_of(circle)


def test_a_shops_own_minutes_count_by_stage() -> None:
    shop = Shop(minutes_percent=200, stage_percent={"length": 50})
    plan = make_plan([INSEAM, HEM], lambda _, text: text, shop=shop)
    assert {op.minutes for op in plan.operations if op.stage == "seat"} == {(2, 4, 6)}
    assert {op.minutes for op in plan.operations if op.stage == "length"} == {(0.5, 1, 1.5)}
    assert method_minutes(HEM, shop)[1] == pytest.approx(4)
    assert method_minutes(HEM, Shop())[1] == pytest.approx(8)


def test_an_empty_plan_takes_no_time() -> None:
    assert plan_of().minutes == (0, 0, 0)


def test_the_mean_of_one_operation_is_the_three_point_estimate() -> None:
    # (l + 4m + h) / 6: D. G. Malcolm et al., Application of a Technique for Research and Development Program Evaluation, 1959.
    assert total_minutes([(4, 5, 12)])[1] == pytest.approx(6.0)


@given(st.lists(st.tuples(st.floats(1, 20), st.floats(0, 20), st.floats(0, 20)), min_size=1, max_size=12))
def test_the_total_lies_between_the_plain_sums(steps: list[tuple[float, float, float]]) -> None:
    rows = [(low, low + more, low + more + most) for low, more, most in steps]
    low, likely, high = total_minutes(rows)
    assert sum(r[0] for r in rows) - 1e-6 <= low <= likely + 1e-9
    assert likely - 1e-9 <= high <= sum(r[2] for r in rows) + 1e-6
