"""Benches of the ears: they need the extra `voice` and voices to listen to. Their page is `docs/reference/voice.md`."""
