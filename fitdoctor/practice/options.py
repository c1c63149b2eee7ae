"""What `fitdoctor practise` takes; imports nothing, so that the command line starts at once."""

from __future__ import annotations

import argparse
from pathlib import Path


def practice_options(parser: argparse.ArgumentParser) -> None:
    """Add the set, its seed and its form to the parser of `fitdoctor practise`."""
    parser.add_argument(
        "--set", dest="scope", default="", metavar="WORDS", help="garment, view or place, level, kinds: as “trousers back hard”"
    )
    parser.add_argument("--seed", default="1", help="the same seed gives the same exercises on any machine")
    parser.add_argument("--count", type=int, default=10, help="how many exercises")
    parser.add_argument("--answers", action="store_true", help="with what is right and why, for the teacher")
    parser.add_argument("--json", action="store_true")
    parser.add_argument("--results", type=Path, metavar="FILE", help="write the answers given in the window as a table (CSV) instead")
