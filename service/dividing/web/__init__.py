"""The HTTP edge: what the service takes in, gives out and refuses."""
