"""Can it be done, and what decides it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.conditions import ConditionState, applicable
from fitdoctor.knowledge.entries import Cause, Effect, Method
from fitdoctor.practice.amounts import measured_case
from fitdoctor.practice.bench import Bench, replace
from fitdoctor.practice.exercise import Choice, Exercise, Mark, Option, Picture, Question, Skill, Told
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.wording import fact_line, without
from fitdoctor.reason import Reason
from fitdoctor.verdict import LEVEL_WORDS, Level, MethodVerdict

_ASKED: tuple[Level, ...] = ("CAN", "CAN_WITHIN_LIMITS", "NEEDS_CARE", "CANNOT", "NOT_KNOWN")
_GOES_ON: tuple[Level, ...] = ("CAN", "CAN_WITHIN_LIMITS", "NEEDS_CARE")
_EFFECT: dict[Level, Effect] = {"CAN_WITHIN_LIMITS": "limits", "NEEDS_CARE": "needs-care", "CANNOT": "forbids", "NOT_KNOWN": "forbids"}
_ANSWERS = 4
_OF_THE_METHOD = ("suits-", "all-placed")
"""What the chain says of one method alone; no condition one could learn."""
_ROUNDS = 10
_MOST_REASONS = 3
_SOLVED_SHARE = 0.4
_LEFT_OPEN = 0.2


def verdict_exercise(bench: Bench, lots: Lots, scope: Scope, garment: str, focus: Skill | None = None) -> Exercise | None:
    """A method on a garment of which some things are known.

    Args:
        focus: a condition.
    """
    solved = [s for s in bench.solved_garments(scope) if s.case.garment == garment and s.case.facts]
    if focus is None and solved and lots.happens(_SOLVED_SHARE):
        drawn = lots.one(solved)
        case = replace(drawn.case, treat=drawn.causes[:1])
        return _exercise(bench, lots, scope, bench.assess(case), drawn.causes[0], focus, drawn.solved)
    ways = list(_ways(bench, scope, garment, focus))
    if not ways:
        return None
    cause, method = lots.one(ways)
    case = _filled(bench, lots, garment, cause, method, lots.one(_ASKED))
    return _exercise(bench, lots, scope, bench.assess(case), cause.id, focus)


def verdict_questions(bench: Bench, lots: Lots, assessment: Assessment, cause: str, focus: Skill | None = None) -> tuple[Question, ...]:
    """The verdict on the method chosen for a cause, and what decides it where something does."""
    chosen = next((c.chosen for c in assessment.choices if c.cause == cause), None)
    if chosen is None or chosen.level not in _ASKED:
        return ()
    deciding = _deciding(chosen)
    skill = _skill(lots, chosen, deciding, focus)
    if skill is None:
        return ()
    verdict = _verdict_question(bench, lots, assessment, chosen, skill)
    decided = _deciding_question(bench, lots, verdict, chosen, deciding)
    return (verdict, decided) if decided else (verdict,)


def _exercise(
    bench: Bench, lots: Lots, scope: Scope, assessment: Assessment, cause: str, focus: Skill | None, solved: str = ""
) -> Exercise | None:
    questions = verdict_questions(bench, lots, assessment, cause, focus)
    return Exercise("", "verdict", scope.level, assessment.case, questions, (cause,), solved) if questions else None


def _ways(bench: Bench, scope: Scope, garment: str, focus: Skill | None) -> Iterator[tuple[Cause, Method]]:
    for cause in scope.causes(bench.knowledge, garment).values():
        for method in bench.knowledge.methods_for(cause.id, garment):
            if method.kind == "alteration" and (focus is None or focus.id in _watched_by(bench, method, garment)):
                yield cause, method


def _watched_by(bench: Bench, method: Method, garment: str) -> set[str]:
    """The conditions on a method, and the seams that must hold cloth for it."""
    return {*(c.id for c in applicable(bench.knowledge, method, garment)), *(f"cloth-in-{need.seam}" for need in method.cloth_needed)}


def _filled(bench: Bench, lots: Lots, garment: str, cause: Cause, method: Method, wanted: Level) -> Case:
    """The garment with what the method asks for known; drawn again until it comes out as wanted, or else as it comes."""
    bare = Case(garment=garment, treat=(cause.id,), methods={cause.id: method.id})
    for _ in range(_ROUNDS):
        case = found_out(bench, lots, measured_case(bench, lots, bare, method), cause.id, wanted == "NOT_KNOWN")
        chosen = bench.choose(case, cause.id).chosen
        if chosen is not None and chosen.level == wanted:
            break
    return case


def found_out(bench: Bench, lots: Lots, case: Case, cause: str, leave_open: bool = False) -> Case:
    """The case with what the work on a cause waits for found out by lot; of a garment to be left open not all of it."""
    missing = _missing(bench.choose(case, cause).chosen)
    features = [id_ for id_ in missing if id_ in bench.knowledge.features]
    found = [id_ for id_ in features if not (leave_open and lots.happens(_LEFT_OPEN))]
    facts = {id_: lots.one(bench.knowledge.features[id_].values).id for id_ in found}
    lengths = [bench.knowledge.measurements[id_] for id_ in missing if id_ in bench.knowledge.measurements]
    measured = {entry.id: bench.length(lots, entry) for entry in lengths}
    return replace(case, facts={**case.facts, **facts}, measured={**case.measured, **measured})


def _missing(chosen: MethodVerdict | None) -> list[str]:
    """What the method's own conditions wait for; what holds for all work does not hold it up."""
    states = [state for state in chosen.conditions if not state.everywhere] if chosen else []
    return without(id_ for state in states for id_ in state.missing)


