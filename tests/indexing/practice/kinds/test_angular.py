"""Angular indexing: every angle that a circle serves is asked as its level writes it, and none besides."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import angular
from dividing.indexing.work import Arc
from tests.indexing.practice.by_second import minutes_served, served


@pytest.mark.parametrize("head", [Head(), Head(ratio=90, plates=((20, 27), (49,)))])
@pytest.mark.parametrize("level", [1, 2, 3])
def test_every_angle_that_a_circle_serves_may_be_asked(head: Head, level: int) -> None:
    degrees = {f"{angle}°" for angle in range(1, 181) if served(head, angle, 360)}
    hundredths = [part for part in range(1, 9001) if part % 100 and served(head, part, 36_000)]
    decimals = {f"{part // 100}.{part % 100:02}".rstrip("0") + "°" for part in hundredths}
    written = {1: degrees, 2: minutes_served(head), 3: decimals}[level]
    asked = set(angular.tasks(head, level, Chance(1)))
    assert asked == {Task("angular", level, Arc(parse_angle(text)), text) for text in written}
