"""Buy, buy only if, or leave it: a small knowledge worked through by hand, and garments of the shipped one."""

from __future__ import annotations

from dataclasses import replace

import msgspec
import pytest

from fitdoctor.case import Case
from fitdoctor.diagnosis.next_checks import foresee
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.answer import answer_at, in_a_hurry, next_question, prospects_for, rack_answer
from fitdoctor.rack.foresight import LEAST_GAIN
from fitdoctor.rack.outlook import Outlook, look_out
from fitdoctor.rack.question import CANNOT_TELL, Rack, answered
from fitdoctor.rack.questions import GLANCE_SECONDS
from fitdoctor.rack.stake import Stake
from fitdoctor.shop import Shop
from tests.rack.small_rack import small_knowledge, without_check

STRAINED = Case(garment="skirt", seen=("strain",), looked=("front", "back", "side"))
ALL_ROUND = ("front", "back", "side")


def buyer(price: float = 30, worth: float = 100, rate: float = 0, case: Case = STRAINED) -> Rack:
    return Rack(price, worth, rate, case)


def told(rack: Rack, kind: str, id_: str, value: str) -> Rack:
    return answered(rack, kind, id_, value, 5)  # type: ignore[arg-type]


def test_the_sum_follows_from_the_chances_of_the_chain() -> None:
    # Noisy-OR with leak .01, two causes of prior .12 and strength .8: each has .51594 once the sight is there (worked out by hand).
    # Let out works in .8 of skirts, shrunk cloth never: stuck .2 x .51594 + .51594 = .61913, so it fits in .38087.
    money = rack_answer(small_knowledge(), STRAINED, 10, 100).sum
    assert money.fits == pytest.approx(0.38087, abs=1e-4)
    assert money.total == pytest.approx(10 + 61.913, abs=0.01)
    assert money.gain == pytest.approx(28.087, abs=0.01)
    assert money.total + money.gain == pytest.approx(money.worth)


def test_own_time_counts_as_work() -> None:
    paid = rack_answer(small_knowledge(), STRAINED, 10, 100, Shop(rate_per_hour=20)).sum
    assert paid.work > 0
    assert paid.gain < rack_answer(small_knowledge(), STRAINED, 10, 100).sum.gain


def test_it_is_not_known_while_a_check_in_the_shop_could_turn_it() -> None:
    answer = rack_answer(small_knowledge(), STRAINED, 30, 100)
    assert answer.decision == "NOT_KNOWN"
    assert {(ask.kind, ask.id) for ask in answer.asks} == {("check", "stiff"), ("feature", "seams")}
    assert "Is the cloth stiff?" in {ask.ask for ask in answer.asks}


def test_stiff_cloth_is_left_with_the_cause_as_the_reason() -> None:
    answer = answer_at(small_knowledge(), told(buyer(), "check", "stiff", "yes"))
    assert answer.decision == "LEAVE_IT"
    assert answer.reason.entry == "shrunk"
    assert "does not come back" in answer.reason.text
    assert answer.question is None


def test_soft_cloth_is_bought_only_if_the_seams_hold_cloth() -> None:
    answer = answer_at(small_knowledge(), told(buyer(), "check", "stiff", "no"))
    assert answer.decision == "BUY_IF"
    assert [state.condition for state in answer.only_if] == ["seams-hold"]
    assert answer.only_if[0].at_the_rack == "Turn the seam out."
    assert answer.question is not None
    assert answer.question.id == "seams"
    assert [size.entry for size in answer.other_size] == ["buy-larger"]


@pytest.mark.parametrize(("seams", "decision"), [("some", "BUY"), ("none", "LEAVE_IT")])
def test_the_seams_decide_the_rest_and_nothing_more_is_asked(seams: str, decision: str) -> None:
    rack = told(told(buyer(), "check", "stiff", "no"), "feature", "seams", seams)
    answer = answer_at(small_knowledge(), rack)
    assert (answer.decision, answer.question) == (decision, None)


