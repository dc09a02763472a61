"""The numbers of the trade, each with its unit, its range and where it comes from; one file a topic.

Nothing here is worked out from a herd: calculators live in `core.reckon`, questions in `core.herd`. A farm's own
settings win over a figure wherever the design lets a farm choose.
"""
