"""What a row of the list says of a job: the garment, what was found, how it stands, when it was last in hand."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from fitdoctor.desk.jobbook.days import day_words, due_words
from fitdoctor.desk.parts.tag import TagState
from fitdoctor.desk.words import and_list, lower_first, tr, upper_first
from fitdoctor.jobbook.book import JobBook
from fitdoctor.jobbook.finding import Line
from fitdoctor.jobbook.job import RESULT_WORDS, STATE_WORDS, Job, Result, State, minutes_spent
from fitdoctor.jobbook.reading import Reading
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.sheet import duration

STATE_TAGS: dict[State, TagState] = {
    "looked-at": "plain",
    "marked": "yours",
    "basted": "yours",
    "tried-on": "yours",
    "done": "met",
    "given-back": "met",
}
RESULT_TAGS: dict[Result, TagState] = {"as-wanted": "met", "better": "plain", "no-better": "plain", "given-up": "stops"}
_MOST_NAMED = 2


@dataclass(frozen=True)
class RowWords:
    """One row as it is shown.

    Attributes:
        whom: whom it is for and the kind of garment; found: what is the matter, or what was seen of it.
        word: the tag's; remark: the line below it; last: the day it was last in hand.
    """

    id: str
    title: str
    whom: str
    found: str
    tag: TagState
    word: str
    remark: str
    last: str


def row_words(knowledge: Knowledge, book: JobBook, line: Line, today: date) -> RowWords:
    """A line of the list in words."""
    job, readings = book.job(line.id), book.history.of(line.id)
    last = readings[-1] if readings else None
    return RowWords(
        id=line.id,
        title=title_of(knowledge, job),
        whom=", ".join(part for part in (line.wearer, _kind(knowledge, job)) if part),
        found=_found(knowledge, job, last),
        tag=state_tag(job)[0],
        word=state_tag(job)[1],
        remark=_remark(job, last, today),
        last=day_words(line.changed.astimezone().date(), today),
    )


def title_of(knowledge: Knowledge, job: Job) -> str:
    """The garment in a few words, or its kind."""
    garment = knowledge.garments.get(job.case.garment)
    return job.case.title or (garment.title if garment else tr("A garment that is no longer known"))


def state_tag(job: Job) -> tuple[TagState, str]:
    """How a job stands, or came out, as a tag."""
    if job.outcome:
        return RESULT_TAGS[job.outcome.result], tr(RESULT_WORDS[job.outcome.result])
    return STATE_TAGS[job.state], tr(STATE_WORDS[job.state])


def causes_of(job: Job, last: Reading | None) -> tuple[str, ...]:
    """The causes that were right; before a job is closed, those it is worked on for."""
    if job.outcome:
        return job.outcome.right
    return last.treat if last else job.case.treat


def _kind(knowledge: Knowledge, job: Job) -> str:
    garment = knowledge.garments.get(job.case.garment)
    return lower_first(garment.title) if garment and job.case.title else ""


def _found(knowledge: Knowledge, job: Job, last: Reading | None) -> str:
    causes = [knowledge.causes[id_] for id_ in causes_of(job, last) if id_ in knowledge.causes]
    if causes:
        titles = [lower_first((cause.short or cause.title).rstrip(".")) for cause in causes]
        more = [tr("{n} more", n=len(titles) - _MOST_NAMED)] if len(titles) > _MOST_NAMED + 1 else titles[_MOST_NAMED:]
        return upper_first(and_list([*titles[:_MOST_NAMED], *more]))
    seen = [knowledge.symptoms[id_].title.rstrip(".") for id_ in job.case.seen if id_ in knowledge.symptoms]
    return tr("Seen: {what}", what=lower_first(seen[0])) if seen else tr("nothing noted yet")


def _remark(job: Job, last: Reading | None, today: date) -> str:
    if job.outcome is None:
        return due_words(job.due, today)
    spent = minutes_spent(job)
    planned = tr("{time} planned", time=duration(last.minutes[1])) if last and last.minutes[1] else ""
    return "; ".join(part for part in (duration(spent) if spent is not None else "", planned) if part) or upper_first(tr("closed"))
