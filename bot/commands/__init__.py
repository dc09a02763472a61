"""The commands of `haynote`: each turns options into one call of the domain's door, and its answer into lines or JSON."""
