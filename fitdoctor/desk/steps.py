"""How each of the seven steps stands, in words and as a line that is sewn, basted or not begun."""

from __future__ import annotations

from fitdoctor.assess import Assessment
from fitdoctor.desk.shelf import Kept, own_words
from fitdoctor.desk.step_names import TITLES, StepState, Thread
from fitdoctor.desk.words import count, lower_first, tr
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.sheet import duration
from fitdoctor.verdict import LEVEL_WORDS


def step_states(knowledge: Knowledge, kept: Kept, assessment: Assessment | None) -> tuple[StepState, ...]:
    """The seven steps of a case."""
    told = {
        "garment": _garment(knowledge, kept),
        "shows": _shows(kept),
        "narrow": _narrow(kept, assessment),
        "measure": _measure(assessment),
        "done": _done(assessment),
        "plan": _plan(kept, assessment),
        "sheet": (tr("written"), "sewn") if kept.written else (tr("not written yet"), "none"),
    }
    return tuple(StepState(step, tr(title), *told[step]) for step, title in TITLES.items())


def first_open(states: tuple[StepState, ...], treating: bool) -> str:
    """The first step at which something is open; once a cause is treated, checks left over keep nobody back."""
    return next((state.id for state in states if state.thread != "sewn" and not (treating and state.id == "narrow")), "sheet")


def _garment(knowledge: Knowledge, kept: Kept) -> tuple[str, Thread]:
    garment = knowledge.garments.get(kept.case.garment)
    if garment is None:
        return tr("not chosen yet"), "none"
    return lower_first(garment.title), "sewn"


def _shows(kept: Kept) -> tuple[str, Thread]:
    number = len(kept.case.seen)
    if number:
        return count(number, "{number} thing noted", "{number} things noted"), "sewn"
    if kept.case.looked:
        return tr("nothing shows"), "sewn"
    return (tr("only in words"), "basted") if own_words(kept.case.notes) else (tr("nothing noted yet"), "none")


def _narrow(kept: Kept, assessment: Assessment | None) -> tuple[str, Thread]:
    done = len(kept.case.answers) + len(kept.case.not_seen) + len(kept.case.unsure)
    if assessment is None or not (kept.case.seen or done):
        return "", "none"
    if assessment.settled and (assessment.treat or assessment.left_alone):
        return count(done, "{number} check, settled", "{number} checks, settled"), "sewn"
    left = len(assessment.next)
    if not left:
        return count(done, "{number} check, none left", "{number} checks, none left"), "basted"
    return (count(done, "{number} check done", "{number} checks done") if done else tr("no check yet")), "basted"


def _measure(assessment: Assessment | None) -> tuple[str, Thread]:
    if assessment is None or not (assessment.treat or assessment.left_alone):
        return "", "none"
    needed = [want for want in assessment.wanted if want.needed or want.taken]
    taken = [want for want in needed if want.taken]
    if not needed:
        return (tr("nothing to measure"), "sewn") if not assessment.wanted else (tr("nothing needed"), "sewn")
    words = tr("{taken} of {all} taken", taken=len(taken), all=len(needed))
    return words, "sewn" if len(taken) == len(needed) else "basted" if taken else "none"


def _done(assessment: Assessment | None) -> tuple[str, Thread]:
    if assessment is None or not (assessment.choices or assessment.left_alone):
        return "", "none"
    open_ = len(unknown_conditions(assessment))
    if open_:
        return count(open_, "{number} thing not known", "{number} things not known"), "basted"
    return LEVEL_WORDS[assessment.verdict.level].lower(), "basted" if assessment.verdict.level == "NOT_KNOWN" else "sewn"


def unknown_conditions(assessment: Assessment) -> tuple[str, ...]:
    """Conditions of the chosen ways that are not known, each once."""
    chosen = [choice.chosen for choice in assessment.choices if choice.chosen]
    states = [state for way in chosen for state in way.conditions if state.state in ("not-known", "borderline") and not state.everywhere]
    return tuple(dict.fromkeys(state.condition for state in states))


def _plan(kept: Kept, assessment: Assessment | None) -> tuple[str, Thread]:
    operations = assessment.plan.operations if assessment else ()
    if assessment is None or not operations:
        return (tr("no work"), "sewn") if assessment and assessment.left_alone and not assessment.choices else ("", "none")
    done = {operation.id for operation in operations} & set(kept.case.done)
    if len(done) == len(operations):
        return tr("all done"), "sewn"
    if done:
        return tr("{done} of {all} done", done=len(done), all=len(operations)), "basted"
    return tr("{time} likely", time=duration(assessment.plan.minutes[1])), "basted"
