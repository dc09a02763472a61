"""What a note can say: how it is read, what it means for the herd, and how it is written back."""
