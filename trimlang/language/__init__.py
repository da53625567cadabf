"""From text to tree: the lark grammar, its nodes, and how reading goes on after a mistake."""
