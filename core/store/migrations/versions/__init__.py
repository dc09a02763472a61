"""One file a change of form."""
