"""Every sentence that people read about a setup."""

from .cautions import GENERAL, cautions, same_place
from .instructions import instructions
from .summary import summary
from .working import working

__all__ = ["GENERAL", "cautions", "instructions", "same_place", "summary", "working"]
