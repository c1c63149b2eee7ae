"""The machine-readable form of an assessment: stable, versioned. Change the format number with its shape."""

from __future__ import annotations

from typing import Any

from fitdoctor.amounts.marks import Mark
from fitdoctor.assess import Assessment
from fitdoctor.knowledge.knowledge import Knowledge, Problem
from fitdoctor.reason import Reason
from fitdoctor.sheet import how_much
from fitdoctor.shop import Shop

FORMAT = 1


def assessment_json(knowledge: Knowledge, assessment: Assessment, problems: tuple[Problem, ...] = ()) -> dict[str, Any]:
    """An assessment as plain values for JSON; lengths in mm, chances from 0 to 1, minutes as [low, likely, high]."""
    plan = assessment.plan
    return {
        "format": FORMAT,
        "garment": assessment.case.garment,
        "causes": [
            {"id": c.id, "title": c.title, "probability": c.probability, "because": [_reason(r) for r in c.because]}
            for c in assessment.diagnosis.causes
        ],
        "next": [{"id": n.id, "kind": n.kind, "ask": n.ask, "minutes": n.minutes, "gain_bits": n.gain_bits} for n in assessment.next],
        "methods": [
            {
                "id": m,
                "title": knowledge.methods[m].title,
                "treats": [c.cause for c in assessment.choices if c.chosen and c.chosen.method == m],
            }
            for m in assessment.methods
        ],
        "amounts": [
            _amount(worked.method, mark, assessment.shop)
            for worked in assessment.amounts
            if worked.calculation
            for mark in worked.calculation.marks
        ],
        "verdict": {
            "level": assessment.verdict.level,
            "sentence": assessment.verdict.sentence,
            "because": [_reason(r) for r in assessment.verdict.because],
        },
        "plan": {
            "operations": [
                {
                    "id": op.id,
                    "text": op.text,
                    "opens": list(op.opens),
                    "closes": list(op.closes),
                    "try_on": op.try_on,
                    "minutes": list(op.minutes),
                }
                for op in plan.operations
            ],
            "minutes": list(plan.minutes),
        },
        "problems": [str(problem) for problem in problems],
    }


def _reason(reason: Reason) -> dict[str, Any]:
    return {"text": reason.text, "entry": reason.entry, "state": reason.state, "sources": list(reason.sources)}


def _amount(method: str, mark: Mark, shop: Shop) -> dict[str, Any]:
    return {
        "method": method,
        "at": mark.at,
        "layer": mark.layer,
        "take": mark.take,
        "each_mm": mark.each_mm,
        "total_mm": mark.total_mm,
        "text": f"{mark.where}: {how_much(mark, shop)}",
        "stations": [list(station) for station in mark.stations],
    }
