"""What stands on a job sheet, as plain values."""

from __future__ import annotations

from dataclasses import dataclass

from fitdoctor.amounts.marks import Mark
from fitdoctor.amounts.rounding import round_worked
from fitdoctor.amounts.work_out import WorkedAmount
from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.conditions import ConditionState
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge
from fitdoctor.plan import STAGE_WORDS, PlannedOperation
from fitdoctor.shop import Shop
from fitdoctor.units import step_mm
from fitdoctor.verdict import LEVEL_WORDS, MethodVerdict

TAKE_WORDS = {
    "in": "take in",
    "out": "let out",
    "lower": "lower",
    "raise": "raise",
    "mark": "mark",
    "add": "add",
    "cut": "cut",
}
_MOST_STATIONS = 9


@dataclass(frozen=True)
class SheetMark:
    """One row of the marks: a letter, the seam and place, what to do, how much, and the stations along it in the shop's unit."""

    letter: str
    seam: str
    where: str
    do: str
    how_much: str
    layer: str
    stations: tuple[tuple[str, str], ...] = ()
    unit: str = ""
    assumed: str = ""


@dataclass(frozen=True)
class SheetStep:
    number: int
    text: str
    opens: str
    minutes: str
    try_on: bool
    care: str


@dataclass(frozen=True)
class SheetStage:
    title: str
    steps: tuple[SheetStep, ...]


@dataclass(frozen=True)
class SheetCondition:
    state: str
    needs: str
    note: str
    sources: str


@dataclass(frozen=True)
class Sheet:
    """Everything on the sheet, in words. Amounts are in the shop's unit."""

    title: str
    garment: str
    wearer: str
    facts: tuple[str, ...]
    seen: tuple[tuple[int, str, str], ...]
    answers: tuple[tuple[str, str], ...]
    measured: tuple[tuple[str, str], ...]
    causes: tuple[tuple[str, str, str], ...]
    left_alone: tuple[str, ...]
    verdict: str
    sentence: str
    other_ways: tuple[tuple[str, str], ...]
    methods: tuple[tuple[str, str, str], ...]
    marks: tuple[SheetMark, ...]
    open_amounts: tuple[str, ...]
    stages: tuple[SheetStage, ...]
    conditions: tuple[SheetCondition, ...]
    cautions: tuple[str, ...]
    safety: tuple[str, ...]
    make_sure: tuple[str, ...]
    minutes: tuple[str, str, str]
    cost: tuple[str, str, str]
    sources: tuple[str, ...]
    notes: str


def write_sheet(knowledge: Knowledge, assessment: Assessment) -> Sheet:
    """Put an assessment into the words of a job sheet."""
    case, shop = assessment.case, assessment.shop
    plan = assessment.plan
    planned = [method for method in assessment.methods if method in assessment.planned]
    worked = tuple(amount for amount in assessment.amounts if amount.method in assessment.planned)
    return Sheet(
        title=case.title or knowledge.garment(case.garment).title,
        garment=knowledge.garment(case.garment).title,
        wearer=case.wearer,
        facts=_facts(knowledge, case),
        seen=_seen(knowledge, case),
        answers=tuple((knowledge.checks[c].ask, _answer(knowledge, c, a)) for c, a in case.answers.items() if c in knowledge.checks),
        measured=tuple(
            (knowledge.measurements[m].title, shop.length(v.mm)) for m, v in case.measured.items() if m in knowledge.measurements
        ),
        causes=_causes(knowledge, assessment),
        left_alone=tuple(knowledge.causes[cause].title for cause in assessment.left_alone),
        verdict=assessment.verdict.words,
        sentence=assessment.verdict.sentence,
        other_ways=_other_ways(knowledge, assessment),
        methods=tuple((knowledge.methods[m].title, knowledge.methods[m].lining, knowledge.methods[m].pressing) for m in planned),
        marks=tuple(sheet_marks(knowledge, worked, shop)),
        open_amounts=_open_amounts(knowledge, worked),
        stages=_stages(knowledge, assessment),
        conditions=_conditions(knowledge, assessment),
        cautions=tuple(_caution(s) for s in assessment.cautions if not s.safety),
        safety=tuple(_caution(s) for s in assessment.cautions if s.safety and s.state != "not-known"),
        make_sure=tuple(s.needs for s in assessment.cautions if s.safety and s.state == "not-known"),
        minutes=(duration(plan.minutes[0]), duration(plan.minutes[1]), duration(plan.minutes[2])),
        cost=(shop.money(plan.minutes[0]), shop.money(plan.minutes[1]), shop.money(plan.minutes[2])),
        sources=_sources(knowledge, assessment),
        notes=case.notes,
    )


