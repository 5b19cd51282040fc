"""Twelve hundred right setups, each with one slip made in it: the verifier finds the slip, and names it first.

A claim can be explained by more than one slip (20 spaces on 49 for 21 may be a hole miscounted, or may be right on
another head); only where no other slip would have led to it must the one that was made stand first.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache
from random import Random
from typing import NamedTuple

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Dial, Head
from dividing.indexing.heads import SET_TWO
from dividing.indexing.verifying import Claim, verify
from dividing.indexing.work import Arc, Divisions
from tests.indexing.verifying.slips_made import SLIPS, Stepped, right_claims

CASES = 1200
HEADS = [
    Head(change_gears=TWELVE_GEARS),
    Head(ratio=40, plates=SET_TWO, direct_circles=(24, 30, 36)),
    Head(ratio=60, plates=SET_ONE, change_gears=(24, 24, 28, 32, 40, 48, 56, 64, 100)),
    Head(ratio=72, plates=SET_TWO, change_gears=TWELVE_GEARS),
    Head(ratio=90, direct_circles=(), dial=Dial(Fraction(1, 21600), Fraction(1, 129600))),
    Head(ratio=80, plates=(), direct_circles=(), dial=Dial(divisions=50)),
    Head(ratio=120, plates=(), direct_circles=(24,), dial=Dial(Fraction(1, 21600))),
]
SET_RIGHT_IN_FIGURES = {"circle_on_no_plate", "gear_used_twice"}


class Case(NamedTuple):
    """One pupil's claim, and the slip that was made."""

    work: Stepped
    head: Head
    slip: str
    claim: Claim
    others: frozenset[str]


def as_it_reads(claim: Claim) -> Claim:
    """A differential row without its gears reads like any plain one."""
    return replace(claim, method="plain") if claim.method == "differential" and not claim.gearing else claim


def slips_of(work: Stepped, head: Head) -> dict[str, dict[Claim, Claim]]:
    """Every claim that each slip leads to, from every right setup: as it reads, and as it was written."""
    right = right_claims(work, head)
    alike = {as_it_reads(claim) for claim in right}
    made: dict[str, dict[Claim, Claim]] = {}
    for name, slip in SLIPS.items():
        claims = {as_it_reads(claim): claim for one in right for claim in slip(work, head, one)}
        made[name] = {reads: claim for reads, claim in claims.items() if reads not in alike}
    return made


def some_work(chance: Random) -> Stepped:
    if chance.random() < 0.25:
        minutes = chance.choice((60, 60, 100, 120, 3600))
        return Arc(Angle(Fraction(chance.randrange(minutes, 120 * minutes), 360 * minutes)), chance.randint(2, 9))
    count = chance.randint(2, 400)
    every = chance.choice((1, 1, 1, 1, 2, 3, 5))
    return Divisions(count, every if every < count and Fraction(every, count).denominator == count else 1)


def cases() -> Iterator[Case]:
    chance = Random(51)  # noqa: S311 - the same pupils every time
    while True:
        work, head = some_work(chance), chance.choice(HEADS)
        made = slips_of(work, head)
        possible = [name for name in SLIPS if made[name]]
        # A few slips with each piece of work, every one that can be made there as likely as any other.
        for slip in chance.sample(possible, min(3, len(possible))):
            reads = chance.choice(list(made[slip]))
            others = frozenset(name for name in possible if name != slip and reads in made[name])
            claim = made[slip][reads]
            if slip in SET_RIGHT_IN_FIGURES or makes(claim, head) != work.step:
                yield Case(work, head, slip, claim, others)


def makes(claim: Claim, head: Head) -> Fraction | None:
    """What a claim makes, where it has no gears: such a slip can hit upon another right setup."""
    if claim.gearing:
        return None
    if claim.method == "direct":
        return Fraction(claim.holes, claim.circle or 1)
    turns = claim.turns + Fraction(claim.holes, claim.circle or 1)
    if claim.second:
        turns += Fraction(claim.second.holes, claim.second.circle)
    if head.dial and claim.divisions is not None:
        turns += claim.divisions / (head.dial.divisions or 1)
    return turns / head.ratio + (claim.reading.turns if claim.reading else 0)


@cache
def found() -> list[tuple[Case, list[str]]]:
    """Each case with the slips that the verifier names, likeliest first."""
    pupils = cases()
    return [
        (case, [slip.slip for slip in verify(case.work, case.head, case.claim).likely_slips])
        for case in (next(pupils) for _ in range(CASES))
    ]


def test_the_slip_that_was_made_is_among_those_named_in_99_of_100(capsys: pytest.CaptureFixture[str]) -> None:
    named = [case.slip in names for case, names in found()]
    first = [names[:1] == [case.slip] for case, names in found() if not case.others]
    with capsys.disabled():
        print(
            f"\nSlips: {100 * sum(named) / len(named):.2f} in 100 of {len(named)} are named; "
            f"{100 * sum(first) / len(first):.2f} in 100 of the {len(first)} with one explanation stand first."
        )
    assert sum(named) >= 0.99 * len(named)


def test_it_stands_first_in_95_of_100_where_nothing_else_explains_the_claim() -> None:
    first = [names[:1] == [case.slip] for case, names in found() if not case.others]
    assert len(first) > CASES / 2
    assert sum(first) >= 0.95 * len(first)


def test_every_slip_of_the_list_was_made_often_enough_to_count() -> None:
    made = Counter(case.slip for case, _ in found())
    assert set(made) == set(SLIPS)
    assert min(made.values()) >= 15, made


def test_each_kind_of_slip_by_itself_is_named_in_19_of_20() -> None:
    kinds: dict[str, list[bool]] = defaultdict(list)
    for case, names in found():
        kinds[case.slip].append(case.slip in names)
    assert {slip: sum(named) for slip, named in kinds.items() if sum(named) < 0.95 * len(named)} == {}


def test_what_the_verifier_corrects_to_is_exact() -> None:
    for case, _ in found()[::4]:
        for slip in verify(case.work, case.head, case.claim).likely_slips:
            assert verify(case.work, case.head, slip.corrected).verdict == "exact", (case, slip)


@pytest.mark.parametrize(("count", "one_more_or_less"), [(51, 1), (51, -1), (67, 1), (67, -1), (173, 1), (319, -1)])
def test_an_idler_too_many_is_taken_away_and_not_matched_by_another(count: int, one_more_or_less: int) -> None:
    head, work = HEADS[0], Divisions(count)
    for right in right_claims(work, head):
        if right.gearing and right.gearing.idlers + one_more_or_less >= 0:
            wrong = replace(right.gearing, idlers=right.gearing.idlers + one_more_or_less)
            slips = verify(work, head, replace(right, gearing=wrong)).likely_slips
            assert right in [slip.corrected for slip in slips if slip.slip == "idlers_off_by_one"], right
