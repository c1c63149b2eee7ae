"""Minutes spent, operation by operation, or on the whole job."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.jobbook.typed_row import TypedRow
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Rule, SectionHead, Words
from fitdoctor.desk.words import count, tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.lessons import OperationMinutes
from fitdoctor.plan import PlannedOperation
from fitdoctor.sheet import duration

_MOST = 6000


class MinutesSpent(Rows):
    """Emits the operation and its minutes; None where they are taken back.

    Args:
        known: operation -> minutes already written down; timed: operation -> what closed jobs took.
    """

    spent = Signal(str, object)

    def __init__(
        self, look: Look, operations: Sequence[PlannedOperation], known: Mapping[str, float], timed: Mapping[str, OperationMinutes]
    ) -> None:
        super().__init__("jobs-minutes")
        self.look, self._known, self._timed = look, dict(known), timed
        likely = sum((op.minutes[0] + 4 * op.minutes[1] + op.minutes[2]) / 6 for op in operations)
        self._head = SectionHead(look, tr("Minutes spent"), tr("{time} likely in all", time=duration(likely)) if operations else "")
        self._sum = Words(look, "", "bold", name="jobs-minutes-sum")
        rows: list[QWidget] = [self._head]
        for number, operation in enumerate(operations, 1):
            rows += [self._row(number, operation), Rule(look)]
        if not operations:
            rows.append(
                Words(look, tr("No work is planned for this job, so there is nothing to time."), "reading", name="jobs-minutes-none")
            )
        self.show_rows([*rows, self._sum])
        self._add_up()

    def _row(self, number: int, operation: PlannedOperation) -> TypedRow:
        hint = tr("about {n}", n=f"{operation.minutes[1]:g}")
        field = minutes_field(self.look, f"jobs-minutes-{operation.id}", tr("Minutes for: {what}", what=operation.text), hint)
        row = TypedRow(self.look, f"{number}. {operation.text}", self._beside(operation), field, typed_minutes)
        if operation.id in self._known:
            row.show_text(f"{self._known[operation.id]:g}")
        row.typed.connect(lambda value: self._spend(operation.id, value))
        return row

    def _beside(self, operation: PlannedOperation) -> str:
        """What the operation took in this shop, beside what the book says."""
        timed = self._timed.get(operation.id)
        if timed is None:
            return ""
        says = tr("The book says {n}; ", n=f"{operation.minutes[1]:g}")
        return says + count(timed.times, "your one job: {mean}.", "your last {number} jobs: {mean}.", mean=f"{timed.mean:.0f}")

    def _spend(self, operation: str, minutes: float | None) -> None:
        self._known.pop(operation, None)
        if minutes is not None:
            self._known[operation] = minutes
        self._add_up()
        self.spent.emit(operation, minutes)

    def _add_up(self) -> None:
        total = sum(self._known.values())
        self._sum.say(tr("{time} in all so far", time=duration(total)) if self._known else "")


def minutes_field(look: Look, name: str, says: str, hint: str) -> Field:
    """A field for minutes."""
    return Field(look, name, says, hint, tr("min."))


def typed_minutes(text: str) -> float:
    """Minutes as they are typed: 25, 12.5, or 1:10 for an hour and ten.

    Raises:
        FitdoctorError: it is no such thing.
    """
    hours, colon, rest = text.strip().rpartition(":")
    try:
        minutes = float(rest.replace(",", ".")) + (60 * int(hours) if colon else 0)
    except ValueError:
        minutes = -1.0
    if not 0 <= minutes <= _MOST:
        raise FitdoctorError(tr("‘{typed}’ is no number of minutes.", typed=text.strip()), tr("Write it as 25 or 1:10."))
    return minutes