def test_what_cannot_be_told_is_not_asked_again_and_stays_a_condition() -> None:
    rack = told(told(buyer(), "check", "stiff", "no"), "feature", "seams", CANNOT_TELL)
    answer = answer_at(small_knowledge(), rack)
    assert (answer.decision, answer.question) == ("BUY_IF", None)


def test_a_price_above_the_worth_needs_no_question() -> None:
    answer = rack_answer(small_knowledge(), STRAINED, 120, 100)
    assert (answer.decision, answer.question) == ("LEAVE_IT", None)
    assert "price alone" in answer.reason.text


def test_work_that_can_be_done_but_costs_too_much_is_left_for_the_money() -> None:
    rack = told(told(buyer(60, 100, 50), "check", "stiff", "no"), "feature", "seams", "some")
    answer = answer_at(small_knowledge(), rack)
    assert answer.decision == "LEAVE_IT"
    assert "come to" in answer.reason.text
    assert answer.sum.work > 0


def test_a_gift_that_may_fit_needs_no_question() -> None:
    answer = rack_answer(small_knowledge(), STRAINED, 0, 100)
    assert (answer.decision, answer.question) == ("BUY", None)


def test_bought_without_a_look_the_reason_says_so() -> None:
    answer = rack_answer(small_knowledge(), Case(garment="skirt"), 1, 100)
    assert (answer.decision, answer.question) == ("BUY", None)
    assert "nobody looked" in answer.reason.text


def test_a_side_not_looked_over_is_asked_for_and_what_shows_there_is_named_next() -> None:
    rack = buyer(50, case=Case(garment="skirt"))
    ask = next_question(small_knowledge(), rack)
    assert ask is not None
    assert (ask.kind, ask.id) == ("side", "back")
    named = next_question(small_knowledge(), told(rack, "side", "back", "yes"))
    assert named is not None
    assert (named.kind, [choice.value for choice in named.answers]) == ("symptom", ["strain"])
    seen = told(told(rack, "side", "back", "yes"), "symptom", "back", "strain")
    assert (seen.case.seen, seen.to_be_named) == (("strain",), "")


def test_a_clean_garment_is_bought_for_what_it_is() -> None:
    answer = rack_answer(small_knowledge(), Case(garment="skirt", looked=ALL_ROUND), 40, 100)
    assert answer.decision == "BUY"
    assert answer.reason.text == "Nothing shows that asks for work."
    assert answer.at_home == ""


def test_in_a_hurry_only_what_breaks_the_deal_within_ten_seconds_is_asked() -> None:
    rack = in_a_hurry(told(buyer(), "check", "stiff", "no"))
    ask = next_question(small_knowledge(), rack)
    assert ask is not None
    assert ask.id == "seams"
    assert ask.seconds <= 10
    assert next_question(small_knowledge(), replace(rack, spent_seconds=6)) is None
    assert next_question(small_knowledge("limits"), rack) is None


def test_what_nothing_can_tell_apart_is_weighed_and_not_asked() -> None:
    answer = rack_answer(without_check(small_knowledge()), STRAINED, 50, 100)
    assert answer.decision == "LEAVE_IT"
    assert answer.question is None


def test_a_garment_that_is_not_known_is_a_known_error() -> None:
    with pytest.raises(FitdoctorError, match="not a kind of garment"):
        rack_answer(small_knowledge(), Case(garment="cape"), 1, 2)


def test_when_nothing_is_asked_any_more_no_check_of_the_shop_turns_the_gain(knowledge: Knowledge) -> None:
    rack = buyer(25, 100, 20, Case(garment="skirt", seen=("strain-across-seat",), looked=ALL_ROUND))
    prospects = prospects_for(knowledge, rack, Shop())
    while (ask := next_question(knowledge, rack, prospects=prospects)) is not None:
        likeliest = max(ask.answers, key=lambda choice: choice.chance)
        rack = answered(rack, ask.kind, ask.id, likeliest.value)

    def look(at: Rack) -> Outlook:
        return look_out(knowledge, at.as_far_as_seen, Stake(25, 100, 20), prospects)

    end = look(rack)
    left = [c for c in knowledge.checks if ("check", c) in end.net.row and knowledge.checks[c].at_the_rack and c not in rack.case.answers]
    yes = foresee(end.net, end.found, [end.net.row["check", check] for check in left]).yes.tolist()
    for check, chance in zip(left, yes, strict=True):
        for answer, share in (("yes", chance), ("no", 1 - chance)):
            after = look(answered(rack, "check", check, answer))
            turned = (after.now().gain >= 0) != (end.now().gain >= 0)
            assert not turned or share * abs(after.now().gain) < 4 * LEAST_GAIN * 100, (check, answer)


