"""The site log: what was bought, cut, spoiled and fitted, and what is left to do."""
