"""The themes of the service, in the order in which `/docs` tells them. A new one is a module with `blueprint` and
`OPERATIONS`, named here."""

from __future__ import annotations

from . import angle, batch, coverage, heads, locate, plate, practice, qr, solve, state, verify

THEMES = (solve, batch, verify, angle, locate, coverage, plate, practice, heads, qr, state)
