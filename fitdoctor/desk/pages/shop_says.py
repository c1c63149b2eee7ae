"""What the shop's own closed jobs say of a cause, beside the words of the handbook."""

from __future__ import annotations

from collections.abc import Iterator

from fitdoctor.case import Case
from fitdoctor.desk.words import tr
from fitdoctor.diagnosis.learning import Learned
from fitdoctor.jobbook.lessons import BesideThePrinted, common_beside, link_beside, present_names
from fitdoctor.knowledge.knowledge import Knowledge

_MOST = 4


def shop_says(knowledge: Knowledge, learned: Learned | None, cause: str, case: Case) -> tuple[str, ...]:
    """How common the cause is here, and how often it shows what was looked for in this case; only where a job can tell."""
    if learned is None:
        return ()
    return tuple(_lines(knowledge, learned, cause, case))[:_MOST]


def _lines(knowledge: Knowledge, learned: Learned, cause: str, case: Case) -> Iterator[str]:
    common = common_beside(knowledge, learned, cause, case.garment)
    if common and common.times:
        yield _line(tr("How common it is"), common)
    now = present_names(knowledge, case)
    looked = [*(("symptom", id_) for id_ in (*now.seen, *now.not_seen)), *(("check", id_) for id_ in now.answers)]
    for kind, id_ in looked:
        beside = link_beside(knowledge, learned, cause, (kind, id_))
        if beside and beside.times:
            entry = knowledge.symptoms[id_] if kind == "symptom" else knowledge.checks[id_]
            yield _line(entry.title.rstrip("."), beside)


def _line(what: str, beside: BesideThePrinted) -> str:
    return f"**{what}.** {beside.text}"
