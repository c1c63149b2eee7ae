"""Which solved cases are kept out of sight while the knowledge is written."""

from __future__ import annotations

import hashlib
import re

ONE_IN = 4
_PRINTED = re.compile(r"printed-(\d+)")
_BLIND = "blind-"


def is_held_back(case_id: str) -> bool:
    """Whether the case of this id is held back; the flag in its file must agree.

    One case in four by chance: the first byte of the SHA-256 of its id divides by four. Two kinds go by their name instead, since the
    writers of the knowledge never saw them: a printed case whose number divides by four (the other printed ones are in sight), and
    every ``blind-`` case, which was written from what is seen alone, without a look at the causes.
    """
    if printed := _PRINTED.fullmatch(case_id):
        return int(printed[1]) % ONE_IN == 0
    return case_id.startswith(_BLIND) or hashlib.sha256(case_id.encode()).digest()[0] % ONE_IN == 0
