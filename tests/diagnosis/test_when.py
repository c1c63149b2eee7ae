"""Trees that are true, false, not known or borderline."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.amounts.marks import Length
from fitdoctor.case import Case, Measured
from fitdoctor.knowledge.entries import Feature, FeatureValue, Garment, LengthMm, Measurement, When
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.when import Truth, holds, in_words, missing
from tests.diagnosis.small_knowledge import small_knowledge, symptom

T, F, N, B = Truth.TRUE, Truth.FALSE, Truth.NOT_KNOWN, Truth.BORDERLINE
LEAF = {
    T: When(fact="a", is_=("x",)),
    F: When(fact="a", is_=("y",)),
    N: When(fact="b", is_=("x",)),
    B: When(amount="total", exceeds=LengthMm(20)),
}
CASE = Case(garment="trousers", facts={"a": "x"})
AMOUNTS = {"total": Length(20, 1)}
NONE = Knowledge()


@pytest.mark.parametrize("truth", list(Truth))
def test_each_leaf_has_its_truth_and_not_turns_only_what_is_settled(truth: Truth) -> None:
    assert holds(LEAF[truth], CASE, AMOUNTS, NONE) is truth
    assert holds(When(not_=LEAF[truth]), CASE, AMOUNTS, NONE) is {T: F, F: T}.get(truth, truth)


# Kleene's strong three-valued logic, with borderline as a second, weaker kind of doubt.
@pytest.mark.parametrize(("parts", "every", "some"), [
    ((T, T), T, T), ((T, F), F, T), ((F, F), F, F), ((T, N), N, T), ((F, N), F, N), ((N, N), N, N),
    ((T, B), B, T), ((F, B), F, B), ((N, B), N, N), ((B, B), B, B),
])  # fmt: skip
def test_all_and_any_follow_three_valued_logic(parts: tuple[Truth, ...], every: Truth, some: Truth) -> None:
    leaves = tuple(LEAF[part] for part in parts)
    for order in (leaves, leaves[::-1]):
        assert holds(When(all=order), CASE, AMOUNTS, NONE) is every
        assert holds(When(any=order), CASE, AMOUNTS, NONE) is some


@pytest.mark.parametrize(("mm", "give", "truth"), [
    (18, 1, F), (19, 1, F), (19.5, 1, B), (20, 1, B), (21, 1, B), (21.5, 1, T), (20, 0, F), (20.1, 0, T),
])  # fmt: skip
def test_a_limit_inside_the_give_or_take_is_borderline(mm: float, give: float, truth: Truth) -> None:
    assert holds(When(amount="each", exceeds=LengthMm(20)), CASE, {"each": Length(mm, give)}, NONE) is truth


def test_below_is_the_mirror_of_exceeds() -> None:
    below = When(amount="each", below=LengthMm(20))
    assert [holds(below, CASE, {"each": Length(mm, 1)}, NONE) for mm in (18, 20, 22)] == [T, B, F]
    assert holds(below, CASE, None, NONE) is N


def test_a_measurement_uses_its_own_tolerance_unless_the_reading_has_one() -> None:
    tape = Measurement(
        id="tuck", title="Tuck", how=("Pin it.",), of="garment", sense="in-all",
        usual_mm=(LengthMm(5), LengthMm(30)), possible_mm=(LengthMm(1), LengthMm(90)), tolerance_mm=LengthMm(3),
    )  # fmt: skip
    knowledge = Knowledge(measurements={"tuck": tape})
    when = When(measurement="tuck", exceeds=LengthMm(20))
    for reading, truth in ((Measured(22), B), (Measured(22, 1), T), (Measured(26), T)):
        assert holds(when, Case(garment="trousers", measured={"tuck": reading}), None, knowledge) is truth
    assert holds(when, CASE, None, knowledge) is N


def test_a_symptom_is_false_only_where_it_was_looked_for_or_cannot_be() -> None:
    knowledge = small_knowledge()
    when = When(symptom="folds")
    assert holds(when, Case(garment="trousers", seen=("folds",)), None, knowledge) is T
    assert holds(when, Case(garment="trousers", looked=("back",)), None, knowledge) is F
    assert holds(when, Case(garment="trousers", not_seen=("folds",)), None, knowledge) is F
    assert holds(when, Case(garment="trousers", looked=("front",)), None, knowledge) is N
    coat_only = Knowledge(symptoms={"folds": symptom("folds", garments=("coat",))})
    assert holds(when, Case(garment="trousers"), None, coat_only) is F


def test_a_wide_kind_leaves_the_narrow_kind_open() -> None:
    kinds = Knowledge(garments={
        "trousers": Garment(id="trousers", title="Trousers", umbrella=True),
        "jeans": Garment(id="jeans", title="Jeans", kind_of="trousers"),
        "skirt": Garment(id="skirt", title="Skirt"),
    })  # fmt: skip
    asked = {("jeans", "trousers"): T, ("jeans", "jeans"): T, ("trousers", "jeans"): N, ("skirt", "jeans"): F}
    for (garment, wanted), truth in asked.items():
        assert holds(When(garment=wanted), Case(garment=garment), None, kinds) is truth


def test_not_known_as_an_answer_is_not_known() -> None:
    case = Case(garment="trousers", answers={"pin": "not-known", "pad": "no"}, facts={"lining": "not-known"})
    assert holds(When(check="pin", is_=("yes",)), case, None, NONE) is N
    assert holds(When(check="pad", is_=("yes",)), case, None, NONE) is F
    assert holds(When(fact="lining", is_=("full",)), case, None, NONE) is N


def test_missing_names_what_could_still_settle_it_and_nothing_else() -> None:
    settled = When(all=(LEAF[F], When(fact="c", is_=("x",))))
    tree = When(any=(settled, When(all=(LEAF[T], LEAF[N], When(measurement="m", exceeds=LengthMm(3))))))
    assert missing(tree, CASE) == ("b", "m")
    assert missing(When(any=(LEAF[T], LEAF[N])), CASE) == ()


def test_a_tree_reads_as_a_phrase() -> None:
    lining = Feature(id="lining", title="Lining", ask="Lined?", garments=("trousers",), values=(FeatureValue(id="full", title="Full"),))
    knowledge = Knowledge(features={"lining": lining})
    tree = msgspec.convert({"all": [{"fact": "lining", "is": ["full"]}, {"not": {"fact": "vent", "is": ["centre-vent"]}}]}, When)
    assert in_words(tree, knowledge) == "lining: full and not (vent: centre vent)"


@given(st.recursive(
    st.sampled_from(list(LEAF.values())),
    lambda inner: st.one_of(
        st.lists(inner, min_size=1, max_size=3).map(lambda parts: When(all=tuple(parts))),
        st.lists(inner, min_size=1, max_size=3).map(lambda parts: When(any=tuple(parts))),
        inner.map(lambda part: When(not_=part)),
    ),
    max_leaves=8,
), st.sampled_from(["x", "y"]))  # fmt: skip
def test_a_settled_tree_stays_so_whatever_else_is_learned(tree: When, value: str) -> None:
    before = holds(tree, CASE, None, NONE)
    after = holds(tree, Case(garment="trousers", facts={"a": "x", "b": value}), {"total": Length(30)}, NONE)
    assert before in (N, B) or before is after
