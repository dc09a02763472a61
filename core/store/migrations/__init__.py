"""The history of the book's form. A migration, once released, is never changed."""
