"""Measures what every process of a test run reaches: on PYTHONPATH while `.ci/run` runs the README's own test command."""

from contextlib import suppress

with suppress(ImportError):  # the command makes its environment first
    import coverage

    coverage.process_startup()
