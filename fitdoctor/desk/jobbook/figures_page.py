"""The page of figures: how well it was foreseen, what was done how often, estimate against actual; and what the closed jobs teach."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.jobbook.plots import CalibrationPlot, EstimatePlot, ScorePlot
from fitdoctor.desk.jobbook.view import View
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.label_row import LabelRow
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.desk.words import count, tr
from fitdoctor.jobbook.figures import Figures
from fitdoctor.sheet import duration

_MOST_KINDS = 12


class FiguresPage(View):
    """Emits whether what was learned is used, and that it is to be reset, restored or written out."""

    switched = Signal(bool)
    wanted = Signal(str)

    def __init__(self, look: Look, job: Job, figures: Figures, on: bool, teaching: int, forgotten: int) -> None:
        lead = count(figures.jobs, "From 1 closed job.", "From {number} closed jobs.")
        super().__init__(look, job, "figures", tr("Figures and learning"), lead if figures.jobs else "")
        self._use = TickBox(look, tr("Use what the closed jobs taught"), "figures-learning-on")
        self._use.setChecked(on)
        self._use.clicked.connect(lambda now=False: self.switched.emit(now))
        learning = section(SectionHead(look, tr("Learning")), self._learning(teaching, forgotten), gap=8)
        if not figures.jobs:
            empty = Words(look, tr("Figures come from closed jobs, and none is closed yet."), "reading", name="figures-none")
            self.lay((section(empty), 60), (learning, 40))
            return
        foreseen = section(*self._foreseen(figures), gap=10)
        done = section(*self._done(figures), learning, gap=10)
        self.lay((foreseen, 50), (done, 50))

    # ---- how well it was foreseen

    def _foreseen(self, figures: Figures) -> Iterator[QWidget]:
        yield SectionHead(self.look, tr("Chances said, and how often they came true"))
        yield CalibrationPlot(self.look, figures.calibration)
        yield Words(
            self.look,
            tr("On the dashed line what was said came true just as often. Larger points stand for more causes."),
            "small",
            "ink-2",
        )
        yield _below(SectionHead(self.look, tr("Month by month"), tr("nearer to 0 is better")))
        yield Words(self.look, tr("Brier score: the mean square by which the chances were off"), "small")
        yield ScorePlot(self.look, figures.by_month, "brier", tr("Brier score"))
        yield Words(self.look, tr("Log score: the mean logarithm of the chance given to what was so"), "small")
        yield ScorePlot(self.look, figures.by_month, "log_score", tr("Log score"))
        if figures.unread:
            yield Words(
                self.look, tr("{n} closed jobs were never read before closing and are left out.", n=figures.unread), "small", "ink-2"
            )

    # ---- what was done

    def _done(self, figures: Figures) -> Iterator[QWidget]:
        yield SectionHead(self.look, tr("Minutes planned and spent"))
        if figures.estimates:
            yield EstimatePlot(self.look, figures.estimates)
            yield Words(
                self.look,
                tr("A bar from best to worst, a line at what was likely, a point at what was spent; open where outside the bar."),
                "small",
                "ink-2",
            )
        else:
            yield Words(self.look, tr("No closed job has its minutes written down."), "small", "ink-2", "figures-no-minutes")
        yield _below(SectionHead(self.look, tr("Alterations by kind")))
        yield self._kinds(figures)
        if figures.amounts:
            same = sum(abs(amount.planned_mm - amount.used_mm) < 1 for amount in figures.amounts)
            said = tr("{same} of {n} amounts were used as they were marked, to 1 mm.", same=same, n=len(figures.amounts))
            yield Words(self.look, said, "small", name="figures-amounts")

    def _kinds(self, figures: Figures) -> Rows:
        rows = Rows("figures-alterations")
        methods = self.job.knowledge.methods
        shown = []
        for kind in figures.alterations[:_MOST_KINDS]:
            title = methods[kind.method].title if kind.method in methods else kind.method
            mean = tr(", {time} alone", time=duration(kind.minutes)) if kind.minutes is not None else ""
            shown.append(LabelRow(self.look, f"{kind.jobs} ×", f"{title}{mean}", f"figures-kind-{kind.method}"))
        rows.show_rows(shown)
        return rows

    # ---- learning

    def _learning(self, teaching: int, forgotten: int) -> QWidget:
        teach = count(teaching, "1 closed job teaches", "{number} closed jobs teach") if teaching else tr("No closed job teaches yet")
        says = tr("{jobs}. The printed words weigh as much as 20 jobs; the handbook itself is never rewritten.", jobs=teach)
        rows: list[QWidget] = [left(self._use), Words(self.look, says, "small", "ink-2", "figures-teaching")]
        links = [
            ("reset", tr("Begin anew: the jobs closed so far teach no more") if teaching else ""),
            ("restore", count(forgotten, "Let 1 earlier job teach again", "Let {number} earlier jobs teach again") if forgotten else ""),
            ("overlay", tr("Write what was learned out as a folder of entries") if teaching else ""),
        ]
        for want, text in links:
            if text:
                link = Link(self.look, text, f"figures-{want}", "body")
                link.clicked.connect(lambda _on=False, which=want: self.wanted.emit(which))
                rows.append(left(link))
        holder = Rows("figures-learning", 8)
        holder.show_rows(rows)
        return holder


def _below(widget: QWidget) -> QWidget:
    widget.setContentsMargins(0, 14, 0, 0)
    return widget
