"""The causes, likeliest first: bars and words, and in the open one what speaks for it and against it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.assess import Assessment
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.said import evidence_line, first_sentence, not_looked_line, who_says
from fitdoctor.desk.pages.shop_says import shop_says
from fitdoctor.desk.pages.why_pictures import why_pictures
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.cause_row import CauseRow, CauseShown
from fitdoctor.desk.parts.reason_note import ReasonNote, beside
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Rule, SectionHead, Words
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.desk.words import and_list, count, lower_first, tr
from fitdoctor.diagnosis.ranking import Explanation, RankedCause

FEW, MOST_ITEMS = 5, 3
LEAST_PAIR = 0.03


class Causes(QWidget):
    """One row open at a time. Remembers what is open while answers change the order."""

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self._open: str | None = None
        self._numbers = self._all = self._pairs = False
        self._why = ""
        self._numbers_link = Link(look, tr("Show numbers"), "narrow-numbers")
        self._numbers_link.clicked.connect(lambda: self._turn("_numbers"))
        self._head = SectionHead(look, tr("Causes, likeliest first"), self._numbers_link)
        self._rows = Rows("narrow-causes")
        self._more = Link(look, "", "narrow-more")
        self._more.clicked.connect(lambda: self._turn("_all"))
        self._note = Words(look, "", "small", "care", "narrow-note")
        self._pairs_link = Link(look, tr("Show which causes go together"), "narrow-pairs")
        self._pairs_link.clicked.connect(lambda: self._turn("_pairs"))
        self._pair_rows = Rows("narrow-pair-rows", 4)
        two = beside(Words(look, tr("Two causes can be true at once."), "small", "ink-2"), self._pairs_link, gap=8)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._head)
        column.addWidget(self._rows)
        column.addSpacing(8)
        column.addWidget(self._more, 0, Qt.AlignmentFlag.AlignLeft)
        for widget in (self._note, two, self._pair_rows):
            column.addSpacing(4)
            column.addWidget(widget)
        column.addStretch(1)

    def _turn(self, what: str) -> None:
        setattr(self, what, not getattr(self, what))
        if self.job.assessment:
            self.show_causes(self.job.assessment)

    def show_causes(self, assessment: Assessment) -> None:
        """Show the causes as they stand."""
        able = [c for c in assessment.diagnosis.causes if c.ruled_out or c.id in assessment.diagnosis.net.able] or list(
            assessment.diagnosis.causes
        )
        opened = self._opened(able)
        shown = able if self._all else able[:FEW]
        rows: list[QWidget] = []
        for cause in shown:
            more = self._more_of(assessment, cause) if cause.id == opened else []
            row = CauseRow(self.look, self._shown(cause), cause.id == opened, more, f"narrow-cause-{cause.id}")
            row.pressed.connect(self._press)
            rows += [row, Rule(self.look)]
        self._rows.show_rows(rows)
        left_out = len(able) - FEW
        words = tr("Show fewer") if self._all else count(left_out, "Show {number} more", "Show {number} more")
        self._more.say(words if left_out > 0 else "")
        self._numbers_link.say(tr("Show words") if self._numbers else tr("Show numbers"))
        self._note.say(assessment.diagnosis.note)
        self._show_pairs(assessment)

    def _opened(self, causes: list[RankedCause]) -> str:
        if self._open is not None and (self._open == "" or any(cause.id == self._open for cause in causes)):
            return self._open
        return causes[0].id if causes and not causes[0].ruled_out else ""

    def _press(self, cause: str) -> None:
        assessment = self.job.assessment
        if assessment is None:
            return
        now = self._opened(list(assessment.diagnosis.causes))
        self._open = "" if now == cause else cause
        self._why = ""
        self.show_causes(assessment)

    def _shown(self, cause: RankedCause) -> CauseShown:
        know, entry = self.job.knowledge, self.job.knowledge.causes[cause.id]
        numbered = self._numbers and not cause.ruled_out
        return CauseShown(
            id=cause.id,
            title=cause.title,
            word=f"{cause.probability * 100:.0f} %" if numbered else cause.word,
            sentence=cause.ruled_out.text if cause.ruled_out else first_sentence(entry.why),
            chance=None if cause.ruled_out else cause.probability,
            before=self.job.chances.get(cause.id),
            speaks_for=tuple(evidence_line(know, e) for e in cause.speaks_for[:MOST_ITEMS]),
            speaks_against=tuple(evidence_line(know, e) for e in cause.speaks_against[:MOST_ITEMS]),
            not_looked=tuple(not_looked_line(n) for n in cause.not_looked[:MOST_ITEMS]),
        )

    def _more_of(self, assessment: Assessment, cause: RankedCause) -> list[QWidget]:
        """Below the columns of the open row: treat it or not, and why the cloth does that."""
        if cause.ruled_out:
            return []
        treat = TickBox(self.look, tr("Treat this cause"), f"narrow-treat-{cause.id}")
        treat.setChecked(cause.id in assessment.treat)
        treat.clicked.connect(lambda on=False: self.job.treat(cause.id, on))
        why = Link(self.look, tr("Why the cloth does that"), f"narrow-why-{cause.id}")
        why.clicked.connect(lambda: self._open_why(cause.id))
        note = [self._why_note(cause)] if self._why == cause.id else []
        return [*self._shop_says(cause), beside(treat, why, gap=24), *note]

    def _shop_says(self, cause: RankedCause) -> list[QWidget]:
        """What the shop's own closed jobs say, beside the words of the handbook."""
        lines = shop_says(self.job.knowledge, self.job.learned, cause.id, self.job.case)
        return [Words(self.look, line, "small", name=f"narrow-shop-{cause.id}-{at}") for at, line in enumerate(lines)]

    def _open_why(self, cause: str) -> None:
        self._why = "" if self._why == cause else cause
        if self.job.assessment:
            self.show_causes(self.job.assessment)

    def _why_note(self, cause: RankedCause) -> ReasonNote:
        know, entry = self.job.knowledge, self.job.knowledge.causes[cause.id]
        close = Link(self.look, tr("Close the note"), f"narrow-why-close-{cause.id}", "bold", big=True)
        close.clicked.connect(lambda: self._open_why(cause.id))
        sources = (source for reason in cause.because for source in reason.sources)
        return ReasonNote(self.look, entry.why, who_says(know, sources), presses=[close], picture=why_pictures(self.look, self.job, entry))

    def _show_pairs(self, assessment: Assessment) -> None:
        accounts = [e for e in assessment.diagnosis.explanations if e.probability >= LEAST_PAIR]
        self._pairs_link.say(tr("Hide them") if self._pairs else tr("Show which causes go together"))
        self._pair_rows.setVisible(self._pairs)
        rows = [Words(self.look, self._account(account), "small") for account in accounts] if self._pairs else []
        self._pair_rows.show_rows(rows)

    def _account(self, account: Explanation) -> str:
        causes = self.job.knowledge.causes
        titles = [causes[c].short or causes[c].title for c in account.causes]
        names = and_list([title if at == 0 else lower_first(title) for at, title in enumerate(titles)])
        tenths = max(1, round(account.probability * 10))
        alone = tr(", alone") if len(titles) == 1 else ""
        return tr("**about {n} in 10:** {causes}{alone}", n=tenths, causes=names or tr("none that is known here"), alone=alone)
