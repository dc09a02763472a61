"""Measurements, each against a named peer in the same run."""
