"""Solved cases against what comes out: every measure can succeed and fail, and the misses say what was expected."""

from __future__ import annotations

import math
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import pytest

from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.case import Case
from fitdoctor.diagnosis.diagnose import diagnose, likely
from fitdoctor.errors import FitdoctorError
from fitdoctor.evaluate import MOST_QUESTIONS, Evaluation, compare, evaluate, evaluation_json, evaluation_text
from fitdoctor.knowledge.entries import (
    Answers,
    Cause,
    Check,
    Expected,
    ExpectedAmount,
    Garment,
    LengthMm,
    LiesIn,
    Method,
    Shows,
    SolvedCase,
    Symptom,
)
from fitdoctor.knowledge.knowledge import Knowledge

SCALE = {
    "strength": {"nearly-always": 0.95, "usually": 0.8, "often": 0.55, "sometimes": 0.3, "seldom": 0.1},
    "how-common": {"common": 0.12, "uncommon": 0.025},
    "leak": {"leak": 0.01},
}
LINE = ((0.0, 19.0), (100.0, 0.0))
MARK = Mark("back-waist-seam", "at centre back", "lower", each_mm=19.0, total_mm=19.0, convention="in all", stations=LINE)


def cause(id_: str, shows: str, check: str, common: str, lies_in: LiesIn = "cut") -> Cause:
    return Cause(
        id=id_, title=f"Cause {id_}", lies_in=lies_in, how_common={"skirt": common}, why="Why.",
        shows_as=(Shows(symptom=shows, strength="usually", sources=("x",)),),
        answers=(Answers(check=check, yes="nearly-always", sources=("x",)),),
    )  # fmt: skip


def symptom(id_: str) -> Symptom:
    return Symptom(id=id_, title=id_, garments=("skirt",), view="back", zone="seat", line="fold", runs="level", look="A fold.")


def knowledge_with(*cases: SolvedCase) -> Knowledge:
    """Two rivals for the folds, of which the rarer needs the check "pin" to lead, and one sight that is nothing."""
    causes = (
        cause("often-so", "folds", "pad", "common"),
        cause("seldom-so", "folds", "pin", "uncommon"),
        cause("nothing", "ease", "sit", "common", "none"),
    )
    methods = (
        Method(id="lower-waist", title="Lower", treats=("often-so", "seldom-so"), garments=("skirt",), stage="waist"),
        Method(id="leave-it", title="Leave", kind="leave", treats=("nothing",), garments=("skirt",), stage="waist"),
    )
    return Knowledge(
        garments={"skirt": Garment(id="skirt", title="Skirt")},
        symptoms={id_: symptom(id_) for id_ in ("folds", "ease")},
        causes={c.id: c for c in causes},
        checks={id_: Check(id=id_, title=id_, ask=f"{id_}?", minutes=1, needs="wearer") for id_ in ("pad", "pin", "sit")},
        methods={m.id: m for m in methods},
        cases={c.id: c for c in cases},
        scale=SCALE,
    )


@dataclass
class FakeChain:
    """A chain that diagnoses really and makes up the rest; the verdict and the marks are given."""

    level: str = "CAN"
    marks: tuple[Mark, ...] = (MARK,)
    opened: int = 1

    def __call__(self, knowledge: Knowledge, case: Case) -> Any:
        knowledge.garment(case.garment)
        diagnosis = diagnose(knowledge, case)
        treat = likely(diagnosis)
        chosen = {c: knowledge.methods_for(c, case.garment)[0].id for c in treat}
        total = Length(19)
        worked = [SimpleNamespace(method=m, calculation=Calculation(self.marks, total, total)) for m in chosen.values()]
        return SimpleNamespace(
            diagnosis=diagnosis,
            choices=[SimpleNamespace(cause=c, chosen=SimpleNamespace(method=m)) for c, m in chosen.items()],
            methods=tuple(dict.fromkeys(chosen.values())),
            amounts=worked,
            verdict=SimpleNamespace(level=self.level, sentence="So it is."),
            plan=SimpleNamespace(operations=[SimpleNamespace(opens=("back-waist-seam",))] * self.opened),
        )


def solved(id_: str = "one", **more: Any) -> SolvedCase:
    given: dict[str, Any] = {"garment": "skirt", "seen": ("folds",), "answers": {"pin": "yes"}, "expect": Expected(causes=("seldom-so",))}
    return SolvedCase(id=id_, title=id_, **(given | more))


def run(*cases: SolvedCase, chain: FakeChain | None = None) -> Evaluation:
    return evaluate(knowledge_with(*cases), chain or FakeChain())


def test_the_expected_cause_first_counts_and_nothing_is_missed() -> None:
    found = run(solved())
    assert (found.all.cases, found.all.means["first"], found.all.means["first_three"]) == (1, 1.0, 1.0)
    assert found.misses == ()


def test_the_expected_cause_second_is_a_miss_that_names_its_rank() -> None:
    found = run(solved(answers={"pad": "yes"}))
    assert (found.all.means["first"], found.all.means["first_three"]) == (0.0, 1.0)
    assert "expected ‘Cause seldom-so’ at rank 2; first came ‘Cause often-so’" in found.misses[0]


def test_a_cause_a_source_accepts_as_well_counts() -> None:
    assert run(solved(answers={"pad": "yes"}, expect=Expected(causes=("seldom-so",), also=("often-so",)))).all.means["first"] == 1.0


def test_two_faults_need_both_among_the_first_three() -> None:
    both = Expected(causes=("seldom-so", "nothing"))
    assert run(solved(seen=("folds", "ease"), expect=both)).all.means["first_three"] == 1.0
    assert run(solved(expect=Expected(causes=("seldom-so", "not-there")))).all.means["first_three"] == 0.0


