"""Settings for dividing heads and rotary tables: solved, explained and checked."""

__version__ = "0.1.0"