def test_a_longer_garment_is_asked_fewer_questions_than_it_has_checks(knowledge: Knowledge) -> None:
    rack = buyer(50, 100, 20, Case(garment="jacket", seen=("collar-stands-off-neck",)))
    number = 0
    while (ask := next_question(knowledge, rack)) is not None:
        rack, number = answered(rack, ask.kind, ask.id, CANNOT_TELL), number + 1
        assert number < 40
    assert answer_at(knowledge, rack).decision in ("BUY", "BUY_IF", "LEAVE_IT")


def test_the_case_itself_is_left_as_it_was() -> None:
    before = msgspec.json.encode(STRAINED)
    rack_answer(small_knowledge(), STRAINED, 10, 100)
    assert msgspec.json.encode(STRAINED) == before


def test_in_a_hurry_a_side_is_glanced_at_where_what_shows_there_could_break_the_deal() -> None:
    rack = Rack(50, 100, 0, Case(garment="skirt"), hurry=True)
    ask = next_question(small_knowledge(), rack)
    assert ask is not None
    assert (ask.kind, ask.seconds) == ("side", GLANCE_SECONDS)
    named = next_question(small_knowledge(), told(rack, "side", "back", "yes"))
    assert named is not None, "what shows has to be named, or the glance was for nothing"
    assert named.kind == "symptom"


def test_what_may_make_it_fail_is_named_the_gravest_first() -> None:
    # Shrunk cloth fails always, a tight skirt where the seams hold nothing: .51594 against .2 x .51594 (see the sum above).
    answer = rack_answer(small_knowledge(), STRAINED, 10, 100)
    assert [reason.entry for reason in answer.may_fail] == ["shrunk", "tight"]
    assert "does not come back" in answer.may_fail[0].text


def test_what_is_left_over_is_worth_less_price_and_likely_work() -> None:
    money = rack_answer(small_knowledge(), STRAINED, 10, 100, Shop(rate_per_hour=20)).sum
    assert money.likely == pytest.approx(money.minutes[0] / 60 * 20)
    assert money.left_over == pytest.approx(100 - 10 - money.likely)
    assert money.gain == pytest.approx(money.fits * money.left_over - (1 - money.fits) * 10), "what fails costs the price"


def test_beside_every_advice_to_buy_stand_the_no_goes_for_safety(knowledge: Knowledge) -> None:
    answer = rack_answer(knowledge, Case(garment="trousers", looked=ALL_ROUND), 8, 40)
    assert answer.decision == "BUY"
    wanted = {"protective-clothing-not-altered", "medical-garment-not-altered", "childrens-sleepwear-not-altered"}
    assert wanted <= {caution.condition for caution in answer.cautions}
    assert all(caution.how for caution in answer.cautions)
    plain = rack_answer(knowledge, Case(garment="trousers", looked=ALL_ROUND, facts={"garment-purpose": "ordinary"}), 8, 40)
    assert plain.cautions == ()
    assert rack_answer(knowledge, Case(garment="trousers", looked=ALL_ROUND), 50, 40).cautions == (), "nothing to mind in what is left"


def test_amounts_in_the_reasons_are_said_as_the_buyer_writes_them() -> None:
    answer = answer_at(small_knowledge(), buyer(price=120), money=lambda amount: f"{amount:.0f} crowns")
    assert "100 crowns" in answer.reason.text
