"""What goes wrong with a scenario, said in whole sentences with the value and the near miss."""


class ScenarioError(ValueError):
    """Base of everything this chapter refuses."""


class SpecRefused(ScenarioError):
    """A kind of draw lacks what its function reads, or holds it in another shape; the message names both."""


class ValueRefused(ScenarioError):
    """A drawn or computed value doesn't fit its declared field."""


class UnknownScenario(ScenarioError):
    """No scenario of that code or version exists."""


class DrawNeverSettled(ScenarioError):
    """Every try was thrown away; the message names the conditions that threw them."""
