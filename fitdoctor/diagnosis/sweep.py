"""Exact sweep over one group of "yes" findings.

The causes are taken one by one; what is carried along is, for every subset of the findings, the chance that exactly this subset is
explained so far. A cause is off, or it is on and explains each of its findings or not. A second sweep from the end gives every
posterior. Every term is a sum of products of chances, so nothing cancels: the alternating sum of the textbook (Heckerman, A tractable
inference algorithm for diagnosing multiple diseases, 1989) loses all its digits from about twelve findings on.

Arrays carry a leading axis of rows: cases that differ in their priors or in the one finding left out are worked out together.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fitdoctor.diagnosis.net import Floats

EXACT_UP_TO = 16
"""Most findings of one group that are swept exactly: 2 to the 16th numbers a cause."""


@dataclass(frozen=True, eq=False)
class Masses:
    """Chance of the evidence together with each cause on, and with it off: arrays of (rows, causes); `evidence`: (rows,)."""

    on: Floats
    off: Floats
    evidence: Floats


def sweep(on: Floats, off: Floats, links: Floats, leaks: Floats, ends: Floats) -> Masses:
    """Sweep the causes forward over subsets of explained findings, then back.

    Args:
        on: (rows or 1, causes) chance that the cause is present; off: that it is absent.
        links: (findings, causes); leaks: (findings,).
        ends: (rows or 1, subsets) 1 for each subset of explained findings that agrees with the evidence.
    """
    causes = links.shape[1]
    carried = [np.broadcast_to(start(leaks), (on.shape[0], 2 ** len(leaks)))]
    for cause in range(causes):
        carried.append(forward(carried[-1], on[:, cause], off[:, cause], links[:, cause]))
    behind = ends
    evidence: Floats = (carried[-1] * behind).sum(axis=-1)
    with_it, without = (np.zeros((len(evidence), causes)) for _ in range(2))
    for cause in reversed(range(causes)):
        if_on = look_back(behind, links[:, cause])
        with_it[:, cause] = on[:, cause] * (carried[cause] * if_on).sum(axis=-1)
        without[:, cause] = off[:, cause] * (carried[cause] * behind).sum(axis=-1)
        behind = off[:, cause, None] * behind + on[:, cause, None] * if_on
    return Masses(with_it, without, evidence)


def start(leaks: Floats) -> Floats:
    """Chance of each subset of findings being explained by the leaks alone; bit i of the index stands for finding i."""
    subsets = np.ones(1)
    for leak in leaks:
        subsets = np.concatenate([subsets * (1 - leak), subsets * leak])
    return subsets


def forward(carried: Floats, on: Floats, off: Floats, links: Floats) -> Floats:
    """Take in one more cause: chances of the subsets explained with it."""
    return off[:, None] * carried + on[:, None] * spread(carried, links)


def spread(carried: Floats, links: Floats) -> Floats:
    """Chances of the subsets explained when this cause is certainly on."""
    spread_out = np.array(carried)
    for bit in np.flatnonzero(links):
        pairs = spread_out.reshape(len(spread_out), -1, 2, 2**bit)
        pairs[:, :, 1] += links[bit] * pairs[:, :, 0]
        pairs[:, :, 0] *= 1 - links[bit]
    return spread_out


def look_back(behind: Floats, links: Floats) -> Floats:
    """Chance of ending in agreement with the evidence from each subset, when this cause is certainly on."""
    looked = np.array(behind)
    for bit in np.flatnonzero(links):
        pairs = looked.reshape(len(looked), -1, 2, 2**bit)
        pairs[:, :, 0] = (1 - links[bit]) * pairs[:, :, 0] + links[bit] * pairs[:, :, 1]
    return looked


def all_explained(findings: int) -> Floats:
    """The end in which every finding is explained: (1, subsets)."""
    ends = np.zeros((1, 2**findings))
    ends[0, -1] = 1.0
    return ends


def one_left_out(findings: int) -> Floats:
    """One row a finding: every finding but this one must be explained: (findings, subsets)."""
    ends = np.zeros((findings, 2**findings))
    ends[:, -1] = 1.0
    rows = np.arange(findings)
    ends[rows, 2**findings - 1 - 2**rows] = 1.0
    return ends
