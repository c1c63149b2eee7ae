"""Known errors: what the user can mend. Anything else that is raised is a bug."""

from __future__ import annotations


class FitdoctorError(Exception):
    """A known error: one clear sentence, and what to do about it.

    Attributes:
        text: what is wrong and where, as one sentence.
        hint: what to do; may be empty.
    """

    def __init__(self, text: str, hint: str = "") -> None:
        super().__init__(f"{text} {hint}".strip())
        self.text = text
        self.hint = hint
