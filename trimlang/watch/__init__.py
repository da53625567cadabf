"""``build --watch``: builds again at every save, and shows the sheets in a browser."""
