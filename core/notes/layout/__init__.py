"""How is a message laid out? A sheet, a table, a receipt, dated lines, a polite head: each made lines that a statement can be read from."""
