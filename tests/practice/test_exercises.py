"""Every kind of exercise: what is right is what the chain says, and a defensible second answer counts in part."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.diagnosis.diagnose import diagnose
from fitdoctor.diagnosis.next_checks import next_checks
from fitdoctor.errors import FitdoctorError
from fitdoctor.practice.bench import Bench, replace
from fitdoctor.practice.exercise import KINDS, LEAVE_ALONE, Amount, Choice, Kind, Order, Skill
from fitdoctor.practice.judging import judge, right_answer
from fitdoctor.practice.lines import tell_apart
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.making import exercise_for, make_set
from fitdoctor.practice.scope import Scope
from fitdoctor.shop import Shop
from fitdoctor.units import step_mm
from fitdoctor.verdict import LEVEL_WORDS
from tests.practice.practice_bench import choices, exercises, questions, the_bench

KNOWLEDGE = the_bench().knowledge


@pytest.mark.parametrize("kind", KINDS)
def test_the_right_answer_is_judged_right_and_says_why(kind: Kind) -> None:
    for question in questions(kind):
        feedback = judge(question, right_answer(question))
        assert feedback.mark == "right", question.ask
        assert feedback.headline.startswith("Yes. ")
        assert feedback.right


@pytest.mark.parametrize("kind", KINDS)
def test_a_choice_has_one_answer_of_each_text_and_at_least_one_that_is_wrong(kind: Kind) -> None:
    for question in choices(kind):
        texts = [option.text for option in question.options]
        assert len(set(texts)) == len(texts) >= 3, question.ask
        assert any(option.mark == "wrong" for option in question.options) or kind == "cause"


@pytest.mark.parametrize("kind", KINDS)
def test_what_an_exercise_points_to_is_in_the_handbook(kind: Kind) -> None:
    for question in questions(kind):
        group, id_ = question.entry
        assert id_ in KNOWLEDGE.kind(group), question.entry
        assert all(source in KNOWLEDGE.sources or source == "common-practice" for source in question.sources)


def test_the_right_cause_is_the_one_with_the_highest_posterior() -> None:
    for exercise in exercises("cause"):
        (question,) = exercise.questions
        assert isinstance(question, Choice)
        diagnosis = diagnose(KNOWLEDGE, exercise.case)
        able = [cause for cause in diagnosis.causes if cause.id in diagnosis.net.able]
        best = max(able, key=lambda cause: cause.probability)
        assert question.option(best.id).mark == "right"


def test_a_cause_a_third_as_likely_counts_in_part_and_a_rarer_one_is_wrong() -> None:
    seen = set()
    for exercise in exercises("cause", count=30, level="hard"):
        (question,) = exercise.questions
        assert isinstance(question, Choice)
        diagnosis = diagnose(KNOWLEDGE, exercise.case)
        chances = {option.id: c.probability for option in question.options if (c := diagnosis.cause(option.id))}
        best = max(chances.values())
        for option in question.options:
            seen.add(option.mark)
            if option.mark == "wrong":
                assert chances[option.id] < best / 3
            if option.mark == "part":
                assert chances[option.id] >= best / 3
    assert seen == {"right", "part", "wrong"}


def test_the_causes_offered_share_a_symptom_with_the_right_one() -> None:
    for exercise in exercises("cause"):
        (question,) = exercise.questions
        assert isinstance(question, Choice)
        garment, best = exercise.case.garment, question.entry[1]
        own = {s.symptom for s in KNOWLEDGE.causes[best].shows_as if KNOWLEDGE.suits(s.garments, garment)}
        for option in question.options:
            assert own & {s.symptom for s in KNOWLEDGE.causes[option.id].shows_as}, (best, option.id)


def test_a_mistaken_line_is_named_with_how_to_tell_the_two_apart() -> None:
    told = 0
    for question in choices("lines", count=30):
        for option in question.options:
            if option.mark == "wrong" and option.id != LEAVE_ALONE and question.skill.kind != "clean":
                right = right_answer(question)
                feedback = judge(question, option.id)
                assert feedback.told.confused == (right, option.id)
                apart = tell_apart(KNOWLEDGE, right, option.id)
                assert apart in " ".join(feedback.told.text)
                told += bool(apart)
    assert told, "some of them are written in the entries"


def test_the_right_check_takes_away_most_doubt_a_minute() -> None:
    for exercise in exercises("check"):
        choosing, reading = exercise.questions
        assert isinstance(choosing, Choice)
        check = choosing.entry[1]
        before = replace(exercise.case, answers={})
        asks = [a for a in next_checks(KNOWLEDGE, before, diagnose(KNOWLEDGE, before), most=500) if a.kind == "check"]
        best = max(asks, key=lambda ask: ask.gain_bits / ask.minutes)
        assert choosing.option(best.id).mark == "right"
        assert check == best.id
        assert exercise.case.answers[check] in ("yes", "no")
        after = diagnose(KNOWLEDGE, exercise.case)
        assert isinstance(reading, Choice)
        leader = next(cause for cause in after.causes if cause.id in after.net.able)
        assert reading.option(leader.id).mark == "right"


AMOUNTS = [question for question in questions("amount") if isinstance(question, Amount)]


@given(st.sampled_from(AMOUNTS), st.floats(-12, 12))
def test_an_amount_is_right_within_the_shops_step_and_counts_in_part_within_three(question: Amount, off_mm: float) -> None:
    step = step_mm("in", 16)
    mark = judge(question, f"{max(0.01, question.right_mm + off_mm):.4f} mm").mark
    off = abs(max(0.01, question.right_mm + off_mm) - question.right_mm)
    if off < step - 0.01:
        assert mark == "right"
    elif step + 0.01 < off < 3 * step - 0.01:
        assert mark == "part"
    elif off > 3 * step + 0.01:
        assert mark != "right"


def test_the_whole_amount_given_for_each_side_is_known_for_the_slip_it_is() -> None:
    shared = [q for q in (*AMOUNTS, *_amounts_of("side-seams")) if "each" in q.ask and q.slips]
    assert shared
    for question in shared:
        slip, said = question.slips[0]
        feedback = judge(question, f"{slip} mm")
        assert (feedback.mark, feedback.told.text[0]) == ("part", said)


def _amounts_of(calculator: str) -> list[Amount]:
    made = exercise_for(the_bench(), Lots("slips"), Scope(), Skill("calculator", calculator))
    assert made is not None
    return [question for question in made.questions if isinstance(question, Amount)]


def test_an_amount_may_be_typed_in_any_unit() -> None:
    question = AMOUNTS[0]
    assert judge(question, f"{question.right_mm / 10} cm", Shop(unit="in")).mark == "right"
    assert judge(question, f"{question.right_mm / 10}", Shop(unit="cm")).mark == "right"
    with pytest.raises(FitdoctorError, match="is not a length"):
        judge(question, "a little")


def test_the_amount_is_one_the_chain_works_out() -> None:
    for exercise in exercises("amount"):
        (question,) = exercise.questions
        assert isinstance(question, Amount)
        worked = the_bench().assess(exercise.case).amounts or the_bench().assess(replace(exercise.case, treat=exercise.causes)).amounts
        marks = [mark.each_mm for amount in worked if amount.calculation for mark in amount.calculation.marks]
        assert any(abs(question.right_mm - each) < 1e-9 for each in marks)


def test_the_verdict_and_what_decides_it_are_the_chains() -> None:
    decided = set()
    for exercise in exercises("verdict"):
        verdict, *deciding = exercise.questions
        choice = next(c for c in the_bench().assess(exercise.case).choices if c.cause == exercise.causes[0])
        assert choice.chosen is not None
        assert right_answer(verdict) == choice.chosen.level
        assert verdict.right.startswith(LEVEL_WORDS[choice.chosen.level])
        decided.add(choice.chosen.level)
        for question in deciding:
            state = next(s for s in choice.chosen.conditions if s.condition == right_answer(question))
            assert state.state in (("not-known", "borderline") if choice.chosen.level == "NOT_KNOWN" else ("not-met",))
    assert {"CAN", "CANNOT"} <= decided


def test_what_speaks_against_a_wrong_verdict_is_what_decides_the_right_one() -> None:
    for exercise in exercises("verdict"):
        verdict, *deciding = exercise.questions
        assert isinstance(verdict, Choice)
        for option in verdict.options:
            reasons = option.told.speaks_for if option.mark == "right" else option.told.speaks_against
            assert not (option.told.speaks_for and option.told.speaks_against)
            if deciding:
                assert reasons[0].entry == right_answer(deciding[0])
            else:
                assert {reason.state for reason in reasons} <= {"met"}


def test_the_order_is_that_of_the_plan_and_one_exchange_counts_in_part() -> None:
    for exercise in exercises("order"):
        (question,) = exercise.questions
        assert isinstance(question, Order)
        planned = [operation.id for operation in the_bench().assess(exercise.case).plan.operations]
        assert [id_ for id_ in planned if id_ in question.order] == list(question.order)
        assert [id_ for id_, _ in question.steps] != list(question.order), "shown out of order"
        first, second, *rest = question.order
        swapped = judge(question, " ".join((second, first, *rest)))
        assert swapped.mark == "part"
        assert "comes before" in swapped.told.text[0]
        assert judge(question, " ".join(reversed(question.order))).mark == "wrong"
        with pytest.raises(FitdoctorError, match="no place yet"):
            judge(question, " ".join(question.order[:2]))


def test_clean_garments_come_up_and_naming_a_cause_on_them_is_wrong() -> None:
    clean = [e for e in exercises("garment") if not e.causes]
    assert clean
    for exercise in clean:
        assert not exercise.case.seen
        for question in exercise.questions:
            assert right_answer(question) == LEAVE_ALONE
            assert isinstance(question, Choice)
            named = [option.id for option in question.options if option.id != LEAVE_ALONE]
            assert len(named) == 3
            assert all(judge(question, id_).mark == "wrong" for id_ in named)


def test_garments_with_two_faults_come_up_and_finding_one_of_them_counts_in_part() -> None:
    found = 0
    for exercise in exercises("garment"):
        for question in exercise.questions:
            both = right_answer(question).split()
            if question.ask == "What is the matter?" and len(both) == 2:
                found += 1
                assert isinstance(question, Choice)
                alone = [option for option in question.options if option.id in both]
                assert alone
                assert all(option.mark != "wrong" for option in alone)
    assert found


def test_a_whole_garment_goes_from_sight_to_sheet() -> None:
    for exercise in exercises("garment"):
        kinds = [question.kind for question in exercise.questions]
        order: list[Kind] = ["lines", "check", "garment", "amount", "verdict", "order"]
        assert kinds == sorted(kinds, key=order.index)
        assert "garment" in kinds


def test_an_answer_that_was_not_offered_is_refused() -> None:
    question = next(choices("cause"))
    with pytest.raises(FitdoctorError, match="none of the answers"):
        judge(question, "the-moon")


def test_a_check_comes_out_as_often_as_its_causes_bring_it_about() -> None:
    bench, lots = the_bench(), Lots("often")
    net = bench.net("trousers")
    cause, (_, check) = next(pair for pair in net.links if pair[1][0] == "check")
    chance = bench.chance("trousers", (cause,), ("check", check))
    link = net.links[(cause, ("check", check))].chance
    leak = float(net.net.leaks[net.row[("check", check)]])
    assert chance == pytest.approx(1 - (1 - leak) * (1 - link))
    times = sum(bench.answer(lots, "trousers", (cause,), check) == "yes" for _ in range(2000))
    assert abs(times / 2000 - chance) < 4 * (chance * (1 - chance) / 2000) ** 0.5


def test_garments_are_drawn_with_common_causes_more_often() -> None:
    bench, lots = the_bench(), Lots("common")
    net = bench.net("waistcoat")
    drawn = [bench.draw(lots, "waistcoat", net.causes) for _ in range(300)]
    priors = [float(net.net.priors[net.column[d.causes[0]]]) for d in drawn if d]
    assert sum(priors) / len(priors) > float(net.net.priors.mean()), "a fair draw over the causes would only reach the mean"
    assert all(d and d.case.seen and set(d.case.looked) == set(bench.views("waistcoat")) for d in drawn)


def test_exercises_are_made_of_what_is_sound_where_entries_are_left_out() -> None:
    for kind in ("features", "checks", "measurements", "causes", "symptoms"):
        entries = the_bench().knowledge.kind(kind)
        some: Any = {id_: entry for at, (id_, entry) in enumerate(entries.items()) if at % 3}
        broken = dataclasses.replace(KNOWLEDGE, **{kind: some})
        for exercise in make_set(Bench(broken), Scope("skirt"), 1, 7).exercises:
            assert exercise.questions
