"""The Telegram shell: what people send is kept before it is confirmed, and what goes out is kept until it is delivered."""

import os

# The library is about to give times as durations instead of seconds, and warns until told that the durations are wanted.
os.environ.setdefault("PTB_TIMEDELTA", "true")
