"""What to ask a buyer next: the quickest question whose answer could still change whether to buy."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import chain

from fitdoctor.knowledge.entries import Check
from fitdoctor.knowledge.references import tests
from fitdoctor.rack.foresight import LEAST_GAIN, After, after_checks, after_feature, after_sides, chances_of, value_of
from fitdoctor.rack.outlook import Outlook
from fitdoctor.rack.prospects import VIEWS
from fitdoctor.rack.question import AnswerChoice, Decides, Kind, Rack, RackQuestion, mark

LOOK_OVER_SECONDS = 15.0
"""Looking over one side of the garment for anything amiss, or naming what shows there."""
GLANCE_SECONDS = 5.0
"""The same in a hurry."""


def deciding_questions(rack: Rack, outlook: Outlook) -> Iterator[RackQuestion]:
    """Every question whose answer could change whether to buy: first those that tell what is the matter.

    Where something shows that is not named yet, only naming it is asked.
    """
    if rack.to_be_named:
        yield _which(rack, outlook)
        return
    for_work = frozenset(feature for prospect in outlook.of(outlook.chances).values() for feature in prospect.asks)
    trees = (tree for cause in outlook.chances for tree in outlook.knowledge.causes[cause].impossible_if)
    for_cause = frozenset(node.fact for tree in trees for node, _ in tests(tree, ()) if node.fact)
    found = chain(
        _of_sides(rack, outlook),
        _of_checks(rack, outlook),
        _of_features(rack, outlook, for_cause, "cause"),
        _of_features(rack, outlook, for_work - for_cause, "work"),
    )
    yield from (question for question in found if question.gain >= LEAST_GAIN * rack.worth)


def _of_features(rack: Rack, outlook: Outlook, names: Collection[str], decides: Decides) -> Iterator[RackQuestion]:
    """What can be seen of the garment itself; a feature that rules causes out may decide the work as well."""
    knowledge = outlook.knowledge
    for id_ in sorted(names):
        feature = knowledge.features.get(id_)
        if feature is None or not feature.at_the_rack or id_ in rack.case.facts or mark("feature", id_) in rack.aside:
            continue
        if knowledge.suits(feature.garments, rack.case.garment) and (decides == "cause" or _could_turn(outlook, id_)):
            afters = list(after_feature(outlook, feature, decides == "cause"))
            titles = [(value.title, value.look) for value in feature.values]
            yield _question(outlook, ("feature", id_), (feature.ask, feature.at_the_rack), titles, feature.seconds, afters, decides)


def _could_turn(outlook: Outlook, feature: str) -> bool:
    """Whether the most that a feature could change of the work comes up to what the decision stands clear of."""
    stake = outlook.stake
    asking = ((outlook.chances[c], p) for c, p in outlook.of(outlook.chances).items() if feature in p.asks)
    most = sum(chance * ((p.cured["best"] - p.cured["worst"]) * stake.worth + p.may_add / 60 * stake.rate_per_hour) for chance, p in asking)
    return most > min(abs(outlook.now(view).gain) for view in VIEWS)


def _of_checks(rack: Rack, outlook: Outlook) -> Iterator[RackQuestion]:
    """What can be tried in the shop; the chances of the answers come from the net."""
    net, checks = outlook.net, outlook.knowledge.checks
    open_ = [row for row, (kind, id_) in enumerate(net.findings) if kind == "check" and _is_open(rack, checks[id_])]
    for row, afters in after_checks(outlook, open_):
        check = checks[net.findings[row][1]]
        words, titles = (check.ask, " ".join(check.how)), [(check.yes, ""), (check.no, "")]
        yield _question(outlook, ("check", check.id), words, titles, max(1.0, check.minutes * 60), afters, "cause")


def _is_open(rack: Rack, check: Check) -> bool:
    return check.at_the_rack and check.id not in rack.case.answers and mark("check", check.id) not in rack.aside


def _of_sides(rack: Rack, outlook: Outlook) -> Iterator[RackQuestion]:
    """Looking over a whole side: something (else) shows there, or nothing does; the other sides are taken as clear."""
    rows = {side: list(_symptoms_of(rack, outlook, side)) for side in rack.sides_not_looked_over}
    sides = [side for side, looks in rows.items() if looks]
    for side, (before, afters) in zip(sides, after_sides(outlook, [rows[side] for side in sides]), strict=True):
        named = any(outlook.knowledge.symptoms[s].view == side for s in rack.case.seen if s in outlook.knowledge.symptoms)
        ask = f"Look at the {side} from top to hem: does anything {'else ' if named else ''}strain, fold, gape, droop or twist?"
        titles = [("Something does", ""), ("Nothing else" if named else "Nothing", "")]
        yield _question(before, ("side", side), (ask, "Stand still, arms down."), titles, _look_seconds(rack), afters, "cause")


def _look_seconds(rack: Rack) -> float:
    return GLANCE_SECONDS if rack.hurry else LOOK_OVER_SECONDS


def _which(rack: Rack, outlook: Outlook) -> RackQuestion:
    """Which symptom it is that shows on a side, the likeliest first."""
    side = rack.to_be_named
    rows = list(_symptoms_of(rack, outlook, side))
    symptoms = [outlook.knowledge.symptoms[outlook.net.findings[row][1]] for row in rows]
    before = [was for was, _ in after_sides(outlook, [rows])]
    chances = chances_of(before[0], rows) if rows else []
    answers = [AnswerChoice(s.id, s.short or s.title, s.look, chance) for s, chance in zip(symptoms, chances, strict=True)]
    ordered = tuple(sorted(answers, key=lambda answer: -answer.chance))
    words = (f"Which of these is it that shows at the {side}?", "Take the one that is nearest.")
    return RackQuestion(side, "symptom", *words, ordered, _look_seconds(rack), 0.0, 0.0, "cause")


def _symptoms_of(rack: Rack, outlook: Outlook, side: str) -> Iterator[int]:
    """Rows of the symptoms of a side that are taken as absent only because nobody named them."""
    net, not_seen = outlook.net, rack.case.not_seen
    for row in net.no:
        kind, id_ = net.findings[row]
        if kind == "symptom" and outlook.knowledge.symptoms[id_].view == side and id_ not in not_seen:
            yield row


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
