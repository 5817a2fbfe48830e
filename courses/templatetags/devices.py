"""What the pages of devices hand to the browser."""

import json

from django import template
from django.core.serializers.json import DjangoJSONEncoder

register = template.Library()


@register.filter
def as_json(value: object) -> str:
    """Return `value` as JSON; the template escapes it, so that it may stand in an attribute."""
    return json.dumps(value, cls=DjangoJSONEncoder)
