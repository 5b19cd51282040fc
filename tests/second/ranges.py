"""The numbers to which the laws are held: 2 to 400, and the primes to a thousand, which are the hard ones."""

from __future__ import annotations

PRIMES = [number for number in range(401, 1000) if all(number % low for low in range(2, 32))]
NUMBERS = [*range(2, 401), *PRIMES]
