"""Rules and traces in plain words: what a rule asks, what was compared with what, what was never looked at."""
