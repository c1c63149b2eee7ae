"""The parts of a garment that alterations touch, as plane lines in mm (x to the right, y down), built from a few flat measurements.

Each line runs so that the cloth lies to its right hand: taking in moves it into the cloth. Only hems have the cloth at their left hand,
so that lowering moves them down. They are shapes of common drafts; lengths are made to agree with what was measured.
"""

from __future__ import annotations

import math

import numpy as np

from fitdoctor.amounts import block
from fitdoctor.amounts.curves import Curve, Polyline, bezier, fitted, quarter_ellipse, straight
from fitdoctor.errors import FitdoctorError


def waist(along_mm: float) -> Polyline:
    """Half of a back or front waist seam from the centre to the side: level at the centre, rising a little at the side."""
    return fitted(lambda k: bezier((0, 0), (0.35 * k, 0), (0.7 * k, -0.02 * k), (k, -0.06 * k)), along_mm).polyline()


def upright(length_mm: float) -> Polyline:
    """A straight seam from top to bottom, the cloth left of it on paper."""
    return straight((0.0, 0.0), (0.0, length_mm))


def side_to_hip(length_mm: float) -> Polyline:
    """A side seam from the waist over the hip."""
    return fitted(lambda k: bezier((0, 0), (0.1 * k, 0.35 * k), (0.2 * k, 0.6 * k), (0.2 * k, k)), length_mm).polyline()


def seat_seam(length_mm: float) -> Polyline:
    """The back crotch seam from the waist down to the fork: a slanting line, then the curve into the fork."""
    return fitted(_seat_curve, length_mm).polyline(96)


def _seat_curve(k: float) -> Curve:
    return bezier((0, 0), (0.10 * k, 0.50 * k), (0.11 * k, 0.80 * k), (0.50 * k, 0.84 * k))


def crotch_bottom(half_width_mm: float) -> Polyline:
    """The part of the back crotch curve that is sewn lower: from below the seat, `half_width_mm` each way, to the fork."""
    w = half_width_mm
    return bezier((-w, -0.9 * w), (-0.85 * w, -0.1 * w), (-0.2 * w, 0.0), (w, 0.02 * w)).polyline(96)


def inseam(length_mm: float) -> Polyline:
    """An inseam from the crotch downward: hollow at the top, then nearly straight."""
    return fitted(lambda k: bezier((0, 0), (-0.10 * k, 0.22 * k), (-0.15 * k, 0.55 * k), (-0.18 * k, k)), length_mm).polyline()


def back_neck(half_width_mm: float, depth_mm: float) -> Polyline:
    """Half of the back neckline from centre back to the shoulder: a quarter ellipse."""
    return quarter_ellipse(half_width_mm, depth_mm).polyline()


def back_neck_for(half_mm: float) -> Polyline:
    """The same of the standard block's shape, as long as half of what was measured."""
    return fitted(lambda k: quarter_ellipse(block.HALF_NECK_WIDTH * k, block.BACK_NECK_DEPTH * k), half_mm).polyline()


def shoulder(length_mm: float, drop_mm: float) -> Polyline:
    """A shoulder seam from the neck to the armhole, the cloth below it."""
    slope = math.asin(min(1.0, drop_mm / length_mm))
    return straight((0.0, 0.0), (length_mm * math.cos(slope), length_mm * math.sin(slope)))


def armhole(shoulder_end: tuple[float, float], depth_mm: float, hollow_mm: float) -> Polyline:
    """One half of an armhole from the shoulder end down to the underarm point.

    Args:
        depth_mm: shoulder end to underarm, measured straight down.
        hollow_mm: how far it is hollowed in from the shoulder end before it turns out to the underarm.
    """
    return _armhole_curve(shoulder_end, depth_mm, hollow_mm).polyline()


def _armhole_curve(shoulder_end: tuple[float, float], depth: float, hollow: float) -> Curve:
    x, y = shoulder_end
    return bezier((x, y), (x - hollow, y + 0.40 * depth), (x - 1.6 * hollow, y + depth), (x + 0.45 * depth, y + depth))


def armhole_for(half_mm: float) -> Polyline:
    """One half of an armhole, of the standard block's shape, as long as half of what was measured round it."""
    return fitted(lambda k: _armhole_curve((0.0, 0.0), block.ARMHOLE_DEPTH * k, block.ARMHOLE_HOLLOW * k), half_mm).polyline()


def both_halves(half: Polyline) -> Polyline:
    """A whole armhole laid open with the shoulder at the top: from the back underarm over the shoulder to the front underarm.

    The cloth of the body lies above it, its grain level.
    """
    front = half[:, ::-1]
    back = front * np.array([-1.0, 1.0])
    return np.vstack((back[::-1], front[1:]))


def sleeve_cap(back_mm: float, front_mm: float, height_mm: float) -> Polyline:
    """A sleeve cap from the back underarm over the crown to the front underarm: two S-curves that meet level at the crown."""
    b, f, h = back_mm, front_mm, height_mm
    back = bezier((-b, 0), (-0.55 * b, 0), (-0.60 * b, -h), (0, -h)).polyline(48)
    front = bezier((0, -h), (0.60 * f, -h), (0.50 * f, 0), (f, 0)).polyline(48)
    return np.vstack((back, front[1:]))


def cap_part_mm(armhole_half_mm: float, height_mm: float) -> float:
    """Width of a sleeve on one side of the crown: the straight line under that half of the cap is a little longer than its armhole.

    Raises:
        FitdoctorError: the cap is higher than the armhole half is long.
    """
    line = armhole_half_mm + block.CAP_OVER_LINES
    if height_mm >= line:
        raise FitdoctorError("The sleeve cap is higher than half the armhole is long.", "Measure both again.")
    return math.sqrt(line**2 - height_mm**2)


def sleeve_cap_for(armhole_mm: float, height_mm: float) -> Polyline:
    """The cap of a sleeve that fits an armhole, drawn alike at back and front."""
    part = cap_part_mm(armhole_mm / 2, height_mm)
    return sleeve_cap(part, part, height_mm)


def level(length_mm: float) -> Polyline:
    """A hem or another level edge, from left to right; the cloth lies above it."""
    return straight((0.0, 0.0), (length_mm, 0.0))


def trouser_hem(half_hem_mm: float, slant_mm: float) -> Polyline:
    """Half of a trouser hem from the front crease to the back crease, `slant_mm` lower at the back: level at both creases."""
    s, w = slant_mm, half_hem_mm
    return bezier((0, 0), (0.4 * w, 0), (0.6 * w, s), (w, s)).polyline()


def leg_edge(knee_to_hem_mm: float) -> Polyline:
    """The edge of a leg from the hem up to the knee."""
    return straight((0.0, knee_to_hem_mm), (0.0, 0.0))


def sloping_shoulder(length_mm: float) -> Polyline:
    """A shoulder seam of the standard block's slope."""
    return shoulder(length_mm, length_mm * block.SHOULDER_DROP / block.SHOULDER)


def seam_line(at: str, length_mm: float) -> Polyline:
    """A seam drawn by its id alone, as long as it was measured: shoulders slope, waists curve, edges lie level, others stand upright."""
    if at.endswith("waist-seam"):
        return waist(length_mm)
    if at in ("shoulder-seam", "inseam"):
        return sloping_shoulder(length_mm) if at == "shoulder-seam" else inseam(length_mm)
    lies = at.endswith(("hem", "facing", "cuff-seam", "collar-seam", "neckline-seam"))
    return level(length_mm) if lies else upright(length_mm)
