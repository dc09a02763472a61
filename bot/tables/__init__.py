"""The book as files for spreadsheets and other programs, and such files as tables again."""
