"""The same chance for ever: the generator's own figures, and what is drawn with it."""

from __future__ import annotations

from collections import Counter

import pytest

from dividing.indexing.practice.chance import Chance

# Recalled: the first words of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014), as given with its reference program.
FIRST_WORDS = [
    (0, [0xE220A8397B1DCDAF, 0x6E789E6AA1B965F4, 0x06C45D188009454F]),
    (1234567, [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431]),
]


@pytest.mark.parametrize(("seed", "words"), FIRST_WORDS)
def test_words_are_those_of_the_generator(seed: int, words: list[int]) -> None:
    chance = Chance(seed)
    assert [chance.word() for _ in words] == words


def by_bits(seed: int, count: int) -> list[int]:
    """The same generator written a second time, on lists of bits, the lowest first."""

    def bits(number: int) -> list[bool]:
        return [bool(number >> place & 1) for place in range(64)]

    def mixed(word: list[bool], shift: int) -> list[bool]:
        return [bit != (place + shift < 64 and word[place + shift]) for place, bit in enumerate(word)]

    def number(word: list[bool]) -> int:
        return sum(1 << place for place, bit in enumerate(word) if bit)

    words, state = [], seed
    for _ in range(count):
        state += 0x9E3779B97F4A7C15
        word = mixed(bits(state), 30)
        word = mixed(bits(number(word) * 0xBF58476D1CE4E5B9), 27)
        word = mixed(bits(number(word) * 0x94D049BB133111EB), 31)
        words.append(number(word))
    return words


@pytest.mark.parametrize("seed", [1, 7, 999_999_999 * 4 + 3, 2**64 - 1])
def test_words_are_those_of_the_generator_worked_bit_by_bit(seed: int) -> None:
    chance = Chance(seed)
    assert [chance.word() for _ in range(20)] == by_bits(seed, 20)


def test_a_number_below_six_is_a_throw_of_a_die() -> None:
    chance = Chance(3)
    thrown = Counter(chance.below(6) for _ in range(6000))
    assert sorted(thrown) == [0, 1, 2, 3, 4, 5]
    assert min(thrown.values()) > 850
    assert max(thrown.values()) < 1150


def test_one_in_three_comes_about_once_in_three() -> None:
    chance = Chance(8)
    assert 900 < sum(chance.one_in(3) for _ in range(3000)) < 1100
    assert all(chance.one_in(1) for _ in range(20))


@pytest.mark.parametrize("size", [1, 2, 5, 20])
def test_what_is_turned_begins_anywhere_and_keeps_its_order(size: int) -> None:
    things = list(range(size))
    begun = set()
    for seed in range(40 * size):
        turned = list(Chance(seed).turned(things))
        begun.add(turned[0])
        assert turned == [*things[turned[0] :], *things[: turned[0]]]
    assert begun == set(things)


def test_nothing_turned_is_nothing_and_draws_nothing() -> None:
    chance = Chance(1)
    assert list(chance.turned([])) == []
    assert chance.word() == Chance(1).word()


def test_what_is_shuffled_comes_in_every_order() -> None:
    orders = Counter(tuple(Chance(seed).shuffled("abc")) for seed in range(600))
    assert sorted("".join(order) for order in orders) == ["abc", "acb", "bac", "bca", "cab", "cba"]
    assert min(orders.values()) > 60


def test_one_of_many_is_picked_each_as_often() -> None:
    picked = Counter(Chance(seed).picked("xyz") for seed in range(900))
    assert min(picked[thing] for thing in "xyz") > 240


def test_a_branch_is_a_stream_of_its_own() -> None:
    chance = Chance(5)
    first, second = chance.branch(), chance.branch()
    words = {stream.word() for stream in (chance, first, second) for _ in range(50)}
    assert len(words) == 150


def test_what_a_branch_draws_does_not_shift_the_others() -> None:
    one, other = Chance(5), Chance(5)
    one.branch().shuffled(range(30))
    other.branch()
    assert one.word() == other.word()
