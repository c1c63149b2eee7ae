"""Step 5: can it be done. The ways to do it, the verdict, and what the work needs."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from fitdoctor.assess import Assessment, Choice, choose
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.needs import Needs
from fitdoctor.desk.pages.page import Columns, Page, section
from fitdoctor.desk.pages.said import for_causes
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.empty_note import EmptyNote
from fitdoctor.desk.parts.method_choice import MethodChoice, Way
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import PageTitle, SectionHead, Words
from fitdoctor.desk.parts.verdict_head import TAGS, VerdictHead
from fitdoctor.desk.words import count, lower_first, tr
from fitdoctor.plan import method_minutes
from fitdoctor.sheet import duration, way_words
from fitdoctor.verdict import LEVEL_WORDS, MethodVerdict

GUTTER = 48


class DonePage(Page):
    """Ways at the left, verdict and needs at the right."""

    step = "done"

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(look, job)
        self._title = PageTitle(look, tr("Can it be done"), "done-title")
        self._empty = EmptyNote(look, "", "done-empty", " ")
        self._empty.pressed.connect(lambda: job.go_to("narrow" if job.case.seen else "shows"))
        self._ways = Rows("done-ways", 14)
        self._groups: list[ControlGroup] = []
        self._verdict = VerdictHead(look, "done-verdict")
        self._needs = Needs(look, job)
        self._right = section(self._verdict, self._needs, gap=18)
        self._columns = Columns(GUTTER)
        self._scroll = self.stand(self._title, self._empty, self._columns)

    def arrange(self, columns: int) -> None:
        if columns > 1:
            self._columns.lay([[(self._ways, 34), (self._right, 82)]])
        else:
            self._columns.lay([[(self._right, 1)], [(self._ways, 1)]])

    def show_job(self) -> None:
        assessment = self.job.assessment
        ready = assessment is not None and bool(assessment.choices or assessment.verdict.level == "LEAVE_ALONE")
        self._empty.setVisible(not ready)
        self._columns.setVisible(ready)
        self._title.remark(for_causes(self.job.knowledge, assessment) if ready and assessment else "")
        if not ready or assessment is None:
            seen = bool(self.job.case.seen)
            text = tr("No cause stands out yet, so no work can be judged.") if seen else tr("Nothing to judge yet. Note what shows first.")
            self._empty.say(text, tr("Go to Narrow it down") if seen else tr("Go to What shows"))
            return
        self._show_ways(assessment)
        self._verdict.show_verdict(assessment.verdict.level, assessment.verdict.sentence)
        self._needs.show_needs(assessment)

    def _show_ways(self, assessment: Assessment) -> None:
        rows: list[QWidget] = []
        self._groups = []
        job = self.job
        left_alone = [choose(job.knowledge, job.case, cause, job.shop) for cause in assessment.left_alone]
        choices = [*assessment.choices, *left_alone]
        for choice in choices:
            rows += self._choice(choice, len(choices) > 1, choice in left_alone)
        self._ways.show_rows(rows)

    def _choice(self, choice: Choice, several: bool, left_alone: bool) -> Iterator[QWidget]:
        """The ways to treat one cause, and to leave it alone."""
        cause = self.job.knowledge.causes[choice.cause]
        known = count(len(choice.ways), "1 known", "{number} known")
        yield SectionHead(self.look, (cause.short or cause.title) if several else tr("Ways to do it"), known)
        if not choice.ways:
            yield Words(self.look, choice.why_none or tr("No way to do it is known here."), "reading")
        ways = [self._way(choice, way, left_alone) for way in sorted(choice.ways, key=lambda way: way is not choice.chosen)]
        if not any(self.job.knowledge.methods[way.method].kind == "leave" for way in choice.ways):
            ways.insert(0 if left_alone else len(ways), self._leave(choice.cause, left_alone))
        self._groups.append(ControlGroup(ways))
        yield from ways

    def _leave(self, cause: str, left_alone: bool) -> MethodChoice:
        words = LEVEL_WORDS["LEAVE_ALONE"]
        reason = tr("Nothing is opened. The sheet says that it is left alone by choice.")
        shown = Way(method="", title=tr(words), tag=TAGS["LEAVE_ALONE"], verdict=tr("no work"), reason=reason, time="")
        control = MethodChoice(self.look, shown, left_alone, f"done-leave-{cause}")
        entry = self.job.knowledge.causes[cause]
        said = tr("Left alone: {cause}.", cause=lower_first((entry.short or entry.title).rstrip(".")))
        control.clicked.connect(lambda: self._take(lambda: self.job.treat(cause, False, said)))
        return control

    def _way(self, choice: Choice, way: MethodVerdict, left_alone: bool) -> MethodChoice:
        method = self.job.knowledge.methods[way.method]
        shown = Way(
            method=method.id,
            title=method.title,
            tag=TAGS["LEAVE_ALONE" if method.kind != "alteration" else way.level],
            verdict=tr(way_words(self.job.knowledge, way)),
            reason=way.sentence,
            time=self._time(way),
        )
        chosen = choice.chosen is not None and choice.chosen.method == way.method and not left_alone
        control = MethodChoice(self.look, shown, chosen, f"done-way-{choice.cause}-{method.id}")
        control.clicked.connect(lambda: self._take(lambda: self.job.choose_method(choice.cause, method.id)))
        return control

    def _time(self, way: MethodVerdict) -> str:
        method = self.job.knowledge.methods[way.method]
        if not method.operations:
            return ""
        time = duration(method_minutes(method, self.job.shop, self.job.case.facts.get("lining") == "none")[1])
        return tr("Would be about {time}", time=time) if way.level == "CANNOT" else tr("About {time} of work", time=time)

    def _take(self, decide: Callable[[], None]) -> None:
        decide()
        self.show_job()  # what was chosen already stays chosen

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self._empty.isVisibleTo(self):
            self._empty.button.setFocus(reason)
        elif not self._needs.focus_first(reason) and self._groups and self._groups[0].controls:
            chosen = next((c for c in self._groups[0].controls if c.isChecked()), self._groups[0].controls[0])
            chosen.setFocus(reason)

    def summary(self) -> str:
        ways = sum(len(group.controls) for group in self._groups)
        return tr("Ways to do it: {number}", number=ways) if self.columns < 2 and ways else ""

    def show_summary(self) -> None:
        self._scroll.bring_up(self._ways)