def _other_ways(knowledge: Knowledge, assessment: Assessment) -> tuple[tuple[str, str], ...]:
    """Title and verdict of each way that was not chosen, by cause; those that cannot be done are left out."""
    known: dict[str, str] = {}
    for choice in assessment.choices:
        for way in choice.ways:
            if way is not choice.chosen and (way.level != "CANNOT" or knowledge.methods[way.method].kind == "other-garment"):
                known.setdefault(knowledge.methods[way.method].title, way_words(knowledge, way))
    return tuple(known.items())


def way_words(knowledge: Knowledge, way: MethodVerdict) -> str:
    """How a way stands; another garment is no work, and nothing forbids it."""
    kind = knowledge.methods[way.method].kind
    words = {"other-garment": "Another garment", "leave": "No work"}.get(kind, LEVEL_WORDS[way.level])
    return f"{words[:1].lower()}{words[1:]}"


def duration(minutes: float) -> str:
    """Minutes as hours and minutes to the nearest five: 1 h 45.

    >>> duration(104)
    '1 h 45'
    """
    rounded = int(5 * round(minutes / 5)) if minutes > 10 else round(minutes)
    hours, rest = divmod(rounded, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest:02d}" if rest else f"{hours} h"


def in_minutes(minutes: float) -> str:
    """Minutes of one operation, to the half: 12, 2.5."""
    return f"{round(2 * minutes) / 2:g}"


def sheet_marks(knowledge: Knowledge, amounts: tuple[WorkedAmount, ...], shop: Shop) -> list[SheetMark]:
    """The marks of all amounts as rows, lettered in order, in whole steps of the shop."""
    amounts = round_worked(amounts, step_mm(shop.unit, shop.finest))
    marks = [mark for worked in amounts if worked.calculation for mark in worked.calculation.marks]
    assumed = {mark: worked.calculation.total.assumed for worked in amounts if worked.calculation for mark in worked.calculation.marks}
    return [_sheet_mark(knowledge, mark, letter_of(n), shop, assumed[mark]) for n, mark in enumerate(marks)]


def letter_of(number: int) -> str:
    """A, B, … Z, A2, B2, …"""
    turn, place = divmod(number, 26)
    return chr(ord("A") + place) + (str(turn + 1) if turn else "")


def how_much(mark: Mark, shop: Shop) -> str:
    """The amount with its convention before it: each side 1/2 in, in all 1 in. Zero is said."""
    if abs(mark.total_mm) < step_mm(shop.unit, shop.finest) / 4:
        return "0, the line runs out"
    whole = f"in all {shop.length(mark.total_mm)}"
    if mark.convention == "in all" or abs(mark.each_mm - mark.total_mm) < 1e-6:
        return whole
    return f"{mark.convention} {shop.length(mark.each_mm)}, {whole}"


