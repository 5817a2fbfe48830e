"""Pages of the ground floor: each view finds, checks, acts, answers."""
