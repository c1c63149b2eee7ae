"""What to ask a buyer next: the quickest question whose answer could still change whether to buy."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import chain

import msgspec

from fitdoctor.knowledge.references import tests
from fitdoctor.rack.foresight import LEAST_GAIN, After, after_feature, after_looks, chances_of, value_of
from fitdoctor.rack.outlook import Outlook
from fitdoctor.rack.prospects import VIEWS
from fitdoctor.rack.question import AnswerChoice, Decides, Kind, Rack, RackQuestion, mark

LOOK_OVER_SECONDS = 15.0
"""Looking over one side of the garment for anything amiss."""


def deciding_questions(rack: Rack, outlook: Outlook) -> Iterator[RackQuestion]:
    """Every question whose answer could change whether to buy: first those that tell what is the matter.

    Where something shows that is not named yet, only naming it is asked.
    """
    if rack.to_be_named:
        yield _which(outlook, rack.to_be_named)
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
    open_ = [
        (row, checks[id_])
        for row, (kind, id_) in enumerate(net.findings)
        if kind == "check" and checks[id_].at_the_rack and id_ not in rack.case.answers and mark(kind, id_) not in rack.aside
    ]
    for at, afters in after_looks(outlook, [(row,) for row, _ in open_]):
        check = open_[at][1]
        words, titles = (check.ask, " ".join(check.how)), [(check.yes, ""), (check.no, "")]
        yield _question(outlook, ("check", check.id), words, titles, max(1.0, check.minutes * 60), afters, "cause")


def _of_sides(rack: Rack, outlook: Outlook) -> Iterator[RackQuestion]:
    """Looking over a whole side: something (else) shows there, or nothing does; the other sides are taken as clear."""
    for side in rack.sides_not_looked_over:
        before = _before_looking(outlook, side)
        rows = list(_symptoms_of(before, side))
        for _, afters in after_looks(before, [rows] if rows else []):
            named = any(outlook.knowledge.symptoms[s].view == side for s in rack.case.seen if s in outlook.knowledge.symptoms)
            ask = f"Look at the {side} from top to hem: does anything {'else ' if named else ''}strain, fold, gape, droop or twist?"
            titles = [("Something does", ""), ("Nothing else" if named else "Nothing", "")]
            yield _question(before, ("side", side), (ask, "Stand still, arms down."), titles, LOOK_OVER_SECONDS, afters, "cause")


def _which(outlook: Outlook, side: str) -> RackQuestion:
    """Which symptom it is that shows on a side, the likeliest first."""
    before = _before_looking(outlook, side)
    rows = list(_symptoms_of(before, side))
    symptoms = [outlook.knowledge.symptoms[before.net.findings[row][1]] for row in rows]
    answers = [AnswerChoice(s.id, s.short or s.title, s.look, chance) for s, chance in zip(symptoms, chances_of(before, rows), strict=True)]
    ordered = tuple(sorted(answers, key=lambda answer: -answer.chance))
    words = (f"Which of these is it that shows at the {side}?", "Take the one that is nearest.")
    return RackQuestion(side, "symptom", *words, ordered, LOOK_OVER_SECONDS, 0.0, 0.0, "cause")


def _before_looking(outlook: Outlook, side: str) -> Outlook:
    """As far as seen, but with this side not looked over."""
    return outlook.with_case(msgspec.structs.replace(outlook.case, looked=tuple(s for s in outlook.case.looked if s != side)))


def _symptoms_of(outlook: Outlook, side: str) -> Iterator[int]:
    """Rows of the symptoms of a side that were not looked for."""
    net = outlook.net
    known = {*net.yes, *net.no}
    for row, (kind, id_) in enumerate(net.findings):
        if row not in known and kind == "symptom" and outlook.knowledge.symptoms[id_].view == side:
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
