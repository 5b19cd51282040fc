"""A plate made in the shop, drilled on the head that will use it: how many holes, how to drill it, what it is worth."""
