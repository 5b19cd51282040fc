"""A refusal as a table can state it: each fault with the way to its field."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dividing.indexing.faults import Path, Refused


def faults_of(make: Callable[[], object]) -> list[tuple[Path, str]]:
    """Every fault for which a value is refused, as (path, sentence)."""
    with pytest.raises(Refused) as refused:
        make()
    return [(fault.path, fault.sentence) for fault in refused.value.faults]
