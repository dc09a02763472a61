"""The domain of a small rabbitry: notes, the herd book, the reckoning, the advice. Knows no chat and no terminal."""
