"""Papers: what the book tells as PDF pages for the printer and as a calendar. Each library is loaded by the first paper that needs it."""
