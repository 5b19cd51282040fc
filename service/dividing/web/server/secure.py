"""TLS on a connection, without ever waiting for the other side."""

import selectors
import socket
from contextlib import suppress
from ssl import SSLContext, SSLSocket, SSLWantReadError, SSLWantWriteError

# What a socket says when there is nothing to do but wait; on a plain one it is BlockingIOError alone.
NOT_YET = (BlockingIOError, SSLWantReadError, SSLWantWriteError)


def begun(sock: socket.socket, context: SSLContext | None) -> socket.socket:
    """The connection as it will be after the handshake; OSError if the other side is gone already."""
    return sock if context is None else context.wrap_socket(sock, server_side=True, do_handshake_on_connect=False)


def awaited(sock: socket.socket) -> int:
    """Go on with the handshake; the selector's event that it waits for, 0 once it is done, OSError if it failed."""
    if not isinstance(sock, SSLSocket):
        return 0
    try:
        sock.do_handshake()
    except SSLWantReadError:
        return selectors.EVENT_READ
    except SSLWantWriteError:
        return selectors.EVENT_WRITE
    return 0


def say_goodbye(sock: socket.socket) -> None:
    """Tell the other side that nothing follows, so that it can tell an end from a cut (RFC 8446, section 6.1)."""
    if isinstance(sock, SSLSocket):
        # It would wait for the other's goodbye; ours is out by then.
        with suppress(OSError, ValueError):
            sock.unwrap()