def _deciding(chosen: MethodVerdict) -> tuple[ConditionState, ...]:
    """The conditions that make the verdict what it is."""
    effect = _EFFECT.get(chosen.level)
    open_ = ("not-known", "borderline") if chosen.level == "NOT_KNOWN" else ("not-met",)
    return tuple(s for s in chosen.conditions if s.effect == effect and s.state in open_ and not s.always and not s.passed)


def _skill(lots: Lots, chosen: MethodVerdict, deciding: Sequence[ConditionState], focus: Skill | None) -> Skill | None:
    """The condition that decides; where none does, one that could have."""
    if focus and focus.id in [s.condition for s in chosen.conditions]:
        return focus
    watching = [s for s in chosen.conditions if not s.always and not s.condition.startswith(_OF_THE_METHOD)]
    ids = [s.condition for s in deciding if s in watching] or lots.shuffled([s.condition for s in watching if s.state == "met"])
    return Skill("condition", ids[0]) if ids else None


def _verdict_question(bench: Bench, lots: Lots, assessment: Assessment, chosen: MethodVerdict, skill: Skill) -> Choice:
    case, method = assessment.case, bench.knowledge.methods[chosen.method]
    others = lots.shuffled([level for level in _ASKED if level != chosen.level])[: _ANSWERS - 1]
    picture = Picture(mechanism=chosen.cause)
    return Choice(
        kind="verdict",
        ask=f"‘{method.title}’: can it be done?",
        given=(bench.knowledge.garment(case.garment).title, bench.knowledge.causes[chosen.cause].title, *_given(bench, case, chosen)),
        skill=skill,
        right=f"{LEVEL_WORDS[chosen.level]}. {chosen.sentence}",
        entry=("methods", method.id),
        picture=picture,
        shows=picture,
        sources=method.sources,
        options=tuple(_level_option(level, chosen) for level in _ASKED if level in (chosen.level, *others)),
    )


def _level_option(level: Level, chosen: MethodVerdict) -> Option:
    near = level in _GOES_ON and chosen.level in _GOES_ON
    mark: Mark = "right" if level == chosen.level else "part" if near else "wrong"
    confused = () if mark == "right" else (LEVEL_WORDS[chosen.level], LEVEL_WORDS[level])
    said = () if mark == "right" else (f"{LEVEL_WORDS[chosen.level]}. {chosen.sentence}",)
    behind = _behind(chosen)
    told = Told(said, behind if mark == "right" else (), () if mark == "right" else behind, confused)
    return Option(level, LEVEL_WORDS[level], mark, told)


def _behind(chosen: MethodVerdict) -> tuple[Reason, ...]:
    """What makes the verdict what it is; where nothing stands in the way, what could have."""
    own = [s for s in chosen.conditions if not s.always and not s.everywhere and s.state == "met"]
    return tuple(state.reason for state in _deciding(chosen) or own)[:_MOST_REASONS]


def _deciding_question(
    bench: Bench, lots: Lots, verdict: Choice, chosen: MethodVerdict, deciding: Sequence[ConditionState]
) -> Choice | None:
    """What decides it, among what is met and what is asked of other work."""
    if not deciding:
        return None
    right, own = deciding[0], {s.condition for s in chosen.conditions}
    met = [(s.condition, s.needs) for s in chosen.conditions if s not in deciding and not s.always]
    foreign = [(c.id, c.needs) for c in bench.knowledge.conditions.values() if c.id not in own and c.when]
    wrong = [*lots.shuffled(met)[: _ANSWERS - 2], *lots.shuffled(foreign)][: _ANSWERS - 1]
    open_ = chosen.level == "NOT_KNOWN"
    told = Told((right.because, *((right.instead,) if right.instead else ())), speaks_against=(right.reason,))
    options = [Option(right.condition, right.needs, "right", told)]
    options += [Option(id_, needs, "wrong", Told((_why_not(chosen, id_), right.because))) for id_, needs in wrong]
    known = right.condition in bench.knowledge.conditions
    return Choice(
        kind="verdict",
        ask="What has to be found out first?" if open_ else "Which need of the work is not met?",
        given=verdict.given,
        skill=verdict.skill,
        right=right.needs.rstrip(".") + ".",
        entry=("conditions", right.condition) if known else verdict.entry,
        picture=verdict.picture,
        shows=verdict.shows,
        sources=right.sources,
        options=tuple(lots.shuffled(options)),
    )


def _why_not(chosen: MethodVerdict, id_: str) -> str:
    state = next((s for s in chosen.conditions if s.condition == id_), None)
    if state is None:
        return "This work does not ask for that."
    return {"met": "That is met.", "not-met": "That does not decide it."}.get(state.state, "That is not known, and does not decide it.")


def _given(bench: Bench, case: Case, chosen: MethodVerdict) -> Iterator[str]:
    """What is known of the garment, and what is not."""
    yield from (fact_line(bench.knowledge, feature, value) for feature, value in case.facts.items())
    yield from (f"{bench.knowledge.measurements[id_].title}: {bench.shop.length(m.mm)}" for id_, m in case.measured.items())
    if chosen.level == "NOT_KNOWN":
        yield "Nothing else is known of it"
