"""Which closed jobs teach, whether their lessons are used, and beginning anew. The lessons themselves are in `lessons.py`."""

from __future__ import annotations

from dataclasses import dataclass, field

from fitdoctor.diagnosis.learning import Learned
from fitdoctor.jobbook.job import Job
from fitdoctor.jobbook.keeping import from_doc
from fitdoctor.jobbook.lessons import learned_from
from fitdoctor.jobbook.opening import BookFile
from fitdoctor.knowledge.knowledge import Knowledge

_SWITCH = "learning"


@dataclass(frozen=True)
class _Told:
    knowledge: Knowledge
    jobs: tuple[Job, ...]
    learned: Learned


@dataclass(frozen=True, eq=False)
class Learning:
    """What one book has to teach."""

    file: BookFile
    _told: list[_Told] = field(default_factory=list, init=False, repr=False)
    "What was last worked out: a job more is learned on top of it."

    @property
    def on(self) -> bool:
        """Whether what was learned is used; so it is until it is switched off."""
        with self.file.looking() as connection:
            row = connection.execute("SELECT value FROM setting WHERE name = ?", (_SWITCH,)).fetchone()
        return row is None or row[0] == "on"

    def switch(self, on: bool) -> None:
        """Use what was learned, or the printed chances alone; nothing is forgotten."""
        with self.file.writing() as connection:
            values = (_SWITCH, "on" if on else "off")
            connection.execute("INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value", values)

    def reset(self) -> int:
        """Let the jobs closed so far teach no more; they stay in the book.

        Returns:
            How many jobs taught until now.
        """
        with self.file.writing() as connection:
            added = connection.execute("INSERT OR IGNORE INTO forgotten SELECT id FROM job WHERE closed IS NOT NULL")
            return added.rowcount

    def forgotten(self) -> int:
        """How many closed jobs teach no more since what was learned was reset."""
        with self.file.looking() as connection:
            kept = "SELECT count(*) FROM forgotten JOIN job ON job.id = forgotten.job WHERE closed IS NOT NULL"
            return int(connection.execute(kept).fetchone()[0])

    def restore(self) -> int:
        """Let every closed job teach again.

        Returns:
            How many had been reset.
        """
        with self.file.writing() as connection:
            return connection.execute("DELETE FROM forgotten").rowcount

    def jobs(self) -> tuple[Job, ...]:
        """The closed jobs that teach, in the order in which they were closed."""
        teaching = "SELECT doc FROM job WHERE closed IS NOT NULL AND id NOT IN (SELECT job FROM forgotten) ORDER BY closed, id"
        with self.file.looking() as connection:
            rows = connection.execute(teaching).fetchall()
        return tuple(from_doc(doc, Job) for (doc,) in rows)

    def learned(self, knowledge: Knowledge) -> Learned:
        """What the closed jobs taught; nothing while it is switched off."""
        if not self.on:
            return Learned()
        jobs = self.jobs()
        known = next((told for told in self._told if told.knowledge is knowledge and jobs[: len(told.jobs)] == told.jobs), None)
        new = jobs[len(known.jobs) :] if known else jobs
        told = _Told(knowledge, jobs, learned_from(knowledge, new, known.learned if known else None))
        self._told[:] = [told]
        return told.learned
