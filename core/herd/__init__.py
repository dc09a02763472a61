"""The herd book: the state that the notes add up to, and the questions it answers."""
