"""What a look that found nothing could have found."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.case import Case
from fitdoctor.diagnosis.case_net import case_net
from fitdoctor.diagnosis.looked_over import before_looks
from fitdoctor.diagnosis.next_checks import foresee
from fitdoctor.diagnosis.posterior import posterior
from fitdoctor.knowledge.knowledge import Knowledge

LOOKED = Case(garment="skirt", seen=("waistband-slides-down",), looked=("front", "back", "side"))


def test_taking_a_look_back_gives_the_chances_of_the_case_without_it(knowledge: Knowledge) -> None:
    net = case_net(knowledge, LOOKED)
    back = [row for row in net.no if knowledge.symptoms[net.findings[row][1]].view == "back"]
    without = case_net(knowledge, msgspec.structs.replace(LOOKED, looked=("front", "side")))
    (before,) = before_looks(net, [back])
    assert before.net.no == without.no
    assert before.found.chances == pytest.approx(posterior(without.net, without.yes, without.no).chances, abs=1e-12)
    assert before.if_nothing == pytest.approx(posterior(net.net, net.yes, net.no).chances, abs=1e-12)


@given(st.integers(0, 30))
def test_a_look_at_one_finding_is_the_same_as_asking_for_it(knowledge: Knowledge, number: int) -> None:
    net = case_net(knowledge, LOOKED)
    row = net.no[number % len(net.no)]
    (before,) = before_looks(net, [[row]])
    asked = foresee(before.net, before.found, [row])
    assert before.nothing == pytest.approx(float(asked.no[0]), abs=1e-9)
    assert before.if_something == pytest.approx(asked.if_yes[0], abs=1e-6)


def test_without_a_look_there_is_nothing_to_take_back(knowledge: Knowledge) -> None:
    assert before_looks(case_net(knowledge, LOOKED), []) == []
