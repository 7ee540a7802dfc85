"""A document: reading it, writing it whole or not at all, its formulas in Calc's own words."""
