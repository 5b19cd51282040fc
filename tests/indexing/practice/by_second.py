"""Exercises solved by the second method: by trying every hole, and by turning the head as the key says."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import cache

from dividing.indexing.head import Head
from dividing.indexing.practice import ArmsClaim, Exercise, KindName, PlateClaim, Task
from dividing.indexing.verifying import Claim
from tests.second.gears import Shelf, exact_differentials
from tests.second.head import DividingHead, Train
from tests.second.holes import CompoundTable, PlainSetting, Plates, direct_settings, plain_settings


def plain_of(task: Task, head: Head) -> set[PlainSetting]:
    """Every plain setting that there is."""
    return plain_settings(head.ratio * task.work.step, head.plates)


@cache
def plain_numbers(head: Head, level: int) -> frozenset[int]:
    """The numbers of plain indexing at a level: up to 60 on the mounted plate; the others that a circle serves, to 400;
    from 61 to 1,000 where no circle has just the holes that the part of a turn in lowest terms asks for."""

    def asked(count: int) -> bool:
        found, parts = plain_settings(Fraction(head.ratio, count), head.plates), Fraction(head.ratio, count).denominator
        easy = count <= 60 and any(one.plate in (None, head.mounted_plate) for one in found)
        if level < 3:
            return easy if level == 1 else bool(found) and not easy
        return count > 60 and bool(found) and parts > 1 and parts not in {one.circle for one in found}

    return frozenset(filter(asked, range(6, {1: 61, 2: 401, 3: 1001}[level])))


def numbers_of_none(head: Head, most: int) -> set[int]:
    """The numbers that no hole of any circle serves."""
    return {count for count in range(2, most + 1) if not plain_settings(Fraction(head.ratio, count), head.plates)}


def hard_numbers(head: Head, most: int) -> list[int]:
    """Numbers that neither the direct plate nor one circle serves."""
    return [
        count
        for count in sorted(numbers_of_none(head, most))
        if not direct_settings(Fraction(1, count), head.direct_circles)
    ]


def leaves_a_part(head: Head, count: int) -> bool:
    """The move is not of whole turns alone."""
    return head.ratio % count > 0


def served(head: Head, angle: int, parts: int) -> bool:
    """Some circle has a whole number of spaces for so many parts of a turn."""
    return any(head.ratio * angle * circle % parts == 0 for face in head.plates for circle in face)


def minutes_served(head: Head) -> set[str]:
    """Angles to a quarter of a turn that a circle serves, in degrees and minutes, those in whole degrees left out."""
    minutes = [minute for minute in range(1, 5401) if minute % 60 and served(head, minute, 21_600)]
    return {f"{minute // 60}°{minute % 60:02}'" for minute in minutes}


def turned(claim: Claim, head: Head) -> DividingHead:
    """The head after the claim was set once, its gears taken from the shelf."""
    gearing = claim.gearing
    train = None
    if gearing:
        shelf = sorted(head.change_gears)
        for teeth in (gearing.spindle, gearing.worm, *(gearing.stud or ())):
            shelf.remove(teeth)
        train = Train(gearing.spindle, gearing.worm, gearing.stud, shelf[: gearing.idlers])
        assert len(shelf) >= gearing.idlers
    done = DividingHead(head.ratio, train)
    if claim.method == "direct":
        done.turn_direct(claim.holes, claim.circle or 1)
    elif claim.method == "dial":
        _by_dial(claim, head, done)
    else:
        done.turn_crank(claim.turns, claim.holes, claim.circle or 1)
        if claim.second:
            done.turn_plate_and_crank(claim.second.holes, claim.second.circle)
    return done


def _by_dial(claim: Claim, head: Head, done: DividingHead) -> None:
    assert head.dial is not None
    if head.dial.divisions is not None:
        done.turn_to_dial(claim.turns, claim.divisions or Fraction(0), head.dial.divisions)
    else:
        assert claim.reading is not None
        done.turn_to_dial(claim.turns, claim.reading.turns * 360)


def claim_of(exercise: Exercise) -> Claim:
    """The key of an exercise that asks for a setup."""
    assert isinstance(exercise.key.claim, Claim)
    return exercise.key.claim


def check_plain(exercise: Exercise, head: Head) -> None:
    """The key is one of the settings that there are."""
    claim, found = claim_of(exercise), plain_of(exercise.task, head)
    assert (claim.turns, claim.holes, claim.circle if claim.holes else None) in {one[:3] for one in found}
    assert turned(claim, head).spindle == exercise.task.work.step


def check_direct(exercise: Exercise, head: Head) -> None:
    """The key is one of the settings of the direct plate."""
    claim = claim_of(exercise)
    assert (claim.holes, claim.circle) in direct_settings(exercise.task.work.step, head.direct_circles)


def check_which_plate(exercise: Exercise, head: Head) -> None:
    """The circle is one of those that serve, on the plate that has it."""
    claim = exercise.key.claim
    assert isinstance(claim, PlateClaim)
    assert (claim.circle, claim.plate) in {one[2:] for one in plain_of(exercise.task, head)}


def check_sector_arms(exercise: Exercise, head: Head) -> None:
    """The arms embrace the spaces on the circle that is given and the hole that the pin is in."""
    claim, task = exercise.key.claim, exercise.task
    assert isinstance(claim, ArmsClaim)
    spaces = {one.holes for one in plain_of(task, head) if one.circle == task.circle}
    assert spaces == {claim.sector_holes - 1}
    if task.claim:
        assert turned(task.claim, head).spindle == task.work.step


@cache
def two_circles(plates: Plates, stop_circles: tuple[int, ...] | None) -> CompoundTable:
    """All that two circles can do, put together once."""
    return CompoundTable(plates, stop_circles)


def check_compound(exercise: Exercise, head: Head) -> None:
    """Both moves together make the step, on one plate; one circle alone does not; the hint is on that plate."""
    claim, task = claim_of(exercise), exercise.task
    assert claim.second is not None
    assert turned(claim, head).spindle == task.work.step
    assert any({claim.circle, claim.second.circle} <= set(face) for face in head.plates)
    assert head.stop_circles is None or claim.second.circle in head.stop_circles
    assert not plain_of(task, head)
    assert not direct_settings(task.work.step, head.direct_circles)
    if task.level == 1:
        assert claim.circle in head.plates[head.mounted_plate - 1]
    assert two_circles(head.plates, head.stop_circles).exact(head.ratio * task.work.step)


@cache
def shelf(gears: tuple[int, ...]) -> Shelf:
    """The trains that can be made, put together once."""
    return Shelf(gears)


def check_differential(exercise: Exercise, head: Head) -> None:
    """The head turned with the gears makes the step; nothing simpler does; two gears do unless it is level 3."""
    claim, task = claim_of(exercise), exercise.task
    assert turned(claim, head).spindle == task.work.step
    assert not plain_of(task, head)
    assert not direct_settings(task.work.step, head.direct_circles)
    trains = shelf(head.change_gears)
    found = exact_differentials(head.ratio, task.work.step, head.plates, trains)
    by_two = any(trains.is_simple(one.plate_turns) for one in found)
    assert found
    assert by_two == (task.level < 3)
    assert claim.gearing is not None
    assert (claim.gearing.stud is None) == by_two


def check_dial(exercise: Exercise, head: Head) -> None:
    """The reading is on the dial; it is exact at levels 1 and 2 and the nearest one at level 3."""
    claim, task = claim_of(exercise), exercise.task
    assert head.dial is not None
    finest = head.dial.vernier or head.dial.graduation or Fraction(1, head.ratio * (head.dial.divisions or 1))
    made = turned(claim, head).spindle
    assert (made / finest).denominator == 1
    if task.level == 3:
        assert 0 < abs(made - task.work.step) <= finest / 2
    else:
        assert made == task.work.step
    assert task.position is not None
    assert Fraction(*task.position) == task.work.step


def can_be_set(claim: Claim, head: Head) -> bool:
    """Whether the shop has the circles and the gears of a claim."""
    have = head.direct_circles if claim.method == "direct" else [hole for face in head.plates for hole in face]
    circles = [claim.circle, claim.second.circle if claim.second else None]
    wanted = claim.gearing
    gears = [wanted.spindle, wanted.worm, *(wanted.stud or ())] if wanted else []
    owned = all(gears.count(teeth) <= head.change_gears.count(teeth) for teeth in gears)
    return owned and all(circle in have for circle in circles if circle)


def check_find_the_slip(exercise: Exercise, head: Head) -> None:
    """What was set is not what was wanted, or cannot be set; the key is, and can."""
    given, right = exercise.task.claim, claim_of(exercise)
    assert given is not None
    assert not can_be_set(given, head) or turned(given, head).spindle != exercise.task.work.step
    assert can_be_set(right, head)
    assert turned(right, head).spindle == exercise.task.work.step


CHECKS: dict[KindName, Callable[[Exercise, Head], None]] = {
    "plain": check_plain,
    "angular": check_plain,
    "direct": check_direct,
    "which_plate": check_which_plate,
    "sector_arms": check_sector_arms,
    "compound": check_compound,
    "differential": check_differential,
    "dial": check_dial,
    "find_the_slip": check_find_the_slip,
}


def check_none(exercise: Exercise, head: Head) -> None:
    """No hole of any circle serves."""
    task = exercise.task
    if task.kind == "direct":
        assert not direct_settings(task.work.step, head.direct_circles)
    else:
        assert not plain_of(task, head)
    assert exercise.key.claim is None


def check(exercise: Exercise, head: Head) -> None:
    """The exercise solved a second time."""
    if exercise.task.none:
        check_none(exercise, head)
    else:
        CHECKS[exercise.task.kind](exercise, head)