def _sheet_mark(knowledge: Knowledge, mark: Mark, letter: str, shop: Shop, assumed: str) -> SheetMark:
    every = max(1, -(-len(mark.stations) // _MOST_STATIONS))
    kept = [s for n, s in enumerate(mark.stations) if n % every == 0 or n == len(mark.stations) - 1]
    stations = tuple((_bare(shop, way), _bare(shop, offset)) for way, offset in kept)
    return SheetMark(
        letter,
        knowledge.seam_title(mark.at),
        mark.where,
        TAKE_WORDS[mark.take],
        how_much(mark, shop),
        mark.layer,
        stations,
        shop.unit,
        assumed,
    )


def _bare(shop: Shop, mm: float) -> str:
    """A length without its unit, which stands once before the row."""
    return shop.length(mm).removesuffix(f" {shop.unit}")


def _facts(knowledge: Knowledge, case: Case) -> tuple[str, ...]:
    said = []
    for feature, value in case.facts.items():
        entry = knowledge.features.get(feature)
        titles = {v.id: v.title for v in entry.values} if entry else {}
        said.append(f"{entry.title if entry else feature}: {titles.get(value, value)}")
    return tuple(said)


def _seen(knowledge: Knowledge, case: Case) -> tuple[tuple[int, str, str], ...]:
    known = [knowledge.symptoms[s] for s in case.seen if s in knowledge.symptoms]
    return tuple((number, symptom.title, symptom.view) for number, symptom in enumerate(known, 1))


def _answer(knowledge: Knowledge, check: str, answer: str) -> str:
    entry = knowledge.checks[check]
    return {"yes": entry.yes, "no": entry.no}.get(answer, "Not known")


def _causes(knowledge: Knowledge, assessment: Assessment) -> tuple[tuple[str, str, str], ...]:
    words = {ranked.id: ranked.word for ranked in assessment.diagnosis.causes}
    return tuple((knowledge.causes[c].title, words.get(c, ""), knowledge.causes[c].why) for c in assessment.treat)


def _open_amounts(knowledge: Knowledge, amounts: tuple[WorkedAmount, ...]) -> tuple[str, ...]:
    titles = (knowledge.measurements[m].title if m in knowledge.measurements else m for w in amounts for m in w.missing)
    return tuple(dict.fromkeys(titles))


def _stages(knowledge: Knowledge, assessment: Assessment) -> tuple[SheetStage, ...]:
    numbers = {op.id: n for n, op in enumerate(assessment.plan.operations, 1)}
    return tuple(
        SheetStage(STAGE_WORDS[stage], tuple(_step(knowledge, op, numbers[op.id]) for op in operations))
        for stage, operations in assessment.plan.stages()
    )


def _step(knowledge: Knowledge, op: PlannedOperation, number: int) -> SheetStep:
    opens = ", ".join(knowledge.seam_title(seam) for seam in op.opens)
    return SheetStep(number, op.text, opens, in_minutes(op.minutes[1]), op.try_on, op.care)


def _conditions(knowledge: Knowledge, assessment: Assessment) -> tuple[SheetCondition, ...]:
    chosen = [choice.chosen for choice in assessment.choices if choice.chosen]
    states = {s.condition: s for verdict in chosen for s in verdict.conditions if _is_shown(s)}
    rows = sorted(states.values(), key=lambda s: ("not-met", "borderline", "not-known", "met").index(s.state))
    return tuple(SheetCondition(_state_words(s), s.needs, s.found or s.at_the_rack, _source_words(knowledge, s.sources)) for s in rows)


def _state_words(state: ConditionState) -> str:
    """What does not hold is named by what follows from it; extra work is no failing."""
    if state.state == "not-met" and state.effect in ("adds-work", "needs-care"):
        return "extra work" if state.effect == "adds-work" else "with care"
    return "too close" if state.state == "borderline" else state.state.replace("-", " ")


def _is_shown(state: ConditionState) -> bool:
    """What bears on this garment: not the cares that always hold, nor what holds for all work and is met or not asked."""
    return not state.always and not (state.everywhere and state.state in ("met", "not-known"))


def _caution(state: ConditionState) -> str:
    return f"{state.needs}. {state.because}" + (f" {state.instead}" if state.instead else "")


def _source_words(knowledge: Knowledge, sources: tuple[str, ...]) -> str:
    return "; ".join(knowledge.source_line(source) for source in sources)


def _sources(knowledge: Knowledge, assessment: Assessment) -> tuple[str, ...]:
    used: list[str] = []
    for cause in assessment.treat:
        used += knowledge.causes[cause].sources
    for method in assessment.methods:
        used += knowledge.methods[method].sources
    for choice in assessment.choices:
        used += [source for s in (choice.chosen.conditions if choice.chosen else ()) if _is_shown(s) for source in s.sources]
    lines = [knowledge.source_line(source) for source in dict.fromkeys(used) if source != COMMON_PRACTICE]
    return (*lines, "Otherwise: common practice, no source.")
