"""The chat in a terminal: the same answers as on a phone, without one."""