@pytest.mark.parametrize(("level", "met"), [("CAN", 1.0), ("CANNOT", 0.0)])
def test_the_verdict_must_be_one_of_those_expected(level: str, met: float) -> None:
    found = run(solved(expect=Expected(verdict=("CAN", "NEEDS_CARE"))), chain=FakeChain(level))
    assert found.all.means["verdicts"] == met
    assert bool(found.misses) is (met == 0.0)
    assert found.all.means["first"] is None


@pytest.mark.parametrize(("each", "middle", "met"), [(19.05, 9.5, 1.0), (19.4, 9.1, 1.0), (20.0, 9.5, 0.0), (19.0, 12.0, 0.0)])
def test_amounts_agree_within_their_give_along_the_whole_line(each: float, middle: float, met: float) -> None:
    line = ((0.0, LengthMm(19)), (0.5, LengthMm(middle)), (1.0, LengthMm(0)))
    amount = ExpectedAmount(method="lower-waist", at="back-waist-seam", each_mm=LengthMm(each), stations=line)
    found = run(solved(expect=Expected(amounts=(amount,))))
    assert found.all.means["amounts"] == met
    assert all("lower-waist at back-waist-seam each" in miss for miss in found.misses)


def test_a_mark_elsewhere_is_no_agreement() -> None:
    amount = ExpectedAmount(method="lower-waist", at="side-seam", total_mm=LengthMm(19))
    found = run(solved(expect=Expected(amounts=(amount,))))
    assert found.all.means["amounts"] == 0.0
    assert "no mark there" in found.misses[0]


@pytest.mark.parametrize(("opened", "met"), [(0, 0.0), (1, 1.0), (2, 0.0)])
def test_a_seam_must_be_opened_exactly_once(opened: int, met: float) -> None:
    expect = Expected(opened_once=("back-waist-seam",), methods=("lower-waist",))
    found = run(solved(expect=expect), chain=FakeChain(opened=opened))
    assert (found.all.means["opened_once"], found.all.means["methods"]) == (met, 1.0)


def test_a_clean_garment_may_be_left_alone_but_nothing_else_named() -> None:
    clean = Expected(clean=True)
    assert run(solved(seen=("ease",), answers={"sit": "yes"}, expect=clean)).all.means["clean"] == 1.0
    assert run(solved(seen=(), answers={}, looked=("back",), expect=clean)).all.means["clean"] == 1.0
    named = run(solved(expect=clean))
    assert named.all.means["clean"] == 0.0
    assert "Cause seldom-so" in named.misses[0]


def test_chances_are_scored_over_the_causes_that_could_show_what_is_seen() -> None:
    case = solved()
    found, knowledge = run(case), knowledge_with(case)
    chances = {c.id: c.probability for c in diagnose(knowledge, Case(garment="skirt", seen=("folds",), answers={"pin": "yes"})).causes}
    right, wrong = chances["seldom-so"], chances["often-so"]
    assert found.all.means["log_score"] == pytest.approx((math.log(right) + math.log(1 - wrong)) / 2)
    assert found.all.means["brier"] == pytest.approx(((1 - right) ** 2 + wrong**2) / 2)


def test_questions_are_counted_from_the_symptoms_alone_until_the_expected_cause_leads() -> None:
    assert run(solved(expect=Expected(causes=("often-so",)), answers={})).all.means["checks_needed"] == 0
    assert run(solved()).all.means["checks_needed"] in (1, 2)
    assert run(solved(answers={"pin": "no", "pad": "yes"})).all.means["checks_needed"] == MOST_QUESTIONS


def test_held_back_cases_are_reported_apart_and_every_garment_by_itself() -> None:
    found = run(solved("one"), solved("two", held_back=True, answers={"pad": "yes"}))
    assert (found.all.means["first"], found.in_sight.means["first"], found.held_back.means["first"]) == (0.5, 1.0, 0.0)
    assert found.garments["skirt"].cases == 2


def test_a_case_that_cannot_be_read_is_a_miss_and_stops_nothing() -> None:
    found = run(solved("one", garment="toga"), solved("two"))
    assert found.all.cases == 2
    assert found.misses == (f"one: cannot be assessed. {FitdoctorError('‘toga’ is not a kind of garment.', 'Known: skirt.')}",)


def test_the_machine_readable_form_has_the_promised_fields() -> None:
    result = evaluation_json(run(solved()))
    promised = {"cases", "first", "first_three", "verdicts", "amounts", "clean", "log_score", "brier", "checks_needed"}
    assert promised | {"format", "held_back"} <= set(result)
    assert promised <= set(result["held_back"])
    assert (result["format"], result["cases"], result["first"], result["verdicts"]) == (1, 1, 1.0, None)


def test_the_table_shows_fractions_and_the_misses() -> None:
    text = evaluation_text(evaluation_json(run(solved(), solved("two", answers={"pad": "yes"}))))
    assert "50.0%" in text
    assert "- two: expected" in text
    assert evaluation_text(evaluation_json(run(solved()))).endswith("All as expected.")


def test_comparing_names_what_got_better_and_what_got_worse() -> None:
    good, bad = (evaluation_json(run(solved(answers=answers))) for answers in ({"pin": "yes"}, {"pad": "yes"}))
    assert "worse  one: first" in compare(good, bad)
    assert "better first: 0.0% -> 100.0%" in compare(bad, good)
    assert compare(good, good) == "Nothing changed."
    assert "new    two" in compare(good, evaluation_json(run(solved(), solved("two"))))
