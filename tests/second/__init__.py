"""A second way to every answer: plain loops over holes and gears, sharing no code with the service.

``head`` turns a dividing head by hand, one action after another; ``errors`` reads the errors off a list
of actual positions; ``holes`` and ``gears`` try every hole and every train there is. All of it is exact.
"""
