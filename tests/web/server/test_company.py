"""Workers share their callers: who has more leaves the next one to who has fewer, but leaves nobody standing."""

import socket
from collections.abc import Iterator

import pytest

from dividing.web.options import Options
from dividing.web.serve import settings
from dividing.web.server.company import PLACES, Place
from dividing.web.server.worker import PatientWorker
from tests.web.server.at_work import HEALTH, Address, at_work, closing, read_to_end


@pytest.fixture
def places() -> Iterator[tuple[Place, Place]]:
    """Two workers that take callers."""
    both = Place(41), Place(42)
    for place in both:
        place.tell(0)
    yield both
    for place in both:
        place.leave()


@pytest.mark.parametrize(
    ("mine", "others", "most"), [(0, 0, False), (1, 1, False), (1, 0, True), (0, 1, False), (7, 3, True), (3, 7, False)]
)
def test_who_has_more_callers_than_another_knows_it(
    places: tuple[Place, Place], mine: int, others: int, most: bool
) -> None:
    places[0].tell(mine)
    places[1].tell(others)

    assert places[0].has_most() == most


def test_who_has_left_counts_no_more(places: tuple[Place, Place]) -> None:
    places[0].tell(5)
    places[1].leave()
    assert not places[0].has_most()

    places[1].tell(1)  # its last callers go
    assert not places[0].has_most()


def test_a_worker_that_comes_after_very_many_others_finds_a_place(places: tuple[Place, Place]) -> None:
    late = Place(1000 * PLACES + 7)
    late.tell(0)
    places[0].tell(1)

    assert places[0].has_most()
    late.leave()


def test_a_worker_that_was_killed_is_taken_off_the_board(places: tuple[Place, Place]) -> None:
    class Killed:
        place = places[1]

    places[0].tell(5)
    settings(Options(("127.0.0.1", 8080), 2))["child_exit"](None, Killed())

    assert not places[0].has_most()


def test_who_has_most_leaves_the_next_caller_to_another_and_then_lets_it_in(places: tuple[Place, Place]) -> None:
    def before(worker: PatientWorker, address: Address) -> None:
        worker.open_doors()
        worker.place.tell(1)
        with socket.create_connection(address):
            (door,) = (key.data for key in worker.selector.get_map().values())
            door()
            assert not worker.callers
            assert not worker.selector.get_map()

            worker.look_back()
            assert len(worker.callers) == 1
        worker.drop(next(iter(worker.callers)))
        worker.selector.close()

    with at_work(before):
        pass
    assert not places[0].has_most()


@pytest.mark.usefixtures("places")
def test_nobody_is_left_standing_because_of_a_worker_that_does_not_come() -> None:
    with at_work() as (_, address):
        callers = [socket.create_connection(address, timeout=20) for _ in range(30)]
        for caller in callers:
            caller.sendall(closing(HEALTH))
        for caller in callers:
            with caller:
                assert read_to_end(caller).startswith(b"HTTP/1.1 200 OK")
