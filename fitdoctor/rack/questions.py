"""What to ask a buyer next: the quickest question whose answer could still change whether to buy."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from fitdoctor.diagnosis.next_checks import LOOK_MINUTES
from fitdoctor.knowledge.references import tests
from fitdoctor.rack.foresight import After, after_feature, after_looks, value_of
from fitdoctor.rack.outlook import Outlook
from fitdoctor.rack.prospects import VIEWS
from fitdoctor.rack.question import AnswerChoice, Decides, Kind, Rack, RackQuestion, mark

LOOK_OVER_SECONDS = 15.0
"""Looking over one side of the garment for anything amiss."""
LEAST_GAIN = 0.005
"""Gain, as a share of what the garment is worth, below which an answer is held to change nothing."""


def deciding_questions(rack: Rack, outlook: Outlook) -> list[RackQuestion]:
    """Every question whose answer could change whether to buy, the most money a second first."""
    found = (*_of_features(rack, outlook), *_of_findings(rack, outlook), *_of_sides(rack, outlook))
    deciding = [question for question in found if question.gain >= LEAST_GAIN * rack.worth]
    return sorted(deciding, key=lambda q: (-q.gain / q.seconds, q.kind, q.id))


def at_the_rack(outlook: Outlook, kind: str, id_: str) -> bool:
    """Whether a finding can be looked for in a shop in seconds, without tools."""
    return kind == "symptom" or outlook.knowledge.checks[id_].at_the_rack


def _of_features(rack: Rack, outlook: Outlook) -> Iterator[RackQuestion]:
    knowledge, case = outlook.knowledge, outlook.case
    for_work = frozenset(feature for prospect in outlook.of(outlook.chances).values() for feature in prospect.asks)
    trees = (tree for cause in outlook.chances for tree in knowledge.causes[cause].impossible_if)
    for_cause = frozenset(node.fact for tree in trees for node, _ in tests(tree, ()) if node.fact)
    for id_ in sorted(for_work | for_cause):
        feature = knowledge.features.get(id_)
        if feature is None or not feature.at_the_rack or id_ in case.facts or mark("feature", id_) in rack.aside:
            continue
        if knowledge.suits(feature.garments, case.garment) and (id_ in for_cause or _could_turn(outlook, id_)):
            afters = list(after_feature(outlook, feature, id_ in for_cause))
            titles = [(value.title, value.look) for value in feature.values]
            decides: Decides = "work" if id_ in for_work else "cause"
            yield _question(outlook, ("feature", id_), (feature.ask, feature.at_the_rack), titles, feature.seconds, afters, decides)


def _could_turn(outlook: Outlook, feature: str) -> bool:
    """Whether the most that a feature could change of the work comes up to what the decision stands clear of."""
    stake = outlook.stake
    asking = ((outlook.chances[c], p) for c, p in outlook.of(outlook.chances).items() if feature in p.asks)
    most = sum(
        chance * ((p.cured["best"] - p.cured["worst"]) * stake.worth + (p.most_minutes - p.minutes) / 60 * stake.rate_per_hour)
        for chance, p in asking
    )
    return most > min(abs(outlook.now(view).gain) for view in VIEWS)


def _of_findings(rack: Rack, outlook: Outlook) -> Iterator[RackQuestion]:
    """Checks and symptoms: the chances of their answers come from the net."""
    findings = [(row, kind, id_) for row, kind, id_ in _open(rack, outlook) if at_the_rack(outlook, kind, id_)]
    for (_, kind, id_), afters in zip(findings, after_looks(outlook, [(row,) for row, _, _ in findings]), strict=True):
        if kind == "check":
            check = outlook.knowledge.checks[id_]
            words, titles = (check.ask, " ".join(check.how)), [(check.yes, ""), (check.no, "")]
            yield _question(outlook, ("check", id_), words, titles, max(1.0, check.minutes * 60), afters, "cause")
        else:
            symptom = outlook.knowledge.symptoms[id_]
            title = symptom.title[:1].lower() + symptom.title[1:].rstrip(".")
            words = (f"Look at the {symptom.view}: does this show, {title}?", symptom.look)
            yield _question(outlook, ("symptom", id_), words, [("Yes", ""), ("No", "")], LOOK_MINUTES * 60, afters, "cause")


def _of_sides(rack: Rack, outlook: Outlook) -> Iterator[RackQuestion]:
    """Looking over a whole side: something (else) shows there, or nothing does; the other sides are taken as clear."""
    for side in rack.sides_not_looked_over:
        before = outlook.with_case(msgspec.structs.replace(outlook.case, looked=tuple(s for s in outlook.case.looked if s != side)))
        rows = [row for row, kind, id_ in _open(rack, before) if kind == "symptom" and outlook.knowledge.symptoms[id_].view == side]
        for afters in after_looks(before, [rows] if rows else []):
            named = any(outlook.knowledge.symptoms[s].view == side for s in rack.case.seen if s in outlook.knowledge.symptoms)
            ask = f"Look at the {side} from top to hem: does anything {'else ' if named else ''}strain, fold, gape, droop or twist?"
            titles = [("Something does", ""), ("Nothing else" if named else "Nothing", "")]
            yield _question(before, ("side", side), (ask, "Stand still, arms down."), titles, LOOK_OVER_SECONDS, afters, "cause")


def _open(rack: Rack, outlook: Outlook) -> Iterator[tuple[int, str, str]]:
    net = outlook.net
    known = {*net.yes, *net.no}
    for row, (kind, id_) in enumerate(net.findings):
        if row not in known and id_ not in rack.case.answers and mark(kind, id_) not in rack.aside:
            yield row, kind, id_


def _question(
    outlook: Outlook,
    which: tuple[Kind, str],
    words: tuple[str, str],
    titles: Sequence[tuple[str, str]],
    seconds: float,
    afters: Sequence[After],
    decides: Decides,
) -> RackQuestion:
    value = value_of(outlook, afters)
    answers = tuple(AnswerChoice(a.value, title, look, a.chance) for a, (title, look) in zip(afters, titles, strict=True))
    return RackQuestion(which[1], which[0], *words, answers, seconds, value.gain, value.breaks, decides)
