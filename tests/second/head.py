"""A dividing head to be turned by hand: every action of the operator, and where the spindle then stands.

The worm turns once when the crank turns once against the head's body, and ``ratio`` turns of the worm
turn the spindle once. The crank's pin drops into a hole of the plate, so what the operator counts is
always a move of the crank against the plate, and the plate itself may be held by its stop, turned by
hand with the crank, or driven by gears from the spindle.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction


class Train:
    """Gears from the spindle to the plate, followed mesh by mesh as the teeth push each other round.

    ``even_meshes_with`` is how the head is built: on the usual construction an even number of meshes
    turns the plate the way the crank goes.
    """

    def __init__(
        self,
        spindle: int,
        worm: int,
        stud: tuple[int, int] | None = None,
        idlers: Sequence[int] = (),
        *,
        even_meshes_with: bool = True,
    ) -> None:
        # Each shaft carries the gear that is driven and the gear that drives on (an idler is both).
        shafts = [(idler, idler) for idler in idlers]
        if stud is not None:
            # The first gear on the stud drives, the second is driven: spindle -> second, first -> worm.
            driving_on, driven = stud
            shafts.insert(0, (driven, driving_on))
        self.plate_per_spindle = Fraction(1)
        driver = spindle
        meshes = 0
        for driven, driving_on in [*shafts, (worm, worm)]:
            self.plate_per_spindle *= Fraction(-driver, driven)
            driver = driving_on
            meshes += 1
        self.meshes = meshes
        if not even_meshes_with:
            self.plate_per_spindle = -self.plate_per_spindle


class DividingHead:
    """A head with its pin in the start hole, its plate on its stop, its dial and its spindle at zero.

    All angles are in turns: ``crank``, ``plate`` and ``spindle`` from the start.
    """

    def __init__(self, ratio: int, train: Train | None = None) -> None:
        self.ratio = ratio
        self.train = train
        self.crank = Fraction(0)
        self.plate = Fraction(0)
        self.spindle = Fraction(0)

    def turn_crank(self, turns: int, holes: int = 0, circle: int = 1) -> None:
        """Withdraw the pin, turn the crank past so many holes of the plate, let the pin drop again."""
        against_plate = Fraction(turns) + Fraction(holes, circle)
        plate_per_spindle = Fraction(0) if self.train is None else self.train.plate_per_spindle
        # While the crank turns once the plate runs on by this much, and the pin passes so many holes fewer.
        plate_per_crank = plate_per_spindle / self.ratio
        cranked = against_plate / (1 - plate_per_crank)
        self.crank += cranked
        self.plate += cranked * plate_per_crank
        self.spindle += cranked / self.ratio

    def turn_plate_and_crank(self, holes: int, circle: int, turns: int = 0) -> None:
        """With the pin left in its hole, withdraw the stop and turn plate and crank together."""
        if self.train is not None:
            raise AssertionError("the plate is geared to the spindle and cannot be turned by hand")
        together = turns + Fraction(holes, circle)
        self.crank += together
        self.plate += together
        self.spindle += together / self.ratio

    def turn_direct(self, holes: int, circle: int) -> None:
        """Worm out of mesh: turn the spindle itself past so many holes of the plate on its nose."""
        self.spindle += Fraction(holes, circle)

    def turn_to_dial(self, turns: int, reading: Fraction, divisions: int | None = None) -> None:
        """Turn the handwheel on to its next ``turns`` whole turns and the reading, both counted from zero.

        The reading is in degrees of the table, or in divisions of a dial that has so many a turn.
        """
        one_turn = Fraction(360, self.ratio) if divisions is None else Fraction(divisions)
        self.crank = turns + reading / one_turn
        self.spindle = self.crank / self.ratio

    def pin_hole(self, circle: int) -> Fraction:
        """The hole that the pin stands in, counted from the start hole round to the whole circle."""
        return (self.crank - self.plate) * circle % circle
