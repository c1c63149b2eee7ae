"""What the work needs: not known first, then not met, then met; answered in place; and what to mind whatever happens."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.assess import Assessment
from fitdoctor.conditions import ConditionState
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.facts import fact_row
from fitdoctor.desk.pages.said import EFFECTS, who_says
from fitdoctor.desk.parts.answers import AnswerRow
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.condition_row import ConditionRow, Need
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.tag import TagState
from fitdoctor.desk.parts.text import Rule, SectionHead, Words
from fitdoctor.desk.words import and_list, count, tr

FEW_MET = 2


def needs_of(assessment: Assessment) -> list[ConditionState]:
    """The conditions of the chosen ways that depend on this garment, each once: stops, not known, not met, met."""
    chosen = [choice.chosen for choice in assessment.choices if choice.chosen]
    states = {state.condition: state for way in chosen for state in way.conditions if not state.always}
    shown = [state for state in states.values() if not (state.everywhere and state.state == "not-known")]
    order = {"not-known": 1, "borderline": 1, "not-met": 2, "met": 3}
    return sorted(shown, key=lambda s: 0 if (s.state == "not-met" and s.effect == "forbids") else order[s.state])


def tag_of(state: ConditionState) -> tuple[TagState, str]:
    """The tag and the word of a condition."""
    if state.state == "met":
        return "met", tr("met")
    if state.state == "not-known":
        return "not-known", tr("not known")
    if state.state == "borderline":
        return "not-known", tr("too close")
    if state.effect == "forbids":
        return "stops", tr("not met")
    return ("care", tr("with care")) if state.effect == "needs-care" else ("limit", tr("not met"))


class Needs(QWidget):
    """Asks what is not known where it stands."""

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self._all_met = self._all_cautions = False
        self._head = SectionHead(look, tr("What the work needs"), " ")
        self._rows = Rows("done-needs")
        self._more = Link(look, "", "done-more-met")
        self._more.clicked.connect(lambda: self._turn("_all_met"))
        self._mind_head = SectionHead(look, tr("To mind in any case"), " ")
        self._mind = Rows("done-mind", 6)
        self._mind_more = Link(look, "", "done-more-mind")
        self._mind_more.clicked.connect(lambda: self._turn("_all_cautions"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for gap, widget in ((0, self._head), (0, self._rows), (8, left(self._more)), (20, self._mind_head), (10, self._mind)):
            column.addSpacing(gap)
            column.addWidget(widget)
        column.addSpacing(6)
        column.addWidget(left(self._mind_more))

    def _turn(self, what: str) -> None:
        setattr(self, what, not getattr(self, what))
        if self.job.assessment:
            self.show_needs(self.job.assessment)

    def show_needs(self, assessment: Assessment) -> None:
        """Show the conditions as they stand."""
        states = needs_of(assessment)
        met = [state for state in states if state.state == "met"]
        open_ = [state for state in states if state.state != "met"]
        self._head.setVisible(bool(states))
        self._head.say(tr("What the work needs"), self._numbers(states))
        shown = [*open_, *(met if self._all_met else met[:FEW_MET])]
        self._rows.show_rows([row for state in shown for row in (self._row(state), Rule(self.look))])
        left_out = len(met) - FEW_MET
        more = count(left_out, "Show 1 more that is met", "Show {number} more that are met")
        self._more.say((tr("Show fewer") if self._all_met else more) if left_out > 0 else "")
        self._show_cautions(assessment, {state.condition for state in states})

    def _numbers(self, states: list[ConditionState]) -> str:
        kinds = {"met": "{n} met", "not-met": "{n} not met", "not-known": "{n} not known", "borderline": "{n} too close"}
        numbers = [(sum(s.state == kind for s in states), words) for kind, words in kinds.items()]
        return ", ".join(tr(words, n=number) for number, words in numbers if number)

    def _row(self, state: ConditionState) -> ConditionRow:
        tag, word = tag_of(state)
        effect = tr(EFFECTS[state.effect]) if state.state != "met" else ""
        if state.effect == "adds-work" and state.minutes and state.state != "met":
            effect = tr("{minutes} min more", minutes=round(state.minutes[1]))
        need = Need(
            id=state.condition,
            tag=tag,
            word=word,
            effect=effect,
            needs=state.needs,
            found=self._found(state),
            why=state.because,
            who=who_says(self.job.knowledge, state.sources),
            instead=state.instead if state.state != "met" else "",
            may_pass=state.effect == "limits" and state.state in ("not-met", "borderline"),
            passed=state.passed,
        )
        row = ConditionRow(self.look, need, list(self._questions(state)), f"done-need-{state.condition}")
        row.passedChanged.connect(self.job.go_past)
        return row

    def _found(self, state: ConditionState) -> str:
        text = state.found[:1].upper() + state.found[1:] + "." if state.found else ""
        if state.state == "not-known":
            asked = any(id_ in self.job.knowledge.features or id_ in self.job.knowledge.checks for id_ in state.missing)
            return text if asked else f"{text} {state.ask or state.at_the_rack}".strip()
        if state.state == "borderline":
            return tr("{found} The limit lies inside your give or take. Measure again.", found=text)
        return text

    def _questions(self, state: ConditionState) -> Iterator[QWidget]:
        """What would settle a condition that is not known, to be answered in place."""
        know, name = self.job.knowledge, f"done-ask-{state.condition}"
        unmeasured = [m for m in state.missing if m in know.measurements]
        if state.state == "not-known":
            for feature in (know.features[id_] for id_ in state.missing if id_ in know.features):
                yield Words(self.look, f"{feature.ask} {feature.at_the_rack}".strip(), "small", "ink-2")
                yield fact_row(self.look, self.job, feature, f"{name}-{feature.id}")
            for check in (know.checks[id_] for id_ in state.missing if id_ in know.checks):
                yield Words(self.look, check.ask, "small", "ink-2")
                answers = [("yes", check.yes), ("no", check.no), ("not-known", tr("Cannot tell"))]
                row = AnswerRow(self.look, check.id, answers, self.job.case.answers.get(check.id, ""), f"{name}-{check.id}")
                row.answered.connect(self.job.answer)
                yield row
            if not unmeasured and not any(id_ in know.features or id_ in know.checks for id_ in state.missing) and state.missing:
                unmeasured = [want.measurement for want in self.job.assessment.wanted if not want.taken] if self.job.assessment else []
        if unmeasured or state.state == "borderline":
            titles = and_list([know.measurements[m].title.lower() for m in unmeasured])
            text = tr("Measure: {what}", what=titles) if titles else tr("Measure again")
            go = Button(self.look, text, f"{name}-measure")
            go.clicked.connect(lambda: self.job.go_to("measure"))
            yield left(go)

    def _show_cautions(self, assessment: Assessment, told: set[str]) -> None:
        cautions = [state for state in assessment.cautions if state.condition not in told or state.safety]
        self._mind_head.setVisible(bool(cautions))
        self._mind_head.say(tr("To mind in any case"), count(len(cautions), "1 thing", "{number} things") if cautions else "")
        shown = cautions if self._all_cautions else cautions[:FEW_MET]
        self._mind.show_rows([Words(self.look, f"**{s.needs.rstrip('.')}.** {s.because}", "small") for s in shown])
        left_out = len(cautions) - FEW_MET
        more = count(left_out, "Show 1 more", "Show {number} more")
        self._mind_more.say((tr("Show fewer") if self._all_cautions else more) if left_out > 0 else "")

    def focus_first(self, reason: Qt.FocusReason) -> bool:
        """Put the focus on the first question that is open; whether there was one."""
        row = next((row for row in self._rows.rows() if isinstance(row, ConditionRow) and row.need.tag == "not-known"), None)
        asked = row.findChild(ChoiceRow) if row else None
        if asked:
            asked.focus_first(reason)
            return True
        answers = row.findChild(AnswerRow) if row else None
        if answers:
            answers.focus_first(reason)
        return answers is not None
