"""How the service waits for slow callers without letting them hold up the others."""
