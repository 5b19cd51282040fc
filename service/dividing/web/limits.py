"""How large a request may be. The size of a question itself is bounded where it is asked, in `indexing.bounds`."""

BODY_MOST = 64 * 1024
"""Bytes of a request's body."""
BATCH_BODY_MOST = 1024 * 1024
"""Bytes of a batch's body."""
BATCH_ITEMS_MOST = 500
NESTING_MOST = 32
"""Brackets within brackets in a body."""
NUMBER_LONGEST = 400
"""Characters of a number that is still turned into one."""
ERRORS_MOST = 100
"""Wrong fields named in one problem."""
QUERY_LONGEST = 8_192
"""Characters of a query; a longer question goes into a body."""
QR_LONGEST = 1_200
"""Characters of a link that a QR code still carries readably."""
SECONDS_OF_WORK = 2.0
"""A question that would take longer is refused before it is begun."""
