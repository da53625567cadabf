"""The site log: what was bought, cut, spoiled and fitted, and the plan of what is left."""
