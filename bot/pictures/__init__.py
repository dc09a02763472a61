"""Pictures: what the book tells, drawn for a phone in the sun. The drawing library is loaded by the first picture."""
