"""The garment in hand: what the pages read and change. Every change is another case, kept at once, and can be undone."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cached_property
from typing import Any, cast

import msgspec
from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QImage

from fitdoctor.assess import Assessment, assess
from fitdoctor.case import Answer, Case, Measured
from fitdoctor.desk.figure_tones import FigureTones
from fitdoctor.desk.pictures import Pictures
from fitdoctor.desk.shelf import Kept, Shelf
from fitdoctor.desk.undo import Undo
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.figure.diagrams import Diagram
from fitdoctor.figure.reach import fitted
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.search import SearchIndex
from fitdoctor.shop import Shop

replace = msgspec.structs.replace
NOT_KNOWN = "not-known"


class Job(QObject):
    """One kept case, its assessment, and the ways to change it. `remarked` says what was done; it can be undone."""

    changed = Signal()
    remarked = Signal(str)
    failed = Signal(object)
    stepWanted = Signal(str)
    workWanted = Signal(object)
    knowledgeTaken = Signal()

    def __init__(self, knowledge: Knowledge, shop: Shop, shelf: Shelf, kept: Kept) -> None:
        super().__init__()
        self.knowledge, self.shop, self.shelf = knowledge, shop, shelf
        self.pictures = Pictures(knowledge.figures)
        self._kept = kept
        self._ways = Undo()
        self.assessment: Assessment | None = None
        self.chances: dict[str, float] = {}
        self.learned = shelf.learned(knowledge)
        self._work_out()

    @property
    def kept(self) -> Kept:
        """The case with where its fitter left off."""
        return self._kept

    @property
    def case(self) -> Case:
        """The case in hand."""
        return self._kept.case

    @cached_property
    def index(self) -> SearchIndex:
        """What the words of the knowledge lead to."""
        return SearchIndex(self.knowledge)

    @property
    def facts(self) -> Mapping[str, str]:
        """The garment's facts and its kind, as the figures are drawn by."""
        return {"garment": self.case.garment, **self.case.facts}

    # ---- the whole

    def open(self, kept: Kept, noted: bool = True) -> None:
        """Take another garment in hand. What was thought of the one before is noted, unless it was deleted."""
        if noted:
            self.put_down()
        self._ways.clear()
        self._kept = kept
        self.chances = {}
        self._save()
        self._work_out()
        self.changed.emit()

    def put_down(self, occasion: str = "") -> None:
        """Note for the history of the garment in hand what is thought of it now."""
        if self.assessment is None or not self._kept.id or self.shelf.book is None:
            return
        try:
            self.shelf.note(self._kept.id, self.assessment, occasion)
        except FitdoctorError as error:
            self.failed.emit(error)

    def look_again(self) -> None:
        """Take in what another window changed of this garment meanwhile, and what closed jobs taught."""
        before = self._kept
        self._kept = self.shelf.fresh(before)
        if self._kept != before:
            self._ways.clear()
        self.learned = self.shelf.learned(self.knowledge)
        self._work_out()
        self.changed.emit()

    def take(self, knowledge: Knowledge | None = None, shop: Shop | None = None) -> None:
        """Take in knowledge that was read anew, or other settings of the shop."""
        if knowledge is not None:
            self.knowledge, self.pictures = knowledge, Pictures(knowledge.figures)
            self.__dict__.pop("index", None)
            self.learned = self.shelf.learned(knowledge)
            self.knowledgeTaken.emit()
        self.shop = shop or self.shop
        self._work_out()
        self.changed.emit()

    def _become(self, kept: Kept, said: str, key: str = "") -> None:
        if kept == self._kept:
            return
        self._ways.note(self._kept, key)
        self._set(kept)
        if said:
            self.remarked.emit(said)

    def _set(self, kept: Kept) -> None:
        before = self._kept
        worked = kept.case != before.case
        self._kept = replace(kept, id=before.id, written=kept.written and not (worked and kept.written == before.written))
        self._save()
        if self._kept.case != before.case:
            self._work_out()
        self.changed.emit()

    def _save(self) -> None:
        try:
            self._kept = self.shelf.keep(self._kept)
        except FitdoctorError as error:
            self.failed.emit(error)

    def _work_out(self) -> None:
        """Assess the case anew; remember the chances before, so that a bar can be seen to move."""
        if self.assessment is not None:
            self.chances = {cause.id: cause.probability for cause in self.assessment.diagnosis.causes}
        if self.case.garment not in self.knowledge.garments:
            self.assessment = None
            return
        try:
            self.assessment = assess(self.knowledge, self.case, self.shop, learned=self.learned)
        except FitdoctorError as error:
            self.assessment = None
            self.failed.emit(error)

    def _change(self, said: str = "", key: str = "", **fields: Any) -> None:
        self._become(replace(self._kept, case=replace(self.case, **fields)), said, key)

    def undo(self) -> None:
        """Back to the case before the last change."""
        self._set(self._ways.back(self._kept))

    def redo(self) -> None:
        """Forward again."""
        self._set(self._ways.on(self._kept))

    # ---- where one is

    def go_to(self, step: str) -> None:
        """Open a step; not a change that can be undone."""
        if step != self._kept.step:
            self._kept = replace(self._kept, step=step)
            self._save()
        self.stepWanted.emit(step)

    def look_at(self, view: str) -> None:
        """Show a side of the figure."""
        if view != self._kept.view:
            self._kept = replace(self._kept, view=view)
            self._save()

    def draft(self, field: str, text: str) -> None:
        """Keep what was typed and cannot be used yet; an empty text forgets it."""
        drafts = {key: value for key, value in self._kept.drafts.items() if key != field}
        self._kept = replace(self._kept, drafts={**drafts, field: text} if text else drafts)
        self._save()

    # ---- the garment

    def choose_garment(self, garment: str) -> None:
        """The kind of garment; what does not hold for it is left out."""
        know, case = self.knowledge, self.case
        facts = {f: v for f, v in case.facts.items() if f in know.features and know.suits(know.features[f].garments, garment)}
        seen = tuple(s for s in case.seen if s in know.symptoms and know.suits(know.symptoms[s].garments, garment))
        self._change(garment=garment, facts=facts, seen=seen)

    def name(self, title: str) -> None:
        """The garment in a few words."""
        self._change(key="title", title=title)

    def name_wearer(self, wearer: str) -> None:
        """Whom it is for; the book refuses more than initials or a ticket number."""
        self._change(key="wearer", wearer=wearer)

    def write_notes(self, notes: str) -> None:
        """Free text kept with the case."""
        self._change(key="notes", notes=notes)

    def state(self, feature: str, value: str) -> None:
        """What is known of the garment; an empty value or not-known forgets it."""
        facts = {key: known for key, known in self.case.facts.items() if key != feature}
        known = {**facts, feature: value} if value and value != NOT_KNOWN else facts
        aside = tuple(a for a in self._kept.aside if a != feature) + ((feature,) if value == NOT_KNOWN else ())
        self._become(replace(self._kept, aside=aside, case=replace(self.case, facts=known)), "")

    # ---- what shows

    def note(self, symptom: str) -> None:
        """A line that shows."""
        if symptom not in self.case.seen:
            self.answer_look(symptom, "yes")

    def drop_note(self, symptom: str, said: str = "") -> None:
        """A line that does not show after all."""
        self._change(said, seen=tuple(s for s in self.case.seen if s != symptom))

    def look_over(self, view: str, over: bool) -> None:
        """Nothing else shows on this side."""
        looked = tuple(v for v in self.case.looked if v != view)
        self._change(looked=(*looked, view) if over else looked)

    # ---- narrowing down

    def answer(self, check: str, answer: str) -> None:
        """The answer to a check; an empty one takes it back."""
        answers = {key: value for key, value in self.case.answers.items() if key != check}
        self._change(answers={**answers, check: cast(Answer, answer)} if answer else answers)

    def answer_look(self, symptom: str, answer: str) -> None:
        """The answer to a look at one symptom."""
        lists = {"yes": self.case.seen, "no": self.case.not_seen, NOT_KNOWN: self.case.unsure}
        kept = {of: tuple(s for s in ids if s != symptom) + ((symptom,) if of == answer else ()) for of, ids in lists.items()}
        self._change(seen=kept["yes"], not_seen=kept["no"], unsure=kept[NOT_KNOWN])

    def treat(self, cause: str, wanted: bool, said: str = "", **fields: Any) -> None:
        """Whether to treat a cause, in place of what the program proposes, or to leave it alone."""
        now = (*self.assessment.treat, *self.assessment.left_alone) if self.assessment else ()
        treat = self.case.treat if cause in now or not wanted else (*(self.case.treat or now), cause)
        alone = tuple(c for c in self.case.left_alone if c != cause) + (() if wanted else (cause,))
        self._change(said, treat=treat, left_alone=alone, **fields)

    # ---- measuring and deciding

    def measure(self, measurement: str, mm: float | None, as_depth: bool = False) -> None:
        """A length in the sense its measurement counts in, mm; None takes it back."""
        known = self.case.measured
        measured = {key: value for key, value in known.items() if key != measurement}
        if mm is not None:
            give = known[measurement].give_mm if measurement in known else None
            measured = {**known, measurement: Measured(mm, give)}
        depths = tuple(d for d in self._kept.depths if d != measurement) + ((measurement,) if as_depth else ())
        drafts = {key: text for key, text in self._kept.drafts.items() if key != f"measure-{measurement}"}
        kept = replace(self._kept, case=replace(self.case, measured=measured), depths=depths, drafts=drafts)
        self._become(kept, "", f"measure-{measurement}")

    def give_or_take(self, measurement: str, give_mm: float | None) -> None:
        """How exactly a length was measured, mm; None is as the measurement says."""
        if measurement in self.case.measured:
            reading = Measured(self.case.measured[measurement].mm, give_mm)
            self._change(measured={**self.case.measured, measurement: reading})

    def choose_method(self, cause: str, method: str) -> None:
        """The way a cause is treated, also one that was left alone."""
        self.treat(cause, True, methods={**self.case.methods, cause: method})

    def go_past(self, condition: str, past: bool) -> None:
        """Go past a limit this once."""
        rest = tuple(c for c in self.case.past_limits if c != condition)
        self._change(past_limits=(*rest, condition) if past else rest)

    def tick(self, operation: str, done: bool) -> None:
        """Tick an operation off; what is thought when a try-on is over is noted for the history."""
        if done and self.assessment and any(op.id == operation and op.try_on for op in self.assessment.plan.operations):
            self.put_down(tr("at the try-on"))
        rest = tuple(op for op in self.case.done if op != operation)
        self._change(done=(*rest, operation) if done else rest)

    def sheet_written(self) -> None:
        """The sheet was printed or saved."""
        self._set(replace(self._kept, written=True))
        self.put_down(tr("when the sheet was written"))


def drawn(job: Job, diagram: Diagram, tones: FigureTones) -> Callable[[tuple[int, int], float], QImage]:
    """An explaining picture as a painter of any size; kept once painted."""

    def paint(size: tuple[int, int], dpr: float) -> QImage:
        return job.pictures.picture(diagram.scene, size, dpr, tones, fitted(diagram.crop, size[0] / size[1]), diagram.overlay)

    return paint
