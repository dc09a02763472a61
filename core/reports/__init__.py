"""The reports: what the herd book has to say, each as a value that can be read aloud or handed on as a document."""
