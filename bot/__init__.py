"""The shells: a terminal chat, a Telegram bot, commands. They know no biology; the domain is reached through `core.app`."""
