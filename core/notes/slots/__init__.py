"""Of what pieces is a message made? Words, numbers, measures, days and animals, each known by its form alone."""
