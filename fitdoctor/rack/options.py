"""What `fitdoctor rack` takes; imports nothing, so that the command line starts at once."""

from __future__ import annotations

import argparse
from pathlib import Path


def rack_options(parser: argparse.ArgumentParser) -> None:
    """Add cases, money and manner to the parser of `fitdoctor rack`."""
    parser.add_argument("cases", nargs="*", type=Path, metavar="CASE", help="case file (YAML)")
    parser.add_argument("--price", type=float, nargs="+", default=[], help="price of the garment; one for each case, or one for all")
    parser.add_argument("--worth", type=float, nargs="+", default=[], help="what it would be worth if it fitted, in the same money")
    parser.add_argument("--rate", type=float, help="price of an hour's work; the shop's own if left out")
    parser.add_argument("--hurry", action="store_true", help="only the deal breakers")
    parser.add_argument("--simulate", action="store_true", help="send simulated buyers through the solved cases, against a checklist")
    parser.add_argument("--json", action="store_true")
