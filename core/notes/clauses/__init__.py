"""What does one statement say? Where it begins and ends, what its words stand for, and which of them nobody explains."""
