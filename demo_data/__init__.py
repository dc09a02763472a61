"""An invented farm: its cast, a seeded generator, and the season of notes that it wrote (`season.txt`)."""
