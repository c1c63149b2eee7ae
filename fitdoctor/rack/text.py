"""The answer and a comparison in plain text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from fitdoctor.rack.answer import RackAnswer
from fitdoctor.rack.comparison import Compared
from fitdoctor.rack.decision import DECISION_WORDS
from fitdoctor.rack.simulation import Simulation


def rack_text(answer: RackAnswer) -> str:
    """The answer as a few lines."""
    return "\n".join(_lines(answer))


def comparison_text(rows: Sequence[Compared]) -> str:
    """Several garments as a table, what to buy first."""
    width = max(len(row.title) for row in rows)
    head = f"{'':{width}}  {'':15}{'price':>9}{'work':>9}{'risk':>9}{'in all':>9}{'worth':>9}{'gain':>9}"
    table = (
        f"{row.title:{width}}  {row.words:15}"
        + "".join(f"{amount:9.2f}" for amount in (row.price, row.work, row.risk, row.total, row.worth, row.gain))
        for row in rows
    )
    return "\n".join([head, *table])


def simulation_text(simulation: Simulation) -> str:
    """What the simulated buyers needed, in words."""
    return (
        f"{simulation.cases} buyers with the garments of the solved cases: {simulation.questions} questions,"
        f" against {simulation.checklist_questions} of a checklist in the order of the files ({simulation.ratio:.1%})."
        f" The decision is that of a buyer who has told everything in {simulation.same_decision:.1%} of the cases."
    )


def simulation_json(simulation: Simulation) -> dict[str, Any]:
    """The figures as plain values; ratio and same_decision from 0 to 1."""
    return {
        "cases": simulation.cases,
        "questions": simulation.questions,
        "checklist_questions": simulation.checklist_questions,
        "ratio": round(simulation.ratio, 4),
        "same_decision": round(simulation.same_decision, 4),
    }


def _lines(answer: RackAnswer) -> Iterator[str]:
    money, minutes = answer.sum, answer.sum.minutes
    sign = answer.assessment.shop.currency
    yield f"{answer.title}: {DECISION_WORDS[answer.decision].upper()}"
    yield f"  {answer.reason.text}"
    for state in answer.only_if:
        how = state.at_the_rack or state.ask
        yield f"  only if: {state.needs}.{f' {how}' if how else ''}"
    yield (
        f"  price {sign}{money.price:.2f} + work {sign}{money.work:.2f} + risk {sign}{money.risk:.2f}"
        f" = {sign}{money.total:.2f}, worth {sign}{money.worth:.2f}"
    )
    yield f"  work about {minutes[0]:.0f} min; at worst {minutes[1]:.0f} min and {sign}{money.worst:.2f} spent for nothing"
    if answer.at_home:
        yield f"  at home, before cutting: {answer.at_home}"
    yield from (f"  not to be altered unless: {caution.needs}. {caution.how}".rstrip() for caution in answer.cautions)
    yield from (f"  instead: {size.text}" for size in answer.other_size)
    if answer.question:
        yield f"  next ({answer.question.seconds:.0f} s): {answer.question.ask}"
        yield "    " + " / ".join([*(a.title for a in answer.question.answers[:8]), "Can't tell"])
