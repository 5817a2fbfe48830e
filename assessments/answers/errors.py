"""What is wrong with an answer, in a sentence for the page and a longer one for the door."""


class AnswerRefused(ValueError):
    """An answer that can't be read: ``sentence`` for the page beside the task, the whole text with the task before it.

    >>> str(AnswerRefused("margin", "'much' is no number; write it as 3 K or 5.4 °F."))
    "margin: 'much' is no number; write it as 3 K or 5.4 °F."
    """

    def __init__(self, task: str, sentence: str) -> None:
        """Keep the id of the task and the sentence."""
        super().__init__(f"{task}: {sentence}")
        self.task = task
        self.sentence = sentence


class UnknownOption(AnswerRefused):
    """An option that was never offered: no page of ours sends it."""


class UnknownTask(AnswerRefused):
    """A task that this scenario doesn't set."""
