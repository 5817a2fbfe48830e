"""What is wrong with something that ought to stand in the log."""


class LogFault(ValueError):
    """Something the log cannot hold, or cannot be; the message says what and what would be right."""
