"""What does a message mean after what was said before it? Answers, corrections, replies to a reminder, the same thing told twice."""
