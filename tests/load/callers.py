"""Callers who ask one question after another, check each answer, and own up to every one that was lost."""

from __future__ import annotations

import http.client
import json
import threading
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import count

KNOWN_BROKEN = (OSError, http.client.HTTPException)
ASK_AGAIN_AFTER = 0.02


@dataclass
class Tally:
    """What came of the questions of all callers together."""

    answered: int = 0
    lost: Counter[str] = field(default_factory=Counter)
    # Nobody listened: the caller came back with the same question, and nothing was lost.
    turned_away: int = 0
    lock: threading.Lock = field(default_factory=threading.Lock)
    over: threading.Event = field(default_factory=threading.Event)
    numbers: Iterator[int] = field(default_factory=lambda: count(2))

    def __str__(self) -> str:
        told = f"{self.answered:,} answered, {self.lost.total()} lost, {self.turned_away} connections refused"
        return told + "".join(f"; {times} x {what}" for what, times in self.lost.items())


class Caller:
    """One caller; `kept` goes on with the connection while the service lets it."""

    def __init__(self, port: int, tally: Tally, *, kept: bool, host: str = "127.0.0.1") -> None:
        self.connection = http.client.HTTPConnection(host, port, timeout=20)
        self.tally = tally
        self.kept = kept

    def ask_until_over(self, most: int) -> None:
        """Ask until the tally is over or so many questions have been asked by all."""
        while not self.tally.over.is_set():
            with self.tally.lock:
                number = next(self.tally.numbers)
            if number - 2 >= most:
                break
            self.ask(2 + number % 999)
        self.connection.close()

    def ask(self, divisions: int) -> None:
        """Ask one question; whoever is refused the connection comes back until it is let in."""
        while not self.tally.over.is_set():
            try:
                if self.connection.sock is None:
                    self.connection.connect()
                break
            except ConnectionRefusedError:
                with self.tally.lock:
                    self.tally.turned_away += 1
                time.sleep(ASK_AGAIN_AFTER)
            except OSError as fault:
                self.count(f"connecting: {type(fault).__name__}")
                return
        self.count(self.fault_of(divisions))

    def fault_of(self, divisions: int) -> str:
        """Ask on the open connection; what went wrong, or an empty text. Nothing is asked a second time."""
        body = json.dumps({"work": {"divisions": divisions}, "limit": 1})
        headers = {"Content-Type": "application/json", **({} if self.kept else {"Connection": "close"})}
        try:
            self.connection.request("POST", "/v1/solve", body, headers)
            answer = self.connection.getresponse()
            told = answer.read()
        except KNOWN_BROKEN as fault:
            self.connection.close()
            return type(fault).__name__
        if answer.status != 200:
            return f"status {answer.status}"
        return "" if json.loads(told)["work"]["divisions"] == divisions else "another's answer"

    def count(self, fault: str) -> None:
        with self.tally.lock:
            if fault:
                self.tally.lost[fault] += 1
            else:
                self.tally.answered += 1


@contextmanager
def asking(port: int, callers: int, most: int = 10**9) -> Iterator[Tally]:
    """So many callers at work, every other one with a kept connection, until the block ends or `most` are asked."""
    tally = Tally()
    threads = [
        threading.Thread(target=Caller(port, tally, kept=bool(number % 2)).ask_until_over, args=(most,))
        for number in range(callers)
    ]
    for thread in threads:
        thread.start()
    try:
        yield tally
        if most < 10**9:
            for thread in threads:
                thread.join()
    finally:
        tally.over.set()
        for thread in threads:
            thread.join()
