"""Form cutters for involute teeth: eight in a set, each good for a range of teeth."""

from __future__ import annotations

from dataclasses import dataclass

SOURCE = (
    "Modern Machine-Shop Practice (Joshua Rose), table of eight involute cutters; No. 8 ends at 13 by common practice"
)

_LOWEST = {1: 135, 2: 55, 3: 35, 4: 26, 5: 21, 6: 17, 7: 14, 8: 12}


@dataclass(frozen=True, slots=True)
class FormCutter:
    """A cutter by the number of the diametral-pitch sets, with its range; `highest` None: up to a rack."""

    number: int
    lowest: int
    highest: int | None

    @property
    def teeth(self) -> str:
        """The range as it should stand beside the number.

        >>> FormCutter(1, 135, None).teeth, FormCutter(5, 21, 25).teeth
        ('135 teeth to a rack', '21 to 25 teeth')
        """
        return f"{self.lowest} to {self.highest} teeth" if self.highest else f"{self.lowest} teeth to a rack"

    @property
    def note(self) -> str:
        """The range, and a warning that sets of module cutters are often numbered the other way.

        >>> FormCutter(5, 21, 25).note
        'for 21 to 25 teeth; go by this range: many module cutters are numbered the other way (there No. 4)'
        """
        other = f"many module cutters are numbered the other way (there No. {9 - self.number})"
        return f"for {self.teeth}; go by this range: {other}"


def form_cutter(teeth: float) -> FormCutter | None:
    """The cutter for a number of teeth (a formative number need not be whole); None below 12.

    >>> form_cutter(26.8).number, form_cutter(13.9).number, form_cutter(11.9)
    (4, 8, None)
    """
    for number, lowest in _LOWEST.items():
        if teeth >= lowest - 1e-9:
            highest = _LOWEST[number - 1] - 1 if number > 1 else None
            return FormCutter(number, lowest, highest)
    return None
