"""What is known of the garment: each fact a question with its answers in words, not known among them."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.job import NOT_KNOWN, Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import Rule, SectionHead, Words
from fitdoctor.desk.words import count, tr
from fitdoctor.knowledge.entries import Feature


def fact_row(look: Look, job: Job, feature: Feature, name: str) -> ChoiceRow:
    """The answers to one fact."""
    values = [*((value.id, value.title) for value in feature.values), (NOT_KNOWN, tr("Not known"))]
    said = NOT_KNOWN if feature.id in job.kept.aside else ""
    row = ChoiceRow(look, feature.id, values, job.case.facts.get(feature.id, said), name, feature.ask)
    row.chosen.connect(job.state)
    return row


def wanted_facts(job: Job) -> list[str]:
    """The facts the work turns on and that are not known, each once."""
    found: list[str] = []
    for choice in job.assessment.choices if job.assessment else ():
        for way in choice.ways:
            for state in way.conditions:
                found += [id_ for id_ in state.missing if id_ in job.knowledge.features]
    return list(dict.fromkeys(found))


class Facts(QWidget):
    """What the work turns on first; what is known; the rest behind a link."""

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self._all = False
        self._asked: tuple[object, ...] = ()
        self._head = SectionHead(look, tr("What is known of it"), " ")
        self._note = Words(look, "", "small", "ink-2", "garment-facts-note")
        self._rows = Rows("garment-facts")
        self._more = Link(look, "", "garment-facts-more")
        self._more.clicked.connect(self._turn)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        for widget in (self._head, self._note, self._rows, left(self._more)):
            column.addWidget(widget)

    def _turn(self) -> None:
        self._all = not self._all
        self.show_job()

    def show_job(self) -> None:
        """Show the facts as they stand. A fact that was asked stays where it is once it is answered."""
        wanted, order = wanted_facts(self.job), self._order()
        self._head.say(tr("What is known of it"), tr("{number} known", number=len(self.job.case.facts)))
        note = count(len(wanted), "The work turns on the first of these.", "The work turns on the first {number} of these.")
        nothing = tr("Nothing depends on more just now. What the work turns on is asked here once a cause is likely.")
        self._note.say(note if wanted else nothing)
        all_ = self._every()
        shown = all_ if self._all else order
        rows: list[QWidget] = [row for feature in shown for row in (self._row(feature), Rule(self.look))]
        self._rows.show_rows(rows[:-1])
        rest = len(all_) - len(order)
        more = count(rest, "Tell 1 more fact", "Tell more: {number} facts")
        self._more.say((tr("Show fewer") if self._all else more) if rest else "")

    def _order(self) -> list[Feature]:
        """Facts wanted, then those known; what was shown before keeps its place."""
        known = self.job.knowledge.features
        now = [known[id_] for id_ in (*wanted_facts(self.job), *self.job.case.facts) if id_ in known]
        state = (self.job.kept.id, self.job.case.garment)
        kept = [known[id_] for id_ in self._asked[1:] if isinstance(id_, str)] if self._asked[:1] == (state,) else []
        order = list({feature.id: feature for feature in (*kept, *now)}.values())
        self._asked = (state, *(feature.id for feature in order))
        return order

    def _every(self) -> list[Feature]:
        """All facts that hold for this garment, in the order above and then by title."""
        known = self.job.knowledge
        order = self._order()
        ids = {feature.id for feature in order}
        rest = (f for f in known.features.values() if f.id not in ids and known.suits(f.garments, self.job.case.garment))
        return [*order, *sorted(rest, key=lambda feature: feature.title)]

    def _row(self, feature: Feature) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 8, 0, 10)
        column.setSpacing(3)
        column.addWidget(Words(self.look, feature.ask, "bold"))
        column.addWidget(Words(self.look, " ".join(self._hints(feature)), "small", "ink-2"))
        column.addSpacing(4)
        column.addWidget(fact_row(self.look, self.job, feature, f"garment-fact-{feature.id}"))
        return holder

    def _hints(self, feature: Feature) -> Iterator[str]:
        if feature.at_the_rack:
            yield feature.at_the_rack
        chosen = self.job.case.facts.get(feature.id)
        for value in feature.values:
            if value.look and value.id == chosen:
                yield value.look

    def focus_first(self, reason: Qt.FocusReason) -> bool:
        """Put the focus on the first fact not known; whether there was one."""
        for row in self.findChildren(ChoiceRow):
            if self.job.case.facts.get(row.question) is None:
                row.focus_first(reason)
                return True
        return False
