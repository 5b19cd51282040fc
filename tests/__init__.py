"""The tests of the service, its page and its documents."""
