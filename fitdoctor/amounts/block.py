"""The standard block: sizes that stand in where nothing was measured. Common drafts of a middle size; every use of one is said.

All in mm. They place and shape the marks; they never stand in for the amount that is altered.
"""

from __future__ import annotations

from typing import Final

from fitdoctor.units import MM_PER_INCH

BACK_WAIST_QUARTER: Final = 190.0
"From centre back to the side seam at the waist."
JOIN: Final = 3 / 8 * MM_PER_INCH
"The seam that is left above a hem cut off to be joined on again, by a sewing page."
SEAT_SEAM: Final = 280.0
"Centre back from the waist seam to the fork, along the seam."
CENTRE_BACK: Final = 254.0
"A skirt's or bodice's centre back seam as far as it is opened."
SIDE_TO_HIP: Final = 203.0
"Waist to hip along the side seam."
GIRTH_SEAM: Final = 406.0
"A girth seam of a jacket or bodice, armhole to below the waist."
CROTCH_TO_KNEE: Final = 330.0
SCOOP_HALF: Final = 64.0
"Half of the part of the crotch curve that is sewn lower."
DART: Final = 114.0
BACK_NECK_DART: Final = 82.0
SCOOP_STEP: Final = MM_PER_INCH / 8
"A crotch is sewn lower in steps of this, tried on between them."
SCOOP_STOP: Final = 10.0
"Where a buyer's guide stops lowering a crotch: 1 cm."
DARTS_APART: Final = 2 * MM_PER_INCH
"Two darts made of one are finished so far apart, by a sewing book."
FRONT_NECK_DEPTH: Final = 70.0
HALF_NECK_WIDTH: Final = 76.0
BACK_NECK_DEPTH: Final = 22.0
HALF_BACK_NECKLINE: Final = 83.0
"Centre back to the shoulder seam along the neckline: the quarter ellipse of the two above."
SHOULDER: Final = 127.0
SHOULDER_DROP: Final = 48.6
"What a shoulder seam of that length drops at 22 1/2 degrees, the base of the slope in a cutter's draft of 1892."
ARMHOLE: Final = 430.0
ARMHOLE_DEPTH: Final = 180.0
"Shoulder end to underarm, straight down."
ARMHOLE_HOLLOW: Final = 14.0
SLEEVE_HEM_HALF: Final = 140.0
TROUSER_HEM_HALF: Final = 215.0
SKIRT_HEM_HALF: Final = 500.0
KNEE_TO_HEM: Final = 430.0
FRONT_HEM_LESS: Final = MM_PER_INCH
"The front of a hem is half an inch narrower than half of it, the back as much wider, by a tailor's rule; another drafter has 3/4 in."
HEM_SLANT: Final = 12.7
"Back of a trouser hem longer than the front; other sources 22 mm."
TROUSER_HEM: Final = 31.75
CUFF: Final = 38.1
HEM_FACED: Final = 6.35
"Cloth a facing needs below the finished edge."
SLEEVE_HEM: Final = MM_PER_INCH
SKIRT_HEM: Final = MM_PER_INCH
CAP_HEIGHT: Final = 140.0
BUTTON_FROM_EDGE: Final = 1.25 * MM_PER_INCH
"Lowest cuff button above the edge, by a printed guide."
BUTTON_SPACING: Final = 15.0
CAP_OVER_LINES: Final = MM_PER_INCH / 4
"What the straight line under half a sleeve cap is longer than half the armhole, by a drafting book."
PIECE: Final = 254.0
"As far down as a piece is set in; a seam is opened so far for as much."
PIECE_SEAM: Final = MM_PER_INCH / 2
"The seam at either side of a piece set into a waistband, by a sewing page."
PLAIN: Final = 200.0
"As much of a seam as a mark without a curve is drawn along."
BUTTON_ROW: Final = 120.0
