"""Moving in and out: the book as tables and as one object, and other people's tables as notes. Rows in, values out; no file is opened."""
