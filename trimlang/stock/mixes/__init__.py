"""How many sticks of each kind: what they cost, and which numbers can be cheapest."""
