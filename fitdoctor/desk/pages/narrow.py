"""Step 3: the check that takes away most doubt a minute, and the causes as they stand."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.assess import Assessment
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.causes import Causes
from fitdoctor.desk.pages.check_in_hand import CheckInHand
from fitdoctor.desk.pages.page import Columns, Page, section
from fitdoctor.desk.pages.said import look_for
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.empty_note import EmptyNote
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import OneLine, PageTitle, Rule, SectionHead, Words
from fitdoctor.desk.words import count, minutes, tr
from fitdoctor.diagnosis.next_checks import NextCheck

GUTTER = 48
FIRST_OTHERS = 4


class NarrowPage(Page):
    """Asks one thing; every answer is worked in at once."""

    step = "narrow"

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(look, job)
        self.in_hand = ""
        self._all_others = False
        self._title = PageTitle(look, tr("Narrow it down"), "narrow-title")
        self._empty = EmptyNote(look, tr("No cause to look for yet. Note what shows first."), "narrow-empty", tr("Go to What shows"))
        self._empty.pressed.connect(lambda: job.go_to("shows"))
        self._check = CheckInHand(look, job)
        self._check.answered.connect(self._next_question)
        self._nothing = EmptyNote(look, "", "narrow-settled", tr("Measure ›"))
        self._nothing.pressed.connect(lambda: job.go_to("measure"))
        self._others_head = SectionHead(look, tr("Other checks"), tr("best first"))
        self._others = Rows("narrow-others")
        self._given_head = SectionHead(look, tr("Answered"))
        self._given = Rows("narrow-given")
        self._left = section(self._check, self._nothing, gap=16)
        self._more = section(self._others_head, self._others, self._given_head, self._given, gap=0)
        self._causes = Causes(look, job)
        self._columns = Columns(GUTTER)
        self._scroll = self.stand(self._title, self._empty, self._columns, gap=14)

    def arrange(self, columns: int) -> None:
        side = section(self._left, self._more, gap=22)
        if columns > 1:
            self._columns.lay([[(side, 56), (self._causes, 61)]])
        else:
            self._columns.lay([[(side, 1)], [(self._causes, 1)]])
        self._check.arrange(wide=columns > 1)

    def show_job(self) -> None:
        assessment = self.job.assessment
        begun = assessment is not None and bool(self.job.case.seen or self.job.case.answers or self.job.case.not_seen)
        self._empty.setVisible(not begun)
        self._columns.setVisible(begun)
        self._title.remark(self._lead(assessment) if begun and assessment else "")
        if not begun or assessment is None:
            return
        asks = assessment.next
        ask = next((a for a in asks if a.id == self.in_hand), asks[0] if asks else None)
        self._check.setVisible(ask is not None)
        if ask:
            self._check.show_check(ask)
        self._show_settled(assessment, bool(asks))
        self._show_others([other for other in asks if other is not ask])
        self._show_given()
        self._causes.show_causes(assessment)

    def _lead(self, assessment: Assessment) -> str:
        noted = count(len(self.job.case.seen), "{number} thing noted", "{number} things noted")
        checks = len(self.job.case.answers) + len(self.job.case.not_seen)
        done = count(checks, "{number} check", "{number} checks") if checks else tr("no check yet")
        if assessment.settled:
            return tr("From {noted} and {checks}. No answer left would change the work.", noted=noted, checks=done)
        return tr("From {noted} and {checks}.", noted=noted, checks=done)

    def _show_settled(self, assessment: Assessment, more: bool) -> None:
        self._nothing.setVisible(not more or assessment.settled)
        if not more:
            self._nothing.say(tr("No check left would change the work."), tr("Measure ›"))
        else:
            self._nothing.say(tr("It is settled as it stands. The check above would only make it surer."))

    def _show_others(self, asks: list[NextCheck]) -> None:
        self._others_head.setVisible(bool(asks))
        rows: list[QWidget] = []
        for ask in asks:
            text = ask.ask if ask.kind == "check" else look_for(self.job.knowledge, ask)
            link = Link(self.look, text, f"narrow-other-{ask.id}", "row", big=True)
            link.clicked.connect(lambda _on=False, id_=ask.id: self._take(id_))
            rows += [_with_time(self.look, link, minutes(ask.minutes)), Rule(self.look)]
        if len(asks) > FIRST_OTHERS and not self._all_others:
            more = Link(self.look, count(len(asks) - FIRST_OTHERS, "Show 1 more check", "Show {number} more checks"), "narrow-others-more")
            more.clicked.connect(self._show_all_others)
            rows += [left(more), Rule(self.look)]
        self._others.show_rows(rows[:-1])

    def _show_all_others(self) -> None:
        self._all_others = True
        self.show_job()

    def _show_given(self) -> None:
        know, case = self.job.knowledge, self.job.case
        given = [(id_, know.checks[id_].ask, self._answer_words(id_, answer)) for id_, answer in case.answers.items() if id_ in know.checks]
        looks = [(id_, know.symptoms[id_].title, tr("Does not show")) for id_ in case.not_seen if id_ in know.symptoms]
        looks += [(id_, know.symptoms[id_].title, tr("Cannot tell")) for id_ in case.unsure if id_ in know.symptoms]
        self._given_head.setVisible(bool(given or looks))
        rows: list[QWidget] = []
        for id_, ask, words in (*given, *((id_, f"{title.rstrip('.')}.", words) for id_, title, words in looks)):
            back = Link(self.look, tr("Take it back"), f"narrow-given-{id_}")
            back.setAccessibleName(tr("Take it back: {ask}", ask=ask))
            back.clicked.connect(lambda _on=False, what=id_: self._take_back(what))
            rows += [_with_link(self.look, f"{ask} **{words}**", back), Rule(self.look)]
        self._given.show_rows(rows[:-1])

    def _answer_words(self, check: str, answer: str) -> str:
        entry = self.job.knowledge.checks[check]
        return {"yes": entry.yes, "no": entry.no}.get(answer, tr("Cannot tell"))

    def _take_back(self, finding: str) -> None:
        if finding in self.job.case.answers:
            self.job.answer(finding, "")
        else:
            self.job.answer_look(finding, "")

    def _take(self, check: str) -> None:
        self.in_hand = check
        self.show_job()
        self._scroll.verticalScrollBar().setValue(0)
        self.focus_first(Qt.FocusReason.TabFocusReason)

    def _next_question(self, reason: Qt.FocusReason) -> None:
        self.in_hand = ""
        self.show_job()
        self.focus_first(reason)
        causes = self.job.assessment.diagnosis.causes if self.job.assessment else ()
        if causes:  # said aloud to those who do not see the bars move
            said = tr("Likeliest now: {cause}, {word}", cause=causes[0].title, word=causes[0].word)
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, said))

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if not self._check.isHidden():
            self._check.focus_first(reason)
        else:
            self._nothing.button.setFocus(reason)

    def take_key(self, text: str) -> bool:
        return not self._check.isHidden() and self._check.take_key(text)

    def summary(self) -> str:
        if self.columns > 1 or self.job.assessment is None or not self.job.case.seen:
            return ""
        left = [cause for cause in self.job.assessment.diagnosis.causes if cause.speaks_for and not cause.ruled_out]
        return count(len(left), "Causes: {number} left", "Causes: {number} left")

    def show_summary(self) -> None:
        self._scroll.bring_up(self._causes)


def _with_time(look: Look, link: Link, time: str) -> QWidget:
    row = QWidget()
    line = QHBoxLayout(row)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(12)
    line.addWidget(link, 1, Qt.AlignmentFlag.AlignLeft)
    line.addWidget(OneLine(look, time, "row"), 0, Qt.AlignmentFlag.AlignRight)
    return row


def _with_link(look: Look, text: str, link: Link) -> QWidget:
    row = QWidget()
    line = QHBoxLayout(row)
    line.setContentsMargins(0, 6, 0, 6)
    line.setSpacing(12)
    line.addWidget(Words(look, text, "small"), 1)
    line.addWidget(link, 0, Qt.AlignmentFlag.AlignTop)
    return row
