"""Forms of the upper floor."""
