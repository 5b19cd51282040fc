"""Indexing: how a dividing head or rotary table is set. Pure calculation: the same question has the same answer."""
