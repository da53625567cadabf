"""What one stick can be cut into: the patterns of the linear program, and how they are priced."""
