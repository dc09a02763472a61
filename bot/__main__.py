"""`python -m bot` is `haynote`."""

from bot.cli import main

main()
