"""Pages of the upper floor: each view finds, checks, acts, answers."""
