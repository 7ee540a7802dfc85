"""The engines: finding Node, starting them, talking with them, ending them."""
