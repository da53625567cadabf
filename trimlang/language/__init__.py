"""Text to tree: the lark grammar, its nodes, and recovery line by line."""
