"""The job book with all that can be done in it, bound to a window."""

from __future__ import annotations

from fitdoctor.desk.fitting import Fitting
from fitdoctor.desk.jobbook.carry import Carry
from fitdoctor.desk.jobbook.changes import Changes
from fitdoctor.desk.jobbook.closing import Closing
from fitdoctor.desk.jobbook.place import JobBookPlace
from fitdoctor.desk.jobbook.trouble import Trouble
from fitdoctor.desk.jobbook.views import Views
from fitdoctor.desk.window import Window


def bind_job_book(window: Window, fitting: Fitting) -> JobBookPlace:
    """Put the job book into a window."""
    place = JobBookPlace(window, fitting)
    changes = Changes(place)
    Closing(changes)
    Views(changes)
    Carry(place)
    Trouble(place)
    return place
