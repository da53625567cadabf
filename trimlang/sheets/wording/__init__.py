"""The sheets' words: quantities, phrases of the trade, languages."""
