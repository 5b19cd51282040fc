"""How large a question may be. Each limit is published; past one is a refusal that names it."""

DIVISIONS_MOST = 1_000_000
ANGLES_MOST = 2_000
RATIO_MOST = 10_000
CIRCLES_MOST = 100
"""Circles on all plates and the direct plate together."""
HOLES_LEAST, HOLES_MOST = 2, 400
"""Holes of one circle."""
HOLES_IN_ALL_MOST = 12_000
GEARS_MOST = 24
TEETH_LEAST, TEETH_MOST = 10, 200
ROWS_MOST = 20_000
"""Position rows in one answer."""
SETUPS_MOST = 100
"""Setups in one answer."""
PLATE_MOTION_MOST = 6
"""Plate turns per spindle turn that a differential train may give."""
DIAL_UNITS_MOST = 10_000_000
"""Smallest dial readings in one crank turn."""
COVERAGE_MOST = 10_000
EVERY_TRIED = 12
"""Spaces per move that are tried, unasked, when nothing exact exists."""
