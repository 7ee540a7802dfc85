"""What the office and the computer are asked for: the main thread, open documents, the log, places."""
