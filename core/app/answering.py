"""The answer to a message: what its facts say of themselves, and for a question what the reports find."""
